#include "witnessmark/base/code_point_index.h"

#include <doctest/doctest.h>

#include <random>
#include <string>

using namespace witnessmark;

namespace {

/// Text of code points of one to four bytes, the long ones with the given probability.
std::string random_text(std::uint32_t seed, std::size_t code_points, double rare) {
  std::mt19937 generator(seed);
  std::bernoulli_distribution is_rare(rare);
  const std::string_view kRare[] = {"\u00e9", "\u2019", "\u2014", "\U0001F6A2", "\u0416"};
  std::string text;
  for (std::size_t i = 0; i < code_points; ++i) {
    if (is_rare(generator)) {
      text += kRare[generator() % std::size(kRare)];
    } else {
      text += static_cast<char>('a' + generator() % 26);
    }
  }
  return text;
}

/// Code point of each byte, then that of the end; counted by the leading bytes of table 3-6 of the Unicode
/// Standard.
std::vector<std::int64_t> count_naively(const std::string& text) {
  std::vector<std::int64_t> code_points;
  std::int64_t current = -1;
  for (const char byte : text) {
    const auto value = static_cast<unsigned char>(byte);
    if (value < 0x80 || value >= 0xC0) ++current;
    code_points.push_back(current);
  }
  code_points.push_back(current + 1);
  return code_points;
}

}  // namespace

TEST_CASE("byte offsets and code points are translated both ways at every place") {
  struct Row {
    std::size_t code_points;
    double rare;
  };
  const Row rows[] = {{0, 0},   {1, 0},    {1, 1},    {63, 1},     {64, 1},      {65, 1},       {128, 0.5},
                      {129, 1}, {1000, 0}, {1000, 1}, {1000, 0.5}, {1000, 0.02}, {5000, 0.001}, {640, 0.1}};
  std::uint32_t seed = 1;
  for (const Row& row : rows) {
    const std::string text = random_text(seed++, row.code_points, row.rare);
    const CodePointIndex index(text);
    const auto expected = count_naively(text);
    CAPTURE(row.code_points);
    CAPTURE(row.rare);
    REQUIRE(index.size().value == static_cast<std::int64_t>(row.code_points));
    std::int64_t wrong = 0;
    for (std::size_t i = 0; i < expected.size(); ++i) {
      const auto byte = static_cast<std::int64_t>(i);
      if (index.to_code_point({byte}).value != expected[i]) ++wrong;
      const bool starts = i == 0 || expected[i] != expected[i - 1];
      if (starts && index.to_byte({expected[i]}).value != byte) ++wrong;
    }
    CHECK(wrong == 0);
  }
}

TEST_CASE("positions outside the text are cut to it") {
  for (const std::string text : {"Tarpot", "T\u00e4rpot"}) {
    const CodePointIndex index(text);
    CHECK(index.to_code_point({-3}).value == 0);
    CHECK(index.to_code_point({100}).value == 6);
    CHECK(index.to_byte({-3}).value == 0);
    CHECK(index.to_byte({100}).value == static_cast<std::int64_t>(text.size()));
  }
}

TEST_CASE("a slice is cut by code points") {
  const std::string text = "the caf\u00e9 \u2014 na\u00efve \U0001F6A2 end";
  const CodePointIndex index(text);
  struct Row {
    std::int64_t begin;
    std::int64_t end;
    const char* slice;
  };
  const Row rows[] = {{4, 8, "caf\u00e9"}, {9, 10, "\u2014"}, {17, 18, "\U0001F6A2"},
                      {19, 99, "end"},     {-5, 3, "the"},    {8, 8, ""},
                      {9, 4, ""},          {99, 120, ""}};
  for (const Row& row : rows) CHECK(index.slice({{row.begin}, {row.end}}) == row.slice);
  CHECK(index.to_bytes({{4}, {8}}) == ByteRange{{4}, {9}});
  CHECK(index.to_code_points({{4}, {9}}) == CodePointRange{{4}, {8}});
}
