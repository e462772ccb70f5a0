#pragma once
#include <cstdint>
#include <span>
#include <string>

namespace witnessmark {

/// Two lower-case hexadecimal digits for each byte.
inline std::string hexadecimal(std::span<const std::uint8_t> bytes) {
  constexpr char kDigits[] = "0123456789abcdef";
  std::string text;
  text.reserve(bytes.size() * 2);
  for (const std::uint8_t byte : bytes) {
    text += kDigits[byte >> 4];
    text += kDigits[byte & 15];
  }
  return text;
}

}  // namespace witnessmark
