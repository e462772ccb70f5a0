// A simple negative cycle cannot lose an edge, but a statement can bring several edges, and one that is not
// on the cycle may make another statement of the set superfluous. So each statement but the newest is left
// out in turn; when the others still contradict one another it stays out. The newest is in every conflict,
// for the others had a solution before it came, and that solution is where each trial starts.
#include "time/minimal_conflict.h"

#include <algorithm>
#include <map>
#include <unordered_map>

namespace witnessmark {
namespace {

using EdgesByStatement = std::map<StatementNumber, std::vector<DifferenceEdge>>;

class Trial {
 public:
  Trial(const DifferenceGraph& graph, const std::vector<DifferenceEdge>& edges) {
    for (DifferenceEdge edge : edges) {
      edge.from = small(graph, edge.from);
      edge.to = small(graph, edge.to);
      statements_[edge.statement].push_back(edge);
    }
  }

  const EdgesByStatement& statements() const { return statements_; }

  void drop(const std::vector<StatementNumber>& statements) {
    for (const StatementNumber statement : statements) statements_.erase(statement);
  }

  /// Statements that are not needed when this one is left out; nothing when the rest can hold.
  std::vector<StatementNumber> superfluous_without(StatementNumber left_out, StatementNumber newest) const {
    DifferenceGraph graph;
    for (const WideDays potential : potentials_) graph.add_point(potential);
    for (const auto& [statement, edges] : statements_) {
      if (statement == left_out || statement == newest) continue;
      for (const DifferenceEdge& edge : edges) graph.insert(edge);
    }
    for (const DifferenceEdge& edge : statements_.at(newest)) {
      const auto insertion = graph.insert(edge);
      if (insertion.edge == kNoEdge) return all_but(graph, insertion, newest);
    }
    return {};
  }

 private:
  TimePoint small(const DifferenceGraph& graph, TimePoint point) {
    const auto [found, added] = numbers_.try_emplace(point, static_cast<TimePoint>(potentials_.size()));
    if (added) potentials_.push_back(graph.potential(point));
    return found->second;
  }

  std::vector<StatementNumber> all_but(const DifferenceGraph& graph,
                                       const DifferenceGraph::Insertion& insertion,
                                       StatementNumber newest) const {
    std::vector<StatementNumber> needed{newest};
    for (const EdgeNumber number : insertion.cycle_rest) needed.push_back(graph.edge(number).statement);
    std::vector<StatementNumber> others;
    for (const auto& [statement, edges] : statements_) {
      if (std::find(needed.begin(), needed.end(), statement) == needed.end()) others.push_back(statement);
    }
    return others;
  }

  std::unordered_map<TimePoint, TimePoint> numbers_;
  std::vector<WideDays> potentials_;
  EdgesByStatement statements_;
};

}  // namespace

std::vector<StatementNumber> minimal_conflict(const DifferenceGraph& graph,
                                              const std::vector<DifferenceEdge>& edges,
                                              StatementNumber newest) {
  Trial trial(graph, edges);
  std::vector<StatementNumber> candidates;
  for (const auto& [statement, own] : trial.statements()) candidates.push_back(statement);
  if (candidates.size() == edges.size())
    return candidates;  // One edge each: a simple cycle, irreducible as it is.
  for (const StatementNumber statement : candidates) {
    if (statement == newest || !trial.statements().contains(statement)) continue;
    trial.drop(trial.superfluous_without(statement, newest));
  }
  std::vector<StatementNumber> kept;
  for (const auto& [statement, own] : trial.statements()) kept.push_back(statement);
  return kept;
}

}  // namespace witnessmark
