#pragma once
#include <cstdint>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "weigh/stays/stay_chain.h"
#include "witnessmark/time/branching_network.h"
#include "witnessmark/weigh/stays.h"

namespace witnessmark {

/// One of the two days of a stay.
struct StayDay {
  std::size_t fixture = 0;  ///< In the group.
  int episode = 0;          ///< From 0.
  bool went = false;        ///< The day it went, else the day it came.
  bool operator==(const StayDay&) const = default;
};

/// A further limit on one day, for questions.
struct DayLimit {
  StayDay day;
  DaySpan span;
};

/// The statements of a group as constraints on the days its fixtures came and went. They are numbered from 0
/// in order of presentation; those that limit nothing are not among them.
class StayProblem {
 public:
  /// With `more_episodes` each fixture may have come and gone so many times more, anywhere in time, and
  /// nothing fixes a statement to one of its episodes.
  StayProblem(const StayEvidence& evidence, const StayGroup& group, int more_episodes = 0);

  std::size_t size() const { return statements_.size(); }
  /// Among all statements.
  std::size_t statement(std::size_t number) const { return statements_[number].statement; }
  std::optional<std::size_t> number_of(std::size_t statement) const;
  int episodes(std::size_t fixture) const { return episodes_[fixture]; }

  /// One fixture, one episode, no layers: then statements that cannot all be true, none of which is an
  /// either/or, always hold two that cannot both be.
  bool simple() const { return simple_; }
  bool either_or(std::size_t number) const;

  /// Can these all be true, together with further limits?
  Answer can_hold(std::span<const std::size_t> numbers, const std::vector<DayLimit>& limits = {}) const;
  /// Can they, if one of them said something else?
  Answer can_hold_instead(std::span<const std::size_t> numbers, std::size_t which,
                          const FixtureStatement& instead) const;

  /// Those from which the same bounds follow, the earliest in order preferred.
  std::vector<std::size_t> telling(std::span<const std::size_t> numbers) const;

  struct Solution {
    Answer consistent = Answer::yes;
    /// By fixture and episode: the days it can have come and gone. Nothing where the limit was met.
    struct Stay {
      std::optional<HullBounds> came, went;
    };
    std::vector<std::vector<Stay>> stays;
  };
  Solution solve(std::span<const std::size_t> numbers) const;

  /// A least set of these statements from which the limit on the day follows, the earliest in order
  /// preferred.
  std::vector<std::size_t> refuting(std::span<const std::size_t> numbers,
                                    const std::vector<DayLimit>& limits) const;

 private:
  struct Limits {
    std::size_t fixture;
    int episode;
    EpisodeLimits limits;
  };
  using Alternative = std::vector<Limits>;
  using Part = std::vector<Alternative>;  ///< One of the alternatives holds.
  struct Constrained {
    std::size_t statement;
    std::vector<Part> parts;
    std::vector<DifferenceConstraint> layers;
    std::vector<StayChain::Part> chained{};  ///< The parts, where the group is one chain.
  };

  void add_bearing(std::size_t fixture, const Bearing& bearing, const FixtureStatement& statement);
  void add_layers();
  Constrained& constrained(std::size_t statement);
  std::vector<Part> parts_of(std::size_t fixture, const Bearing& bearing,
                             const FixtureStatement& statement) const;
  TimePoint point(const StayDay& day) const;
  std::vector<DifferenceConstraint> constraints_of(const Limits& limits) const;
  std::vector<DifferenceConstraint> constraints_of(const Alternative& alternative) const;
  BranchingNetwork network(const std::vector<const Constrained*>& statements) const;
  std::vector<StayChain::Part> chained(const std::vector<Part>& parts) const;
  /// What these say without choice narrows the chain, the parts that leave a choice are added. False when nothing is left.
  static bool narrow(StayChain& chain, const Constrained& statement, std::vector<const StayChain::Part*>& open);
  Answer chain_answer(const std::vector<const Constrained*>& statements, const std::vector<DayLimit>& limits) const;
  Answer answer(const std::vector<const Constrained*>& statements, const std::vector<DayLimit>& limits) const;

  const StayEvidence& evidence_;
  const StayGroup& group_;
  std::vector<int> episodes_;
  std::vector<TimePoint> first_point_;  ///< Of each fixture.
  std::size_t point_count_ = 1;
  bool free_ = false;  ///< No statement is fixed to an episode.
  bool simple_ = false;
  bool chain_ = false;  ///< One fixture without layers.
  std::vector<Constrained> statements_;
};

}  // namespace witnessmark
