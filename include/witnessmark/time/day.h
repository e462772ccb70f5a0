#pragma once
#include <compare>
#include <cstdint>
#include <string>

namespace witnessmark {

/// A day of the proleptic Gregorian calendar as a count, 0 for 1970-01-01. Years before 1970 and before 1 are ordinary.
/// A day is the site's local day.
struct Day {
  std::int64_t value = 0;

  friend Day operator+(Day day, std::int64_t days) { return {day.value + days}; }
  friend Day operator-(Day day, std::int64_t days) { return {day.value - days}; }
  friend std::int64_t operator-(Day a, Day b) { return a.value - b.value; }
  auto operator<=>(const Day&) const = default;
};

/// Year (astronomical: 0 is 1 BCE), month 1-12, day of month from 1.
struct CivilDate {
  std::int64_t year = 0;
  int month = 1;
  int day = 1;
  auto operator<=>(const CivilDate&) const = default;
};

/// The day of a civil date; the month must be 1-12, and the day may run past the month's length. Years to plus or minus
/// 10^15 are exact.
Day to_day(const CivilDate& date);
CivilDate to_civil(Day day);

bool is_leap_year(std::int64_t year);

/// 28 to 31.
int days_in_month(std::int64_t year, int month);

/// 1 for Monday to 7 for Sunday (ISO 8601).
int iso_weekday(Day day);

/// The same day of the month that many months on (negative: back), cut to the month's length: 31 January and one month
/// is 28 or 29 February.
CivilDate add_months(const CivilDate& date, std::int64_t months);

/// YYYY-MM-DD, as EDTF writes it.
std::string to_string(Day day);

/// Completed months from one day to a later one: a month is completed on the same day of the month, or on the first of
/// the next month where there is no such day. For an earlier day, minus the months back to it.
std::int64_t completed_months(Day from, Day to);

/// Completed years from one day to a later one; a 29 February is completed on 1 March of common years. For an earlier
/// day, minus the years back to it.
std::int64_t completed_years(Day from, Day to);

}  // namespace witnessmark
