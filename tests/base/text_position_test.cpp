#include "witnessmark/base/text_position.h"

#include <doctest/doctest.h>

#include <type_traits>

using namespace witnessmark;

TEST_CASE("ranges are half-open") {
  const CodePointRange range{{3}, {6}};
  CHECK(range.length() == 3);
  CHECK_FALSE(range.empty());
  CHECK_FALSE(range.contains({2}));
  CHECK(range.contains({3}));
  CHECK(range.contains({5}));
  CHECK_FALSE(range.contains({6}));
  CHECK(CodePointRange{{3}, {3}}.empty());
  CHECK(CodePointRange{{4}, {3}}.empty());
}

TEST_CASE("ranges that only touch do not overlap") {
  const CodePointRange range{{3}, {6}};
  struct Row {
    CodePointRange other;
    bool overlaps;
  };
  const Row rows[] = {{{{0}, {3}}, false}, {{{0}, {4}}, true},  {{{4}, {5}}, true},
                      {{{5}, {9}}, true},  {{{6}, {9}}, false}, {{{0}, {9}}, true}};
  for (const Row& row : rows) {
    CHECK(range.overlaps(row.other) == row.overlaps);
    CHECK(row.other.overlaps(range) == row.overlaps);
  }
}

TEST_CASE("positions of different kinds do not mix") {
  CHECK_FALSE(std::is_convertible_v<ByteOffset, CodePoint>);
  CHECK_FALSE(std::is_convertible_v<CodePoint, Millisecond>);
  CHECK_FALSE(std::is_convertible_v<std::int64_t, CodePoint>);
  CHECK_FALSE(std::is_convertible_v<ByteRange, CodePointRange>);
  CHECK_FALSE(std::is_assignable_v<CodePoint&, ByteOffset>);
}
