#pragma once
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "witnessmark/time/date_policy.h"
#include "witnessmark/time/day.h"
#include "witnessmark/time/edtf.h"

namespace witnessmark {

/// The days [first, past).
struct DayRange {
  Day first;
  Day past;
  auto operator<=>(const DayRange&) const = default;
};

/// The earliest and the latest year, month, season or day that a date with unspecified digits or significant
/// digits can mean; both the same for a plain date.
struct CandidateSpan {
  DayRange earliest;
  DayRange latest;
};

/// Nothing when no calendar day fits (156X-11-31).
std::optional<CandidateSpan> candidate_span(const EdtfDate& date, const DatePolicy& policy);

/// Each meaning in order of time; nothing when there are more than limit.
std::optional<std::vector<DayRange>> candidate_ranges(const EdtfDate& date, const DatePolicy& policy,
                                                      std::size_t limit);

/// Whether a month or day, as written, can be this number.
bool two_digits_fit(const EdtfComponent& component, int number);

/// The months of a season, quarter, quadrimester or semestral (codes 21-41) of a year.
DayRange season_range(std::int64_t year, int code, const DatePolicy& policy);

/// First and last code of the family a code of 21-41 belongs to: 21-24, 25-28, 29-32, 33-36, 37-39, 40-41.
std::pair<int, int> season_family(int code);

/// The year, month, season or day after a plain one.
EdtfDate next_unit(const EdtfDate& date);

}  // namespace witnessmark
