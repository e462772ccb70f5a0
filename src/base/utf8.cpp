#include "base/utf8.h"

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// Whether the second byte may follow the first. Table 3-7 narrows it after E0 and F0 (no overlong forms), ED
/// (no surrogates) and F4 (nothing past U+10FFFF).
bool second_byte_fits(unsigned char first, unsigned char second) {
  switch (first) {
    case 0xE0:
      return second >= 0xA0 && second <= 0xBF;
    case 0xED:
      return second >= 0x80 && second <= 0x9F;
    case 0xF0:
      return second >= 0x90 && second <= 0xBF;
    case 0xF4:
      return second >= 0x80 && second <= 0x8F;
    default:
      return second >= 0x80 && second <= 0xBF;
  }
}

}  // namespace

std::size_t ascii_prefix(std::string_view text) {
  std::size_t at = 0;
  while (at + 8 <= text.size() && (load_word(text.data() + at) & kHighBits) == 0) at += 8;
  while (at < text.size() && static_cast<unsigned char>(text[at]) < 0x80) ++at;
  return at;
}

std::size_t well_formed_sequence(std::string_view text) {
  if (text.empty()) return 0;
  const auto first = static_cast<unsigned char>(text[0]);
  if (first < 0x80) return 1;
  if (first < 0xC2 || first > 0xF4) return 0;
  const std::size_t length = first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  if (text.size() < length || !second_byte_fits(first, static_cast<unsigned char>(text[1]))) return 0;
  for (std::size_t i = 2; i < length; ++i) {
    if (!is_continuation(text[i])) return 0;
  }
  return length;
}

std::size_t well_formed_prefix(std::string_view text) {
  std::size_t at = 0;
  while (true) {
    at += ascii_prefix(text.substr(at));
    if (at == text.size()) return at;
    const std::size_t length = well_formed_sequence(text.substr(at));
    if (length == 0) return at;
    at += length;
  }
}

char32_t code_point_of(std::string_view sequence) {
  constexpr unsigned char kFirstByteBits[] = {0, 0x7F, 0x1F, 0x0F, 0x07};
  char32_t value = static_cast<unsigned char>(sequence[0]) & kFirstByteBits[sequence.size()];
  for (std::size_t i = 1; i < sequence.size(); ++i) {
    value = (value << 6) | (static_cast<unsigned char>(sequence[i]) & 0x3F);
  }
  return value;
}

std::int64_t count_code_points(std::string_view text) {
  std::int64_t count = 0;
  std::size_t at = 0;
  for (; at + 8 <= text.size(); at += 8) count += 8 - continuation_bytes(load_word(text.data() + at));
  for (; at < text.size(); ++at) count += is_continuation(text[at]) ? 0 : 1;
  return count;
}

bool is_valid_utf8(std::string_view text) {
  return well_formed_prefix(text) == text.size();
}

}  // namespace witnessmark
