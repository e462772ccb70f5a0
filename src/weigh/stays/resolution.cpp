#include <fmt/core.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>

#include "weigh/fixtures/returns.h"
#include "weigh/stays/days_meant.h"
#include "weigh/stays/stay_problem.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/weigh/contradictions.h"

namespace witnessmark {
namespace {

using Numbers = std::vector<std::size_t>;

std::string list_of(const std::vector<std::string>& keys) {
  std::string text;
  for (const std::string& key : keys) text += (text.empty() ? "" : ", ") + key;
  return text;
}

/// What the identification of an entry hangs on; empty where the entry names the thing in writing.
std::string identified_by(const RegisterIndex::Item& item) {
  std::vector<std::string> keys = item.entry->identification_rests_on;
  for (const std::string& key : item.entry->caption_rests_on)
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
  if (!keys.empty()) return "its identification rests on " + list_of(keys);
  if (item.source == nullptr) return "";
  switch (item.source->kind) {
    case SourceKind::photograph:
    case SourceKind::drawing:
      return "if it shows another thing, another place or another site";
    case SourceKind::physical_trace:
      return "if the trace was left by another thing";
    case SourceKind::object_record:
      return "if the record is of another object";
    default:
      return "";
  }
}

std::string meant_by(const Claim& claim, const AuthorityLists& lists) {
  const Term* term = lists.equipment.find(claim.subject);
  const std::string name = term != nullptr ? term->name : claim.subject;
  if (claim.subject_carried)
    return fmt::format("that it is about {} is taken from earlier in the talk", name);
  if (term != nullptr && !claim.subject_words.empty() && fold(claim.subject_words) != fold(name))
    return fmt::format("if “{}” meant another thing than {}", claim.subject_words, name);
  if (claim.place_carried) return "that it is about this place is taken from earlier in the talk";
  return "";
}

/// Where its date is from, if not from the words of the claim itself.
std::string dated_by(const Claim* claim) {
  if (claim == nullptr) return "";
  if (claim->led) return "the interviewer supplied it";
  return claim->when.carried ? "its date is taken from earlier in the talk" : "";
}

/// Moves of `own` that bring one of its limits onto one of the others', nearest first: where what can hold
/// begins and ends to hold.
std::vector<std::int64_t> telling_moves(const FixtureStatement& own,
                                        const std::vector<const FixtureStatement*>& others) {
  std::set<std::int64_t> moves;
  const auto each_limit = [](const FixtureStatement& statement, const auto& visit) {
    for (const DaySpan& days : statement.days)
      for (const auto& limit : {days.low, days.high})
        if (limit) visit(*limit);
  };
  for (const FixtureStatement* other : others)
    each_limit(*other, [&](std::int64_t there) {
      each_limit(own, [&](std::int64_t here) {
        for (std::int64_t step = -1; step <= 1; ++step) moves.insert(there - here + step);
      });
    });
  std::vector<std::int64_t> nearest(moves.begin(), moves.end());
  std::stable_sort(nearest.begin(), nearest.end(),
                   [](std::int64_t a, std::int64_t b) { return std::abs(a) < std::abs(b); });
  return nearest;
}

FixtureStatement moved(FixtureStatement statement, std::int64_t days) {
  for (DaySpan& span : statement.days)
    for (auto* limit : {&span.low, &span.high})
      if (*limit) **limit += days;
  return statement;
}

/// Days one of two times would have to move to leave a stretch it may not share with the other.
Resolution::Misdating apart(const StatementKey& key, const Period& own, const Period& other) {
  Resolution::Misdating one{key, std::nullopt, std::nullopt};
  const auto first = own.earliest(), past = own.past_latest();
  const auto other_first = other.earliest(), other_past = other.past_latest();
  if (!first || !past || !other_first || !other_past) return one;
  const bool inside = *other_first <= *first && *past <= *other_past;
  one.earlier = inside ? *first - *other_first + 1 : *past - *other_past + 1;
  one.later = inside ? *other_past - *past + 1 : *other_first - *first + 1;
  return one;
}

class Resolver {
 public:
  Resolver(const Dispute& dispute, const StayEvidence& evidence, const std::vector<HeldClaim>& claims)
      : dispute_(dispute), evidence_(evidence) {
    for (const HeldClaim& held : claims) {
      const StatementKey key{StatementKey::Kind::claim, to_string(held.claim.id)};
      if (std::find(dispute.statements.begin(), dispute.statements.end(), key) != dispute.statements.end())
        claims_.emplace(key, &held.claim);
    }
  }

