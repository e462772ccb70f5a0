#pragma once
#include <string_view>
#include <vector>

#include "read/transcripts/stamps.h"
#include "witnessmark/base/error.h"

namespace witnessmark {

/// A stamp and where it stands, for messages.
struct PlacedStamp {
  Millisecond time;
  std::int64_t line = 0;
  std::int64_t column = 0;
};

/// keep_in_order, with a warning for each run of stamps left out.
std::vector<bool> keep_in_order(const std::vector<PlacedStamp>& stamps, std::string_view source,
                                std::vector<Diagnostic>& diagnostics);

/// A warning when a stamp kept lies past the recording's length.
void check_length(const std::vector<PlacedStamp>& stamps, const std::vector<bool>& keep,
                  Millisecond recording_length, std::string_view source,
                  std::vector<Diagnostic>& diagnostics);

}  // namespace witnessmark
