#pragma once
#include <string>
#include <string_view>

#include "store/connection.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

/// Carries claims and passages of an interview from the reading text `before` to `after`, which is already
/// there as the version `changes.version` in the row `reading`. Fills in what was carried and what was lost.
void carry_anchors(StoreConnection& connection, std::string_view interview, const std::string& before,
                   const std::string& after, std::int64_t reading, TranscriptChanges& changes);

}  // namespace witnessmark
