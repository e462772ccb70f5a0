#pragma once
#include <algorithm>
#include <map>
#include <optional>
#include <random>
#include <vector>

#include "witnessmark/time/constraint_network.h"

namespace witnessmark::testing {

using Statements = std::map<StatementNumber, std::vector<DifferenceConstraint>>;
using Matrix = std::vector<std::vector<std::optional<std::int64_t>>>;

inline std::vector<DifferenceConstraint> constraints_of(const Statements& statements) {
  std::vector<DifferenceConstraint> all;
  for (const auto& [number, constraints] : statements)
    all.insert(all.end(), constraints.begin(), constraints.end());
  return all;
}

/// Bellman-Ford from a source tied to every point, as textbooks have it: relax every edge as often as there
/// are points; what can still be relaxed lies on a negative cycle.
inline bool holds(std::size_t points, const std::vector<DifferenceConstraint>& constraints) {
  std::vector<std::int64_t> value(points, 0);
  for (std::size_t round = 0; round <= points; ++round) {
    bool changed = false;
    for (const DifferenceConstraint& c : constraints) {
      const auto from = static_cast<std::size_t>(c.from);
      const auto to = static_cast<std::size_t>(c.to);
      if (value[from] + c.days >= value[to]) continue;
      value[to] = value[from] + c.days;
      changed = true;
    }
    if (!changed) return true;
  }
  return false;
}

/// Floyd-Warshall: most[i][j] is the largest j - i, nothing where there is no limit.
inline Matrix minimal_network(std::size_t points, const std::vector<DifferenceConstraint>& constraints) {
  Matrix most(points, std::vector<std::optional<std::int64_t>>(points));
  for (std::size_t i = 0; i < points; ++i) most[i][i] = 0;
  for (const DifferenceConstraint& c : constraints) {
    auto& entry = most[static_cast<std::size_t>(c.from)][static_cast<std::size_t>(c.to)];
    entry = entry ? std::min(*entry, c.days) : c.days;
  }
  for (std::size_t k = 0; k < points; ++k) {
    for (std::size_t i = 0; i < points; ++i) {
      for (std::size_t j = 0; j < points; ++j) {
        if (!most[i][k] || !most[k][j]) continue;
        const std::int64_t length = *most[i][k] + *most[k][j];
        most[i][j] = most[i][j] ? std::min(*most[i][j], length) : length;
      }
    }
  }
  return most;
}

inline std::optional<Day> as_day(const std::optional<std::int64_t>& days, int sign) {
  return days ? std::optional(Day{sign * *days}) : std::nullopt;
}

class RandomStatements {
 public:
  RandomStatements(std::uint32_t seed, std::size_t points) : engine_(seed), points_(points) {}

  int below(int limit) { return static_cast<int>(engine_() % static_cast<std::uint32_t>(limit)); }

  /// One to three constraints, sometimes impossible by themselves.
  std::vector<DifferenceConstraint> next(StatementNumber number) {
    std::vector<DifferenceConstraint> constraints;
    for (int i = 1 + below(3); i > 0; --i) constraints.push_back({point(), point(), below(25) - 8, number});
    return constraints;
  }

 private:
  TimePoint point() { return below(static_cast<int>(points_)); }
  std::mt19937 engine_;
  std::size_t points_;
};

}  // namespace witnessmark::testing
