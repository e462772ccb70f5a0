// The points fall into groups tied by constraints that do not touch the origin; each group is solved alone.
// Within a group the plain constraints make one network; the either/ors are then taken one after the other,
// those with the fewest alternatives first, each alternative added to a copy of the network and followed only
// while it holds. Every complete choice adds its bounds to the hull. When a group has used up its
// combinations nothing is concluded from it, save that one complete choice found is proof enough that it can
// hold.
#include "witnessmark/time/branching_network.h"

#include <algorithm>
#include <numeric>
#include <set>
#include <stdexcept>
#include <utility>

namespace witnessmark {
namespace {

/// Disjoint sets of points (union by path halving).
class Groups {
 public:
  explicit Groups(std::size_t count) : parent_(count) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }

  std::size_t find(TimePoint point) {
    auto at = static_cast<std::size_t>(point);
    while (parent_[at] != at) at = parent_[at] = parent_[parent_[at]];
    return at;
  }

  void tie(TimePoint a, TimePoint b) {
    if (a != kOrigin && b != kOrigin) parent_[find(a)] = find(b);
  }

 private:
  std::vector<std::size_t> parent_;
};

TimePoint any_point(const DifferenceConstraint& constraint) {
  return constraint.from != kOrigin ? constraint.from : constraint.to;
}

TimePoint any_point(const EitherOr& either_or) {
  for (const auto& alternative : either_or.alternatives) {
    for (const DifferenceConstraint& constraint : alternative) {
      if (any_point(constraint) != kOrigin) return any_point(constraint);
    }
  }
  return kOrigin;
}

/// One group, with its points numbered from 1.
struct Problem {
  std::vector<TimePoint> points;
  std::vector<DifferenceConstraint> constraints;
  std::vector<EitherOr> either_ors;
  std::vector<std::size_t> either_or_numbers;  ///< In the whole network.

  Problem without(StatementNumber statement) const {
    Problem rest = *this;
    std::erase_if(rest.constraints, [&](const DifferenceConstraint& c) { return c.statement == statement; });
    std::erase_if(rest.either_ors, [&](const EitherOr& e) { return e.statement == statement; });
    return rest;
  }

  std::set<StatementNumber> statements() const {
    std::set<StatementNumber> all;
    for (const DifferenceConstraint& constraint : constraints) all.insert(constraint.statement);
    for (const EitherOr& either_or : either_ors) all.insert(either_or.statement);
    return all;
  }
};

struct Hull {
  bool set = false;
  HullBounds bounds;

  void include(const PointBounds& more) {
    if (!set) {
      bounds = {more.earliest, more.latest};
      set = true;
      return;
    }
    bounds.earliest =
        bounds.earliest && more.earliest ? std::min(bounds.earliest, more.earliest) : std::nullopt;
    bounds.latest = bounds.latest && more.latest ? std::max(bounds.latest, more.latest) : std::nullopt;
  }
};

class Search {
 public:
  Search(const Problem& problem, std::size_t limit, bool first_only)
      : problem_(problem), left_(limit), first_only_(first_only), hulls_(problem.points.size()) {
    for (const EitherOr& either_or : problem.either_ors) {
      live_.emplace_back(either_or.alternatives.size(), true);
      possible_.emplace_back(either_or.alternatives.size(), false);
    }
  }

  void run() {
    ConstraintNetwork network;
    for (std::size_t i = 0; i < problem_.points.size(); ++i) network.add_point();
    for (const DifferenceConstraint& constraint : problem_.constraints) {
      network.add_statement(constraint.statement, {constraint});
    }
    if (!network.consistent()) {
      blame(network);
      return;
    }
    chosen_.assign(problem_.either_ors.size(), 0);
    for (std::size_t i = 0; i < problem_.either_ors.size(); ++i) open_.push_back(i);
    if (!settle(network)) return;
    std::stable_sort(open_.begin(), open_.end(),
                     [&](std::size_t a, std::size_t b) { return count(a) < count(b); });
    descend(network, 0);
  }

  bool found() const { return found_; }
  bool limit_met() const { return limit_met_; }
  const std::vector<Hull>& hulls() const { return hulls_; }

  Answer alternative(std::size_t either_or, std::size_t number) const {
    if (possible_[either_or][number]) return Answer::yes;
    return limit_met_ && live_[either_or][number] ? Answer::cannot_tell : Answer::no;
  }

  /// Every statement some contradiction rested on.
  const std::set<StatementNumber>& blamed() const { return blamed_; }

 private:
  std::ptrdiff_t count(std::size_t either_or) const {
    return std::count(live_[either_or].begin(), live_[either_or].end(), true);
  }

