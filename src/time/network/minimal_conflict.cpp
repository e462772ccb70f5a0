// The newest statement is in every conflict, for the others had a solution before it came, and the potentials
// of that solution are where each trial starts. When a single constraint u -> v of it cannot be added, every
// contradiction is a negative cycle through that constraint, so only edges on a walk from v back to u that is
// short enough can matter: statements without such an edge go at once. Statements of an edge that no way from
// v to u can avoid are needed. Each other one is left out in turn; when the rest still contradict one another
// it stays out. This is more than taking the edges of a negative cycle: a statement can bring several edges,
// and one that is not on the cycle may make another statement of the set superfluous.
#include "time/network/minimal_conflict.h"

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

namespace witnessmark {
namespace {

using EdgesByStatement = std::map<StatementNumber, std::vector<DifferenceEdge>>;

bool same_step(const DifferenceEdge& a, const DifferenceEdge& b) {
  return a.from == b.from && a.to == b.to && a.days == b.days && a.statement == b.statement;
}

/// Places on a path whose edge every way from its beginning to its end must take. The points reached without
/// the edges of the path grow as the path is followed; where they do not get past a point of it, its next
/// edge cannot be avoided.
std::vector<std::size_t> unavoidable(const std::vector<DifferenceEdge>& path,
                                     const std::vector<std::vector<DifferenceEdge>>& ways_on) {
  constexpr std::size_t kNotOnPath = static_cast<std::size_t>(-1);
  std::vector<std::size_t> place(ways_on.size(), kNotOnPath);
  for (std::size_t i = 0; i < path.size(); ++i) place[static_cast<std::size_t>(path[i].from)] = i;
  place[static_cast<std::size_t>(path.back().to)] = path.size();
  std::vector<bool> reached(ways_on.size(), false);
  std::size_t furthest = 0;
  std::vector<TimePoint> waiting;
  const auto reach = [&](TimePoint point) {
    const auto at = static_cast<std::size_t>(point);
    if (reached[at]) return;
    reached[at] = true;
    if (place[at] != kNotOnPath) furthest = std::max(furthest, place[at]);
    waiting.push_back(point);
  };
  std::vector<std::size_t> cuts;
  for (std::size_t i = 0; i < path.size(); ++i) {
    reach(path[i].from);
    while (!waiting.empty()) {
      const TimePoint point = waiting.back();
      waiting.pop_back();
      const std::size_t own = place[static_cast<std::size_t>(point)];
      for (const DifferenceEdge& edge : ways_on[static_cast<std::size_t>(point)]) {
        if (own < path.size() && same_step(edge, path[own])) continue;
        reach(edge.to);
      }
    }
    if (furthest <= i) cuts.push_back(i);
  }
  return cuts;
}

class Trial {
 public:
  Trial(const DifferenceGraph& graph, const std::vector<DifferenceEdge>& edges, StatementNumber newest)
      : newest_(newest) {
    for (DifferenceEdge edge : edges) {
      edge.from = small(graph, edge.from);
      edge.to = small(graph, edge.to);
      statements_[edge.statement].push_back(edge);
    }
  }

  std::vector<StatementNumber> numbers() const {
    std::vector<StatementNumber> all;
    for (const auto& [statement, edges] : statements_) all.push_back(statement);
    return all;
  }

  bool has(StatementNumber statement) const { return statements_.contains(statement); }

  bool surely_needed(StatementNumber statement) const { return needed_.contains(statement); }

  /// Strikes out what cannot matter and notes what no contradiction can do without.
  void keep_useful() {
    needed_.insert(newest_);
    DifferenceGraph graph = others(newest_);
    std::vector<DifferenceEdge> refused;
    for (const DifferenceEdge& edge : statements_.at(newest_)) {
      if (graph.insert(edge).edge == kNoEdge) refused.push_back(edge);
    }
    if (refused.size() != 1) return;
    const DifferenceEdge& closing = refused.front();
    if (closing.from == closing.to) {  // It contradicts itself.
      std::erase_if(statements_, [&](const auto& entry) { return entry.first != newest_; });
      return;
    }
    const auto from_start = graph.shortest_paths(closing.to, Direction::from_root);
    const auto to_end = graph.shortest_paths(closing.from, Direction::to_root);
    const auto useful = [&](const DifferenceEdge& edge) {
      const PathLabel& before = from_start[static_cast<std::size_t>(edge.from)];
      const PathLabel& after = to_end[static_cast<std::size_t>(edge.to)];
      return before.reached && after.reached && before.length + edge.days + after.length + closing.days < 0;
    };
    std::vector<std::vector<DifferenceEdge>> ways_on(graph.point_count());
    std::set<StatementNumber> kept{newest_};
    for (const auto& [statement, edges] : statements_) {
      for (const DifferenceEdge& edge : edges) {
        const bool closes = statement == newest_ && edge.from == closing.from && edge.to == closing.to;
        if (closes || !useful(edge)) continue;
        kept.insert(statement);
        ways_on[static_cast<std::size_t>(edge.from)].push_back(edge);
      }
    }
    std::erase_if(statements_, [&](const auto& entry) { return !kept.contains(entry.first); });
    std::vector<DifferenceEdge> path;
    for (TimePoint point = closing.from; point != closing.to; point = path.back().from) {
      path.push_back(graph.edge(from_start[static_cast<std::size_t>(point)].edge));
    }
    std::reverse(path.begin(), path.end());
    for (const std::size_t cut : unavoidable(path, ways_on)) needed_.insert(path[cut].statement);
  }

  /// When the others contradict one another without this statement, strikes it out with all that they do not
  /// need.
  void try_without(StatementNumber left_out) {
    DifferenceGraph graph = others(left_out);
    for (const DifferenceEdge& edge : statements_.at(newest_)) {
      const auto insertion = graph.insert(edge);
      if (insertion.edge != kNoEdge) continue;
      std::set<StatementNumber> needed{newest_};
      for (const EdgeNumber number : insertion.cycle_rest) needed.insert(graph.edge(number).statement);
      std::erase_if(statements_, [&](const auto& entry) { return !needed.contains(entry.first); });
      return;
    }
  }

 private:
  TimePoint small(const DifferenceGraph& graph, TimePoint point) {
    const auto [found, added] = numbers_.try_emplace(point, static_cast<TimePoint>(potentials_.size()));
    if (added) potentials_.push_back(graph.potential(point));
    return found->second;
  }

  /// All statements but the newest and the one left out.
  DifferenceGraph others(StatementNumber left_out) const {
    DifferenceGraph graph;
    for (const WideDays potential : potentials_) graph.add_point(potential);
    for (const auto& [statement, edges] : statements_) {
      if (statement == left_out || statement == newest_) continue;
      for (const DifferenceEdge& edge : edges) graph.insert(edge);
    }
    return graph;
  }

  StatementNumber newest_;
  std::set<StatementNumber> needed_;
  std::unordered_map<TimePoint, TimePoint> numbers_;
  std::vector<WideDays> potentials_;
  EdgesByStatement statements_;
};

}  // namespace

std::vector<StatementNumber> minimal_conflict(const DifferenceGraph& graph,
                                              const std::vector<DifferenceEdge>& edges,
                                              StatementNumber newest) {
  Trial trial(graph, edges, newest);
  trial.keep_useful();
  for (const StatementNumber statement : trial.numbers()) {
    if (!trial.surely_needed(statement) && trial.has(statement)) trial.try_without(statement);
  }
  return trial.numbers();
}

}  // namespace witnessmark
