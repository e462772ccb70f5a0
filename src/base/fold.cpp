// Folding goes word by word. White space is a boundary no normalisation form reaches across (it neither
// composes nor is reordered), so folding the words one by one gives what folding the whole text would. A word
// of ASCII, or of ASCII and the few typographic signs English text is full of, is folded from a table; every
// other word goes through ICU.
#include "witnessmark/base/fold.h"

#include <unicode/bytestream.h>
#include <unicode/normalizer2.h>

#include <algorithm>
#include <array>
#include <stdexcept>

#include "base/utf8.h"

namespace witnessmark {
namespace {

constexpr bool is_ascii_space(char byte) {
  return byte == ' ' || (byte >= '\t' && byte <= '\r');
}

constexpr std::string_view kAsciiSpaces = " \t\n\v\f\r";

constexpr auto kFoldedAscii = [] {
  std::array<char, 128> table{};
  for (std::size_t i = 0; i < table.size(); ++i) {
    const char c = static_cast<char>(i);
    table[i] = is_ascii_space(c) ? ' ' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return table;
}();

/// The ASCII sign for an apostrophe or a dash, the space for Unicode White_Space, else 0. U+00B4 has to be
/// caught before normalisation, which makes a space and a combining accent of it.
constexpr char plain_sign(char32_t c) {
  switch (c) {
    case 0x00B4:  // acute accent, typed for an apostrophe
    case 0x02BC:  // modifier letter apostrophe
    case 0x2018:
    case 0x2019:
    case 0x201A:
    case 0x201B:
    case 0x2032:  // prime
      return '\'';
    case 0x2010:  // hyphen
    case 0x2011:
    case 0x2012:
    case 0x2013:
    case 0x2014:
    case 0x2015:
    case 0x2212:  // minus
    case 0xFE58:
    case 0xFE63:
    case 0xFF0D:
      return '-';
    case 0x0085:
    case 0x00A0:
    case 0x1680:
    case 0x2028:
    case 0x2029:
    case 0x202F:
    case 0x205F:
    case 0x3000:
      return ' ';
    default:
      return c >= 0x2000 && c <= 0x200A ? ' ' : '\0';
  }
}

void append_space(std::string& folded) {
  if (!folded.empty() && folded.back() != ' ') folded += ' ';
}

void append_ascii(std::string& folded, std::string_view run) {
  const std::size_t before = folded.size();
  folded.resize(before + run.size());
  char* out = folded.data() + before;
  bool after_space = before == 0 || out[-1] == ' ';
  for (const char byte : run) {
    const char lower = kFoldedAscii[static_cast<unsigned char>(byte)];
    const bool space = lower == ' ';
    *out = lower;
    out += space && after_space ? 0 : 1;
    after_space = space;
  }
  folded.resize(static_cast<std::size_t>(out - folded.data()));
}

/// The text with apostrophes, dashes and white space made plain, stray bytes made U+FFFD, all else left as it
/// is.
void append_plain(std::string& folded, std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = well_formed_sequence(text);
    const std::string_view sequence = text.substr(0, length);
    const char plain = length > 1 ? plain_sign(code_point_of(sequence)) : '\0';
    if (length == 0) {
      folded += "\xEF\xBF\xBD";
    } else if (plain == ' ' || is_ascii_space(sequence[0])) {
      append_space(folded);
    } else if (plain != '\0') {
      folded += plain;
    } else {
      folded += sequence;
    }
    text.remove_prefix(std::max<std::size_t>(1, length));
  }
}

void append_word_by_icu(std::string& folded, std::string_view word) {
  UErrorCode status = U_ZERO_ERROR;
  const icu::Normalizer2* form = icu::Normalizer2::getNFKCCasefoldInstance(status);
  std::string plain;
  append_plain(plain, word);
  std::string normal;
  icu::StringByteSink<std::string> sink(&normal);
  if (U_SUCCESS(status)) {
    form->normalizeUTF8(0, {plain.data(), static_cast<int32_t>(plain.size())}, sink, nullptr, status);
  }
  if (U_FAILURE(status))
    throw std::runtime_error(std::string("ICU cannot fold text: ") + u_errorName(status));
  // Compatibility forms bring in signs and spaces of their own, such as the space of U+00A8.
  append_plain(folded, normal);
}

/// Bytes up to the next white space.
std::size_t word_length(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && !is_ascii_space(text[at])) {
    const std::size_t length = std::max<std::size_t>(1, well_formed_sequence(text.substr(at)));
    if (length > 1 && plain_sign(code_point_of(text.substr(at, length))) == ' ') break;
    at += length;
  }
  return at;
}

}  // namespace

std::string fold(std::string_view text) {
  std::string folded;
  folded.reserve(text.size());
  std::size_t word_start = 0;         // of the word being read, in the text
  std::size_t folded_word_start = 0;  // and in what is folded
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t ascii = ascii_prefix(text.substr(at));
    if (ascii > 0) {
      const std::string_view run = text.substr(at, ascii);
      append_ascii(folded, run);
      at += ascii;
      if (const std::size_t space = run.find_last_of(kAsciiSpaces); space != std::string_view::npos) {
        word_start = at - ascii + space + 1;
        folded_word_start = folded.find_last_of(' ') + 1;
      }
      continue;
    }
    const std::size_t length = well_formed_sequence(text.substr(at));
    const char plain = length > 0 ? plain_sign(code_point_of(text.substr(at, length))) : '\0';
    if (plain == ' ') {
      append_space(folded);
      at += length;
      word_start = at;
      folded_word_start = folded.size();
    } else if (plain != '\0') {
      folded += plain;
      at += length;
    } else {
      folded.resize(folded_word_start);
      at = word_start + word_length(text.substr(word_start));
      append_word_by_icu(folded, text.substr(word_start, at - word_start));
      word_start = at;
      folded_word_start = folded.size();
    }
  }
  if (!folded.empty() && folded.back() == ' ') folded.pop_back();
  return folded;
}

std::string_view trim(std::string_view text) {
  constexpr std::string_view kNoBreakSpace = "\xC2\xA0";
  while (!text.empty()) {
    if (is_ascii_space(text.front())) {
      text.remove_prefix(1);
    } else if (text.starts_with(kNoBreakSpace)) {
      text.remove_prefix(kNoBreakSpace.size());
    } else {
      break;
    }
  }
  while (!text.empty()) {
    if (is_ascii_space(text.back())) {
      text.remove_suffix(1);
    } else if (text.ends_with(kNoBreakSpace)) {
      text.remove_suffix(kNoBreakSpace.size());
    } else {
      break;
    }
  }
  return text;
}

}  // namespace witnessmark
