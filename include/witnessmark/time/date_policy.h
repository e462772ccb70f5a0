#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "witnessmark/base/result.h"

namespace witnessmark {

/// A widening on both sides, for one precision.
struct Margin {
  std::int64_t days = 0;
  std::int64_t months = 0;
  std::int64_t years = 0;
  bool operator==(const Margin&) const = default;
};

/// What the standard leaves to its users: months of the seasons, how far `~ ? %` widen a date, and what part of a unit
/// early, mid, late, the beginning and the end of it are. Every use is shown to people under this policy's name. Read from shared/date-policy.json; an institution may replace that file.
struct DatePolicy {
  enum class Hemisphere { northern, southern };

  std::string name = "built-in";
  Hemisphere hemisphere = Hemisphere::northern;
  /// First month of spring, summer, autumn, winter (codes 21-24) in the northern hemisphere, each three months long.
  /// Winter 1962 begins in December 1962 unless winter_begins_year_before.
  std::array<int, 4> season_begins{3, 6, 9, 12};
  bool winter_begins_year_before = false;

  /// Widening of a value whose precision is day, month (or season), year, by the sign on it.
  struct Widths {
    Margin day, month, year;
    bool operator==(const Widths&) const = default;
  };
  /// What part of a unit a word stands for, in the units below it, both ends inclusive: early of a year {1, 4} is January
  /// to April. Words overlap where people's use does; the standard has none of them.
  struct Part {
    int first = 0;
    int last = 0;
    bool operator==(const Part&) const = default;
  };
  struct Parts {
    Part early, mid, late, beginning, end;
    bool operator==(const Parts&) const = default;
  };
  Parts of_year{{1, 4}, {5, 8}, {9, 12}, {1, 3}, {10, 12}};           ///< Months 1 to 12.
  Parts of_season{{1, 2}, {1, 3}, {2, 3}, {1, 1}, {3, 3}};            ///< Months 1 to 3 of the season.
  Parts of_month{{1, 14}, {8, 23}, {17, 31}, {1, 10}, {21, 31}};      ///< Days; past the last day: the last.
  Parts of_decade{{0, 4}, {3, 7}, {5, 9}, {0, 2}, {7, 9}};            ///< Years 0 to 9.
  Parts of_century{{0, 39}, {30, 69}, {60, 99}, {0, 19}, {80, 99}};   ///< Years 0 to 99.

  Widths approximate;   ///< `~`
  Widths uncertain;     ///< `?`
  Widths both;          ///< `%`

  bool operator==(const DatePolicy&) const = default;
};

/// The policy the program is delivered with: meteorological seasons; `~` and `%` widen a day by 3 days, a month by 1
/// month, a year by 1 year (a setting, not the standard's); `?` widens nothing. Late 1962 is September to December, the end of
/// 1962 October to December (settings as well; common practice, no source).
DatePolicy default_date_policy();

/// Reads shared/date-policy.json. The Error names the key at fault.
Result<DatePolicy> parse_date_policy(std::string_view json, std::string_view source);

/// One sentence for people: which months, which widths.
std::string describe(const DatePolicy& policy);

}  // namespace witnessmark
