#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "witnessmark/time/allen.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

enum class Answer { yes, no, cannot_tell };
std::string_view to_string(Answer answer);

/// Every Allen relation that two periods can stand in, given what is known of their boundaries; each period is at least
/// one day long. Unlimited sides are taken as without limit.
AllenSet possible_relations(const Period& a, const Period& b);

/// Did all of a come before b began?
Answer before(const Period& a, const Period& b);
/// Did they share a day?
Answer overlap(const Period& a, const Period& b);
/// Did a lie wholly inside b?
Answer within(const Period& a, const Period& b);

/// Least and most; the most is missing when there is no limit.
struct Distance {
  std::int64_t least = 0;
  std::optional<std::int64_t> most;
  bool operator==(const Distance&) const = default;
};

/// "76 to 100 days", "1 month", "at least 3 years"; the unit in the singular.
std::string in_unit(const Distance& distance, std::string_view unit);

/// Days between two periods: the number of days that must be crossed to bring the nearest day of one onto a day of the
/// other, 0 when they share a day, 1 when they meet; the least and the most over all places their boundaries can take.
/// For single days it is their difference.
Distance distance_in_days(const Period& a, const Period& b);

/// Completed months and years between the same days.
Distance distance_in_months(const Period& a, const Period& b);
Distance distance_in_years(const Period& a, const Period& b);

/// "2 to 14 months", in the coarsest unit in which both ends stay honest for the precision of the dates.
std::string describe_distance(const Period& a, const Period& b);

/// Completed years from a day within `from` to a day within `to` (an age, a recall distance), least and most, never
/// below zero at the least unless `to` surely lies before.
struct YearRange {
  std::int64_t least = 0;
  std::int64_t most = 0;
  bool operator==(const YearRange&) const = default;
};
/// Nothing when a side has no limit.
std::optional<YearRange> completed_years_between(const Period& from, const Period& to);
/// "46 to 47", "19".
std::string to_string(const YearRange& range);

}  // namespace witnessmark
