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

/// An age as above, or "not born".
inline std::string age_text(const std::optional<YearRange>& age) {
  return age && age->most < 0 ? "not born" : range_text(age);
}

/// A recall distance as above; where there can be none, why.
inline std::string distance_text(const Recall& recall) {
  return dated_after_interview(recall) ? "dated after the interview" : range_text(recall.recall_distance);
}

/// yes, no, partly or cannot tell.
inline std::string_view service_text(const Recall& recall) {
  return recall.partly_in_service ? "partly" : to_string(recall.in_service);
}

/// stated, interpolated, or empty.
std::string_view timing_text(Timing timing);

}  // namespace witnessmark
