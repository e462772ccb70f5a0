// Questions with their answers: what an answer denies, what it says of a question put in the negative, which
// words of the question it goes along with. Common practice, no source, unless a row names one.
#include <doctest/doctest.h>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

const ClaimTable& lists() {
  static const ClaimTable table = [] {
    ClaimTable made;
    made.equipment = {"stove", "winch", "steam hammer", "gas engine", "weighbridge", "kiln", "tram"};
    made.places = {"galley", "smithy", "hold", "adit", "Coldwick"};
    return made;
  }();
  return table;
}

struct Row {
  std::string text, expected;
};

template <std::size_t N>
void check(const Row (&rows)[N]) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(claims_line(row.text, lists()) == row.expected);
  }
}

}  // namespace

TEST_CASE("words that say nothing do not answer with the next sentence's words") {
  const Row rows[] = {
      {"Q: Was there a stove? | A: Well. No, we had a cold winter.", "absent stove first-hand"},
      {"Q: Was there a stove? | A: Well. We had a cold winter.", ""},
  };
  check(rows);
  const std::string text = "Q: Was there a stove? | A: Well. No, we had a cold winter.";
  const auto claims = claims_of(text, lists());
  REQUIRE(claims.size() == 1);
  const std::string reading = transcript_of(text).reading_text;
  const CodePointRange quote = claims[0].quotes[0];
  CHECK(reading.substr(static_cast<std::size_t>(quote.begin.value), static_cast<std::size_t>(quote.length())) ==
        "No, we had a cold winter.");
}

TEST_CASE("a number that is a name, a size or of people counts no things") {
  const Row rows[] = {
      {"Q: How many stoves were there? | A: In number two, four.", "count stove n=4"},
      {"Q: How many stoves were there? | A: Number two had four.", "count stove n=4"},
      {"Q: How many stoves were there? | A: Four of us looked after them.", ""},
      {"Q: How many stoves were there? | A: Four men looked after them.", ""},
      {"Q: How many stoves were there? | A: Four, four feet high.", "count stove n=4"},
      {"There were six, seven trams in the adit.", "count tram@adit n=6 hedged"},
  };
  check(rows);
}

