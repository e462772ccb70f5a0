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
       {"1951-13", "1951-13-02", "1957~?", "not 1957", "1909-03 and also 1962", "1962-1963"}) {
    CAPTURE(text);
    CHECK(value_of(text) == "refused");
    CHECK_FALSE(desk.typed_date(text, claim).error().advice.empty());
  }
  CHECK(value_of("1957~") == "1957~");
  CHECK(value_of("1957/1959") == "1957/1959");
  CHECK(value_of("in the spring of 1957") == "1957-21");
  CHECK(value_of("it was March 1957") == "1957-03");
}
