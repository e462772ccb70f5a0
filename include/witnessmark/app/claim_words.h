#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "witnessmark/model/claim_record.h"

namespace witnessmark {

// How a claim reads in a line, on the command line and on the terminal alike. All are safe to print: control
// and bidirectional characters stand as visible marks.

/// "said so", "set aside"; "cannot tell".
std::string_view in_words(ClaimStatus status);
std::string_view in_words(Outcome outcome);

/// White space as it falls in a transcript is no part of how a quote reads: runs become one blank.
std::string one_line(std::string_view text);

/// "begins · Electric crane · Foredeck (carried) · 1957-03 (“March nineteen fifty-seven”)".
std::string what_words(const ClaimRecord& record);

/// Number and attribute: "4", "10 to 14, colour: buff"; may be empty.
std::string number_words(const Claim& claim);

/// The time as read and as said: "1957-03 (“March nineteen fifty-seven”)"; empty when undated.
std::string when_words(const ClaimTime& when);

/// "told (The bosun), hedged, denied, led by the interviewer".
std::string how_words(const Claim& claim);

/// "told 41 years after, aged 24 to 25 then, there at the time"; empty when nothing is known.
std::string recall_words(const Recall& recall);

/// "at 0:08.0", "at about 0:50.3"; empty without a time.
std::string time_words(const std::optional<TimeRange>& time, Timing timing);

}  // namespace witnessmark
