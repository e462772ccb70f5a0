#include "language/dates/words/named_days.h"

#include <doctest/doctest.h>

using namespace witnessmark;
using namespace witnessmark::dates;

namespace {
std::string on(std::string_view rule, std::int64_t year) {
  return to_string(day_in_year(parse_named_day(rule).value(), year));
}
}  // namespace

TEST_CASE("Western Easter falls on the published days") {
  // J. Meeus, Astronomical Algorithms (1991), chapter 8, gives 1991, 1992, 1993, 1954, 2000 and 1818 (from
  // memory).
  const std::pair<std::int64_t, const char*> rows[] = {
      {1991, "1991-03-31"}, {1992, "1992-04-19"}, {1993, "1993-04-11"},
      {1954, "1954-04-18"}, {2000, "2000-04-23"}, {1818, "1818-03-22"},
      {1943, "1943-04-25"}, {1962, "1962-04-22"}, {1957, "1957-04-21"}};
  for (const auto& [year, day] : rows) CHECK(on("easter", year) == day);
  for (std::int64_t year = 1583; year <= 4099; ++year) {  // A Sunday from 22 March to 25 April
    const Day easter = to_day(gregorian_easter(year));
    CHECK(iso_weekday(easter) == 7);
    CHECK(easter >= to_day({year, 3, 22}));
    CHECK(easter <= to_day({year, 4, 25}));
  }
}

TEST_CASE("Orthodox Easter falls on the published days") {
  // Meeus, same chapter: 12 April (Julian) in 179, 711 and 1243; here as Gregorian days. 2024-05-05 and
  // 2021-05-02 from church calendars. All from memory.
  CHECK(to_string(to_day(orthodox_easter(2024))) == "2024-05-05");
  CHECK(to_string(to_day(orthodox_easter(2021))) == "2021-05-02");
  CHECK(to_string(to_day(orthodox_easter(1243))) == "1243-04-19");
  CHECK(to_string(to_day(orthodox_easter(711))) == "0711-04-16");
  CHECK(to_string(to_day(orthodox_easter(179))) == "0179-04-11");  // one day behind in that century
  for (std::int64_t year = 1900; year <= 2099; ++year) CHECK(iso_weekday(to_day(orthodox_easter(year))) == 7);
}

TEST_CASE("Rules of named days") {
  CHECK(on("12-25", 1957) == "1957-12-25");
  CHECK(on("02-29", 1957) == "1957-02-28");
  CHECK(on("easter-2", 1962) == "1962-04-20");
  CHECK(on("easter+49", 1962) == "1962-06-10");
  CHECK(on("4 thursday of 11", 1957) == "1957-11-28");
  CHECK(on("last monday of 5", 1971) == "1971-05-31");
  CHECK(on("1 monday of 9", 1957) == "1957-09-02");
  CHECK(on("sunday on or after 11-27", 1957) == "1957-12-01");
  CHECK(on("monday on or before 05-24", 1957) == "1957-05-20");
  CHECK(on("1945-05-08", 1957) == "1945-05-08");
}

TEST_CASE("A rule holds until its last year, then the next") {
  // Uniform Monday Holiday Act, Public Law 90-363, section 1(a): in force from 1 January 1971; Public Law
  // 94-97 moves Veterans Day back from 1978. Joint resolution of 26 December 1941 (55 Stat. 862) for
  // Thanksgiving.
  const auto veterans = "11-11 until 1970; 4 monday of 10 until 1977; 11-11";
  CHECK(on(veterans, 1970) == "1970-11-11");
  CHECK(on(veterans, 1971) == "1971-10-25");
  CHECK(on(veterans, 1977) == "1977-10-24");
  CHECK(on(veterans, 1978) == "1978-11-11");
  const auto thanksgiving =
      "last thursday of 11 until 1938; 3 thursday of 11 or last thursday of 11 until 1941; 4 thursday of 11";
  CHECK(on(thanksgiving, 1933) == "1933-11-30");
  CHECK(on(thanksgiving, 1940) == "1940-11-21");
  CHECK(on(thanksgiving, 1944) == "1944-11-23");
  const auto others = other_days_in_year(parse_named_day(thanksgiving).value(), 1940);
  REQUIRE(others.size() == 1);
  CHECK(to_string(others[0]) == "1940-11-28");
  CHECK(other_days_in_year(parse_named_day(thanksgiving).value(), 1944).empty());
}

TEST_CASE("Rules that are none are refused") {
  for (const char* rule : {"", "13-01", "02-30", "easter+", "easter+x", "5 monday of 9", "first monday of 9",
                           "monday of 9", "2 funday of 5", "sunday on or near 11-27", "1957-02-29", "12-25 ",
                           "11-11; 11-12", "11-11 until x; 11-12", "11-11 or 13-11", "11-11 until 1970;"})
    CHECK_FALSE(parse_named_day(rule).ok());
}
