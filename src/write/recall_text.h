#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "witnessmark/model/comparison.h"
#include "witnessmark/model/transcript.h"

namespace witnessmark {

/// "46 to 47"; empty when not known.
inline std::string range_text(const std::optional<YearRange>& range) {
  return range ? to_string(*range) : "";
}

/// yes, no, partly or cannot tell.
inline std::string_view service_text(const Recall& recall) {
  return recall.partly_in_service ? "partly" : to_string(recall.in_service);
}

/// stated, interpolated, or empty.
std::string_view timing_text(Timing timing);

}  // namespace witnessmark
