#pragma once
#include <cstdint>
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

/// The name of a term; what no list has is quoted, for it is the talk's word: "“It”".
std::string named_words(const std::string& key, const std::string& name);

/// "begins · Electric crane · Foredeck (carried) · March 1957 (“March nineteen fifty-seven”)"; "not begins · …" where
/// the narrator denies it.
std::string what_words(const ClaimRecord& record);

/// What a curator looks for comes first: conflicts, agreements, what is compatible, then the rest; smaller is
/// earlier.
int weight_of(const Comparison& comparison);

/// What an answer rests on that no proposal has part in: "the register and 12 reviewed claims", "the register
/// alone (no claim reviewed yet)".
std::string grounds_words(std::int64_t reviewed_claims);

/// Number and attribute: "4", "10 to 14, colour: buff"; may be empty.
std::string number_words(const Claim& claim);

/// A period in few words, for lists: "September to November 1962", "by 30 November 1962".
std::string date_words(const Period& period);
/// The same of a claim, with its doubt: "1957, uncertain"; empty when it has no resolved date.
std::string date_words(const ClaimTime& when);

/// The time as read and as said: "March 1957 (“March nineteen fifty-seven”)"; empty when undated.
std::string when_words(const ClaimTime& when);

/// "told (The bosun), hedged, led by the interviewer".
std::string how_words(const Claim& claim);

/// "told 41 years after, aged 24 to 25 then, there at the time"; empty when nothing is known.
std::string recall_words(const Recall& recall);

/// "at 0:08.0", "at about 0:50.3"; empty without a time.
std::string time_words(const std::optional<TimeRange>& time, Timing timing);

}  // namespace witnessmark
