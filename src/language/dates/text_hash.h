#pragma once
#include <cstdint>
#include <string_view>

namespace witnessmark::dates {

/// Hash of a word in lower case (FNV-1a, 64 bits). Words are told apart by it alone: among some thousands of lexicon words
/// against all words of a language a collision is a matter of 1 in 10^15.
inline constexpr std::uint64_t kHashSeed = 14695981039346656037u;
inline constexpr std::uint64_t hash_step(std::uint64_t hash, unsigned char byte) {
  return (hash ^ byte) * 1099511628211u;
}
inline constexpr std::uint64_t hash_word(std::string_view lower_case) {
  std::uint64_t hash = kHashSeed;
  for (const char c : lower_case) hash = hash_step(hash, static_cast<unsigned char>(c));
  return hash;
}

}  // namespace witnessmark::dates
