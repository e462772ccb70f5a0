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

/// What the standard leaves to its users: months of the seasons, and how far `~ ? %` widen a date. Every use is shown
/// to people under this policy's name. Read from shared/date-policy.json; an institution may replace that file.
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
  Widths approximate;   ///< `~`
  Widths uncertain;     ///< `?`
  Widths both;          ///< `%`

  bool operator==(const DatePolicy&) const = default;
};

/// The policy the program is delivered with: meteorological seasons; `~` and `%` widen a day by 3 days, a month by 1
/// month, a year by 1 year (a setting, not the standard's); `?` widens nothing.
DatePolicy default_date_policy();

/// Reads shared/date-policy.json. The Error names the key at fault.
Result<DatePolicy> parse_date_policy(std::string_view json, std::string_view source);

/// One sentence for people: which months, which widths.
std::string describe(const DatePolicy& policy);

}  // namespace witnessmark
