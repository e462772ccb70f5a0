#include "witnessmark/weigh/contradictions.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "weigh/comparing/property.h"
#include "weigh/stays/conflict_search.h"
#include "weigh/stays/stay_problem.h"
#include "witnessmark/base/parallel.h"
#include "witnessmark/weigh/whereabouts.h"

namespace witnessmark {
namespace {

class Finder {
 public:
  /// Searches every group; groups do not influence one another.
  explicit Finder(const StayEvidence& evidence) : evidence_(evidence), conflicts_(evidence.groups().size()) {
    in_parallel(conflicts_.size(), [this](std::size_t number) { conflicts_[number] = search(number); });
  }

  void stays(std::size_t number) {
    const StayGroup& group = evidence_.groups()[number];
    const Conflicts& conflicts = conflicts_[number];
    const bool of_value = !group.fixtures.front().property.empty();
    for (const auto& set : conflicts.sets)
      add(of_value ? Contradiction::Kind::property : Contradiction::Kind::stay, set, number);
    const bool some = !conflicts.sets.empty() || conflicts.beyond_limit;
    if (!conflicts.all_found && some)
      found_.limits.push_back({group.fixtures.front().subject, group.fixtures.front().place,
                               conflicts.searched_to, conflicts.more, conflicts.beyond_limit});
  }

  void properties(const FixturePlace& fixture, std::size_t group) {
    std::vector<std::size_t> stated;
    for (const Bearing& bearing : fixture.bearings)
      if (bearing.relation == PlaceRelation::same && of_property(bearing.statement))
        stated.push_back(bearing.statement);
    for (std::size_t i = 0; i < stated.size(); ++i)
      for (std::size_t j = i + 1; j < stated.size(); ++j)
        if (at(stated[i]).statement == at(stated[j]).statement && at_one_time(stated[i], stated[j]) &&
            differ(stated[i], stated[j]))
          add(Contradiction::Kind::property, {stated[i], stated[j]}, group);
  }

  void whereabouts(const HeldClaim& held) {
    if (held.claim.statement != Statement::located || held.claim.withdrawn) return;
    for (const Comparison& comparison : compare_whereabouts(held.claim, evidence_.evidence())) {
      if (comparison.outcome != Outcome::conflicts) continue;
      found_.sets.push_back({Contradiction::Kind::whereabouts,
                             held.claim.subject,
                             held.claim.place.empty() ? held.claim.place_words : held.claim.place,
                             "",
                             {{StatementKey::Kind::stay, comparison.entry},
                              {StatementKey::Kind::claim, to_string(held.claim.id)}},
                             held.footing,
                             0});
    }
  }

  Contradictions take() {
    std::stable_sort(found_.sets.begin(), found_.sets.end(), [](const auto& a, const auto& b) {
      const auto key = [](const Contradiction& one) {
        return std::tuple(one.statements.size(), one.footing == Footing::proposed,
                          std::tie(one.subject, one.place));
      };
      return key(a) < key(b);
    });
    return std::move(found_);
  }

 private:
  /// The sets of a group, of statements in the place of the numbers of its problem.
  Conflicts search(std::size_t number) const {
    const StayProblem problem(evidence_, evidence_.groups()[number]);
    Conflicts conflicts;
    conflicts.all_found = true;
    if (problem.size() < 2) return conflicts;
    conflicts = find_conflicts(problem);
    for (auto& set : conflicts.sets)
      for (std::size_t& one : set) one = problem.statement(one);
    return conflicts;
  }

  const FixtureStatement& at(std::size_t statement) const { return evidence_.statements()[statement]; }

  bool of_property(std::size_t statement) const {
    const FixtureStatement& one = at(statement);
    if (one.no_limit != NoLimit::none || one.denied) return false;
    if (one.statement == Statement::count) return one.number.has_value();
    return one.statement == Statement::attribute && !one.attribute.empty();
  }

  bool differ(std::size_t a, std::size_t b) const {
    if (at(a).statement != at(b).statement) return false;
    if (at(a).statement == Statement::count)
      return at(a).number->most < at(b).number->least || at(b).number->most < at(a).number->least;
    const Attribute one = split_attribute(at(a).attribute);
    const Attribute other = split_attribute(at(b).attribute);
    return one.name == other.name && !one.only_told && !says_the_same(one.value, other.value);
  }

