#include "witnessmark/base/bare_text.h"

#include <doctest/doctest.h>

using namespace witnessmark;

TEST_CASE("a bare text is the same whatever marks, spaces, capitals and apostrophes") {
  const auto same = [](const char* a, const char* b) { return BareText(a).letters == BareText(b).letters; };
  CHECK(same("The Peaks are there yet, for all I know.", "the peaks are there yet for all I know"));
  CHECK(same("don't", "don’t"));
  CHECK(same("don't", "dont"));
  CHECK(same("wheel-house", "wheel  house"));
  CHECK(same("ÉTÉ — “là”", "été là"));
  CHECK(same("1,200 tons", "1200 tons"));
  CHECK(same("in '53", "in 53"));
  CHECK_FALSE(same("1.5", "15"));
  CHECK_FALSE(same("19 53", "1953"));
  CHECK_FALSE(same("£5", "5"));
  CHECK_FALSE(same("the lamp", "the lamps"));
}

TEST_CASE("every letter of a bare text knows its place") {
  const BareText text("“É, b”");
  CHECK(text.letters == U"éb");
  CHECK(text.at == std::vector<std::int64_t>{1, 4});
  CHECK(text.first_from(CodePoint{0}) == 0);
  CHECK(text.first_from(CodePoint{2}) == 1);
  CHECK(text.first_from(CodePoint{5}) == 2);
}
