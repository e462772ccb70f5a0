#include "witnessmark/base/decode.h"

#include <doctest/doctest.h>

#include "witnessmark/base/fold.h"

using namespace witnessmark;
using namespace std::string_view_literals;

namespace {

/// "encoding mark? assumed? returns?: text" with line breaks as "~", or the error.
std::string dump(std::string_view bytes) {
  const auto decoded = decode_text(bytes, "talk.txt");
  if (!decoded) return to_string(decoded.error());
  CHECK(is_valid_utf8(decoded->text));
  CHECK_FALSE(decoded->remark.empty());
  std::string shown(to_string(decoded->encoding));
  if (decoded->had_mark) shown += " marked";
  if (decoded->assumed) shown += " assumed";
  if (decoded->had_carriage_returns) shown += " returns";
  shown += ": ";
  for (const char byte : decoded->text) shown += byte == '\n' ? '~' : byte;
  return shown;
}

struct Row {
  std::string_view bytes;
  const char* dump;
};

template <std::size_t count>
void check(const Row (&rows)[count]) {
  for (const Row& row : rows) {
    CAPTURE(row.bytes);
    CHECK(dump(row.bytes) == row.dump);
  }
}

}  // namespace

TEST_CASE("a byte order mark settles the encoding and is taken off") {
  // The marks: Unicode Standard, table 2-4 and chapter 23.8.
  check({{"\xEF\xBB\xBF"
          "caf\xC3\xA9"sv,
          "UTF-8 marked: caf\u00e9"},
         {"\xFF\xFE"
          "c\0a\0f\0\xE9\0"sv,
          "UTF-16LE marked: caf\u00e9"},
         {"\xFE\xFF\0c\0a\0f\0\xE9"sv, "UTF-16BE marked: caf\u00e9"},
         {"\xEF\xBB\xBF"sv, "UTF-8 marked: "},
         {"\xFF\xFE"sv, "UTF-16LE marked: "}});
}

TEST_CASE("text without mark is UTF-8 when it is valid UTF-8") {
  check({{""sv, "UTF-8: "},
         {"plain"sv, "UTF-8: plain"},
         {"caf\xC3\xA9 \xE2\x80\x94 \xF0\x9F\x9A\xA2"sv, "UTF-8: caf\u00e9 \u2014 \U0001F6A2"}});
}

TEST_CASE("text without mark with zeros in every second place is UTF-16") {
  check({{"t\0e\0n\0d\0e\0r\0"sv, "UTF-16LE assumed: tender"},
         {"\0t\0e\0n\0d\0e\0r"sv, "UTF-16BE assumed: tender"},
         {"a\0\x19\x20"
          "b\0c\0"sv,
          "UTF-16LE assumed: a\u2019bc"}});
}

TEST_CASE("other text is windows-1252") {
  check({{"caf\xE9"sv, "windows-1252 assumed: caf\u00e9"},
         {"\x93yes\x94 \x96 it\x92s \x80 5"sv,
          "windows-1252 assumed: \u201cyes\u201d \u2013 it\u2019s \u20ac 5"}});
}

TEST_CASE("every byte of windows-1252 is the code point of the WHATWG Encoding Standard") {
  // https://encoding.spec.whatwg.org/index-windows-1252.txt, rows for 80 to 9F; all other bytes stand for
  // themselves.
  constexpr char32_t kUpperControls[32] = {0x20AC, 0x0081, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                           0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0x008D, 0x017D, 0x008F,
                                           0x0090, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                           0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x009D, 0x017E, 0x0178};
  for (int byte = 0x80; byte <= 0xFF; ++byte) {
    const char32_t expected = byte < 0xA0 ? kUpperControls[byte - 0x80] : static_cast<char32_t>(byte);
    std::string utf8;
    if (expected < 0x800) {
      utf8 = {static_cast<char>(0xC0 | expected >> 6), static_cast<char>(0x80 | (expected & 0x3F))};
    } else {
      utf8 = {static_cast<char>(0xE0 | expected >> 12), static_cast<char>(0x80 | (expected >> 6 & 0x3F)),
              static_cast<char>(0x80 | (expected & 0x3F))};
    }
    const std::string bytes = {'x', static_cast<char>(byte), 'y'};
    const auto decoded = decode_text(bytes, "talk.txt");
    REQUIRE(decoded);
    CAPTURE(byte);
    CHECK(decoded->encoding == Encoding::windows_1252);
    CHECK(decoded->text == "x" + utf8 + "y");
  }
}

