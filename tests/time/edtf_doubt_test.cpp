// The words for marks are those of the Library of Congress specification of 2019-02-04: `?` uncertain, `~`
// approximate, `%` both; the forms are its examples of levels 1 and 2, and ours for intervals and sets.
#include <doctest/doctest.h>

#include "witnessmark/time/period.h"

using namespace witnessmark;

TEST_CASE("what the marks of a date say") {
  struct Row {
    const char *edtf, *words;
  };
  for (const Row& row :
       {Row{"1984?", "uncertain"}, Row{"2004-06~", "approximate"},
        Row{"2004-06-11%", "uncertain and approximate"}, Row{"2004-06-11", ""}, Row{"156X?", "uncertain"},
        Row{"2004-06~-11", "year and month approximate"}, Row{"2004?-06-11", "year uncertain"},
        Row{"?2004-06-~11", "year uncertain, day approximate"},
        Row{"2004-%06-11", "month uncertain and approximate"}, Row{"1957-21~", "approximate"},
        Row{"1957?-21", "year uncertain"}, Row{"1957-?21", "season uncertain"},
        Row{"1957-?34", "part of the year uncertain"},
        Row{"1957?/1959~", "beginning: uncertain; end: approximate"}, Row{"../1962?", "end: uncertain"},
        Row{"1957-?03/1959", "beginning: month uncertain"}, Row{"1957/1959", ""},
        Row{"[1957?,1958]", "1957?: uncertain"},
        Row{"{1957~,1960..1962%}", "1957~: approximate; 1962%: uncertain and approximate"}}) {
    CAPTURE(row.edtf);
    const auto value = parse_edtf(row.edtf);
    REQUIRE(value);
    CHECK(doubt_words(*value) == row.words);
    CHECK(is_uncertain(*value) == (std::string(row.edtf).find_first_of("?%") != std::string::npos));
  }
}

TEST_CASE("a date is told with its doubt") {
  const auto told = [](const char* edtf) {
    const Edtf value = parse_edtf(edtf).value();
    return describe(value, to_period(value, default_date_policy()));
  };
  CHECK(told("1957") == "1957");
  CHECK(told("1957?") == "1957, uncertain");
  CHECK(told("1957~") == "some time from 1956 to 1958, approximate");
  CHECK(told("../1962?") == "until 1962, beginning open; end: uncertain");
}
