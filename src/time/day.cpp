#include "witnessmark/time/day.h"

#include <fmt/format.h>

#include <algorithm>

namespace witnessmark {
namespace {

constexpr std::int64_t kDaysOf400Years = 146097;
constexpr std::int64_t kDaysFromYear0ToEpoch = 719468;  ///< From 0000-03-01 to 1970-01-01.

std::int64_t floor_div(std::int64_t a, std::int64_t b) {
  const std::int64_t quotient = a / b;
  return (a % b != 0 && (a < 0) != (b < 0)) ? quotient - 1 : quotient;
}

}  // namespace

// Years are counted from 1 March, so that the leap day is the last of its year, and in cycles of 400 years,
// which all have the same number of days.
Day to_day(const CivilDate& date) {
  const std::int64_t year = date.month <= 2 ? date.year - 1 : date.year;
  const std::int64_t cycle = floor_div(year, 400);
  const std::int64_t year_of_cycle = year - cycle * 400;
  const std::int64_t month_from_march = (date.month + 9) % 12;
  const std::int64_t day_of_year = (153 * month_from_march + 2) / 5 + date.day - 1;
  const std::int64_t day_of_cycle =
      year_of_cycle * 365 + year_of_cycle / 4 - year_of_cycle / 100 + day_of_year;
  return {cycle * kDaysOf400Years + day_of_cycle - kDaysFromYear0ToEpoch};
}

CivilDate to_civil(Day day) {
  const std::int64_t days = day.value + kDaysFromYear0ToEpoch;
  const std::int64_t cycle = floor_div(days, kDaysOf400Years);
  const std::int64_t day_of_cycle = days - cycle * kDaysOf400Years;
  const std::int64_t year_of_cycle =
      (day_of_cycle - day_of_cycle / 1460 + day_of_cycle / 36524 - day_of_cycle / 146096) / 365;
  const std::int64_t day_of_year =
      day_of_cycle - (365 * year_of_cycle + year_of_cycle / 4 - year_of_cycle / 100);
  const std::int64_t month_from_march = (5 * day_of_year + 2) / 153;
  CivilDate date;
  date.day = static_cast<int>(day_of_year - (153 * month_from_march + 2) / 5 + 1);
  date.month = static_cast<int>(month_from_march < 10 ? month_from_march + 3 : month_from_march - 9);
  date.year = cycle * 400 + year_of_cycle + (date.month <= 2 ? 1 : 0);
  return date;
}

bool is_leap_year(std::int64_t year) {
  return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

int days_in_month(std::int64_t year, int month) {
  constexpr int kLengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && is_leap_year(year) ? 29 : kLengths[month - 1];
}

int iso_weekday(Day day) {
  // 1970-01-01 was a Thursday.
  return static_cast<int>(day.value + 3 - floor_div(day.value + 3, 7) * 7) + 1;
}

CivilDate add_months(const CivilDate& date, std::int64_t months) {
  const std::int64_t count = date.year * 12 + (date.month - 1) + months;
  CivilDate moved;
  moved.year = floor_div(count, 12);
  moved.month = static_cast<int>(count - moved.year * 12) + 1;
  moved.day = std::min(date.day, days_in_month(moved.year, moved.month));
  return moved;
}

std::string to_string(Day day) {
  const CivilDate date = to_civil(day);
  const bool negative = date.year < 0;
  return fmt::format("{}{:04}-{:02}-{:02}", negative ? "-" : "", negative ? -date.year : date.year,
                     date.month, date.day);
}

std::int64_t completed_months(Day from, Day to) {
  if (to < from) return -completed_months(to, from);
  const CivilDate a = to_civil(from);
  const CivilDate b = to_civil(to);
  return (b.year - a.year) * 12 + (b.month - a.month) - (b.day < a.day ? 1 : 0);
}

std::int64_t completed_years(Day from, Day to) {
  return completed_months(from, to) / 12;
}

}  // namespace witnessmark
