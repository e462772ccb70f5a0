// For each group one problem is made; a choice of statements (the register's, with claims, without a source)
// is a list of their numbers. Why a limit holds is asked the other way round: which least set of statements
// cannot be true together with the day lying beyond it?
#include "witnessmark/weigh/bounds.h"

#include <algorithm>
#include <set>

#include "weigh/fixtures/returns.h"
#include "weigh/stays/conflict_search.h"
#include "weigh/stays/stay_problem.h"

namespace witnessmark {
namespace {

using Numbers = std::vector<std::size_t>;

bool same_days(const Bounds& a, const Bounds& b) {
  const auto same = [](const StayBounds& x, const StayBounds& y) {
    return x.came_earliest.day == y.came_earliest.day && x.came_latest.day == y.came_latest.day &&
           x.went_earliest.day == y.went_earliest.day && x.went_latest.day == y.went_latest.day;
  };
  return std::equal(a.stays.begin(), a.stays.end(), b.stays.begin(), b.stays.end(), same);
}

class GroupBounds {
 public:
  /// Without `why` limits do not say what they follow from.
  GroupBounds(const StayEvidence& evidence, const StayGroup& group, bool why)
      : evidence_(evidence), group_(group), why_(why), problem_(evidence, group) {
    for (std::size_t i = 0; i < problem_.size(); ++i) {
      const Footing footing = statement(i).footing;
      if (footing == Footing::evidence) register_.push_back(i);
      if (footing != Footing::proposed) reviewed_.push_back(i);
      all_.push_back(i);
    }
  }

  std::vector<BoundsOutline> outlines() const {
    const auto from_register = bounds_of(register_);
    const auto with_reviewed = reviewed_ == register_ ? from_register : bounds_of(reviewed_);
    std::vector<BoundsOutline> found;
    for (std::size_t f = 0; f < group_.fixtures.size(); ++f)
      found.push_back({group_.fixtures[f].subject, group_.fixtures[f].place, group_.fixtures[f].property,
                       from_register[f].state, !same_limits(from_register[f], with_reviewed[f])});
    return found;
  }

  std::vector<FixtureBounds> find() {
    register_core_ = problem_.telling(register_);
    std::vector<FixtureBounds> found;
    for (const FixturePlace& fixture : group_.fixtures) {
      FixtureBounds& made = found.emplace_back();
      made.subject = fixture.subject;
      made.place = fixture.place;
      made.property = fixture.property;
      for (const Renewal& one : fixture.renewals)
        made.renewals.push_back(
            {one.episode, evidence_.statements()[one.there].key, evidence_.statements()[one.come].key});
    }
    const auto from_register = bounds_of(register_);
    const auto with_reviewed = reviewed_ == register_ ? from_register : bounds_of(reviewed_);
    const auto preview = all_ == reviewed_ ? with_reviewed : bounds_of(all_);
    for (std::size_t f = 0; f < found.size(); ++f) {
      found[f].from_register = from_register[f];
      found[f].with_reviewed = with_reviewed[f];
      found[f].preview = preview[f];
      add_no_bounds(group_.fixtures[f], found[f]);
    }
    add_claims(from_register, found);
    add_without(from_register, found);
    return found;
  }

 private:
  const FixtureStatement& statement(std::size_t number) const {
    return evidence_.statements()[problem_.statement(number)];
  }

  std::vector<Bounds> bounds_of(const Numbers& numbers) const {
    std::vector<Bounds> found(group_.fixtures.size());
    if (numbers.empty()) {
      for (std::size_t f = 0; f < found.size(); ++f)
        found[f].stays.resize(static_cast<std::size_t>(problem_.episodes(f)));
      return found;
    }
    const auto solution = problem_.solve(numbers);
    if (solution.consistent == Answer::no) return uncontested(numbers);
    for (std::size_t f = 0; f < found.size(); ++f) {
      found[f].state = BoundsState::known;
      for (int episode = 0; episode < problem_.episodes(f); ++episode) {
        const auto& stay = solution.stays[f][static_cast<std::size_t>(episode)];
        found[f].stays.emplace_back();
        if (!stay.came || !stay.went)
          found[f].state = BoundsState::cannot_tell;
        else
          fill(found[f].stays.back(), stay, {f, episode, false}, numbers);
      }
      const bool limited = std::any_of(found[f].stays.begin(), found[f].stays.end(),
                                       [](const StayBounds& stay) { return stay != StayBounds{}; });
      if (found[f].state == BoundsState::known && !limited) found[f].state = BoundsState::none;
    }
    return found;
  }

