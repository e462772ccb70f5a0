#include "read/transcripts/character_references.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdint>

#include "read/transcripts/character_reference_table.h"
#include "witnessmark/base/append_utf8.h"
#include "witnessmark/read/webvtt_cue_text.h"

namespace witnessmark {
namespace {

/// Longest name in the table, "CounterClockwiseContourIntegral;".
constexpr std::size_t kLongestName = 32;

/// HTML standard, numeric character reference end state: what browsers read 0x80 to 0x9F as.
std::uint32_t mend(std::uint64_t c) {
  static constexpr std::array<std::uint16_t, 32> kWindows1252 = {
      0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
      0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
      0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};
  if (c == 0 || c > 0x10FFFF || (c >= 0xD800 && c <= 0xDFFF)) return 0xFFFD;
  if (c >= 0x80 && c <= 0x9F) return kWindows1252[c - 0x80];
  return static_cast<std::uint32_t>(c);
}

int digit_value(char c, int base) {
  if (c >= '0' && c <= '9') return c - '0';
  if (base == 16 && c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (base == 16 && c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

std::size_t read_number(std::string_view text, std::string& out) {
  std::size_t at = 2;
  const int base = text.size() > 2 && (text[2] == 'x' || text[2] == 'X') ? 16 : 10;
  if (base == 16) ++at;
  const std::size_t start = at;
  std::uint64_t value = 0;
  for (; at < text.size() && digit_value(text[at], base) >= 0; ++at) {
    value = std::min<std::uint64_t>(
        value * static_cast<unsigned>(base) + static_cast<unsigned>(digit_value(text[at], base)), 0x110000);
  }
  if (at == start) return 0;
  append_utf8(out, mend(value));
  return at < text.size() && text[at] == ';' ? at + 1 : at;
}

std::size_t read_name(std::string_view text, std::string& out) {
  const auto table = named_references();
  std::size_t longest = 1;
  while (longest < text.size() && longest <= kLongestName &&
         std::isalnum(static_cast<unsigned char>(text[longest]))) {
    ++longest;
  }
  if (longest < text.size() && text[longest] == ';') ++longest;
  for (std::size_t end = longest; end > 1; --end) {
    const std::string_view name = text.substr(1, end - 1);
    const auto found =
        std::lower_bound(table.begin(), table.end(), name,
                         [](const NamedReference& entry, std::string_view key) { return entry.name < key; });
    if (found != table.end() && found->name == name) {
      out += found->text;
      return end;
    }
  }
  return 0;
}

}  // namespace

std::size_t read_character_reference(std::string_view text, std::string& out) {
  std::size_t length = 0;
  if (text.size() > 1) length = text[1] == '#' ? read_number(text, out) : read_name(text, out);
  if (length > 0) return length;
  out += '&';
  return 1;
}

std::string read_character_references(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t next = std::min(text.find('&', at), text.size());
    out += text.substr(at, next - at);
    at = next < text.size() ? next + read_character_reference(text.substr(next), out) : next;
  }
  return out;
}

}  // namespace witnessmark
