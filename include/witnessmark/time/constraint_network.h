#pragma once
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/time/day.h"

namespace witnessmark {

/// A Simple Temporal Problem (Dechter, Meiri and Pearl, Temporal constraint networks, Artificial Intelligence 49, 1991):
/// time points and difference constraints `to - from <= days`, each carrying the statement it comes from. Tightest bounds
/// are shortest paths from and to the calendar origin; a negative cycle is a set of statements that cannot all be true.
using TimePoint = std::int32_t;
inline constexpr TimePoint kOrigin = 0;  ///< The calendar origin, day 0.
using StatementNumber = std::int32_t;

struct DifferenceConstraint {
  TimePoint from = 0;
  TimePoint to = 0;
  std::int64_t days = 0;           ///< to - from <= days.
  StatementNumber statement = 0;
  bool operator==(const DifferenceConstraint&) const = default;
};

/// Tightest bounds of one time point, with the statements along the path that gives each, in the order of the path from
/// the point to the origin, each once. A side that no statement limits has neither.
struct PointBounds {
  std::optional<Day> earliest;
  std::optional<Day> latest;
  std::vector<StatementNumber> earliest_from;
  std::vector<StatementNumber> latest_from;
  bool operator==(const PointBounds&) const = default;
};

/// Adding a statement costs what it changes, not the size of the network; taking one out costs one run of shortest paths.
class ConstraintNetwork {
 public:
  /// Holds the origin alone.
  ConstraintNetwork();
  ~ConstraintNetwork();
  ConstraintNetwork(const ConstraintNetwork& other);
  ConstraintNetwork& operator=(const ConstraintNetwork& other);
  ConstraintNetwork(ConstraintNetwork&&) noexcept;
  ConstraintNetwork& operator=(ConstraintNetwork&&) noexcept;

  TimePoint add_point();

  /// The origin included.
  std::size_t point_count() const;
  std::size_t constraint_count() const;

  /// Adds one statement's constraints together; their own statement field is not looked at. Adding to a number that is
  /// there already adds to that statement. When they contradict what is there the network is left inconsistent and
  /// conflict() says why; further statements are kept and counted when the conflict is taken out again. Throws
  /// std::out_of_range for a point that was never added.
  void add_statement(StatementNumber statement, const std::vector<DifferenceConstraint>& constraints);

  /// As if the statement had never been added. Nothing happens when it was not.
  void remove_statement(StatementNumber statement);

  bool consistent() const;

  /// An irreducible set of statements that cannot all be true, ascending; empty when consistent. Irreducible by
  /// statement: leave any one out and the rest of the set can hold. There may be other such sets.
  std::vector<StatementNumber> conflict() const;

  /// Bounds of a point; nothing for a point of an inconsistent network.
  std::optional<PointBounds> bounds(TimePoint point) const;

  /// Least and most of b - a over all solutions (one shortest-path run each way); nothing when inconsistent.
  struct Difference {
    std::optional<std::int64_t> least, most;
    bool operator==(const Difference&) const = default;
  };
  std::optional<Difference> difference(TimePoint a, TimePoint b) const;

  /// All bounds with one statement left out, by point; empty when the rest is inconsistent too.
  std::vector<PointBounds> bounds_without(StatementNumber statement) const;

 private:
  class State;
  std::unique_ptr<State> state_;
};

}  // namespace witnessmark