TEST_CASE("line breaks of every kind become LF in every encoding") {
  check({{"a\r\nb\rc\nd\r"sv, "UTF-8 returns: a~b~c~d~"},
         {"a\r\r\n\nb"sv, "UTF-8 returns: a~~~b"},
         {"a\nb"sv, "UTF-8: a~b"},
         {"\xE9\r\n\r\n"sv, "windows-1252 assumed returns: \u00e9~~"},
         {"\xFF\xFE"
          "a\0\r\0\n\0b\0"sv,
          "UTF-16LE marked returns: a~b"}});
}

TEST_CASE("surrogate pairs of UTF-16 become one code point") {
  // Unicode Standard, table 3-4: U+10302 is F0 90 8C 82 in UTF-8 and D800 DF02 in UTF-16.
  check({{"\xFF\xFE\x00\xD8\x02\xDF"sv, "UTF-16LE marked: \xF0\x90\x8C\x82"},
         {"\xFE\xFF\xD8\x00\xDF\x02"sv, "UTF-16BE marked: \xF0\x90\x8C\x82"},
         {"\xFE\xFF\xDB\xFF\xDF\xFF"sv, "UTF-16BE marked: \xF4\x8F\xBF\xBF"}});
}

TEST_CASE("text that cannot be read is refused with its place and what to do") {
  check({{"one\ntwo\0"sv,
          "talk.txt:2:4: a NUL character, which no text holds (is this a text file? Save it as plain text in "
          "UTF-8)"},
         {"\xE9\r\n\r\xE9\xE9\0"sv,
          "talk.txt:3:3: a NUL character, which no text holds (is this a text file? Save it as plain text in "
          "UTF-8)"},
         {"PK\x03\x04\x14\0\0\0\x08\0\xE9\xA1"sv,
          "talk.txt:1:6: a NUL character, which no text holds (is this a text file? Save it as plain text in "
          "UTF-8)"},
         {"\xFE\xFF\0a\0\0"sv,
          "talk.txt:1:2: a NUL character, which no text holds (is this a text file? Save it as plain text in "
          "UTF-8)"},
         {"\xEF\xBB\xBFone\r\n\xC3\xA9\xE9"sv,
          "talk.txt:2:2: the file says it is UTF-8 (byte order mark), but byte E9 is not valid there (open "
          "it in the "
          "program it came from and save it anew as UTF-8)"},
         {"\xFE\xFF\0a\0\n\xD8\x00\0b"sv,
          "talk.txt:2:1: half of a UTF-16 surrogate pair (D800) (the file is damaged or not UTF-16; save it "
          "anew as "
          "UTF-8)"},
         {"\xFE\xFF\0a\xDC\x00"sv,
          "talk.txt:1:2: half of a UTF-16 surrogate pair (DC00) (the file is damaged or not UTF-16; save it "
          "anew as "
          "UTF-8)"},
         {"\xFE\xFF\xDC\x00\xDC\x00"sv,
          "talk.txt:1:1: half of a UTF-16 surrogate pair (DC00) (the file is damaged or not UTF-16; save it "
          "anew as "
          "UTF-8)"},
         {"\xFE\xFF\xD8\x00"sv,
          "talk.txt:1:1: half of a UTF-16 surrogate pair (D800) (the file is damaged or not UTF-16; save it "
          "anew as "
          "UTF-8)"},
         {"\xFF\xFE"
          "a\0b"sv,
          "talk.txt:1:2: UTF-16 text ends in half a character (the file is damaged or not UTF-16; save it "
          "anew as "
          "UTF-8)"},
         {"\xFF\xFE\0\0a\0\0\0"sv,
          "talk.txt: the file is UTF-32 by its byte order mark, which is not read here (save it as UTF-8)"}});
}

TEST_CASE("the remark says what was assumed and why") {
  struct RemarkRow {
    std::string_view bytes;
    const char* remark;
  };
  const RemarkRow rows[] = {
      {"plain"sv, "plain ASCII, read as UTF-8"},
      {"caf\xC3\xA9"sv, "valid UTF-8"},
      {"one\ncaf\xE9"sv, "not UTF-8 (byte E9 in line 2, column 4); taken as windows-1252"},
      {"\x81\xE9\x9D"sv,
       "not UTF-8 (byte 81 in line 1, column 1); taken as windows-1252, though 2 of its bytes have no "
       "character there"},
      {"\xFF\xFE"
       "a\0"sv,
       "UTF-16LE by its byte order mark"},
      {"a\0b\0"sv, "no byte order mark; taken as UTF-16LE because every second byte is mostly zero"}};
  for (const RemarkRow& row : rows) {
    const auto decoded = decode_text(row.bytes, "talk.txt");
    REQUIRE(decoded);
    CHECK(decoded->remark == row.remark);
  }
}
