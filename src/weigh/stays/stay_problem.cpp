// Every stay is two time points, the day it came and the day it went; stays of one fixture follow one
// another. A statement becomes parts, all of which hold; a part is one alternative or several, of which one
// holds: one of several dates, one of several stays, before or after. Layered traces put a point of their own
// between the lower and the upper fixture, so that leaving out the statement on either trace undoes the tie.
//
// Most groups are one fixture without layers: a chain of days, for which no network is needed (stay_chain.h). Where it
// is one stay, why a limit holds is looked for among no more than the four statements that give the narrowest limits, with
// the either/ors.
#include "weigh/stays/stay_problem.h"

#include <algorithm>
#include <numeric>

#include "weigh/stays/least_core.h"

namespace witnessmark {
namespace {

constexpr StatementNumber kStructure =
    0;  ///< A stay ends no earlier than it begins. Statements count from 1.

bool is_presence(Statement statement) {
  return statement == Statement::present || statement == Statement::count ||
         statement == Statement::attribute;
}

EpisodeLimits limit_on(const DayLimit& limit) {
  EpisodeLimits limits;
  (limit.day.went ? limits.went : limits.came) = limit.span;
  return intersection(limits, {});
}

/// Where the statement is of a place that lies inside or around the one asked about.
std::vector<EpisodeLimits> weakened(Statement statement, PlaceRelation relation, const DaySpan& days,
                                    Reading reading) {
  if (relation == PlaceRelation::same) return episode_limits(statement, days, reading);
  if (relation == PlaceRelation::inside) {
    if (statement == Statement::absent) return {};
    return episode_limits(Statement::present, days, is_presence(statement) ? reading : Reading::within);
  }
  if (statement == Statement::begins) return {{{days.low, std::nullopt}, {days.low, std::nullopt}}};
  if (statement == Statement::ends) return {{{std::nullopt, days.high}, {std::nullopt, days.high}}};
  return statement == Statement::absent ? episode_limits(statement, days, reading)
                                        : std::vector<EpisodeLimits>{};
}

}  // namespace

StayProblem::StayProblem(const StayEvidence& evidence, const StayGroup& group, int more_episodes)
    : evidence_(evidence), group_(group), free_(more_episodes > 0) {
  for (const FixturePlace& fixture : group.fixtures) {
    episodes_.push_back(fixture.episodes + more_episodes);
    first_point_.push_back(static_cast<TimePoint>(point_count_));
    point_count_ += 2 * static_cast<std::size_t>(episodes_.back());
  }
  simple_ = group.fixtures.size() == 1 && episodes_.front() == 1 && group.layers.empty();
  chain_ = group.fixtures.size() == 1 && group.layers.empty() && point_count_ - 1 <= StayChain::kMostDays;
  for (std::size_t f = 0; f < group.fixtures.size(); ++f)
    for (const Bearing& bearing : group.fixtures[f].bearings)
      add_bearing(f, bearing, evidence.statements()[bearing.statement]);
  add_layers();
  std::sort(statements_.begin(), statements_.end(),
            [](const auto& a, const auto& b) { return a.statement < b.statement; });
  if (chain_)
    for (Constrained& one : statements_) one.chained = chained(one.parts);
}

std::vector<StayChain::Part> StayProblem::chained(const std::vector<Part>& parts) const {
  std::vector<StayChain::Part> made;
  for (const Part& part : parts) {
    StayChain::Part& chain_part = made.emplace_back();
    for (const Alternative& alternative : part) {
      StayChain::Alternative& limits = chain_part.emplace_back();
      const auto add = [&](std::size_t day, const DaySpan& span) {
        if (span.low || span.high)
          limits.push_back({day, span.low.value_or(StayChain::kNoLow), span.high.value_or(StayChain::kNoHigh)});
      };
      for (const Limits& one : alternative) {
        const std::size_t came = 2 * static_cast<std::size_t>(one.episode);
        add(came, one.limits.came);
        add(came + 1, one.limits.went);
      }
    }
  }
  return made;
}

StayProblem::Constrained& StayProblem::constrained(std::size_t statement) {
  if (!statements_.empty() && statements_.back().statement == statement) return statements_.back();
  const auto found = std::find_if(statements_.begin(), statements_.end(),
                                  [&](const Constrained& one) { return one.statement == statement; });
  if (found != statements_.end() && group_.fixtures.size() > 1) return *found;
  return statements_.emplace_back(Constrained{statement, {}, {}, {}});
}

void StayProblem::add_bearing(std::size_t fixture, const Bearing& bearing,
                              const FixtureStatement& statement) {
  if (statement.no_limit != NoLimit::none && !bearing.shows_there) return;
  auto parts = parts_of(fixture, bearing, statement);
  if (parts.empty()) return;
  auto& all = constrained(bearing.statement).parts;
  all.insert(all.end(), std::make_move_iterator(parts.begin()), std::make_move_iterator(parts.end()));
}

void StayProblem::add_layers() {
  for (const Layering& layer : group_.layers) {
    const auto between = static_cast<TimePoint>(point_count_++);
    const TimePoint lower = point({layer.lower_fixture, 0, layer.same_spot});
    const TimePoint upper = point({layer.upper_fixture, episodes_[layer.upper_fixture] - 1, false});
    constrained(layer.lower).layers.push_back({between, lower, 0, 0});
    constrained(layer.upper).layers.push_back({upper, between, 0, 0});
  }
}

std::vector<StayProblem::Part> StayProblem::parts_of(std::size_t fixture, const Bearing& bearing,
                                                     const FixtureStatement& statement) const {
  const int episodes = episodes_[fixture];
  const bool around = bearing.relation == PlaceRelation::around;
  if (around && episodes > 1 && statement.statement != Statement::absent) return {};
  std::vector<Part> parts;
  if (statement.denied) {
    if (bearing.relation != PlaceRelation::same) return {};
    for (const DaySpan& days : statement.days)
      for (int episode = 0; episode < episodes; ++episode) {
        Part part;
        for (const EpisodeLimits& limits : other_than(statement.statement, days))
          part.push_back({{fixture, episode, limits}});
        parts.push_back(std::move(part));
      }
    return parts;
  }
  Part part;
  const Statement stated = bearing.shows_there ? Statement::present : statement.statement;
  for (const DaySpan& days : statement.days) {
    const auto limits = weakened(stated, bearing.relation, days, statement.reading);
    if (limits.empty()) return {};
    if (stated == Statement::absent) {  // before the first, between two, after the last
      part.push_back({{fixture, 0, limits[0]}});
      for (int episode = 0; episode + 1 < episodes; ++episode)
        part.push_back({{fixture, episode, limits[1]}, {fixture, episode + 1, limits[0]}});
      part.push_back({{fixture, episodes - 1, limits[1]}});
      continue;
    }
    const int only = free_ ? -1 : bearing.episode;
    for (int episode = 0; episode < episodes; ++episode)
      if (only < 0 || only == episode) part.push_back({{fixture, episode, limits.front()}});
  }
  if (!part.empty()) parts.push_back(std::move(part));
  return parts;
}

std::optional<std::size_t> StayProblem::number_of(std::size_t statement) const {
  const auto at =
      std::lower_bound(statements_.begin(), statements_.end(), statement,
                       [](const Constrained& one, std::size_t key) { return one.statement < key; });
  if (at == statements_.end() || at->statement != statement) return std::nullopt;
  return static_cast<std::size_t>(at - statements_.begin());
}

bool StayProblem::either_or(std::size_t number) const {
  const auto& parts = statements_[number].parts;
  return std::any_of(parts.begin(), parts.end(), [](const Part& part) { return part.size() > 1; });
}

TimePoint StayProblem::point(const StayDay& day) const {
  return first_point_[day.fixture] + 2 * day.episode + (day.went ? 1 : 0);
}

std::vector<DifferenceConstraint> StayProblem::constraints_of(const Limits& limits) const {
  std::vector<DifferenceConstraint> constraints;
  const auto add = [&](bool went, const DaySpan& span) {
    const TimePoint at = point({limits.fixture, limits.episode, went});
    if (span.low) constraints.push_back({at, kOrigin, -*span.low, 0});
    if (span.high) constraints.push_back({kOrigin, at, *span.high, 0});
  };
  add(false, limits.limits.came);
  add(true, limits.limits.went);
  return constraints;
}

std::vector<DifferenceConstraint> StayProblem::constraints_of(const Alternative& alternative) const {
  std::vector<DifferenceConstraint> all;
  for (const Limits& limits : alternative)
    for (const DifferenceConstraint& constraint : constraints_of(limits)) all.push_back(constraint);
  return all;
}

BranchingNetwork StayProblem::network(const std::vector<const Constrained*>& statements) const {
  BranchingNetwork network;
  while (network.point_count() < point_count_) network.add_point();
  std::vector<DifferenceConstraint> structure;
  for (std::size_t f = 0; f < episodes_.size(); ++f)
    for (int day = 0; day + 1 < 2 * episodes_[f]; ++day)
      structure.push_back({first_point_[f] + day + 1, first_point_[f] + day, 0, 0});
  network.add_statement(kStructure, structure);
  StatementNumber number = kStructure;
  for (const Constrained* one : statements) {
    ++number;
    if (!one->layers.empty()) network.add_statement(number, one->layers);
    for (const Part& part : one->parts) {
      if (part.size() == 1) {
        network.add_statement(number, constraints_of(part.front()));
        continue;
      }
      EitherOr either_or{number, {}};
      for (const Alternative& alternative : part)
        either_or.alternatives.push_back(constraints_of(alternative));
      network.add_either_or(std::move(either_or));
    }
  }
  return network;
}

bool StayProblem::narrow(StayChain& chain, const Constrained& statement,
                         std::vector<const StayChain::Part*>& open) {
  for (const StayChain::Part& part : statement.chained) {
    if (part.size() != 1)
      open.push_back(&part);
    else if (!chain.narrow(part.front()))
      return false;
  }
  return true;
}

Answer StayProblem::chain_answer(const std::vector<const Constrained*>& statements,
                                 const std::vector<DayLimit>& limits) const {
  StayChain chain(point_count_ - 1);
  std::vector<const StayChain::Part*> open;
  for (const DayLimit& limit : limits) {
    const std::size_t day = 2 * static_cast<std::size_t>(limit.day.episode) + (limit.day.went ? 1 : 0);
    if (!chain.narrow(StayChain::Limit{day, limit.span.low.value_or(StayChain::kNoLow),
                                       limit.span.high.value_or(StayChain::kNoHigh)}))
      return Answer::no;
  }
  for (const Constrained* one : statements)
    if (!narrow(chain, *one, open)) return Answer::no;
  return open.empty() ? Answer::yes : StayChain::can_hold(chain, open, BranchingNetwork::kDefaultLimit);
}

Answer StayProblem::answer(const std::vector<const Constrained*>& statements,
                           const std::vector<DayLimit>& limits) const {
  if (chain_) return chain_answer(statements, limits);
  BranchingNetwork whole = network(statements);
  for (const DayLimit& limit : limits)
    whole.add_statement(kStructure,
                        constraints_of(Limits{limit.day.fixture, limit.day.episode, limit_on(limit)}));
  return whole.can_hold();
}

Answer StayProblem::can_hold(std::span<const std::size_t> numbers,
                             const std::vector<DayLimit>& limits) const {
  std::vector<const Constrained*> chosen;
  for (const std::size_t number : numbers) chosen.push_back(&statements_[number]);
  return answer(chosen, limits);
}

Answer StayProblem::can_hold_instead(std::span<const std::size_t> numbers, std::size_t which,
                                     const FixtureStatement& instead) const {
  Constrained other{statements_[which].statement, {}, statements_[which].layers, {}};
  for (std::size_t f = 0; f < group_.fixtures.size(); ++f)
    for (const Bearing& bearing : group_.fixtures[f].bearings) {
      if (bearing.statement != other.statement) continue;
      for (Part& part : parts_of(f, bearing, instead)) other.parts.push_back(std::move(part));
    }
  if (chain_) other.chained = chained(other.parts);
  std::vector<const Constrained*> chosen;
  for (const std::size_t number : numbers) chosen.push_back(number == which ? &other : &statements_[number]);
  return answer(chosen, {});
}

/// Those that give the narrowest of the four limits, the first where several do, and all either/ors.
std::vector<std::size_t> StayProblem::telling(std::span<const std::size_t> numbers) const {
  if (!simple_) return {numbers.begin(), numbers.end()};
  std::vector<std::size_t> kept;
  EpisodeLimits narrowest;
  std::optional<std::size_t> by[4];
  const auto hold = [&](std::optional<std::int64_t>& limit, const std::optional<std::int64_t>& other,
                        bool low, std::size_t slot, std::size_t number) {
    if (!other || (limit && (low ? *other <= *limit : *other >= *limit))) return;
    limit = other;
    by[slot] = number;
  };
  for (const std::size_t number : numbers) {
    if (either_or(number)) {
      kept.push_back(number);
      continue;
    }
    for (const Part& part : statements_[number].parts) {
      const EpisodeLimits& limits = part.front().front().limits;
      hold(narrowest.came.low, limits.came.low, true, 0, number);
      hold(narrowest.came.high, limits.came.high, false, 1, number);
      hold(narrowest.went.low, limits.went.low, true, 2, number);
      hold(narrowest.went.high, limits.went.high, false, 3, number);
    }
  }
  for (const auto& number : by)
    if (number) kept.push_back(*number);
  std::sort(kept.begin(), kept.end());
  kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
  return kept;
}

StayProblem::Solution StayProblem::solve(std::span<const std::size_t> numbers) const {
  if (chain_) {
    StayChain chain(point_count_ - 1);
    std::vector<const StayChain::Part*> open;
    StayChain::Hull hull{Answer::no, std::vector<std::optional<HullBounds>>(point_count_ - 1)};
    const bool possible = std::all_of(numbers.begin(), numbers.end(), [&](std::size_t number) {
      return narrow(chain, statements_[number], open);
    });
    if (possible) hull = StayChain::hull(chain, open, BranchingNetwork::kDefaultLimit);
    Solution solution{hull.consistent, {{}}};
    for (std::size_t day = 0; day + 1 < hull.days.size(); day += 2)
      solution.stays.front().push_back({hull.days[day], hull.days[day + 1]});
    return solution;
  }
  std::vector<const Constrained*> chosen;
  for (const std::size_t number : telling(numbers)) chosen.push_back(&statements_[number]);
  const BranchingSolution solved = network(chosen).solve();
  Solution solution{solved.consistent, {}};
  for (std::size_t f = 0; f < episodes_.size(); ++f) {
    auto& stays = solution.stays.emplace_back();
    for (int episode = 0; episode < episodes_[f]; ++episode)
      stays.push_back({solved.bounds[static_cast<std::size_t>(point({f, episode, false}))],
                       solved.bounds[static_cast<std::size_t>(point({f, episode, true}))]});
  }
  return solution;
}

std::vector<std::size_t> StayProblem::refuting(std::span<const std::size_t> numbers,
                                               const std::vector<DayLimit>& limits) const {
  const auto refuted = [&](const std::vector<std::size_t>& some) {
    return can_hold(some, limits) == Answer::no;
  };
  const auto candidates = telling(numbers);
  if (!refuted(candidates)) return {};
  return least_core(candidates, refuted);
}

}  // namespace witnessmark
