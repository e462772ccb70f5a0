#include <doctest/doctest.h>
#include <unicode/utf8.h>

#include <array>
#include <string>

#include "witnessmark/base/fold.h"

using namespace witnessmark;

namespace {

struct Bytes {
  int low;
  int high;
};

/// Unicode Standard, table 3-7: well-formed UTF-8 byte sequences.
struct WellFormed {
  int length;
  std::array<Bytes, 4> bytes;
};
constexpr WellFormed kTable[] = {
    {1, {{{0x00, 0x7F}, {}, {}, {}}}},
    {2, {{{0xC2, 0xDF}, {0x80, 0xBF}, {}, {}}}},
    {3, {{{0xE0, 0xE0}, {0xA0, 0xBF}, {0x80, 0xBF}, {}}}},
    {3, {{{0xE1, 0xEC}, {0x80, 0xBF}, {0x80, 0xBF}, {}}}},
    {3, {{{0xED, 0xED}, {0x80, 0x9F}, {0x80, 0xBF}, {}}}},
    {3, {{{0xEE, 0xEF}, {0x80, 0xBF}, {0x80, 0xBF}, {}}}},
    {4, {{{0xF0, 0xF0}, {0x90, 0xBF}, {0x80, 0xBF}, {0x80, 0xBF}}}},
    {4, {{{0xF1, 0xF3}, {0x80, 0xBF}, {0x80, 0xBF}, {0x80, 0xBF}}}},
    {4, {{{0xF4, 0xF4}, {0x80, 0x8F}, {0x80, 0xBF}, {0x80, 0xBF}}}},
};

/// The bytes at which the ranges of the table begin and end, and their neighbours.
constexpr int kEdges[] = {0x00, 0x7F, 0x80, 0x8F, 0x90, 0x9F, 0xA0, 0xBF, 0xC0, 0xFF};

bool one_sequence_by_table(const std::string& bytes) {
  for (const WellFormed& row : kTable) {
    if (static_cast<std::size_t>(row.length) != bytes.size()) continue;
    bool fits = true;
    for (std::size_t i = 0; i < bytes.size(); ++i) {
      const int byte = static_cast<unsigned char>(bytes[i]);
      fits = fits && byte >= row.bytes[i].low && byte <= row.bytes[i].high;
    }
    if (fits) return true;
  }
  return false;
}

bool valid_by_icu(const std::string& bytes) {
  int32_t at = 0;
  while (at < static_cast<int32_t>(bytes.size())) {
    UChar32 c = 0;
    U8_NEXT(bytes, at, static_cast<int32_t>(bytes.size()), c);
    if (c < 0) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("sequences of up to three bytes are judged as by ICU, and single sequences as by table 3-7") {
  std::int64_t wrong = 0;
  std::string bytes;
  for (int first = 0x7E; first <= 0xFF; ++first) {
    for (int second = 0; second <= 0xFF; ++second) {
      bytes = {static_cast<char>(first), static_cast<char>(second)};
      if (is_valid_utf8(bytes) != valid_by_icu(bytes)) ++wrong;
      if (first >= 0x80 && is_valid_utf8(bytes) != one_sequence_by_table(bytes)) ++wrong;
      for (const int third : kEdges) {
        bytes = {static_cast<char>(first), static_cast<char>(second), static_cast<char>(third)};
        if (is_valid_utf8(bytes) != valid_by_icu(bytes)) ++wrong;
        if (first >= 0xE0 && is_valid_utf8(bytes) != one_sequence_by_table(bytes)) ++wrong;
      }
    }
  }
  CHECK(wrong == 0);
}

TEST_CASE("sequences of four bytes are judged as by table 3-7 at the edges of its ranges") {
  std::int64_t valid = 0;
  for (int first = 0xEF; first <= 0xFF; ++first) {
    for (const int second : kEdges) {
      for (const int third : kEdges) {
        for (const int fourth : kEdges) {
          const std::string bytes = {static_cast<char>(first), static_cast<char>(second),
                                     static_cast<char>(third), static_cast<char>(fourth)};
          const bool expected = first >= 0xF0 ? one_sequence_by_table(bytes) : valid_by_icu(bytes);
          CHECK(is_valid_utf8(bytes) == expected);
          valid += expected ? 1 : 0;
        }
      }
    }
  }
  CHECK(valid > 0);
}

TEST_CASE("a fault is found wherever it stands in a long text") {
  for (std::size_t length = 0; length < 40; ++length) {
    for (std::size_t at = 0; at <= length; ++at) {
      std::string text(length, 'a');
      text.insert(at, "\u00e9");
      CHECK(is_valid_utf8(text));
      text.erase(at, 1);
      CHECK_FALSE(is_valid_utf8(text));
    }
  }
}

TEST_CASE("texts the Unicode Standard calls ill-formed are refused") {
  // Unicode Standard, tables 3-8 to 3-11: overlong forms, surrogates, what is past U+10FFFF, cut sequences.
  for (const char* text :
       {"\xC0\xAF", "\xE0\x80\xBF", "\xF0\x81\x82\x41", "\xED\xA0\x80", "\xED\xBF\xBF\xED\xAF",
        "\xF4\x91\x92\x93", "\xFF", "\xE1\x80\xE2\xF0\x91\x92\xF1\xBF\x41"}) {
    CHECK_FALSE(is_valid_utf8(text));
  }
}
