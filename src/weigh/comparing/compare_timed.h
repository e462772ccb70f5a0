#pragma once
#include <optional>
#include <string>
#include <unordered_set>

#include "circularity.h"
#include "timed.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/interview.h"

namespace witnessmark {

/// How a claim stands to an entry, and what was looked at for it.
struct HeldAgainst {
  Outcome outcome = Outcome::cannot_tell;
  bool intention = false;
  Circle circle = Circle::none;
};

/// One claim against one entry, both with their times worked out; `lineage` is that of the entry's source. Nothing when
/// the two say nothing of one another.
std::optional<HeldAgainst> held_against(const TimedClaim& claim, const Interview& interview, const TimedEntry& entry,
                                    const std::unordered_set<std::string>& lineage, const RegisterIndex& evidence);

}  // namespace witnessmark
