// What numbers in words, in digits and in both come to. Values are arithmetic; which words make one number is
// common practice, no source.
#include <doctest/doctest.h>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

/// The count read from "There were … lamps in the adit."
std::string count_of(const std::string& number) {
  ClaimTable lists;
  lists.equipment = {"lamp", "pump"};
  lists.places = {"adit"};
  return in_short(claims_of("There were " + number + " lamps in the adit.", lists));
}

struct Row {
  std::string number, expected;
};

}  // namespace

TEST_CASE("a number is all of its words") {
  const Row rows[] = {
      {"twelve", "12"},
      {"twenty-two", "22"},
      {"two hundred", "200"},
      {"twelve hundred", "1200"},
      {"two hundred and six", "206"},
      {"two thousand five hundred and six", "2506"},
      {"one hundred and twenty thousand", "120000"},
      {"2,500", "2500"},
      // A phrase or digits to begin with.
      {"a hundred", "100"},
      {"a hundred and one", "101"},
      {"a hundred and twenty", "120"},
      {"a thousand two hundred", "1200"},
      {"2 hundred", "200"},
      {"2 hundred and fifty", "250"},
      {"a couple of hundred", "200"},
      {"half a hundred", "50"},
      // Dozens and scores.
      {"a dozen", "12"},
      {"half a dozen", "6"},
      {"a half-dozen", "6"},
      {"two dozen", "24"},
      {"four dozen", "48"},
      {"a couple of dozen", "24"},
      {"3 dozen", "36"},
      {"a score of", "20"},
      {"three score", "60"},
      {"two hundred dozen", "2400"},
      {"two thousand dozen", "24000"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.number);
    CHECK(count_of(row.number) == "count lamp@adit n=" + row.expected);
  }
}

TEST_CASE("what is no part of a number stays outside it") {
  const Row rows[] = {
      {"a hundred two-inch", "count lamp@adit n=100"},
      {"a score of two-inch", "count lamp@adit n=20"},
      {"two hundred and fifty-odd", "count lamp@adit n=248..252 hedged"},
      {"a hundred pumps and two", "count pump@adit n=100; count lamp@adit n=2"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.number);
    CHECK(count_of(row.number) == row.expected);
  }
}

TEST_CASE("of two numbers with an or both are of one scale") {
  const Row rows[] = {
      {"two or three", "2..3"},
      {"two or three hundred", "200..300"},
      {"two hundred or three hundred", "200..300"},
      {"two or three dozen", "24..36"},
      {"a dozen or fifteen", "12..15"},
      {"eighty or a hundred", "80..100"},
      {"six, seven hundred", "600..700"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.number);
    CHECK(count_of(row.number) == "count lamp@adit n=" + row.expected + " hedged");
  }
}

TEST_CASE("a number ends before it is more than a thousand million, or says the same twice") {
  const Row rows[] = {
      {"999999999 hundred", "count lamp@adit n=999999999"},
      {"nine hundred thousand hundred", "count lamp@adit n=900000"},
      {"two thousand thousand", "count lamp@adit n=2000"},
      {"two hundred hundred", "count lamp@adit n=200"},
      // What follows is no number any more, and too much to look over.
      {"two hundred hundred hundred hundred hundred hundred hundred hundred hundred hundred",
       "present lamp@adit"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.number);
    CHECK(count_of(row.number) == row.expected);
  }
}
