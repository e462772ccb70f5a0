#pragma once
#include <string>
#include <string_view>

#include "store/connection.h"
#include "store/transcript/anchors.h"
#include "witnessmark/model/claim.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

/// Finds a claim's quotes and mentions in another text again. False when one of the quotes is not found; the
/// claim is then as it was.
bool carry_claim(Claim& claim, AnchorCarrier& carrier);

/// Carries claims and passages of an interview to the reading text `after`, which is already there as the
/// version `changes.version` in the row `reading`: from the version before, and claims not found in that from
/// the version they lie in. Fills in what was carried and what is newly lost. What was proposed of the same
/// words as a decision found again goes.
void carry_anchors(StoreConnection& connection, std::string_view interview, const std::string& after,
                   std::int64_t reading, TranscriptChanges& changes);

}  // namespace witnessmark
