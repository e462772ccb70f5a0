// Dates as a coder types them.
#include <doctest/doctest.h>

#include "whole_job.h"
#include "witnessmark/app/coding_desk.h"

using namespace witnessmark;

TEST_CASE("what is typed for a date is read whole or not at all") {
  const SystemFileReader files;
  const Day today = to_day({2026, 1, 15});
  CodingDesk desk = std::move(CodingDesk::at(whole_job(files, source_tree() / "tests" / "second-site", today),
                                             surroundings_of(files, today)))
                        .value();
  Claim claim;
  claim.interview = "garth-1";
  const auto value_of = [&](const char* text) {
    const Result<TypedDate> date = desk.typed_date(text, claim);
    return date ? to_string(*date->when.dated.value) : std::string("refused");
  };
  for (const char* text :
       {"1951-13", "1951-13-02", "1957~?", "not 1957", "1909-03 and also 1962", "1962-1963", "from 1957",
        "either 1957", "painted in 1957", "March 1909 and also 1962", "forty lamps", "1957 and 1959"}) {
    CAPTURE(text);
    CHECK(value_of(text) == "refused");
    CHECK_FALSE(desk.typed_date(text, claim).error().advice.empty());
  }
  CHECK(value_of("1957~") == "1957~");
  CHECK(value_of("1957/1959") == "1957/1959");
  CHECK(value_of("in the spring of 1957") == "1957-21");
  CHECK(value_of("it was March 1957") == "1957-03");
  // Easter 1957 was on 21 April (computed by the Gregorian rule, Meeus 1991).
  CHECK(value_of("between 1954 and 1971") == "[1954..1971]");
  CHECK(value_of("from 1954 to 1971") == "1954/1971");
  CHECK(value_of("before Easter 1957") == "[..1957-04-20]");
  CHECK(value_of("until Easter 1957") == "../1957-04-21");
  CHECK(value_of("from Easter 1957 on") == "1957-04-21/..");
  CHECK(value_of("not before 1957") == "[1957..]");
  CHECK(value_of("before the spring of 1957") == "[..1957-02-28]");
  CHECK(value_of("either 1958 or 1959") == "[1958,1959]");
  CHECK(value_of("Fifty-eight or fifty-nine") == "[1958,1959]");
  CHECK(value_of("fifty-eight") == "1958");
}
