#pragma once
#include <optional>
#include <string>
#include <unordered_set>

#include "timed.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/interview.h"

namespace witnessmark {

/// One claim against one entry, both with their times worked out; `lineage` is that of the entry's source. Nothing when
/// the two say nothing of one another.
std::optional<Comparison> compare_timed(const TimedClaim& claim, const Interview& interview, const TimedEntry& entry,
                                        const std::unordered_set<std::string>& lineage,
                                        const RegisterIndex& evidence);

}  // namespace witnessmark
