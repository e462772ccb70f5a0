#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "witnessmark/time/constraint_network.h"
#include "witnessmark/time/relations.h"

namespace witnessmark {

/// A statement that says one of several things: not there, so before it came or after it went; one of several
/// dates; one of several episodes.
struct EitherOr {
  StatementNumber statement = 0;
  std::vector<std::vector<DifferenceConstraint>> alternatives;
  bool operator==(const EitherOr&) const = default;
};

/// Earliest and latest of a point over everything that can be.
struct HullBounds {
  std::optional<Day> earliest;
  std::optional<Day> latest;
  bool operator==(const HullBounds&) const = default;
};

/// What a network with either/or statements leaves possible.
struct BranchingSolution {
  /// Can all statements be true? Cannot tell when the limit was met before one way was found.
  Answer consistent = Answer::yes;

  /// When they cannot: an irreducible set of statements, ascending (where the limit allowed it to be
  /// reduced).
  std::vector<StatementNumber> conflict;

  /// By point; nothing where the limit was met or nothing is possible.
  std::vector<std::optional<HullBounds>> bounds;

  /// For each either/or in the order added, for each alternative: can it be the one? Cannot tell beyond the
  /// limit.
  std::vector<std::vector<Answer>> alternatives;
};

/// A disjunctive temporal problem: a ConstraintNetwork together with either/or statements, solved by trying
/// the alternatives (Stergiou and Koubarakis, Backtracking algorithms for disjunctions of temporal
/// constraints, Artificial Intelligence 120, 2000). Points that are tied to one another only through the
/// origin do not influence each other, so each tied group is branched alone; a group that needs more than the
/// limit of combinations is answered "cannot tell".
class BranchingNetwork {
 public:
  /// Combinations looked at in one group, those found impossible half-way included.
  static constexpr std::size_t kDefaultLimit = 4096;

  explicit BranchingNetwork(std::size_t limit = kDefaultLimit);

  TimePoint add_point();

  /// The origin included.
  std::size_t point_count() const { return point_count_; }
  std::size_t limit() const { return limit_; }

  /// As ConstraintNetwork::add_statement. A statement may come in several parts, plain and either/or.
  void add_statement(StatementNumber statement, const std::vector<DifferenceConstraint>& constraints);

  /// An either/or without alternatives cannot be true. Throws std::out_of_range for a point that was never
  /// added.
  void add_either_or(EitherOr either_or);

  BranchingSolution solve() const;

  /// As solve().consistent, but stops at the first way found.
  Answer can_hold() const;

  /// solve() with one statement left out; its either/ors are answered as if each alternative could be.
  BranchingSolution solve_without(StatementNumber statement) const;

 private:
  std::size_t limit_;
  std::size_t point_count_ = 1;
  std::vector<DifferenceConstraint> constraints_;
  std::vector<EitherOr> either_ors_;
};

}  // namespace witnessmark
