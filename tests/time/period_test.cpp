#include "witnessmark/time/period.h"

#include <doctest/doctest.h>

using namespace witnessmark;

namespace {
Period period_of(const char* text) {
  return to_period(*parse_edtf(text), default_date_policy());
}
Day day(std::int64_t year, int month, int day_of_month) {
  return to_day({year, month, day_of_month});
}
}  // namespace

TEST_CASE("a period surely covers only what lies between its latest beginning and its earliest end") {
  // CIDOC CRM: P81 ongoing throughout is the inner, P82 at some time within the outer extent.
  const Period service = period_of("1951/1953");
  CHECK(service.surely_covers(day(1952, 1, 1), day(1953, 1, 1)));
  CHECK(service.surely_covers(day(1951, 12, 31), day(1953, 1, 2)));
  CHECK_FALSE(service.surely_covers(day(1951, 12, 30), day(1953, 1, 1)));
  CHECK_FALSE(service.surely_covers(day(1952, 1, 1), day(1953, 1, 3)));
  CHECK(service.possibly_touches(day(1951, 1, 1), day(1951, 1, 2)));
  CHECK(service.possibly_touches(day(1953, 12, 31), day(1954, 1, 1)));
  CHECK_FALSE(service.possibly_touches(day(1954, 1, 1), day(1955, 1, 1)));
  CHECK_FALSE(service.possibly_touches(day(1950, 12, 31), day(1951, 1, 1)));
  CHECK_FALSE(service.possibly_touches(day(1952, 1, 1), day(1952, 1, 1)));
}

TEST_CASE("an open or unknown side limits nothing and covers nothing") {
  for (const char* text : {"1951/..", "1951/"}) {
    const Period from = period_of(text);
    CHECK(from.possibly_touches(day(2500, 1, 1), day(2500, 1, 2)));
    CHECK_FALSE(from.surely_covers(day(1952, 1, 1), day(1952, 1, 2)));
    CHECK_FALSE(from.past_latest().has_value());
  }
  CHECK(period_of("1951/..").end.kind == Boundary::Kind::open);
  CHECK(period_of("1951/").end.kind == Boundary::Kind::unknown);
  CHECK(period_of("../1951").begin.kind == Boundary::Kind::open);
  CHECK(period_of("/1951").begin.kind == Boundary::Kind::unknown);
}

TEST_CASE("some time within a period is any stretch of at least a day inside it") {
  CHECK(to_string(some_time_within(period_of("1951"))) ==
        "[1951-01-01..1951-12-31 | 1951-01-02..1952-01-01)");
  CHECK(to_string(some_time_within(period_of("1951-06-14"))) ==
        "[1951-06-14..1951-06-14 | 1951-06-15..1951-06-15)");
  CHECK(to_string(some_time_within(period_of("1951/1953"))) ==
        "[1951-01-01..1953-12-31 | 1951-01-02..1954-01-01)");
  CHECK(to_string(some_time_within(period_of("1951/.."))) == "[1951-01-01.. | 1951-01-02..)");
  CHECK(to_string(some_time_within(period_of("/1953"))) == "[?..1953-12-31 | ..1954-01-01)");
}

TEST_CASE("periods are described for people in inclusive dates") {
  struct Row {
    const char* text;
    const char* words;
  };
  const Row rows[] = {{"1962-09-01/1962-11-30", "September to November 1962"},
                      {"1962-23", "September to November 1962"},
                      {"1962-24", "December 1962 to February 1963"},
                      {"1962-09-14", "14 September 1962"},
                      {"1962-09", "September 1962"},
                      {"1962", "1962"},
                      {"1962-09-14/1962-09-20", "14 to 20 September 1962"},
                      {"1962-09-14/1962-10-02", "14 September to 2 October 1962"},
                      {"1962-12-30/1963-01-02", "30 December 1962 to 2 January 1963"},
                      {"{1960,1961}", "1960 to 1961"},
                      {"1964/2008", "beginning 1964, ending 2008"},
                      {"1960/", "from 1960, end unknown"},
                      {"1960/..", "from 1960, end open"},
                      {"/1960-05", "until May 1960, beginning unknown"},
                      {"../1960-05-03", "until 3 May 1960, beginning open"},
                      {"201X", "some time from 2010 to 2019"},
                      {"1985-XX-XX", "some time in 1985"},
                      {"2004-06-11~", "some time from 8 to 14 June 2004"},
                      {"[..1760-12-03]", "some time up to 3 December 1760"},
                      {"[1760-12..]", "some time from 1 December 1760 on"},
                      {"-0044-03-15", "15 March 45 BCE"},
                      {"0000", "1 BCE"},
                      {"/", "beginning unknown, end unknown"}};
  for (const Row& row : rows) {
    INFO(std::string(row.text));
    CHECK(describe(period_of(row.text)) == row.words);
  }
}
