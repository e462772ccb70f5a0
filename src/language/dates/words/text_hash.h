#pragma once
#include <bit>
#include <cstdint>
#include <cstring>
#include <string_view>
#include <type_traits>

namespace witnessmark::dates {

/// Hash of a word in lower case: its bytes in groups of eight, each group a little-endian number, mixed in
/// turn. A word of up to eight letters is one load and one multiplication for the scan. Words are told apart
/// by the hash alone: for up to eight bytes it is one to one; for longer ones a collision of some thousand
/// lexicon words with all words of a language is a matter of 1 in 10^12.
inline constexpr std::uint64_t kHashSeed = 0x9E3779B97F4A7C15u;
inline constexpr std::uint64_t mix_group(std::uint64_t hash, std::uint64_t group) {
  hash = (hash ^ group) * 0xBF58476D1CE4E5B9u;
  return hash ^ (hash >> 29);
}

inline constexpr std::uint64_t hash_word(std::string_view lower_case) {
  std::uint64_t hash = kHashSeed;
  for (std::size_t begin = 0; begin < lower_case.size(); begin += 8) {
    const std::string_view piece = lower_case.substr(begin, 8);
    std::uint64_t group = 0;
    if (std::is_constant_evaluated() || std::endian::native == std::endian::big) {
      for (std::size_t i = 0; i < piece.size(); ++i)
        group |= static_cast<std::uint64_t>(static_cast<unsigned char>(piece[i])) << (8 * i);
    } else if (piece.size() == 8) {
      std::memcpy(&group, piece.data(), 8);
    } else {
      std::memcpy(&group, piece.data(), piece.size());
    }
    hash = mix_group(hash, group);
  }
  return hash;
}

/// Hash of a function word of the grammar.
consteval std::uint64_t w(const char* word) {
  return hash_word(word);
}

/// The hash of bytes that come one by one.
class HashInProgress {
 public:
  void add(unsigned char byte) {
    group_ |= std::uint64_t{byte} << (8 * count_);
    if (++count_ < 8) return;
    hash_ = mix_group(hash_, group_);
    group_ = 0;
    count_ = 0;
  }
  std::uint64_t value() const { return count_ > 0 ? mix_group(hash_, group_) : hash_; }

 private:
  std::uint64_t hash_ = kHashSeed;
  std::uint64_t group_ = 0;
  unsigned count_ = 0;
};

inline constexpr std::uint64_t kEachByte = 0x0101010101010101u;
inline constexpr std::uint64_t kLowerCase = 0x20 * kEachByte;  ///< Makes ASCII letters small, leaves digits.

/// Eight bytes as a number, the first one lowest.
inline std::uint64_t load_group(const char* bytes) {
  std::uint64_t group;
  std::memcpy(&group, bytes, sizeof group);
  if constexpr (std::endian::native == std::endian::big) group = __builtin_bswap64(group);
  return group;
}

/// The high bit of every byte from `first` to `last` (below 128), where `low` has the bytes without their high
/// bits: adding 0x80 - first carries into it from first on, adding 0x7F - last does not up to last.
inline constexpr std::uint64_t bytes_between(std::uint64_t low, unsigned first, unsigned last) {
  return (low + (0x80 - first) * kEachByte) & ~(low + (0x7F - last) * kEachByte);
}

/// How many of the eight bytes from the first on are ASCII letters, or with `digits` letters and digits.
template <bool digits = false>
std::size_t leading_letters(std::uint64_t group) {
  constexpr auto kHigh = 0x80 * kEachByte;
  auto fits = bytes_between((group & ~kHigh) | kLowerCase, 'a', 'z');
  if constexpr (digits) fits |= bytes_between(group & ~kHigh, '0', '9');
  const auto others = ~(fits & ~group) & kHigh;
  return others == 0 ? 8 : static_cast<std::size_t>(std::countr_zero(others)) / 8;
}

/// The first `count` (below 8) bytes of a group.
inline std::uint64_t first_bytes(std::uint64_t group, std::size_t count) {
  return group & ((std::uint64_t{1} << (8 * count)) - 1);
}

}  // namespace witnessmark::dates
