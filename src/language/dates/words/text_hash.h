#pragma once
#include <cstdint>
#include <string_view>

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
    std::uint64_t group = 0;
    for (std::size_t i = begin; i < lower_case.size() && i < begin + 8; ++i)
      group |= static_cast<std::uint64_t>(static_cast<unsigned char>(lower_case[i])) << (8 * (i - begin));
    hash = mix_group(hash, group);
  }
  return hash;
}

}  // namespace witnessmark::dates