  /// What the statements give without those on the weakest footing of each contradiction.
  std::vector<Bounds> uncontested(const Numbers& numbers) const {
    const auto contested = weakest_of_conflicts(evidence_, problem_, conflicts(), numbers);
    Numbers rest;
    for (const std::size_t number : numbers)
      if (!contested.contains(number)) rest.push_back(number);
    std::vector<Bounds> found(group_.fixtures.size());
    if (rest.size() < numbers.size() && problem_.can_hold(rest) == Answer::yes) found = bounds_of(rest);
    for (std::size_t f = 0; f < found.size(); ++f) {
      found[f].stays.resize(static_cast<std::size_t>(problem_.episodes(f)));
      for (const Bearing& bearing : group_.fixtures[f].bearings)
        if (const auto number = problem_.number_of(bearing.statement); number && contested.contains(*number))
          found[f].left_out.push_back(statement(*number).key);
      if (!found[f].left_out.empty() || rest.empty()) found[f].state = BoundsState::contradicted;
    }
    return found;
  }

  const Conflicts& conflicts() const {
    if (!conflicts_) conflicts_ = find_conflicts(problem_);
    return *conflicts_;
  }

  void fill(StayBounds& bounds, const StayProblem::Solution::Stay& stay, StayDay day,
            const Numbers& numbers) const {
    fill_day(bounds.came_earliest, bounds.came_latest, *stay.came, day, numbers);
    day.went = true;
    fill_day(bounds.went_earliest, bounds.went_latest, *stay.went, day, numbers);
  }

  void fill_day(Bound& earliest, Bound& latest, const HullBounds& hull, StayDay day,
                const Numbers& numbers) const {
    earliest.day = hull.earliest;
    latest.day = hull.latest;
    if (why_ && hull.earliest)
      earliest.from = keys(problem_.refuting(numbers, {{day, {std::nullopt, hull.earliest->value - 1}}}));
    if (why_ && hull.latest)
      latest.from = keys(problem_.refuting(numbers, {{day, {hull.latest->value + 1, std::nullopt}}}));
  }

  std::vector<StatementKey> keys(const Numbers& numbers) const {
    std::vector<StatementKey> found;
    for (const std::size_t number : numbers) found.push_back(statement(number).key);
    return found;
  }

  void add_no_bounds(const FixturePlace& fixture, FixtureBounds& found) const {
    for (const Bearing& bearing : fixture.bearings) {
      const FixtureStatement& one = evidence_.statements()[bearing.statement];
      if (one.no_limit != NoLimit::none && bearing.relation == PlaceRelation::same &&
          !problem_.number_of(bearing.statement))
        found.no_bound.push_back({one.key, one.footing, one.no_limit});
    }
  }

  void add_claims(const std::vector<Bounds>& from_register, std::vector<FixtureBounds>& found) const {
    for (std::size_t f = 0; f < found.size(); ++f) {
      for (const Bearing& bearing : group_.fixtures[f].bearings) {
        const auto number = problem_.number_of(bearing.statement);
        if (!number || statement(*number).footing == Footing::evidence) continue;
        found[f].claims.push_back(effect_of(*number, f, from_register[f]));
      }
    }
  }

  /// Beside a register that contradicts itself every claim would contradict: there it is not asked.
  ClaimEffect effect_of(std::size_t number, std::size_t fixture, const Bounds& before) const {
    ClaimEffect effect{statement(number).key, statement(number).footing, ClaimEffect::Kind::cannot_tell, {}};
    if (before.state == BoundsState::contradicted || before.state == BoundsState::cannot_tell) return effect;
    Numbers with = register_core_;
    with.insert(std::upper_bound(with.begin(), with.end(), number), number);
    const auto solution = problem_.solve(with);
    if (solution.consistent == Answer::no) {
      effect.kind = ClaimEffect::Kind::contradicts;
      return effect;
    }
    std::vector<StayBounds> with_it = before.stays;
    bool narrower = false;
    const auto narrow = [&](Bound& bound, const std::optional<Day>& day) {
      if (bound.day == day) return;
      bound = {day, {effect.claim}};
      narrower = true;
    };
    for (std::size_t e = 0; e < before.stays.size(); ++e) {
      const auto& stay = solution.stays[fixture][e];
      if (!stay.came || !stay.went) return effect;
      narrow(with_it[e].came_earliest, stay.came->earliest);
      narrow(with_it[e].came_latest, stay.came->latest);
      narrow(with_it[e].went_earliest, stay.went->earliest);
      narrow(with_it[e].went_latest, stay.went->latest);
    }
    effect.kind = narrower ? ClaimEffect::Kind::narrows : ClaimEffect::Kind::nothing_new;
    if (narrower) effect.with = std::move(with_it);
    return effect;
  }

