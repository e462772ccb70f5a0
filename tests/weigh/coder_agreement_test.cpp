#include "witnessmark/weigh/coder_agreement.h"

#include <doctest/doctest.h>
#include <fmt/core.h>

#include <sstream>
#include <string>

using namespace witnessmark;

namespace {

using Table = std::vector<std::vector<std::int64_t>>;
using Values = std::vector<std::vector<std::optional<double>>>;

/// Six digits, or why there is no value.
std::string shown(const Coefficient& coefficient) {
  return coefficient.value ? fmt::format("{:.6f}", *coefficient.value)
                           : std::string(to_string(coefficient.why));
}

/// One coder a line, `.` where a value is missing.
Values read(const std::string& lines) {
  Values values;
  std::istringstream rows(lines);
  for (std::string row; std::getline(rows, row);) {
    auto& coder = values.emplace_back();
    std::istringstream words(row);
    for (std::string word; words >> word;)
      coder.push_back(word == "." ? std::nullopt : std::optional(std::stod(word)));
  }
  return values;
}

std::vector<bool> row(const std::string& text) {
  std::vector<bool> boundaries;
  for (const char c : text) boundaries.push_back(c == '1');
  return boundaries;
}

std::string shown(const BoundaryDifference& difference) {
  return fmt::format("{}/{}", difference.misses, difference.windows);
}

}  // namespace

TEST_CASE("alpha gives the published values for four observers, twelve units and values missing") {
  // Krippendorff, "Computing Krippendorff's Alpha-Reliability" (2011), example C: nominal 0.743, ordinal
  // 0.815, interval 0.849; the exact fractions 113/152, 108577/133160 and 951/1120 worked out from the
  // definition.
  const Values values = read(
      "1 2 3 3 2 1 4 1 2 . . .\n"
      "1 2 3 3 2 2 4 1 2 5 . 3\n"
      ". 3 3 3 2 3 4 2 2 5 1 .\n"
      "1 2 3 3 2 4 4 1 2 5 1 .");
  CHECK(shown(krippendorff_alpha(values, Scale::nominal)) == "0.743421");
  CHECK(shown(krippendorff_alpha(values, Scale::ordinal)) == "0.815388");
  CHECK(shown(krippendorff_alpha(values, Scale::interval)) == "0.849107");
}

TEST_CASE("alpha gives the known values for three observers and fifteen units") {
  // Wikipedia, "Krippendorff's alpha" (data from memory): nominal 0.691, interval 0.811;
  // the fractions 56/81 and 643/793 worked out from the definition.
  const Values values = read(
      ". . . . . 3 4 1 2 1 1 3 3 . 3\n"
      "1 . 2 1 3 3 4 3 . . . . . . .\n"
      ". . 2 1 3 4 4 . 2 1 1 3 3 . 4");
  CHECK(shown(krippendorff_alpha(values, Scale::nominal)) == "0.691358");
  CHECK(shown(krippendorff_alpha(values, Scale::interval)) == "0.810845");
}

TEST_CASE("nominal alpha of two coders without gaps is one less the chance-corrected share of differences") {
  // Krippendorff 2007: alpha = 1 - ((n-1)/n)(1-pi), n values, pi Scott's. Worked by hand: 3 of 4 units the
  // same, shares 3/8 and 5/8, so pi = (3/4 - 34/64) / (30/64) = 7/15 and alpha = 1 - (7/8)(8/15) = 8/15.
  CHECK(shown(krippendorff_alpha(read("1 1 2 2\n1 2 2 2"), Scale::nominal)) == "0.533333");
}

TEST_CASE("alpha below zero is disagreement by rule") {
  // Worked by hand: n 4, each value twice, all pairs differ: 1 - 3 * 2 / 4.
  CHECK(shown(krippendorff_alpha(read("1 2\n2 1"), Scale::nominal)) == "-0.500000");
}

TEST_CASE("what is undefined is said to be so, and never 0 or 1") {
  CHECK(shown(krippendorff_alpha(read("1 1 1\n1 1 ."), Scale::nominal)) == "every value is the same");
  CHECK(shown(krippendorff_alpha(read("1 2 .\n. . 3"), Scale::ordinal)) == "nothing was coded by two");
  CHECK(shown(krippendorff_alpha({}, Scale::interval)) == "nothing was coded by two");
  CHECK(shown(krippendorff_alpha(read("1 2\n1"), Scale::nominal)) ==
        "not every row has the same number of values");
  CHECK(shown(cohen_kappa({{7, 0}, {0, 0}})) == "every value is the same");
  CHECK(shown(cohen_kappa({{0, 0}, {0, 0}})) == "nothing was coded by two");
  CHECK(shown(cohen_kappa({{1, 2}, {3}})) == "not every row has the same number of values");
  CHECK(shown(cohen_kappa({{1, -2}, {3, 4}})) == "a number of ratings is below zero");
  CHECK(shown(fleiss_kappa({{3, 0}, {3, 0}})) == "every value is the same");
  CHECK(shown(fleiss_kappa({{2, 1}, {2, 0}})) == "not every row has the same number of values");
  CHECK(shown(fleiss_kappa({{1, 0}, {0, 1}})) == "nothing was coded by two");
  CHECK(shown(fleiss_kappa({})) == "nothing was coded by two");
}

