// Statements stand in one of two places: in the graph, which is always free of contradiction, or waiting,
// from the first that contradicts those before it. Taking a statement out tries the waiting ones again in the
// order they came. Bounds are labels of shortest paths from and to the origin, kept up to date as statements
// enter the graph.
#include "witnessmark/time/constraint_network.h"

#include <algorithm>
#include <limits>
#include <set>
#include <stdexcept>
#include <unordered_map>
#include <unordered_set>

#include "time/network/difference_graph.h"
#include "time/network/minimal_conflict.h"

namespace witnessmark {
namespace {

std::int64_t narrow(WideDays days) {
  constexpr WideDays kLeast = std::numeric_limits<std::int64_t>::min() + 1;
  constexpr WideDays kMost = std::numeric_limits<std::int64_t>::max();
  return static_cast<std::int64_t>(std::clamp(days, kLeast, kMost));
}

}  // namespace

class ConstraintNetwork::State {
 public:
  State() {
    graph_.add_point();
    latest_ = graph_.shortest_paths(kOrigin, Direction::from_root);
    earliest_ = graph_.shortest_paths(kOrigin, Direction::to_root);
  }

  TimePoint add_point() {
    latest_.emplace_back();
    earliest_.emplace_back();
    return graph_.add_point();
  }

  std::size_t point_count() const { return graph_.point_count(); }

  std::size_t constraint_count() const {
    std::size_t count = 0;
    for (const auto& [statement, edges] : in_graph_) count += edges.size();
    for (const Waiting& waiting : waiting_) count += waiting.edges.size();
    return count;
  }

  bool consistent() const { return waiting_.empty(); }
  const std::vector<StatementNumber>& conflict() const { return conflict_; }

  void add(StatementNumber statement, const std::vector<DifferenceConstraint>& constraints) {
    std::vector<DifferenceEdge> edges;
    for (const DifferenceConstraint& constraint : constraints) {
      check(constraint.from);
      check(constraint.to);
      edges.push_back({constraint.from, constraint.to, constraint.days, statement});
    }
    const bool was_consistent = waiting_.empty();
    auto place = std::find_if(waiting_.begin(), waiting_.end(),
                              [&](const Waiting& waiting) { return waiting.statement == statement; });
    if (place == waiting_.end()) place = waiting_.insert(waiting_.end(), {statement, {}});
    const bool first = place == waiting_.begin();
    place->edges.insert(place->edges.end(), edges.begin(), edges.end());
    if (was_consistent) admit_waiting(Labels::improve);
    if (waiting_.empty()) return;
    // A statement waits as a whole, so that conflicts are between whole statements.
    if (in_graph_.contains(statement)) {
      take_out(statement, was_consistent ? waiting_.front() : *place);
      admit_waiting(Labels::renew);
    } else if (first && !was_consistent) {
      admit_waiting(Labels::improve);
    }
  }

  void remove(StatementNumber statement) {
    const auto found = in_graph_.find(statement);
    const bool was_in_graph = found != in_graph_.end();
    if (was_in_graph) {
      for (const EdgeNumber number : found->second) graph_.erase(number);
      in_graph_.erase(found);
    }
    std::erase_if(waiting_, [&](const Waiting& waiting) { return waiting.statement == statement; });
    if (was_in_graph)
      admit_waiting(Labels::renew);
    else
      admit_waiting(Labels::improve);
  }

  PointBounds bounds(TimePoint point) const {
    PointBounds bounds;
    const PathLabel& latest = latest_[static_cast<std::size_t>(point)];
    const PathLabel& earliest = earliest_[static_cast<std::size_t>(point)];
    if (latest.reached) {
      bounds.latest = Day{narrow(latest.length)};
      bounds.latest_from = path(point, latest_, Direction::from_root);
    }
    if (earliest.reached) {
      bounds.earliest = Day{narrow(-earliest.length)};
      bounds.earliest_from = path(point, earliest_, Direction::to_root);
    }
    return bounds;
  }

  Difference difference(TimePoint a, TimePoint b) const {
    Difference result;
    if (const auto most = graph_.shortest_path(a, b)) result.most = narrow(*most);
    if (const auto back = graph_.shortest_path(b, a)) result.least = narrow(-*back);
    return result;
  }

  void check(TimePoint point) const {
    if (point >= 0 && static_cast<std::size_t>(point) < graph_.point_count()) return;
    throw std::out_of_range("the constraint network has no such time point");
  }

 private:
  enum class Labels { improve, renew };

  struct Waiting {
    StatementNumber statement;
    std::vector<DifferenceEdge> edges;
  };

  /// Moves what the graph has of a statement back to where the rest of it waits.
  void take_out(StatementNumber statement, Waiting& waiting) {
    const auto found = in_graph_.find(statement);
    for (const EdgeNumber number : found->second) {
      waiting.edges.push_back(graph_.edge(number));
      graph_.erase(number);
    }
    in_graph_.erase(found);
  }

