#include "witnessmark/time/day.h"

#include <doctest/doctest.h>

#include <chrono>
#include <random>

using namespace witnessmark;

namespace {
CivilDate civil(std::int64_t year, int month, int day) {
  return {year, month, day};
}
Day day(std::int64_t year, int month, int day_of_month) {
  return to_day({year, month, day_of_month});
}
}  // namespace

TEST_CASE("days count from 1 January 1970 in the proleptic Gregorian calendar") {
  struct Row {
    CivilDate date;
    std::int64_t value;
  };
  // Day counts of the Unix epoch (POSIX) and of the Julian day number 0 = -4713-11-24 proleptic Gregorian,
  // which is 2440588 days before it; 1858-11-17 is the Modified Julian Date 0, MJD of 1970-01-01 being 40587
  // (astronomical almanacs; values from memory).
  const Row rows[] = {{civil(1970, 1, 1), 0},        {civil(1969, 12, 31), -1},
                      {civil(2000, 3, 1), 11017},    {civil(-4713, 11, 24), -2440588},
                      {civil(1858, 11, 17), -40587}, {civil(1600, 2, 29), -135081}};
  for (const Row& row : rows) {
    CAPTURE(to_string(to_day(row.date)));
    CHECK(to_day(row.date).value == row.value);
    CHECK(to_civil(Day{row.value}) == row.date);
  }
}

TEST_CASE("days agree with the standard library's calendar in the years it has") {
  using namespace std::chrono;
  std::mt19937 random(7);
  for (int i = 0; i < 20000; ++i) {
    const auto count = static_cast<int>(random() % 20000000) - 10000000;
    const year_month_day date{sys_days{days{count}}};
    const CivilDate expected =
        civil(static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
              static_cast<int>(static_cast<unsigned>(date.day())));
    REQUIRE(to_civil(Day{count}) == expected);
    REQUIRE(to_day(expected) == Day{count});
    REQUIRE(iso_weekday(Day{count}) == static_cast<int>(weekday{sys_days{days{count}}}.iso_encoding()));
  }
}

TEST_CASE("days are exact a thousand million million years away") {
  for (const std::int64_t year : {1'000'000'000'000'000, -1'000'000'000'000'000}) {
    for (const int month : {1, 2, 3, 12}) {
      const CivilDate date = civil(year, month, days_in_month(year, month));
      CHECK(to_civil(to_day(date)) == date);
      CHECK(to_day(date) + 1 == to_day(add_months(civil(year, month, 1), 1)));
    }
  }
}

TEST_CASE("February follows the leap years") {
  // 1900 ends in 28, 1952 and 2000 in 29: the Gregorian rule.
  CHECK(days_in_month(1900, 2) == 28);
  CHECK(days_in_month(1952, 2) == 29);
  CHECK(days_in_month(2000, 2) == 29);
  CHECK(days_in_month(0, 2) == 29);
  CHECK(days_in_month(-1, 2) == 28);
  CHECK(days_in_month(-4, 2) == 29);
}

TEST_CASE("months are added to the same day or the last there is") {
  struct Row {
    CivilDate from;
    std::int64_t months;
    CivilDate to;
  };
  const Row rows[] = {
      {civil(1962, 1, 31), 1, civil(1962, 2, 28)},  {civil(1964, 1, 31), 1, civil(1964, 2, 29)},
      {civil(1962, 11, 15), 2, civil(1963, 1, 15)}, {civil(1962, 1, 15), -1, civil(1961, 12, 15)},
      {civil(0, 1, 1), -1, civil(-1, 12, 1)},       {civil(1964, 2, 29), 12, civil(1965, 2, 28)},
      {civil(1964, 2, 29), -48, civil(1960, 2, 29)}};
  for (const Row& row : rows) CHECK(add_months(row.from, row.months) == row.to);
}

TEST_CASE("days are written as EDTF writes them") {
  CHECK(to_string(day(1962, 9, 1)) == "1962-09-01");
  CHECK(to_string(day(409, 1, 2)) == "0409-01-02");
  CHECK(to_string(day(0, 12, 31)) == "0000-12-31");
  CHECK(to_string(day(-44, 3, 15)) == "-0044-03-15");
}

TEST_CASE("years are completed on the birthday, of 29 February on 1 March of common years") {
  // The convention of common law; stated because registries differ.
  struct Row {
    Day from, to;
    std::int64_t years;
  };
  const Row rows[] = {{day(1932, 2, 29), day(1950, 2, 28), 17}, {day(1932, 2, 29), day(1950, 3, 1), 18},
                      {day(1932, 2, 29), day(1952, 2, 29), 20}, {day(1932, 3, 2), day(1998, 6, 15), 66},
                      {day(1932, 3, 2), day(1951, 3, 1), 18},   {day(1932, 3, 2), day(1951, 3, 2), 19},
                      {day(1951, 3, 2), day(1932, 3, 2), -19},  {day(1951, 3, 2), day(1951, 3, 2), 0}};
  for (const Row& row : rows) CHECK(completed_years(row.from, row.to) == row.years);
}

TEST_CASE("months are completed on the same day of the month") {
  CHECK(completed_months(day(1962, 9, 1), day(1962, 9, 30)) == 0);
  CHECK(completed_months(day(1962, 9, 1), day(1962, 10, 1)) == 1);
  CHECK(completed_months(day(1962, 1, 31), day(1962, 2, 28)) == 0);
  CHECK(completed_months(day(1962, 1, 31), day(1962, 3, 1)) == 1);
  CHECK(completed_months(day(1962, 12, 15), day(1964, 2, 14)) == 13);
}
