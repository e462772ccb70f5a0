// Statements are first sorted to their subjects; then to the places of each (fixtures/fixture_places.cpp). Last,
// fixtures whose traces lie over one another are joined.
#include <algorithm>
#include <map>
#include <numeric>

#include "weigh/fixtures/fixture_places.h"
#include "weigh/stays/property_values.h"
#include "witnessmark/weigh/stays.h"

namespace witnessmark {
namespace {

struct Tie {
  std::size_t upper, lower;                  ///< Statements.
  std::size_t upper_fixture, lower_fixture;  ///< Among all fixtures.
  bool same_spot;
};

/// Layers between entries that are certain of what they show; a coat of paint covers no fixture, but another
/// coat.
std::vector<Tie> find_ties(const std::vector<FixturePlace>& fixtures,
                           const std::vector<FixtureStatement>& statements) {
  std::map<std::string, std::pair<std::size_t, std::size_t>> by_entry;
  const auto counts = [](const FixtureStatement& statement) {
    const bool sure = statement.no_limit == NoLimit::none || statement.no_limit == NoLimit::undated;
    return statement.key.kind == StatementKey::Kind::entry && sure &&
           statement.statement != Statement::attribute && statement.statement != Statement::absent;
  };
  for (std::size_t f = 0; f < fixtures.size(); ++f)
    for (const Bearing& bearing : fixtures[f].bearings)
      if (bearing.relation == PlaceRelation::same && counts(statements[bearing.statement]))
        by_entry.emplace(statements[bearing.statement].key.key, std::pair(bearing.statement, f));
  std::vector<Tie> ties;
  for (const auto& [key, upper] : by_entry) {
    for (const std::string& beneath : statements[upper.first].over) {
      const auto lower = by_entry.find(beneath);
      if (lower == by_entry.end() || lower->second.second == upper.second) continue;
      const bool same_spot = fixtures[upper.second].place == fixtures[lower->second.second].place &&
                             !fixtures[upper.second].place.empty();
      ties.push_back({upper.first, lower->second.first, upper.second, lower->second.second, same_spot});
    }
  }
  return ties;
}

std::vector<StayGroup> joined(std::vector<FixturePlace> fixtures, const std::vector<Tie>& ties) {
  std::vector<std::size_t> parent(fixtures.size());
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  const auto root = [&](std::size_t at) {
    while (parent[at] != at) at = parent[at] = parent[parent[at]];
    return at;
  };
  for (const Tie& tie : ties) {
    const auto [first, second] = std::minmax({root(tie.upper_fixture), root(tie.lower_fixture)});
    parent[second] = first;
  }
  std::vector<StayGroup> groups;
  std::vector<std::size_t> group_of(fixtures.size()), place_in(fixtures.size());
  for (std::size_t f = 0; f < fixtures.size(); ++f) {
    const std::size_t head = root(f);
    if (head == f) {
      group_of[f] = groups.size();
      groups.emplace_back();
    }
    group_of[f] = group_of[head];
    place_in[f] = groups[group_of[f]].fixtures.size();
    groups[group_of[f]].fixtures.push_back(std::move(fixtures[f]));
  }
  for (const Tie& tie : ties)
    groups[group_of[tie.upper_fixture]].layers.push_back(
        {tie.upper, tie.lower, place_in[tie.upper_fixture], place_in[tie.lower_fixture], tie.same_spot});
  return groups;
}

}  // namespace

StayEvidence::StayEvidence(const RegisterIndex& evidence, const std::vector<HeldClaim>& claims)
    : evidence_(evidence), statements_(fixture_statements(evidence, claims)) {
  std::map<std::string, std::vector<std::size_t>> by_subject;
  for (std::size_t i = 0; i < statements_.size(); ++i) by_subject[statements_[i].subject].push_back(i);
  std::vector<FixturePlace> fixtures;
  for (const auto& [subject, numbers] : by_subject)
    for (FixturePlace& fixture : fixtures_of(subject, "", numbers, statements_, evidence.lists()))
      fixtures.push_back(std::move(fixture));
  const auto ties = find_ties(fixtures, statements_);
  groups_ = joined(std::move(fixtures), ties);
  add_properties(claims);
}

void StayEvidence::add_properties(const std::vector<HeldClaim>& claims) {
  const auto stated = property_statements(evidence_, claims);
  std::map<std::string, std::vector<const FixtureStatement*>> by_subject;
  for (const FixtureStatement& one : stated) by_subject[one.subject].push_back(&one);
  std::vector<FixturePlace> fixtures;
  for (const auto& [subject, those] : by_subject) {
    for (PropertyValue& value : property_values(those)) {
      std::vector<std::size_t> numbers;
      for (FixtureStatement& one : value.statements) {
        numbers.push_back(statements_.size());
        statements_.push_back(std::move(one));
      }
      for (FixturePlace& fixture :
           fixtures_of(subject, value.written, numbers, statements_, evidence_.lists()))
        fixtures.push_back(std::move(fixture));
    }
  }
  const auto ties = find_ties(fixtures, statements_);
  for (StayGroup& group : joined(std::move(fixtures), ties)) groups_.push_back(std::move(group));
}

}  // namespace witnessmark