  Resolution resolve() {
    for (const StatementKey& key : dispute_.statements) add_identification(key);
    if (dispute_.kind == Contradiction::Kind::stay || !dispute_.property.empty())
      stays();
    else
      apart_in_time();
    for (const StatementKey& key : dispute_.statements)
      if (key.kind == StatementKey::Kind::claim) add_mishearing(key);
    return std::move(resolution_);
  }

 private:
  const Claim* claim_of(const StatementKey& key) const {
    const auto at = claims_.find(key);
    return at == claims_.end() ? nullptr : at->second;
  }

  void add_identification(const StatementKey& key) {
    std::string how;
    if (const Claim* claim = claim_of(key)) {
      if (claim->statement != Statement::located) how = meant_by(*claim, evidence_.evidence().lists());
    } else if (const auto* item = evidence_.evidence().find(key.key);
               item != nullptr && key.kind == StatementKey::Kind::entry) {
      how = identified_by(*item);
    }
    if (!how.empty()) resolution_.wrong_identification.push_back({key, how});
  }

  void stays() {
    const StayGroup& group = evidence_.groups()[dispute_.group];
    problem_.emplace(evidence_, group);
    for (std::size_t number = 0; number < problem_->size(); ++number) {
      numbers_.emplace(statement(number).key, number);
      if (statement(number).footing <= dispute_.footing) all_.push_back(number);
    }
    for (const auto& set : dispute_.sets) {
      Numbers& made = sets_.emplace_back();
      for (const StatementKey& key : set) made.push_back(numbers_.at(key));
      std::sort(made.begin(), made.end());
    }
    add_episode(group);
    for (const StatementKey& key : dispute_.statements) add_misdating(key);
    add_set_aside();
  }

  const FixtureStatement& statement(std::size_t number) const {
    return evidence_.statements()[problem_->statement(number)];
  }

  void add_episode(const StayGroup& group) {
    const StayProblem more(evidence_, group, 1);
    Numbers same;
    for (const StatementKey& key : dispute_.statements)
      if (const auto at = more.number_of(problem_->statement(numbers_.at(key)))) same.push_back(*at);
    if (more.can_hold(same) != Answer::yes) return;
    resolution_.another_episode = true;
    resolution_.episode_words = "if it went and came back once more than the register shows";
    for (std::size_t f = 0; f < group.fixtures.size(); ++f) {
      if (group.fixtures[f].subject != dispute_.subject || group.fixtures[f].property != dispute_.property ||
          group.fixtures[f].episodes != 1)
        continue;
      const auto stays = more.solve(same).stays[f];
      const auto gone = stays[0].went ? stays[0].went->latest : std::nullopt;
      const auto back = stays[1].came ? stays[1].came->latest : std::nullopt;
      const auto day = [](Day one) { return describe(exact_period(one, one + 1)); };
      if (gone && back && *gone < *back)
        resolution_.episode_words = fmt::format(
            "if it had gone by {} and was back by {}, which no entry shows", day(*gone), day(*back));
    }
  }

  void add_misdating(const StatementKey& key) {
    const std::size_t number = numbers_.at(key);
    if (statement(number).days.empty()) return;
    Resolution::Misdating one{key, 0, 0};
    for (const Numbers& set : sets_) {
      if (!std::binary_search(set.begin(), set.end(), number)) continue;
      std::optional<std::int64_t> earlier, later;
      std::vector<const FixtureStatement*> others;
      for (const std::size_t other : set)
        if (other != number) others.push_back(&statement(other));
      for (const std::int64_t days : telling_moves(statement(number), others)) {
        auto& found = days < 0 ? earlier : later;
        if (days == 0 || found) continue;
        const Answer holds = problem_->can_hold_instead(set, number, moved(statement(number), days));
        if (holds == Answer::yes) found = std::abs(days);
      }
      one.earlier = one.earlier && earlier ? std::optional(std::max(*one.earlier, *earlier)) : std::nullopt;
      one.later = one.later && later ? std::optional(std::max(*one.later, *later)) : std::nullopt;
    }
    one.how = dated_by(claim_of(key));
    if (one.earlier || one.later) resolution_.misdating.push_back(one);
  }

  void add_set_aside() {
    for (const StatementKey& key : dispute_.statements) {
      const std::size_t own = problem_->statement(numbers_.at(key));
      if (holds_without([&](std::size_t statement) { return statement == own; }))
        resolution_.set_aside.push_back(key);
    }
    if (!resolution_.set_aside.empty()) return;
    std::set<std::string> sources;
    for (const StatementKey& key : dispute_.statements)
      for (const std::string& source : statement(numbers_.at(key)).rests_on) sources.insert(source);
    for (const std::string& source : sources) {
      const auto rests_on_it = [&](std::size_t statement) {
        const auto& keys = evidence_.statements()[statement].rests_on;
        return std::binary_search(keys.begin(), keys.end(), source);
      };
      const auto several = std::count_if(all_.begin(), all_.end(), [&](std::size_t number) {
        return rests_on_it(problem_->statement(number));
      });
      if (several > 1 && holds_without(rests_on_it)) resolution_.set_aside_sources.push_back(source);
    }
  }

