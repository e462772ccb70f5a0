#include "witnessmark/base/counted.h"

#include <doctest/doctest.h>

using namespace witnessmark;

TEST_CASE("one of a thing has no plural") {
  CHECK(counted(0, "turn") == "0 turns");
  CHECK(counted(1, "turn") == "1 turn");
  CHECK(counted(std::size_t{2}, "journal event") == "2 journal events");
  CHECK(counted(std::int64_t{-1}, "year") == "-1 years");
}
