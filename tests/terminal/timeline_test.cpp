#include "terminal/timeline.h"

#include <doctest/doctest.h>

#include "witnessmark/time/edtf.h"

using namespace witnessmark;

namespace {

std::string drawn(const std::vector<std::pair<const char*, const char*>>& rows, int columns) {
  std::vector<TimelineRow> made;
  for (const auto& [label, edtf] : rows) {
    std::optional<Period> period;
    if (*edtf != '\0') period = to_period(*parse_edtf(edtf), DatePolicy{});
    made.push_back({label, period, Role::plain});
  }
  std::string text;
  for (const Block& block : timeline(made, columns)) text += as_text(block.spans) + "\n";
  return text;
}

}  // namespace

// CIDOC CRM P81 (ongoing throughout) and P82 (at some time within): `=` and `-`.
TEST_CASE("sure days, possible days and open sides are told apart by their signs") {
  CHECK(drawn({{"claim", "1951"}, {"e1", "1952"}}, 26) ==
        "claim ==========          \n"
        "e1              ==========\n"
        "      1951      1952      \n");
  CHECK(drawn({{"a", "1951/.."}, {"b", "1953"}}, 20) ==
        "a ----------------->\n"
        "b             -=====\n"
        "  1951  1952  1953  \n");
  CHECK(drawn({{"a", "[1951,1953]"}}, 20) ==
        "a ------------------\n"
        "  1951  1952  1953  \n");
  CHECK(drawn({{"day", "1951-07-02"}, {"none", ""}}, 25) ==
        "day        |             \n"
        "none (no date)\n"
        "           1951-07       \n");
}

TEST_CASE("within a year the scale has months, with one at either side of a month") {
  CHECK(drawn({{"claim", "1951-09"}, {"e12", "1951-09-17"}}, 48) ==
        "claim               -=============              \n"
        "e12                        |                    \n"
        "      1951-08       1951-09       1951-10       \n");
  CHECK(drawn({{"a", "1951-11/1952-02"}}, 50) ==
        "a ------------=========================-----------\n"
        "  1951-11     1951-12     1952-01     1952-02     \n");
  CHECK(drawn({{"a", "1951"}}, 50) ==
        "a ================================================\n"
        "  1951-01    1951-04     1951-07      1951-10     \n");
}

TEST_CASE("nothing is drawn when nothing is dated or there is no room") {
  CHECK(drawn({{"a", ""}}, 40).empty());
  CHECK(drawn({{"a", "1951"}}, 6).empty());
}