  /// Whether all on the dispute's footing can be true but for some; what these show come again need then not have.
  template <typename Is>
  bool holds_without(const Is& set_aside) const {
    const StayGroup& group = evidence_.groups()[dispute_.group];
    if (!has_renewals(group)) {
      Numbers rest = all_;
      std::erase_if(rest, [&](std::size_t number) { return set_aside(problem_->statement(number)); });
      return problem_->can_hold(rest) == Answer::yes;
    }
    std::set<std::size_t> left_out;
    for (const FixturePlace& fixture : group.fixtures)
      for (const Bearing& bearing : fixture.bearings)
        if (set_aside(bearing.statement)) left_out.insert(bearing.statement);
    const StayGroup rest = group_without(group, evidence_.statements(), left_out);
    const StayProblem anew(evidence_, rest);
    Numbers numbers;
    for (std::size_t number = 0; number < anew.size(); ++number)
      if (evidence_.statements()[anew.statement(number)].footing <= dispute_.footing) numbers.push_back(number);
    return anew.can_hold(numbers) == Answer::yes;
  }

  /// Two times that may not share a stretch, set by set.
  void apart_in_time() {
    for (const StatementKey& key : dispute_.statements) {
      Resolution::Misdating one{key, 0, 0};
      bool in_all = true;
      for (const auto& set : dispute_.sets) {
        if (set.size() != 2 || (set[0] != key && set[1] != key)) {
          in_all = false;
          continue;
        }
        const auto own = period_of(key), other = period_of(set[0] == key ? set[1] : set[0]);
        if (!own || !other) return;
        const auto more = apart(key, *own, *other);
        one.earlier =
            one.earlier && more.earlier ? std::optional(std::max(*one.earlier, *more.earlier)) : std::nullopt;
        one.later = one.later && more.later ? std::optional(std::max(*one.later, *more.later)) : std::nullopt;
      }
      one.how = dated_by(claim_of(key));
      if (one.earlier || one.later) resolution_.misdating.push_back(one);
      if (in_all) resolution_.set_aside.push_back(key);
    }
  }

  std::optional<Period> period_of(const StatementKey& key) const {
    if (const Claim* claim = claim_of(key)) return claim->when.period;
    if (key.kind == StatementKey::Kind::stay) {
      const auto* stay = evidence_.evidence().find_stay(key.key);
      return stay != nullptr ? stay->period : std::nullopt;
    }
    const auto* item = evidence_.evidence().find(key.key);
    return item != nullptr ? item->period : std::nullopt;
  }

  void add_mishearing(const StatementKey& key) {
    Resolution::Mishearing one{key, ""};
    const Claim* claim = claim_of(key);
    if (claim != nullptr && problem_)
      for (const std::string& other : claim->when.alternatives)
        if (one.other_date.empty() && holds_with_date(key, other)) one.other_date = other;
    resolution_.mishearing.push_back(std::move(one));
  }

  bool holds_with_date(const StatementKey& key, const std::string& edtf) const {
    const auto value = parse_edtf(edtf);
    if (!value) return false;
    const std::size_t number = numbers_.at(key);
    FixtureStatement other = statement(number);
    other.period = to_period(*value, evidence_.evidence().policy());
    other.days = days_meant(other, *value, evidence_.evidence().policy());
    return !other.days.empty() && std::all_of(sets_.begin(), sets_.end(), [&](const Numbers& set) {
      return !std::binary_search(set.begin(), set.end(), number) ||
             problem_->can_hold_instead(set, number, other) == Answer::yes;
    });
  }

  const Dispute& dispute_;
  const StayEvidence& evidence_;
  std::map<StatementKey, const Claim*> claims_;
  std::optional<StayProblem> problem_;
  std::map<StatementKey, std::size_t> numbers_;  ///< Of the problem.
  Numbers all_;                                  ///< On the dispute's footing.
  std::vector<Numbers> sets_;
  Resolution resolution_;
};

}  // namespace

Resolution resolve(const Dispute& dispute, const StayEvidence& evidence,
                   const std::vector<HeldClaim>& claims) {
  return Resolver(dispute, evidence, claims).resolve();
}

}  // namespace witnessmark
