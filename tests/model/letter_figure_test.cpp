#include "witnessmark/model/letter_figure.h"

#include <doctest/doctest.h>

using namespace witnessmark;

namespace {

std::string order(const char* a, const char* b) {
  const auto way = compare(*parse_letter_figure(a), *parse_letter_figure(b));
  if (way == std::partial_ordering::less) return "before";
  if (way == std::partial_ordering::greater) return "after";
  return way == std::partial_ordering::equivalent ? "same" : "unordered";
}

}  // namespace

TEST_CASE("the scale's two halves are read alone or together, in the words of the published tables") {
  // FM 2-22.3 (2006), appendix B.
  CHECK(describe(*parse_letter_figure("B2")) == "B usually reliable, 2 probably true");
  CHECK(describe(*parse_letter_figure("4")) == "4 doubtfully true");
  CHECK(describe(*parse_letter_figure("F6")) == "F cannot be judged, 6 cannot be judged");
  CHECK(to_string(*parse_letter_figure("A1")) == "A1");
  for (const char* wrong : {"", "G1", "A7", "a1", "1A", "A12", "A 1", "AB"})
    CHECK_FALSE(parse_letter_figure(wrong));
}

TEST_CASE("F and 6 cannot be judged: they never sort as worst, nor as best") {
  CHECK(order("A1", "B2") == "before");
  CHECK(order("E5", "D4") == "after");
  CHECK(order("F1", "E1") == "unordered");
  CHECK(order("E1", "F1") == "unordered");
  CHECK(order("A6", "A5") == "unordered");
  CHECK(order("A1", "F6") == "unordered");
  CHECK(order("F6", "F6") == "same");
  CHECK(order("A2", "B1") == "unordered");
  CHECK(order("A", "1") == "unordered");
  CHECK(order("B2", "B3") == "before");
}
