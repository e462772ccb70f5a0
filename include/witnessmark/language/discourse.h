#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/model/entry.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/time/date_policy.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

/// How two-digit years are completed.
struct CenturyPolicy {
  std::int64_t century_begins =
      1900;  ///< '43 is 1943 when nothing in the talk or the narrator's life says otherwise.
  /// Years: a two-digit year that would lie fewer than these before the interview may be of the century
  /// before, too.
  std::int64_t recent_years = 12;
};

/// What talk has established so far, passed in and out of every reading: a stream, a sentence and the
/// terminal use the same function. A value; there is no hidden state.
struct Discourse {
  // Fixed for one interview.
  std::optional<Edtf> speech_time;     ///< Interview date; the anchor of "seventy years ago", "now".
  std::optional<Edtf> birth;           ///< The speaker's.
  std::vector<ServicePeriod> service;  ///< The speaker's.
  std::vector<NamedEvent> events;      ///< Register events people may refer to.
  DatePolicy policy;
  CenturyPolicy century;
  bool prose = false;  ///< Written narrative rather than talk: bare "in 43" needs more support.

  // Moves with the talk.
  std::optional<Edtf> reference;  ///< Date under discussion; years, months and days are taken from it.
  std::optional<Edtf> day_talked_of;  ///< The last of them that names a day or month: "two days after" is counted from it.
  std::optional<std::int64_t> reference_year;
  std::optional<Edtf>
      told_coming;  ///< "I reported aboard in June 1955": stands for `service` while that is empty.
  std::optional<std::int64_t> decade;  ///< First year of the decade that bare two-digit years belong to.
  std::string speaker;
};

}  // namespace witnessmark
