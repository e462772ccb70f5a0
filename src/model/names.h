#pragma once
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>

namespace witnessmark {

/// The value's word in a table of (value, word); empty when the table lacks it.
template <typename Value, std::size_t N>
constexpr std::string_view word_of(const std::pair<Value, std::string_view> (&table)[N], Value value) {
  for (const auto& [known, word] : table) {
    if (known == value) return word;
  }
  return {};
}

/// The value a word stands for; nothing when the table lacks the word.
template <typename Value, std::size_t N>
constexpr std::optional<Value> value_of(const std::pair<Value, std::string_view> (&table)[N],
                                        std::string_view text) {
  for (const auto& [value, word] : table) {
    if (word == text) return value;
  }
  return std::nullopt;
}

}  // namespace witnessmark
