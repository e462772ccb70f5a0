#include <doctest/doctest.h>

#include "witnessmark/time/edtf.h"

using namespace witnessmark;

namespace {

struct Row {
  const char* text;
  int column;
  const char* message;  ///< A part of it.
  const char* advice;   ///< A part of it.
};

template <std::size_t count>
void check(const Row (&rows)[count]) {
  for (const Row& row : rows) {
    INFO(std::string(row.text));
    const auto parsed = parse_edtf(row.text);
    REQUIRE_FALSE(parsed.ok());
    CAPTURE(to_string(parsed.error()));
    CHECK(parsed.error().column == row.column);
    CHECK(parsed.error().message.find(row.message) != std::string::npos);
    CHECK(parsed.error().advice.find(row.advice) != std::string::npos);
  }
}

}  // namespace

TEST_CASE("the syntax of the draft of 2012 is named together with what to write today") {
  // Section "Differences" of the specification of 2019-02-04.
  const Row rows[] = {
      {"199u", 4, "`u` is the 2012 draft's", "`199X`"},
      {"1999-uu", 6, "`u` is the 2012 draft's", "`1999-XX`"},
      {"156u-12-25", 4, "`u` is the 2012 draft's", "`156X-12-25`"},
      {"196x", 4, "masked precision", "`196X`"},
      {"19xx", 3, "masked precision", "`19XX`"},
      {"unknown/2006", 1, "`unknown` is the 2012 draft's", "`/2006`"},
      {"2004-06-01/unknown", 12, "`unknown` is the 2012 draft's", "`2004-06-01/`"},
      {"2004-01-01/open", 12, "`open` is the 2012 draft's", "`2004-01-01/..`"},
      {"1984?~", 5, "`?~` is the 2012 draft's", "`1984%`"},
      {"2004-06~?", 8, "`~?` is the 2012 draft's", "`2004-06%`"},
      {"(2011)-06-04~", 1, "parentheses", "to the left of one component"},
      {"2011-(06-04)~", 6, "parentheses", "to the left of one component"},
      {"y170000002", 1, "`y`", "`Y170000002`"},
      {"y-17e7", 1, "`y`", "`Y-17E7`"},
      {"Y-17e7", 5, "`e`", "`Y-17E7`"},
      {"196p2", 4, "`p`", "write `S`"},
      {"1960p2", 5, "`p`", "`1960S2`"},
      {"y17101e4p3", 1, "`y`", "`Y17101E4S3`"},
      {"2001-21^southernHemisphere", 8, "`^`", "29 to 32 southern"},
      {"{1960,196u}", 10, "`u`", "`{1960,196X}`"},
  };
  check(rows);
}

TEST_CASE("what is not EDTF is refused with the column and what to write") {
  const Row rows[] = {
      {"", 1, "empty", "1951-06-14"},
      {"193", 1, "3 digits instead of four", "195X"},
      {"12345", 1, "more than four digits", "`Y`"},
      {"19510614", 1, "more than four digits", "join year"},
      {"+2006", 1, "plus sign", "leave out"},
      {"-0000", 1, "no year -0000", "0000"},
      {"1984 ", 5, "space", "leave out every space"},
      {" 1984", 1, "space", "leave out every space"},
      {"[1667,1668, 1670..1672]", 12, "space", "leave out every space"},
      {"1951-13", 6, "no month 13", "01 to 12"},
      {"1951-00", 6, "no month 00", "01 to 12"},
      {"1951-2X", 6, "no month 2X", "01 to 12"},
      {"1951-42", 6, "no month 42", "21 to 41"},
      {"1951-06-00", 9, "no day 00", "01 to 31"},
      {"1951-06-4X", 9, "no day 4X", "01 to 31"},
      {"1951-6", 6, "month must have two digits", "01 to 12"},
      {"1951-06-5", 9, "day must have two digits", "01 to 31"},
      {"1951-", 6, "month must have two digits", ""},
      {"1951-02-29", 1, "no such day", "length of the month"},
      {"1900-02-29", 1, "no such day", "length of the month"},
      {"156X-11-31", 1, "no such day", "length of the month"},
      {"19X1-02-29", 1, "no such day", "length of the month"},
      {"1951-23-01", 8, "season has no day", "01 to 12"},
      {"1951/06/14", 8, "only one `/`", ""},
      {"1953/1951", 6, "ends before it begins", "earlier date first"},
      {"1951-36/1951-34", 9, "ends before it begins", "earlier date first"},
      {"14.06.1951", 1, "2 digits instead of four", ""},
      {"June 1951", 1, "`J` is out of place", "year-month-day"},
      {"1951-06-14T25:00:00", 12, "no hour 25", ""},
      {"1951-06-14T24:00:01", 12, "no hour 24", "24:00:00"},
      {"1951-06-14T10:60:00", 15, "no minute 60", ""},
      {"1951-06-14T10:10:60", 20, "no second 60", "23:59:60"},
      {"1951-06-14T10:10", 17, "`:` is missing", "hh:mm:ss"},
      {"1951-06-14T10:10:10.5", 20, "fractions", ""},
      {"1951-06-14T10:10:10z", 20, "capital", "`Z`"},
      {"1951-06-14T10:10:10+0230", 20, "lacks its `:`", "+hh:mm"},
      {"1951-06-14T10:10:10-00:00", 20, "no minus", "`Z`"},
      {"1951-06-14T10:10:10+24", 21, "no hour 24", ""},
      {"1951-06T10:10:10", 8, "whole date", ""},
      {"1951-06~-14T10:10:10", 12, "no signs", ""},
      {"1951-06-14T10:10:10/1952", 11, "without time of day", "leave out the time"},
      {"Y1951", 1, "more than four digits", "without `Y`"},
      {"Y00001", 1, "leading zero", "Y17000"},
      {"Y1E3", 1, "more than four digits", "without `Y`"},
      {"Y17E99", 1, "too large", "1E15"},
      {"Y99999999999999999999", 1, "too large", "1E15"},
      {"Y20067890-14-10", 10, "out of place", ""},
      {"1950S0", 6, "not a positive number", ""},
      {"1950S5", 5, "only 4 significant digits", "smaller"},
      {"195XS2", 5, "either unspecified or significant", ""},
      {"1951??", 6, "a second sign", "`%`"},
      {"[1999", 6, "lacks its `]`", "close the set"},
      {"{1999", 6, "lacks its `}`", "close the set"},
      {"[1999]-05", 7, "text follows the set", ""},
      {"[]", 2, "date is missing", ""},
      {"[1999,]", 7, "date is missing", ""},
      {"[..]", 2, "stands alone", ""},
      {"[1667,..1984]", 7, "middle of the set", "beginning or the end"},
      {"[1667..,1984]", 6, "middle of the set", "beginning or the end"},
      {"[1667..1670-05]", 2, "differ in precision", ""},
      {"[1670..1667]", 2, "ends before it begins", ""},
      {"[166X..1670]", 2, "all its digits", ""},
      {"1951-06-14\xC3\xA9", 11, "a character is out of place", ""},
  };
  check(rows);
}

TEST_CASE("leap seconds exist only at the end of a UTC day") {
  CHECK(parse_edtf("1972-06-30T23:59:60Z").ok());
  CHECK(parse_edtf("1972-07-01T01:59:60+02:00").ok());
  CHECK(parse_edtf("1972-06-30T19:59:60-04").ok());
  CHECK_FALSE(parse_edtf("1972-06-30T23:59:60+02").ok());
}