  /// Lets waiting statements into the graph up to the first that contradicts it.
  void admit_waiting(Labels labels) {
    conflict_.clear();
    std::vector<EdgeNumber> added;
    std::size_t admitted = 0;
    while (admitted < waiting_.size() && admit(waiting_[admitted], added)) ++admitted;
    waiting_.erase(waiting_.begin(), waiting_.begin() + static_cast<std::ptrdiff_t>(admitted));
    if (labels == Labels::renew) {
      latest_ = graph_.shortest_paths(kOrigin, Direction::from_root);
      earliest_ = graph_.shortest_paths(kOrigin, Direction::to_root);
    } else {
      graph_.improve(latest_, added, kOrigin, Direction::from_root);
      graph_.improve(earliest_, added, kOrigin, Direction::to_root);
    }
  }

  bool admit(const Waiting& waiting, std::vector<EdgeNumber>& added) {
    std::vector<EdgeNumber> own;
    for (const DifferenceEdge& edge : waiting.edges) {
      const auto insertion = graph_.insert(edge);
      if (insertion.edge != kNoEdge) {
        own.push_back(insertion.edge);
        continue;
      }
      std::set<StatementNumber> statements{waiting.statement};
      for (const EdgeNumber number : insertion.cycle_rest) statements.insert(graph_.edge(number).statement);
      for (const EdgeNumber number : own) graph_.erase(number);
      conflict_ = minimal_conflict(graph_, edges_of(statements, waiting), waiting.statement);
      return false;
    }
    auto& edges = in_graph_[waiting.statement];
    edges.insert(edges.end(), own.begin(), own.end());
    added.insert(added.end(), own.begin(), own.end());
    return true;
  }

  std::vector<DifferenceEdge> edges_of(const std::set<StatementNumber>& statements,
                                       const Waiting& newest) const {
    std::vector<DifferenceEdge> edges = newest.edges;
    for (const StatementNumber statement : statements) {
      const auto found = in_graph_.find(statement);
      if (found == in_graph_.end()) continue;
      for (const EdgeNumber number : found->second) edges.push_back(graph_.edge(number));
    }
    return edges;
  }

  std::vector<StatementNumber> path(TimePoint point, const std::vector<PathLabel>& labels,
                                    Direction direction) const {
    std::vector<StatementNumber> statements;
    std::unordered_set<StatementNumber> seen;
    while (point != kOrigin) {
      const DifferenceEdge& edge = graph_.edge(labels[static_cast<std::size_t>(point)].edge);
      if (seen.insert(edge.statement).second) statements.push_back(edge.statement);
      point = direction == Direction::from_root ? edge.from : edge.to;
    }
    return statements;
  }

  DifferenceGraph graph_;
  std::unordered_map<StatementNumber, std::vector<EdgeNumber>> in_graph_;
  std::vector<Waiting> waiting_;
  std::vector<StatementNumber> conflict_;
  std::vector<PathLabel> latest_;
  std::vector<PathLabel> earliest_;
};

ConstraintNetwork::ConstraintNetwork() : state_(std::make_unique<State>()) {}
ConstraintNetwork::~ConstraintNetwork() = default;
ConstraintNetwork::ConstraintNetwork(const ConstraintNetwork& other)
    : state_(std::make_unique<State>(*other.state_)) {}
ConstraintNetwork& ConstraintNetwork::operator=(const ConstraintNetwork& other) {
  if (this != &other) state_ = std::make_unique<State>(*other.state_);
  return *this;
}
ConstraintNetwork::ConstraintNetwork(ConstraintNetwork&&) noexcept = default;
ConstraintNetwork& ConstraintNetwork::operator=(ConstraintNetwork&&) noexcept = default;

TimePoint ConstraintNetwork::add_point() {
  return state_->add_point();
}
std::size_t ConstraintNetwork::point_count() const {
  return state_->point_count();
}
std::size_t ConstraintNetwork::constraint_count() const {
  return state_->constraint_count();
}

void ConstraintNetwork::add_statement(StatementNumber statement,
                                      const std::vector<DifferenceConstraint>& constraints) {
  state_->add(statement, constraints);
}

void ConstraintNetwork::remove_statement(StatementNumber statement) {
  state_->remove(statement);
}

bool ConstraintNetwork::consistent() const {
  return state_->consistent();
}

std::vector<StatementNumber> ConstraintNetwork::conflict() const {
  return state_->conflict();
}

std::optional<PointBounds> ConstraintNetwork::bounds(TimePoint point) const {
  state_->check(point);
  if (!consistent()) return std::nullopt;
  return state_->bounds(point);
}

std::optional<ConstraintNetwork::Difference> ConstraintNetwork::difference(TimePoint a, TimePoint b) const {
  state_->check(a);
  state_->check(b);
  if (!consistent()) return std::nullopt;
  return state_->difference(a, b);
}

std::vector<PointBounds> ConstraintNetwork::bounds_without(StatementNumber statement) const {
  ConstraintNetwork rest = *this;
  rest.remove_statement(statement);
  std::vector<PointBounds> all;
  if (!rest.consistent()) return all;
  for (std::size_t point = 0; point < rest.point_count(); ++point) {
    all.push_back(rest.state_->bounds(static_cast<TimePoint>(point)));
  }
  return all;
}

}  // namespace witnessmark