  /// Strikes out the alternatives that contradict what is certain, and makes the last that is left certain,
  /// until nothing changes. False when nothing is left of one.
  bool settle(ConstraintNetwork& network) {
    for (bool changed = true; changed;) {
      changed = false;
      for (auto at = open_.begin(); at != open_.end();) {
        const std::size_t either_or = *at;
        strike_out(network, either_or);
        if (count(either_or) == 0) return false;
        if (count(either_or) > 1) {
          ++at;
          continue;
        }
        const auto last = std::find(live_[either_or].begin(), live_[either_or].end(), true);
        chosen_[either_or] = static_cast<std::size_t>(last - live_[either_or].begin());
        add(network, either_or, chosen_[either_or]);
        at = open_.erase(at);
        changed = true;
      }
    }
    return true;
  }

  void strike_out(const ConstraintNetwork& network, std::size_t either_or) {
    blamed_.insert(problem_.either_ors[either_or].statement);
    for (std::size_t i = 0; i < live_[either_or].size(); ++i) {
      if (!live_[either_or][i]) continue;
      ConstraintNetwork trial = network;
      add(trial, either_or, i);
      if (trial.consistent()) continue;
      live_[either_or][i] = false;
      blame(trial);
    }
  }

  void add(ConstraintNetwork& network, std::size_t either_or, std::size_t number) const {
    const EitherOr& chosen = problem_.either_ors[either_or];
    network.add_statement(chosen.statement, chosen.alternatives[number]);
  }

  void descend(const ConstraintNetwork& network, std::size_t depth) {
    if (depth == open_.size()) {
      take(network);
      return;
    }
    const std::size_t either_or = open_[depth];
    for (std::size_t i = 0; i < live_[either_or].size(); ++i) {
      if (!live_[either_or][i]) continue;
      if (left_ == 0) {
        limit_met_ = true;
        return;
      }
      --left_;
      ConstraintNetwork branch = network;
      add(branch, either_or, i);
      if (!branch.consistent()) {
        blame(branch);
        continue;
      }
      chosen_[either_or] = i;
      descend(branch, depth + 1);
      if (limit_met_ || (first_only_ && found_)) return;
    }
  }

  void take(const ConstraintNetwork& network) {
    found_ = true;
    for (std::size_t i = 0; i < hulls_.size(); ++i) {
      hulls_[i].include(*network.bounds(static_cast<TimePoint>(i + 1)));
    }
    for (std::size_t i = 0; i < chosen_.size(); ++i) possible_[i][chosen_[i]] = true;
  }

  void blame(const ConstraintNetwork& network) {
    for (const StatementNumber statement : network.conflict()) blamed_.insert(statement);
  }