  void add_without(const std::vector<Bounds>& from_register, std::vector<FixtureBounds>& found) const {
    std::set<std::string> sources;
    for (const std::size_t number : register_)
      for (const std::string& key : statement(number).rests_on) sources.insert(key);
    std::set<Numbers> done;
    for (const std::string& source : sources) {
      Numbers rest, left_out;
      for (const std::size_t number : register_) {
        const auto& keys = statement(number).rests_on;
        const bool rests = std::binary_search(keys.begin(), keys.end(), source);
        (rests ? left_out : rest).push_back(number);
      }
      if (left_out.empty() || !done.insert(left_out).second) continue;
      const auto without = has_renewals(group_) ? with_returns_anew(source) : bounds_of(rest);
      for (std::size_t f = 0; f < found.size(); ++f) {
        if (without[f].state != from_register[f].state || !same_days(without[f], from_register[f])) found[f].without.push_back({source, keys(left_out), without[f]});
      }
    }
  }

  /// The register's bounds without the source and all that rests on it: what it shows come again need not have.
  std::vector<Bounds> with_returns_anew(const std::string& source) const {
    std::set<std::size_t> statements;
    for (const FixturePlace& fixture : group_.fixtures)
      for (const Bearing& bearing : fixture.bearings) {
        const auto& keys = evidence_.statements()[bearing.statement].rests_on;
        if (std::binary_search(keys.begin(), keys.end(), source)) statements.insert(bearing.statement);
      }
    const StayGroup rest = group_without(group_, evidence_.statements(), statements);
    const GroupBounds anew(evidence_, rest, why_);
    return anew.bounds_of(anew.register_);
  }

  const StayEvidence& evidence_;
  const StayGroup& group_;
  bool why_;
  StayProblem problem_;
  Numbers register_, reviewed_, all_;
  Numbers register_core_;  ///< Bounds the same as all of the register.
  mutable std::optional<Conflicts> conflicts_;
};

}  // namespace

std::string_view to_string(BoundsState state) {
  switch (state) {
    case BoundsState::none:
      return "none";
    case BoundsState::known:
      return "known";
    case BoundsState::contradicted:
      return "contradicted";
    case BoundsState::cannot_tell:
      return "cannot tell";
  }
  return "";
}

std::string_view to_string(ClaimEffect::Kind kind) {
  switch (kind) {
    case ClaimEffect::Kind::nothing_new:
      return "nothing new";
    case ClaimEffect::Kind::narrows:
      return "narrows";
    case ClaimEffect::Kind::contradicts:
      return "contradicts";
    case ClaimEffect::Kind::cannot_tell:
      return "cannot tell";
  }
  return "";
}

bool same_limits(const Bounds& a, const Bounds& b) {
  return a.state == b.state && a.left_out == b.left_out && same_days(a, b);
}

std::vector<FixtureBounds> find_bounds(const StayEvidence& evidence, const StayGroup& group) {
  return GroupBounds(evidence, group, true).find();
}

std::vector<BoundsOutline> outline_bounds(const StayEvidence& evidence, const StayGroup& group) {
  return GroupBounds(evidence, group, false).outlines();
}

std::vector<FixtureBounds> find_bounds(const StayEvidence& evidence) {
  std::vector<FixtureBounds> all;
  for (const StayGroup& group : evidence.groups())
    for (FixtureBounds& found : find_bounds(evidence, group)) all.push_back(std::move(found));
  std::stable_sort(all.begin(), all.end(), [](const FixtureBounds& a, const FixtureBounds& b) {
    return std::tie(a.subject, a.place, a.property) < std::tie(b.subject, b.place, b.property);
  });
  return all;
}

}  // namespace witnessmark
