#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "witnessmark/time/constraint_network.h"

namespace witnessmark {

/// Sums along a path: days of years up to 10^15 added many times over do not fit 64 bits.
__extension__ using WideDays = __int128;

using EdgeNumber = std::int32_t;
inline constexpr EdgeNumber kNoEdge = -1;

/// A difference constraint as an edge: to - from <= days.
struct DifferenceEdge {
  TimePoint from = 0;
  TimePoint to = 0;
  std::int64_t days = 0;
  StatementNumber statement = 0;
};

/// Length of the shortest path to or from a root, and the edge of it that touches this point.
struct PathLabel {
  bool reached = false;
  WideDays length = 0;
  EdgeNumber edge = kNoEdge;
};

enum class Direction { from_root, to_root };

/// A graph of difference constraints without negative cycle, kept so by a potential for each point:
/// potential(to) - potential(from) <= days on every edge. With it every edge has a non-negative reduced
/// length, so that shortest paths are found by Dijkstra's algorithm in spite of negative days.
class DifferenceGraph {
 public:
  TimePoint add_point(WideDays potential = 0);
  std::size_t point_count() const { return potentials_.size(); }
  WideDays potential(TimePoint point) const { return potentials_[index(point)]; }
  const DifferenceEdge& edge(EdgeNumber number) const { return edges_[static_cast<std::size_t>(number)]; }

  struct Insertion {
    EdgeNumber edge = kNoEdge;           ///< kNoEdge when it would have closed a negative cycle.
    std::vector<EdgeNumber> cycle_rest;  ///< Then the other edges of that cycle.
  };
  /// Leaves the graph as it was when the edge cannot be added.
  Insertion insert(const DifferenceEdge& edge);

  void erase(EdgeNumber number);

  /// Shortest paths between the root and every point.
  std::vector<PathLabel> shortest_paths(TimePoint root, Direction direction) const;

  /// Brings labels that were right before some edges were added up to date.
  void improve(std::vector<PathLabel>& labels, const std::vector<EdgeNumber>& added, TimePoint root,
               Direction direction) const;

  /// Shortest path between two points; nothing when there is none.
  std::optional<WideDays> shortest_path(TimePoint from, TimePoint to) const;

 private:
  static std::size_t index(TimePoint point) { return static_cast<std::size_t>(point); }
  EdgeNumber store(const DifferenceEdge& edge);
  bool repair_potentials(const DifferenceEdge& edge, std::vector<EdgeNumber>& cycle_rest);
  void relax(std::vector<PathLabel>& labels, std::vector<TimePoint> changed, TimePoint root,
             Direction direction, std::optional<TimePoint> goal) const;
  bool improve_by(std::vector<PathLabel>& labels, EdgeNumber number, Direction direction) const;

  std::vector<WideDays> potentials_;
  std::vector<DifferenceEdge> edges_;
  std::vector<EdgeNumber> free_edges_;
  std::vector<std::vector<EdgeNumber>> leaving_;
  std::vector<std::vector<EdgeNumber>> entering_;
};

}  // namespace witnessmark