  const Problem& problem_;
  std::size_t left_;
  bool first_only_;
  bool found_ = false;
  bool limit_met_ = false;
  std::vector<std::vector<bool>> live_;
  std::vector<std::vector<bool>> possible_;
  std::vector<std::size_t> open_;
  std::vector<std::size_t> chosen_;
  std::vector<Hull> hulls_;
  std::set<StatementNumber> blamed_;
};

/// Leaves each statement out in turn and keeps it out while the others still contradict one another.
std::vector<StatementNumber> reduced_conflict(Problem problem, const std::set<StatementNumber>& blamed,
                                              std::size_t limit) {
  for (const StatementNumber statement : problem.statements()) {
    if (!blamed.contains(statement)) problem = problem.without(statement);
  }
  for (const StatementNumber statement : problem.statements()) {
    Problem rest = problem.without(statement);
    Search search(rest, limit, true);
    search.run();
    if (!search.found() && !search.limit_met()) problem = std::move(rest);
  }
  const auto statements = problem.statements();
  return {statements.begin(), statements.end()};
}

std::vector<DifferenceConstraint> renumbered(std::vector<DifferenceConstraint> constraints,
                                             const std::vector<TimePoint>& number) {
  for (DifferenceConstraint& constraint : constraints) {
    constraint.from = number[static_cast<std::size_t>(constraint.from)];
    constraint.to = number[static_cast<std::size_t>(constraint.to)];
  }
  return constraints;
}

std::vector<Problem> split(std::size_t point_count, const std::vector<DifferenceConstraint>& constraints,
                           const std::vector<EitherOr>& either_ors) {
  Groups groups(point_count);
  for (const DifferenceConstraint& constraint : constraints) groups.tie(constraint.from, constraint.to);
  for (const EitherOr& either_or : either_ors) {
    for (const auto& alternative : either_or.alternatives) {
      for (const DifferenceConstraint& constraint : alternative) {
        groups.tie(constraint.from, constraint.to);
        if (any_point(constraint) != kOrigin) groups.tie(any_point(either_or), any_point(constraint));
      }
    }
  }
  std::vector<Problem> by_root(point_count);
  std::vector<TimePoint> number(point_count, kOrigin);
  for (std::size_t point = 1; point < point_count; ++point) {
    Problem& problem = by_root[groups.find(static_cast<TimePoint>(point))];
    problem.points.push_back(static_cast<TimePoint>(point));
    number[point] = static_cast<TimePoint>(problem.points.size());
  }
  for (const DifferenceConstraint& constraint : constraints) {
    by_root[groups.find(any_point(constraint))].constraints.push_back(
        renumbered({constraint}, number).front());
  }
  for (std::size_t i = 0; i < either_ors.size(); ++i) {
    Problem& problem = by_root[groups.find(any_point(either_ors[i]))];
    EitherOr either_or = either_ors[i];
    for (auto& alternative : either_or.alternatives) alternative = renumbered(std::move(alternative), number);
    problem.either_ors.push_back(std::move(either_or));
    problem.either_or_numbers.push_back(i);
  }
  return by_root;
}

void answer_group(const Problem& problem, std::size_t limit, BranchingSolution& solution) {
  if (problem.points.empty() && problem.constraints.empty() && problem.either_ors.empty()) return;
  Search search(problem, limit, false);
  search.run();
  const bool impossible = !search.found() && !search.limit_met();
  if (impossible && solution.consistent != Answer::no) {
    solution.consistent = Answer::no;
    solution.conflict = reduced_conflict(problem, search.blamed(), limit);
  }
  if (search.limit_met() && !search.found() && solution.consistent == Answer::yes) {
    solution.consistent = Answer::cannot_tell;
  }
  for (std::size_t i = 0; i < problem.points.size(); ++i) {
    if (!search.found() || search.limit_met()) continue;
    solution.bounds[static_cast<std::size_t>(problem.points[i])] = search.hulls()[i].bounds;
  }
  for (std::size_t i = 0; i < problem.either_or_numbers.size(); ++i) {
    for (std::size_t j = 0; j < problem.either_ors[i].alternatives.size(); ++j) {
      solution.alternatives[problem.either_or_numbers[i]].push_back(search.alternative(i, j));
    }
  }
}

void check_points(const std::vector<DifferenceConstraint>& constraints, std::size_t point_count) {
  for (const DifferenceConstraint& constraint : constraints) {
    for (const TimePoint point : {constraint.from, constraint.to}) {
      if (point < 0 || static_cast<std::size_t>(point) >= point_count) {
        throw std::out_of_range("the constraint network has no such time point");
      }
    }
  }
}

}  // namespace

BranchingNetwork::BranchingNetwork(std::size_t limit) : limit_(limit) {}

TimePoint BranchingNetwork::add_point() {
  return static_cast<TimePoint>(point_count_++);
}

void BranchingNetwork::add_statement(StatementNumber statement,
                                     const std::vector<DifferenceConstraint>& constraints) {
  check_points(constraints, point_count_);
  for (DifferenceConstraint constraint : constraints) {
    constraint.statement = statement;
    constraints_.push_back(constraint);
  }
}

void BranchingNetwork::add_either_or(EitherOr either_or) {
  for (auto& alternative : either_or.alternatives) {
    check_points(alternative, point_count_);
    for (DifferenceConstraint& constraint : alternative) constraint.statement = either_or.statement;
  }
  either_ors_.push_back(std::move(either_or));
}

BranchingSolution BranchingNetwork::solve() const {
  BranchingSolution solution;
  solution.bounds.resize(point_count_);
  solution.bounds[kOrigin] = HullBounds{Day{0}, Day{0}};
  solution.alternatives.resize(either_ors_.size());
  for (const Problem& problem : split(point_count_, constraints_, either_ors_))
    answer_group(problem, limit_, solution);
  return solution;
}

Answer BranchingNetwork::can_hold() const {
  Answer answer = Answer::yes;
  for (const Problem& problem : split(point_count_, constraints_, either_ors_)) {
    if (problem.constraints.empty() && problem.either_ors.empty()) continue;
    Search search(problem, limit_, true);
    search.run();
    if (search.found()) continue;
    if (!search.limit_met()) return Answer::no;
    answer = Answer::cannot_tell;
  }
  return answer;
}

BranchingSolution BranchingNetwork::solve_without(StatementNumber statement) const {
  BranchingNetwork rest = *this;
  std::erase_if(rest.constraints_, [&](const DifferenceConstraint& c) { return c.statement == statement; });
  for (EitherOr& either_or : rest.either_ors_) {
    if (either_or.statement != statement) continue;
    for (auto& alternative : either_or.alternatives) alternative.clear();
    if (either_or.alternatives.empty()) either_or.alternatives.emplace_back();
  }
  return rest.solve();
}

}  // namespace witnessmark