TEST_CASE("Cohen's kappa gives the published values") {
  // Fifty grant proposals read by two (Wikipedia, "Cohen's kappa"): 0.4. The two tables
  // with the same share of agreement, 0.6, from the same article: 3/23 and 7/27.
  CHECK(shown(cohen_kappa({{20, 5}, {10, 15}})) == "0.400000");
  CHECK(shown(cohen_kappa({{45, 15}, {25, 15}})) == "0.130435");
  CHECK(shown(cohen_kappa({{25, 35}, {5, 35}})) == "0.259259");
  CHECK(shown(cohen_kappa({{3, 0, 0}, {0, 4, 0}, {0, 0, 5}})) == "1.000000");
}

TEST_CASE("Fleiss' kappa gives the published value") {
  // Ten units, fourteen raters, five categories (Wikipedia, "Fleiss' kappa"): 0.210; Fleiss
  // 1971 himself had thirty patients and six raters.
  const Table ratings = {{0, 0, 0, 0, 14}, {0, 2, 6, 4, 2}, {0, 0, 3, 5, 6}, {0, 3, 9, 2, 0},
                         {2, 2, 8, 1, 1},  {7, 7, 0, 0, 0}, {3, 2, 6, 3, 0}, {2, 5, 3, 2, 2},
                         {6, 5, 2, 1, 0},  {0, 2, 2, 3, 7}};
  CHECK(shown(fleiss_kappa(ratings)) == "0.209931");
}

TEST_CASE("Fleiss' kappa and nominal alpha agree but for the correction for small samples") {
  // Krippendorff 2007, as above, holds for any even number of ratings: 1 - alpha = (n-1)/n (1 - kappa).
  const Table ratings = {{2, 1, 0}, {0, 3, 0}, {1, 1, 1}, {0, 0, 3}, {0, 1, 2}};
  Values values(3);
  for (const auto& unit : ratings) {
    std::size_t coder = 0;
    for (std::size_t category = 0; category < unit.size(); ++category)
      for (std::int64_t i = 0; i < unit[category]; ++i)
        values[coder++].emplace_back(static_cast<double>(category));
  }
  const double kappa = fleiss_kappa(ratings).value.value();
  const double alpha = krippendorff_alpha(values, Scale::nominal).value.value();
  CHECK(1 - alpha == doctest::Approx(14.0 / 15.0 * (1 - kappa)).epsilon(1e-12));
}

TEST_CASE("WindowDiff gives the known counts, for windows of three places and of four") {
  // The three rows of a widely copied worked example; with k = 3 it compares four places a window and counts
  // 0, 4 and 16 differing windows of 20. Over three places worked by hand: 4 and 12 of 21.
  const auto a = row("00000010000000001000000");
  const auto near_miss = row("00000001000000010000000");
  const auto far = row("00010000000000000001000");
  CHECK(shown(window_difference(a, a, 4)) == "0/20");
  CHECK(shown(window_difference(a, near_miss, 4)) == "4/20");
  CHECK(shown(window_difference(near_miss, far, 4)) == "16/20");
  CHECK(shown(window_difference(a, a, 3)) == "0/21");
  CHECK(shown(window_difference(a, near_miss, 3)) == "4/21");
  CHECK(shown(window_difference(near_miss, far, 3)) == "12/21");
  CHECK(*window_difference(a, near_miss, 4).share() == doctest::Approx(0.2));
}

TEST_CASE("WindowDiff is symmetric and undefined without a window") {
  const auto a = row("0100101");
  const auto b = row("0010100");
  for (std::int64_t width = 1; width <= 7; ++width)
    CHECK(window_difference(a, b, width) == window_difference(b, a, width));
  CHECK_FALSE(window_difference(a, b, 8).share().has_value());
  CHECK_FALSE(window_difference(a, row("01"), 1).share().has_value());
  CHECK_FALSE(window_difference(a, b, 0).share().has_value());
}

TEST_CASE("stretches become boundaries before their first unit and after their last") {
  CHECK(boundaries_of({{0, 2}, {3, 5}}, 6) == row("1011010"));
  CHECK(boundaries_of({{2, 9}, {-3, 0}, {4, 4}}, 6) == row("0010001"));
  CHECK(boundaries_of({}, 0) == row("0"));
  // Two boundaries in 23 places: three segments of 7.7 places, half of which is 3.8.
  CHECK(customary_width(row("00000010000000001000000")) == 4);
  CHECK(customary_width(row("11")) == 2);
}