  /// One holds throughout all of the other's time, or both are of one and the same day.
  bool at_one_time(std::size_t a, std::size_t b) const {
    const auto covers = [&](std::size_t longer, std::size_t shorter) {
      const auto first = at(shorter).period->earliest(), past = at(shorter).period->past_latest();
      return at(longer).reading == Reading::throughout && first && past &&
             at(longer).period->surely_covers(*first, *past);
    };
    const auto one_day = [&](std::size_t statement) {
      const auto first = at(statement).period->earliest(), past = at(statement).period->past_latest();
      return first && past && *past - *first == 1 ? first : std::nullopt;
    };
    return covers(a, b) || covers(b, a) || (one_day(a) && one_day(a) == one_day(b));
  }

  /// Whether the set, or one it holds, was found of this property already: of another value, or at one time.
  bool known_of_property(std::vector<StatementKey> keys) {
    std::sort(keys.begin(), keys.end());
    const auto holds = [&](const auto& smaller) {
      return std::includes(keys.begin(), keys.end(), smaller.begin(), smaller.end());
    };
    std::set<std::size_t> candidates;
    for (const StatementKey& key : keys)
      if (const auto found = property_sets_by_key_.find(key); found != property_sets_by_key_.end())
        candidates.insert(found->second.begin(), found->second.end());
    for (const std::size_t candidate : candidates)
      if (holds(property_sets_[candidate])) return true;
    for (const StatementKey& key : keys) property_sets_by_key_[key].push_back(property_sets_.size());
    property_sets_.push_back(std::move(keys));
    return false;
  }

  /// A set found of a place is not told again of a place around it.
  void add(Contradiction::Kind kind, const std::vector<std::size_t>& statements, std::size_t group) {
    if (!seen_.insert(statements).second) return;
    Contradiction made{kind, at(statements.front()).subject, "", "", {}, Footing::evidence, group};
    for (const FixturePlace& fixture : evidence_.groups()[group].fixtures) {
      if (fixture.subject != made.subject) continue;
      made.place = fixture.place;
      made.property = fixture.property;
      if (std::any_of(fixture.bearings.begin(), fixture.bearings.end(),
                      [&](const Bearing& bearing) { return bearing.statement == statements.front(); }))
        break;
    }
    for (const std::size_t statement : statements) {
      made.statements.push_back(at(statement).key);
      made.footing = std::max(made.footing, at(statement).footing);
    }
    if (kind == Contradiction::Kind::property && known_of_property(made.statements)) return;
    found_.sets.push_back(std::move(made));
  }

  const StayEvidence& evidence_;
  std::vector<Conflicts> conflicts_;  ///< By group.
  Contradictions found_;
  std::set<std::vector<std::size_t>> seen_;
  std::vector<std::vector<StatementKey>> property_sets_;
  std::map<StatementKey, std::vector<std::size_t>> property_sets_by_key_;
};

}  // namespace

std::string_view to_string(Contradiction::Kind kind) {
  switch (kind) {
    case Contradiction::Kind::stay:
      return "stay";
    case Contradiction::Kind::property:
      return "property";
    case Contradiction::Kind::whereabouts:
      return "whereabouts";
  }
  return "";
}

Contradictions find_contradictions(const StayEvidence& evidence, const std::vector<HeldClaim>& claims) {
  Finder finder(evidence);
  // Two values at one time come first: what then follows from the stays of values is told only where it is
  // more.
  const auto of_value = [&](std::size_t group) {
    return !evidence.groups()[group].fixtures.front().property.empty();
  };
  for (std::size_t group = 0; group < evidence.groups().size(); ++group) {
    if (of_value(group)) continue;
    finder.stays(group);
    for (const FixturePlace& fixture : evidence.groups()[group].fixtures) finder.properties(fixture, group);
  }
  for (std::size_t group = 0; group < evidence.groups().size(); ++group)
    if (of_value(group)) finder.stays(group);
  for (const HeldClaim& claim : claims) finder.whereabouts(claim);
  return finder.take();
}

}  // namespace witnessmark
