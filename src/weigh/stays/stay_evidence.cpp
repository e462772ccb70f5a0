// Statements are first sorted to their subjects; then each subject's places are told apart, each place gets
// the statements that bear on it, and returns shown by the register are looked for. Last, fixtures whose
// traces lie over one another are joined.
#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "weigh/stays/property_values.h"
#include "witnessmark/weigh/stays.h"

namespace witnessmark {
namespace {

/// The places the register has a fixture at.
class HomePlaces {
 public:
  HomePlaces(const AuthorityLists& lists, const std::string& subject, std::set<std::string> stated)
      : lists_(lists), stated_(std::move(stated)) {
    if (const Term* term = lists.equipment.find(subject); stated_.empty() && term && !term->place.empty())
      stated_.insert(term->place);
  }

  /// The place a statement is of. Of the register's places that lie in the place stated: the innermost where
  /// each lies in the next, else the one around all others, else the place as stated.
  std::string place_of(const std::string& told) const {
    std::vector<std::string> inside;
    for (const std::string& home : stated_)
      if (told.empty() || lists_.places.within(home, told)) inside.push_back(home);
    const auto count = [&](const std::string& home, bool around) {
      return std::count_if(inside.begin(), inside.end(), [&](const std::string& other) {
        return around ? lists_.places.within(other, home) : lists_.places.within(home, other);
      });
    };
    const auto all = static_cast<std::ptrdiff_t>(inside.size());
    for (const std::string& home : inside)
      if (count(home, false) == all) return home;
    for (const std::string& home : inside)
      if (count(home, true) == all) return home;
    return told;
  }

 private:
  const AuthorityLists& lists_;
  std::set<std::string> stated_;
};

std::optional<PlaceRelation> relation_of(const std::string& told, const std::string& asked,
                                         const AuthorityLists& lists) {
  if (told == asked) return PlaceRelation::same;
  if (asked.empty() || (!told.empty() && lists.places.within(told, asked))) return PlaceRelation::inside;
  if (told.empty() || lists.places.within(asked, told)) return PlaceRelation::around;
  return std::nullopt;
}

/// Finds a chain gone, come again, gone, come again … as long as can be, and fixes each of its statements to
/// its episode.
void find_returns(FixturePlace& fixture, const std::vector<FixtureStatement>& statements) {
  constexpr int kMostEpisodes = 8;
  std::vector<Bearing*> gone, come;
  for (Bearing& bearing : fixture.bearings) {
    const FixtureStatement& statement = statements[bearing.statement];
    const bool dated = statement.footing == Footing::evidence && statement.no_limit == NoLimit::none &&
                       !statement.denied && statement.days.size() == 1 &&
                       bearing.relation == PlaceRelation::same;
    if (dated && statement.statement == Statement::ends && statement.days[0].high) gone.push_back(&bearing);
    if (dated && statement.statement == Statement::begins && statement.days[0].low) come.push_back(&bearing);
  }
  const auto days = [&](const Bearing* bearing) { return statements[bearing->statement].days[0]; };
  std::stable_sort(gone.begin(), gone.end(),
                   [&](const auto* a, const auto* b) { return *days(a).high < *days(b).high; });
  std::stable_sort(come.begin(), come.end(), [&](const auto* a, const auto* b) {
    const auto last = [&](const Bearing* bearing) {
      return days(bearing).high.value_or(std::numeric_limits<std::int64_t>::max());
    };
    return last(a) < last(b);
  });
  std::optional<std::int64_t> since;  // last day the thing can have come on, in the chain so far
  for (Bearing* end : gone) {
    if (fixture.episodes == kMostEpisodes) return;
    if (since && (!days(end).low || *days(end).low < *since)) continue;
    const auto next = std::find_if(come.begin(), come.end(),
                                   [&](const Bearing* begin) { return *days(begin).low >= *days(end).high; });
    if (next == come.end()) return;
    end->episode = fixture.episodes - 1;
    (*next)->episode = fixture.episodes++;
    if (!days(*next).high) return;
    since = days(*next).high;
  }
}

/// A state of a value, there or not, that the register has on surely dated days.
struct DatedState {
  std::int64_t first, last;
  bool there;
  Bearing* bearing;  ///< Of the statement that has it there.
  bool on_change;    ///< It follows a state of the same days: given so then, and so not so before.
};

/// The longest chain of there, not there, there … in time; each of its states that has it there is of a stay
/// of its own.
void find_returns_of_value(FixturePlace& fixture, const std::vector<FixtureStatement>& statements) {
  constexpr int kMostEpisodes = 8;
  std::vector<DatedState> states;
  for (Bearing& bearing : fixture.bearings) {
    const FixtureStatement& one = statements[bearing.statement];
    if (one.footing != Footing::evidence || one.no_limit != NoLimit::none || one.denied ||
        one.days.size() != 1 || bearing.relation != PlaceRelation::same || !one.days[0].low ||
        !one.days[0].high)
      continue;
    const auto [first, last] = std::minmax(*one.days[0].low, *one.days[0].high);
    const bool begins = one.statement == Statement::begins, ends = one.statement == Statement::ends;
    if (begins) states.push_back({first, last, false, nullptr, false});
    if (one.statement != Statement::absent) states.push_back({first, last, true, &bearing, begins});
    if (ends) states.push_back({first, last, false, nullptr, true});
    if (one.statement == Statement::absent) states.push_back({first, last, false, nullptr, false});
  }
  std::stable_sort(states.begin(), states.end(),
                   [](const auto& a, const auto& b) { return a.last < b.last; });
  std::vector<Bearing*> stays;
  bool there = false;
  std::optional<std::int64_t> since;
  for (const DatedState& state : states) {
    const bool after = !since || (state.on_change ? state.first >= *since : state.first > *since);
    if (state.there == there || !after) continue;
    there = state.there;
    since = state.last;
    if (there) stays.push_back(state.bearing);
  }
  if (stays.size() < 2) return;
  if (stays.size() > kMostEpisodes) stays.resize(kMostEpisodes);
  fixture.episodes = static_cast<int>(stays.size());
  for (std::size_t i = 0; i < stays.size(); ++i) stays[i]->episode = static_cast<int>(i);
}

std::vector<FixturePlace> fixtures_of(const std::string& subject, const std::string& property,
                                      const std::vector<std::size_t>& numbers,
                                      const std::vector<FixtureStatement>& statements,
                                      const AuthorityLists& lists) {
  std::set<std::string> stated;
  for (const std::size_t number : numbers) {
    const FixtureStatement& statement = statements[number];
    if (statement.footing == Footing::evidence && !statement.place.empty()) stated.insert(statement.place);
  }
  const HomePlaces homes(lists, subject, std::move(stated));
  std::map<std::string, std::vector<std::size_t>> by_place;
  for (const std::size_t number : numbers)
    by_place[homes.place_of(statements[number].place)].push_back(number);
  std::vector<FixturePlace> fixtures;
  for (const auto& at : by_place) {
    FixturePlace fixture{subject, at.first, property, 1, {}};
    for (const auto& [told, those] : by_place) {
      const auto relation = relation_of(told, at.first, lists);
      if (!relation) continue;
      for (const std::size_t number : those) fixture.bearings.push_back({number, *relation, -1});
    }
    std::sort(fixture.bearings.begin(), fixture.bearings.end(),
              [](const Bearing& a, const Bearing& b) { return a.statement < b.statement; });
    if (property.empty())
      find_returns(fixture, statements);
    else
      find_returns_of_value(fixture, statements);
    fixtures.push_back(std::move(fixture));
  }
  return fixtures;
}

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
