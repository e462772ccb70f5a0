#pragma once
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

namespace witnessmark {

/// The bytes at the start of the text that are ASCII.
std::size_t ascii_prefix(std::string_view text);

/// Length in bytes of the well-formed UTF-8 sequence the text starts with (Unicode Standard, table 3-7); 0
/// when it starts with none.
std::size_t well_formed_sequence(std::string_view text);

/// The bytes at the start of the text that are well-formed UTF-8; its size when all of it is.
std::size_t well_formed_prefix(std::string_view text);

/// The code point of a well-formed sequence of that length.
char32_t code_point_of(std::string_view sequence);

inline bool is_continuation(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0) == 0x80;
}

/// Code points that start in these bytes: every byte but continuation bytes.
std::int64_t count_code_points(std::string_view text);

/// Eight bytes as a number, in the order of the machine.
inline std::uint64_t load_word(const char* bytes) {
  std::uint64_t word = 0;
  std::memcpy(&word, bytes, sizeof word);
  return word;
}

inline constexpr std::uint64_t kHighBits = 0x8080808080808080u;

/// How many of the eight bytes are continuation bytes, 10xxxxxx.
inline int continuation_bytes(std::uint64_t word) {
  // One bit in each byte: their sum comes out in the highest byte. Quicker than a call where the processor's
  // own bit count may not be used.
  const std::uint64_t bits = (word & ~(word << 1) & kHighBits) >> 7;
  return static_cast<int>((bits * 0x0101010101010101u) >> 56);
}

}  // namespace witnessmark
