#include "witnessmark/base/fold.h"

#include <doctest/doctest.h>
#include <unicode/bytestream.h>
#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <unicode/utf8.h>

#include <random>

using namespace witnessmark;

namespace {

std::string utf8(char32_t c) {
  char bytes[U8_MAX_LENGTH];
  std::size_t length = 0;
  U8_APPEND_UNSAFE(bytes, length, c);
  return {bytes, length};
}

struct Row {
  const char* text;
  const char* folded;
};

template <std::size_t count>
void check(const Row (&rows)[count]) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(fold(row.text) == row.folded);
  }
}

}  // namespace

TEST_CASE("case is folded by the full mappings of the Unicode data file CaseFolding.txt") {
  check({{"Boat Deck 2", "boat deck 2"},
         {"Stra\u00dfe", "strasse"},
         {"\u1e9e", "ss"},
         {"\u0130", "i\u0307"},
         {"\u03a3\u03c2\u03c3", "\u03c3\u03c3\u03c3"},
         {"\u0149", "'n"},
         {"\ufb03", "ffi"},
         {"\u00c9COLE", "\u00e9cole"}});
}

TEST_CASE("compatibility forms are folded as the figures of Unicode Standard Annex #15 have it") {
  // Figures 2, 3 and 6.
  check({{"\u212b", "\u00e5"},
         {"A\u030a", "\u00e5"},
         {"\u2126", "\u03c9"},
         {"\ufb01", "fi"},
         {"2\u2075", "25"},
         {"\u1e9b\u0323", "\u1e69"},
         {"s\u0323\u0307", "\u1e69"},
         {"s\u0307\u0323", "\u1e69"}});
}

TEST_CASE("what is ignorable by default is dropped") {
  // Unicode Standard, chapter 3.13, D146 and the property NFKC_Casefold.
  check({{"quarter\u00addeck", "quarterdeck"}, {"a\u200db", "ab"}, {"\ufefftank", "tank"}});
}

TEST_CASE("apostrophes and dashes become ASCII") {
  check({{"fo\u2019c\u2019sle", "fo'c'sle"},
         {"\u2018sle", "'sle"},
         {"bo\u00b4sun", "bo'sun"},
         {"bo\u02bcsun", "bo'sun"},
         {"1941\u20131943", "1941-1943"},
         {"no\u2014wait", "no-wait"},
         {"re\u2011read", "re-read"},
         {"\u22125", "-5"},
         {"\u00c9t\u00e9\u2019s", "\u00e9t\u00e9's"}});
}

TEST_CASE("white space of every kind becomes one space and none at the ends") {
  check({{"  a \t b\n", "a b"},
         {"a\u00a0\u2003\u3000b", "a b"},
         {"\u2028a\u2029", "a"},
         {"", ""},
         {" \r\n ", ""},
         {"\u00c9 \u00a0 \u00c9 ", "\u00e9 \u00e9"},
         {"a\u00a8", "a \u0308"},
         {"\u00a8", "\u0308"}});
}

TEST_CASE("every White_Space character of the Unicode character data is folded to a space") {
  for (char32_t c = 1; c <= 0x10FFFF; ++c) {
    if (!u_isUWhiteSpace(static_cast<UChar32>(c))) continue;
    CAPTURE(static_cast<std::uint32_t>(c));
    CHECK(fold("a" + utf8(c) + "b") == "a b");
    CHECK(fold("\u00c9" + utf8(c) + "\u00c9") == "\u00e9 \u00e9");
  }
}

TEST_CASE("folding twice changes nothing more, for any character alone and before an accent") {
  std::int64_t changed = 0;
  for (char32_t c = 1; c <= 0x10FFFF; ++c) {
    if (!u_isdefined(static_cast<UChar32>(c)) || U_IS_SURROGATE(c)) continue;
    for (const std::string& text : {utf8(c), "e" + utf8(c) + "\u0301"}) {
      const std::string once = fold(text);
      if (fold(once) != once) ++changed;
    }
  }
  CHECK(changed == 0);
}

TEST_CASE("folding word by word gives what ICU gives for the whole text") {
  std::mt19937 generator(11);
  const std::string_view kPieces[] = {"A",      "b",      " ",      "  ",     "\u00a0", "\u00c9",
                                      "e",      "\u0301", "\u0323", "\u00df", "\ufb01", "\u2003",
                                      "\u00ad", "\uac00", "\u11a8", "\u1100", "\u1161", "\n"};
  UErrorCode status = U_ZERO_ERROR;
  const icu::Normalizer2* form = icu::Normalizer2::getNFKCCasefoldInstance(status);
  REQUIRE(U_SUCCESS(status));
  for (int round = 0; round < 20000; ++round) {
    std::string text;
    for (std::size_t pieces = generator() % 12; pieces > 0; --pieces)
      text += kPieces[generator() % std::size(kPieces)];
    std::string whole;
    icu::StringByteSink<std::string> sink(&whole);
    form->normalizeUTF8(0, text, sink, nullptr, status);
    REQUIRE(U_SUCCESS(status));
    std::string expected;  // white space as it is described: runs to one, ends trimmed
    for (const char byte : whole) {
      const bool space = byte == ' ' || byte == '\n';
      if (!space) expected += byte;
      if (space && !expected.empty() && expected.back() != ' ') expected += ' ';
    }
    if (expected.ends_with(' ')) expected.pop_back();
    CAPTURE(text);
    CHECK(fold(text) == expected);
  }
}

TEST_CASE("bytes that are not UTF-8 are folded to U+FFFD and do no harm") {
  CHECK(fold("A\xFF"
             "B c") ==
        "a\ufffd"
        "b c");
  CHECK(fold("\xC3") == "\ufffd");
}

TEST_CASE("white space is trimmed at both ends") {
  CHECK(trim(" \t\r\n\v\f a b \u00a0\n") == "a b");
  CHECK(trim("\u00a0\u00a0") == "");
  CHECK(trim("") == "");
  CHECK(trim("a") == "a");
  CHECK(trim("\u00e0") == "\u00e0");
}

TEST_CASE("controls that would work on a terminal are shown as marks") {
  // Controls: ECMA-48. Bidirectional controls: Unicode Standard Annex #9, section 2.
  struct VisibleRow {
    std::string text;
    const char* shown;
  };
  const VisibleRow rows[] = {{"plain\ttext\n", "plain\ttext\n"},
                             {"\x1b[31mred", "<U+001B>[31mred"},
                             {std::string("a\0b", 3), "a<U+0000>b"},
                             {"a\rb\x7f", "a<U+000D>b<U+007F>"},
                             {"\u009b31m", "<U+009B>31m"},
                             {"a\u202eb\u2066c\u200f\u061c", "a<U+202E>b<U+2066>c<U+200F><U+061C>"},
                             {"caf\u00e9 \u2014 \U0001F6A2", "caf\u00e9 \u2014 \U0001F6A2"},
                             {"a\x9b"
                              "b\xc3",
                              "a<byte 9B>b<byte C3>"}};
  for (const VisibleRow& row : rows) CHECK(visible(row.text) == row.shown);
}
