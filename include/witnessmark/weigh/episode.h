#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/model/statement.h"
#include "witnessmark/time/period.h"
#include "witnessmark/time/relations.h"

namespace witnessmark {

/// Days from low to high, both inclusive; a side without value has no limit.
struct DaySpan {
  std::optional<std::int64_t> low;
  std::optional<std::int64_t> high;
  bool operator==(const DaySpan&) const = default;
};
bool disjoint(const DaySpan& a, const DaySpan& b);
bool inside(const DaySpan& inner, const DaySpan& outer);

/// What a statement says of one episode of a fixture at a place: the day it came lies in `came`, the day it went in
/// `went`, and came <= went. On the two days themselves it may count as there or not there.
struct EpisodeLimits {
  DaySpan came;
  DaySpan went;
  bool operator==(const EpisodeLimits&) const = default;
};

/// The limits a statement puts on the episode, when made of days from low to high. Not there is either before it came or
/// after it went, so `absent` gives two alternatives; all else gives one. A count or an attribute says that the thing was
/// there. Empty for statements that say nothing of coming and going (happened, located).
std::vector<EpisodeLimits> episode_limits(Statement statement, const DaySpan& days, Reading reading);

/// What both allow, and whether any pair of days is left.
EpisodeLimits intersection(EpisodeLimits a, const EpisodeLimits& b);
bool possible(const EpisodeLimits& limits);

/// The days before and after these, for a change that did not fall on them.
std::vector<EpisodeLimits> other_than(Statement change, const DaySpan& days);

/// yes: whenever `given` holds, what is claimed surely holds. no: they cannot both hold for one episode. Else cannot tell.
/// A claim may be wider in what is possible than in what is certain.
Answer follows(const std::vector<EpisodeLimits>& possible_claim, const std::vector<EpisodeLimits>& certain_claim,
               const std::vector<EpisodeLimits>& given);

}  // namespace witnessmark
