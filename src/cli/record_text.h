#pragma once
#include <iosfwd>
#include <optional>
#include <string>

#include "witnessmark/model/claim_record.h"

namespace witnessmark {

/// A claim for people, in a few lines: who, when told and at what time in the recording, the words, what was
/// read from them, the facts of recall, and the comparisons with the given outcome (all of them when none is
/// given). Safe to print.
void print_record(std::ostream& out, const ClaimRecord& record, std::optional<Outcome> only = std::nullopt);

}  // namespace witnessmark
