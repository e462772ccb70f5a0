// Adding an edge u -> v that its potentials do not satisfy: lower the potential of v by what is missing, then
// those of the points behind v in the order of what each lacks most, each at most once (Cotton and Maler,
// Fast and flexible difference constraint propagation for DPLL(T), SAT 2006). If u itself would have to be
// lowered there is a negative cycle through the new edge, which the edges that did the lowering spell out.
// Only points whose potential must change are looked at.
//
// Shortest paths to and from a root are kept the same way: after edges are added, points whose label became
// shorter are settled in the order of their reduced length, which no later point can undercut.
#include "time/network/difference_graph.h"

#include <algorithm>
#include <queue>
#include <unordered_map>
#include <utility>

namespace witnessmark {
namespace {

using Entry = std::pair<WideDays, TimePoint>;
using SmallestFirst = std::priority_queue<Entry, std::vector<Entry>, std::greater<>>;

struct Lowering {
  WideDays lack = 0;  ///< How far the potential must go down; negative.
  EdgeNumber edge = kNoEdge;
  bool done = false;
  WideDays before = 0;
};

void remove_from(std::vector<EdgeNumber>& list, EdgeNumber number) {
  const auto found = std::find(list.begin(), list.end(), number);
  *found = list.back();
  list.pop_back();
}

}  // namespace

TimePoint DifferenceGraph::add_point(WideDays potential) {
  potentials_.push_back(potential);
  leaving_.emplace_back();
  entering_.emplace_back();
  return static_cast<TimePoint>(potentials_.size() - 1);
}

EdgeNumber DifferenceGraph::store(const DifferenceEdge& edge) {
  EdgeNumber number = kNoEdge;
  if (free_edges_.empty()) {
    number = static_cast<EdgeNumber>(edges_.size());
    edges_.push_back(edge);
  } else {
    number = free_edges_.back();
    free_edges_.pop_back();
    edges_[static_cast<std::size_t>(number)] = edge;
  }
  leaving_[index(edge.from)].push_back(number);
  entering_[index(edge.to)].push_back(number);
  return number;
}

DifferenceGraph::Insertion DifferenceGraph::insert(const DifferenceEdge& edge) {
  Insertion insertion;
  if (repair_potentials(edge, insertion.cycle_rest)) insertion.edge = store(edge);
  return insertion;
}

void DifferenceGraph::erase(EdgeNumber number) {
  remove_from(leaving_[index(edge(number).from)], number);
  remove_from(entering_[index(edge(number).to)], number);
  free_edges_.push_back(number);
}

bool DifferenceGraph::repair_potentials(const DifferenceEdge& added, std::vector<EdgeNumber>& cycle_rest) {
  const WideDays lack = potential(added.from) + added.days - potential(added.to);
  if (lack >= 0) return true;
  if (added.from == added.to) return false;
  std::unordered_map<TimePoint, Lowering> lowered;
  SmallestFirst waiting;
  lowered[added.to].lack = lack;
  waiting.emplace(lack, added.to);
  bool cycle = false;
  while (!waiting.empty() && !cycle) {
    const auto [what, point] = waiting.top();
    waiting.pop();
    Lowering& lowering = lowered[point];
    if (lowering.done || what != lowering.lack) continue;
    lowering.done = true;
    lowering.before = potential(point);
    potentials_[index(point)] += what;
    for (const EdgeNumber number : leaving_[index(point)]) {
      const DifferenceEdge& next = edge(number);
      const WideDays missing = potential(point) + next.days - potential(next.to);
      if (missing >= 0) continue;
      Lowering& target = lowered[next.to];
      if (target.done || missing >= target.lack) continue;
      target.lack = missing;
      target.edge = number;
      if (next.to == added.from) {
        cycle = true;
        break;
      }
      waiting.emplace(missing, next.to);
    }
  }
  if (!cycle) return true;
  for (TimePoint point = added.from; point != added.to; point = edge(lowered[point].edge).from) {
    cycle_rest.push_back(lowered[point].edge);
  }
  for (const auto& [point, lowering] : lowered) {
    if (lowering.done) potentials_[index(point)] = lowering.before;
  }
  return false;
}

bool DifferenceGraph::improve_by(std::vector<PathLabel>& labels, EdgeNumber number,
                                 Direction direction) const {
  const DifferenceEdge& step = edge(number);
  const bool forward = direction == Direction::from_root;
  const PathLabel& near = labels[index(forward ? step.from : step.to)];
  PathLabel& far = labels[index(forward ? step.to : step.from)];
  if (!near.reached) return false;
  const WideDays length = near.length + step.days;
  if (far.reached && far.length <= length) return false;
  far = {true, length, number};
  return true;
}

void DifferenceGraph::relax(std::vector<PathLabel>& labels, std::vector<TimePoint> changed, TimePoint root,
                            Direction direction, std::optional<TimePoint> goal) const {
  const bool forward = direction == Direction::from_root;
  const auto reduced = [&](TimePoint point) {
    const WideDays rise = potential(root) - potential(point);
    return labels[index(point)].length + (forward ? rise : -rise);
  };
  SmallestFirst waiting;
  for (const TimePoint point : changed) waiting.emplace(reduced(point), point);
  while (!waiting.empty()) {
    const auto [key, point] = waiting.top();
    waiting.pop();
    if (key != reduced(point)) continue;
    if (goal == point) return;
    for (const EdgeNumber number : (forward ? leaving_ : entering_)[index(point)]) {
      if (!improve_by(labels, number, direction)) continue;
      const TimePoint far = forward ? edge(number).to : edge(number).from;
      waiting.emplace(reduced(far), far);
    }
  }
}

std::vector<PathLabel> DifferenceGraph::shortest_paths(TimePoint root, Direction direction) const {
  std::vector<PathLabel> labels(point_count());
  labels[index(root)].reached = true;
  relax(labels, {root}, root, direction, std::nullopt);
  return labels;
}

void DifferenceGraph::improve(std::vector<PathLabel>& labels, const std::vector<EdgeNumber>& added,
                              TimePoint root, Direction direction) const {
  std::vector<TimePoint> changed;
  for (const EdgeNumber number : added) {
    if (!improve_by(labels, number, direction)) continue;
    changed.push_back(direction == Direction::from_root ? edge(number).to : edge(number).from);
  }
  if (!changed.empty()) relax(labels, std::move(changed), root, direction, std::nullopt);
}

std::optional<WideDays> DifferenceGraph::shortest_path(TimePoint from, TimePoint to) const {
  std::vector<PathLabel> labels(point_count());
  labels[index(from)].reached = true;
  relax(labels, {from}, from, Direction::from_root, to);
  const PathLabel& label = labels[index(to)];
  return label.reached ? std::optional(label.length) : std::nullopt;
}

}  // namespace witnessmark
