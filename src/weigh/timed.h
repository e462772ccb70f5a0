#pragma once
#include <string>
#include <unordered_set>
#include <vector>

#include "told_days.h"
#include "told_statement.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// A claim with what its date means, worked out once for all entries it is held against.
struct TimedClaim {
  const Claim* claim;
  Told told;
  std::vector<DayExtent> days;
  std::vector<EpisodeLimits> possible, certain;  ///< What it allows, and what it surely allows.
};
TimedClaim timed(const Claim& claim, const DatePolicy& policy);

/// An entry with what its date means, worked out once for all claims that are held against it.
struct TimedEntry {
  RegisterIndex::Item item;
  Statement stated;
  std::vector<DayExtent> days;
  std::vector<EpisodeLimits> limits;
};
TimedEntry timed(const RegisterIndex::Item& item, const DatePolicy& policy);

}  // namespace witnessmark
