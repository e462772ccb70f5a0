#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/result.h"
#include "witnessmark/time/day.h"

namespace witnessmark::dates {

/// A feast or holiday and the rule that gives its day in a year.
struct NamedDay {
  enum class Kind { fixed, easter, orthodox_easter, nth_weekday, weekday_from, once };
  Kind kind = Kind::fixed;
  int month = 0, day = 0;  ///< fixed, weekday_from, once; month also of nth_weekday.
  int offset = 0;   ///< Days from Easter; or N of nth_weekday, -1 for the last; or +1/-1 of weekday_from.
  int weekday = 0;  ///< 1 Monday to 7 Sunday.
  std::int64_t year = 0;          ///< once.
  std::string part;               ///< "TNI"; may be empty.
  std::int64_t until = 0;         ///< Last year of the rule, when it is one of `earlier`.
  std::vector<NamedDay> earlier;  ///< Rules of former years, the oldest first.
  std::vector<NamedDay> also;     ///< Where it was kept on another day in the same years.
};

/// Reads a rule as documented in shared/language/en/README.dates.md; the Error has message and advice only.
Result<NamedDay> parse_named_day(std::string_view rule);

/// The day it falls on in that year, by the rule in force then.
Day day_in_year(const NamedDay& named, std::int64_t year);

/// The other days it was kept on in that year; mostly none.
std::vector<Day> other_days_in_year(const NamedDay& named, std::int64_t year);

/// Western Easter by the anonymous Gregorian computus (J. Meeus, Astronomical Algorithms, 1991, ch. 8).
CivilDate gregorian_easter(std::int64_t year);

/// Easter by the Julian computus (Meeus, same chapter), as a Gregorian date.
CivilDate orthodox_easter(std::int64_t year);

}  // namespace witnessmark::dates
