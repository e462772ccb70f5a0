#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "witnessmark/time/branching_network.h"
#include "witnessmark/weigh/episode.h"

namespace witnessmark {

/// The stays of one fixture that nothing ties to another: days that follow one another, came, went, came, went …, each
/// within limits of its own. What limits one day limits those after it from below and those before it from above; then
/// each limit is met by some choice of days, so that such a chain needs no network.
class StayChain {
 public:
  static constexpr std::size_t kMostDays = 24;
  static constexpr std::int64_t kNoLow = std::numeric_limits<std::int64_t>::min();
  static constexpr std::int64_t kNoHigh = std::numeric_limits<std::int64_t>::max();

  /// A day of the chain lies within these; both may be open.
  struct Limit {
    std::size_t day = 0;
    std::int64_t low = kNoLow, high = kNoHigh;
  };
  using Alternative = std::vector<Limit>;       ///< All of them hold.
  using Part = std::vector<Alternative>;        ///< One of them holds.

  explicit StayChain(std::size_t days);

  /// False when no choice of days is left.
  bool narrow(const Limit& limit);
  bool narrow(const Alternative& alternative);
  bool allows(Alternative const& alternative) const;   ///< Some choice of days.
  bool implies(Alternative const& alternative) const;  ///< Every choice of days.

  /// Whether all parts can hold, and, asked for a hull, the earliest and latest of each day over all ways in which they do.
  /// Cannot tell, and no hull, when that needs more than so many choices between alternatives.
  static Answer can_hold(StayChain chain, const std::vector<const Part*>& parts, std::size_t most_choices);
  struct Hull {
    Answer consistent = Answer::no;
    std::vector<std::optional<HullBounds>> days;   ///< Nothing where it cannot be told, or nothing is left.
  };
  static Hull hull(StayChain chain, const std::vector<const Part*>& parts, std::size_t most_choices);

 private:
  class Search;

  std::size_t days_;
  std::array<std::int64_t, kMostDays> low_, high_;
};

}  // namespace witnessmark
