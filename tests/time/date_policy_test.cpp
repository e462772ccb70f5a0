#include "witnessmark/time/date_policy.h"

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "witnessmark/time/period.h"

using namespace witnessmark;

namespace {

std::string delivered_policy() {
  std::ifstream file(WITNESSMARK_SOURCE_DIR "/shared/date-policy.json");
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

std::string period_of(const char* text, const DatePolicy& policy) {
  return to_string(to_period(*parse_edtf(text), policy));
}

std::string fault(std::string_view json) {
  const auto policy = parse_date_policy(json, "policy.json");
  return policy ? "" : to_string(policy.error());
}

}  // namespace

TEST_CASE("the policy delivered with the program is the one built in") {
  const auto policy = parse_date_policy(delivered_policy(), "shared/date-policy.json");
  REQUIRE_MESSAGE(policy.ok(), (policy.ok() ? "" : to_string(policy.error())));
  CHECK(*policy == default_date_policy());
}

TEST_CASE("keys left out keep what is built in") {
  CHECK(*parse_date_policy("{}", "p") == default_date_policy());
  const auto policy =
      parse_date_policy(R"({"name": "mill", "widths": {"uncertain": {"year": {"years": 2}}}})", "p");
  CHECK(policy->name == "mill");
  CHECK(policy->uncertain.year == Margin{0, 0, 2});
  CHECK(policy->approximate == default_date_policy().approximate);
}

TEST_CASE("a fault in a policy names its key") {
  struct Row {
    const char* json;
    const char* error;
  };
  const Row rows[] = {
      {"{\n \"name\": ,}",
       "policy.json:2:10: the file is not valid JSON (check the commas, quotes and brackets here)"},
      {"[]", "policy.json:1:1: the file holds no object (write it as { … })"},
      {R"({"hemisfere": "northern"})",
       "policy.json: key `hemisfere`: is not known (the keys here are about, name, hemisphere, "
       "season_first_months, "
       "winter_begins_year_before, widths, parts)"},
      {R"({"hemisphere": "eastern"})",
       "policy.json: key `hemisphere`: is neither \"northern\" nor \"southern\" (write one of the two)"},
      {R"({"season_first_months": {"spring": 13}})",
       "policy.json: key `season_first_months.spring`: is not a whole number from 1 to 12 (correct the "
       "number)"},
      {R"({"season_first_months": {"fall": 9}})",
       "policy.json: key `season_first_months.fall`: is not known (the keys here are spring, summer, autumn, "
       "winter)"},
      {R"({"widths": {"approximate": {"day": {"days": -1}}}})",
       "policy.json: key `widths.approximate.day.days`: is not a whole number from 0 to 100000 (correct the "
       "number)"},
      {R"({"widths": {"approximate": {"day": {"days": 1.5}}}})",
       "policy.json: key `widths.approximate.day.days`: is not a whole number from 0 to 100000 (correct the "
       "number)"},
      {R"({"widths": {"both": {"year": {"years": 18446744073709551615}}}})",
       "policy.json: key `widths.both.year.years`: is not a whole number from 0 to 100000 (correct the "
       "number)"},
      {R"({"parts": {"year": {"early": [1, 13]}}})",
       "policy.json: key `parts.year.early`: is not the first and the last of the months 1 to 12 (write it "
       "like "
       "[1, 12])"},
      {R"({"parts": {"decade": {"late": [9, 5]}}})",
       "policy.json: key `parts.decade.late`: is not the first and the last of the years 0 to 9 (write it "
       "like "
       "[0, 9])"},
      {R"({"parts": {"month": {"end": [-1, 31]}}})",
       "policy.json: key `parts.month.end`: is not the first and the last of the days 1 to 31 (write it like "
       "[1, 31])"},
      {R"({"parts": {"week": {}}})",
       "policy.json: key `parts.week`: is not known (the keys here are year, season, month, decade, "
       "century)"},
      {R"({"parts": {"season": {"late": 2}}})",
       "policy.json: key `parts.season.late`: is not the first and the last of the months 1 to 3 (write it "
       "like "
       "[1, 3])"},
      {R"({"widths": 18E6518})",
       "policy.json: a number in the file is too large (write widths of at most 100000)"},
      {R"({"widths": []})", "policy.json: key `widths`: is not an object (write it as { … })"},
      {R"({"name": ""})",
       "policy.json: key `name`: is not a text (write a name that people will see beside the dates)"},
      {R"({"winter_begins_year_before": "no"})",
       "policy.json: key `winter_begins_year_before`: is neither true nor false (write one of the two)"},
  };
  for (const Row& row : rows) {
    INFO(std::string(row.json));
    CHECK(fault(row.json) == row.error);
  }
}

TEST_CASE("seasons without hemisphere follow the policy, the others do not") {
  DatePolicy southern = default_date_policy();
  southern.hemisphere = DatePolicy::Hemisphere::southern;
  CHECK(period_of("1962-21", southern) == period_of("1962-29", default_date_policy()));
  CHECK(period_of("1962-22", southern) == period_of("1962-30", default_date_policy()));
  CHECK(period_of("1962-23", southern) == period_of("1962-31", default_date_policy()));
  CHECK(period_of("1962-24", southern) == period_of("1962-32", default_date_policy()));
  for (const char* text : {"1962-25", "1962-28", "1962-29", "1962-32", "1962-33", "1962-39", "1962-41"}) {
    CHECK(period_of(text, southern) == period_of(text, default_date_policy()));
  }
}

TEST_CASE("the season over New Year may be named after the year it ends in") {
  DatePolicy policy = default_date_policy();
  CHECK(period_of("1962-24", policy) == "[1962-12-01..1962-12-01 | 1963-03-01..1963-03-01)");
  policy.winter_begins_year_before = true;
  CHECK(period_of("1962-24", policy) == "[1961-12-01..1961-12-01 | 1962-03-01..1962-03-01)");
  CHECK(period_of("1962-30", policy) == "[1961-12-01..1961-12-01 | 1962-03-01..1962-03-01)");
  CHECK(period_of("1962-23", policy) == "[1962-09-01..1962-09-01 | 1962-12-01..1962-12-01)");
}

TEST_CASE("an interval that begins in the season over New Year begins before it ends") {
  CHECK(period_of("1962-24/1962-21", default_date_policy()) ==
        "[1961-12-01..1962-02-28 | 1962-03-02..1962-06-01)");
  // Autumn to summer of one year is possible in the south only; in the north all that is certain are its
  // limits.
  CHECK(period_of("1962-23/1962-22", default_date_policy()) ==
        "[1962-06-01..1962-11-30 | 1962-06-02..1962-12-01)");
}

TEST_CASE("signs on components widen by the component, neighbours under one sign once") {
  const DatePolicy policy = default_date_policy();
  CHECK(period_of("2004-06-11~", policy) == "[2004-06-08..2004-06-14 | 2004-06-09..2004-06-15)");
  CHECK(period_of("2004-06~-11", policy) == "[2004-05-11..2004-07-11 | 2004-05-12..2004-07-12)");
  CHECK(period_of("2004~-06-11", policy) == "[2003-06-11..2005-06-11 | 2003-06-12..2005-06-12)");
  CHECK(period_of("2004~-06-~11", policy) == "[2003-06-08..2005-06-14 | 2003-06-09..2005-06-15)");
  CHECK(period_of("?2004-06-04~", policy) == "[2004-06-01..2004-06-07 | 2004-06-02..2004-06-08)");
}

TEST_CASE("a policy is described in one sentence") {
  CHECK(describe(default_date_policy()) ==
        "Date policy \"built-in\": northern hemisphere, spring March to May, summer June to August, autumn "
        "September to "
        "November, winter December to February; the season over New Year is named after the year it begins "
        "in; `~` "
        "widens a day by 3 days, a month or season by 1 month, a year by 1 year; `?` widens by nothing; `%` "
        "widens a "
        "day by 3 days, a month or season by 1 month, a year by 1 year.");
  DatePolicy southern = default_date_policy();
  southern.hemisphere = DatePolicy::Hemisphere::southern;
  CHECK(describe(southern).find("southern hemisphere, spring September to November") != std::string::npos);
}
