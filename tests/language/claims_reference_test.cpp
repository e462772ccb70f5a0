// What is stated of what: words that only look like verbs, pronouns, words that stand for a name, places said
// of another thing. Readings are common practice, no source.
#include <doctest/doctest.h>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

std::string read(const std::string& text) {
  static const ClaimTable lists = [] {
    ClaimTable made;
    made.equipment = {"lamp", "winch", "stove", "boiler", "turbine", "crane"};
    made.places = {"galley", "mess room", "foredeck", "Tolbeck"};
    return made;
  }();
  return in_short(claims_of(text, lists));
}

struct Row {
  std::string text, expected;
};

template <std::size_t N>
void check(const Row (&rows)[N]) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(read(row.text) == row.expected);
  }
}

}  // namespace

TEST_CASE("a word that ends like a past form is none if it is a number or a name") {
  const Row rows[] = {
      {"We had several hundred lamps.", "present lamp first-hand"},
      {"He showed Alfred the winch.", ""},
      {"They varnished the winch.", "happened winch {varnished}"},
      {"Varnished the winch in 1950.", "happened winch 1950 {Varnished}"},
  };
  check(rows);
}
