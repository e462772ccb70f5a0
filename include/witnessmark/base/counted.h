#pragma once
#include <concepts>
#include <cstdint>
#include <string>
#include <string_view>

namespace witnessmark {

/// "1 claim", "0 claims", "2 journal events": a number with an English noun whose plural ends in s.
std::string counted_noun(std::int64_t number, std::string_view noun);

template <std::integral Number>
std::string counted(Number number, std::string_view noun) {
  return counted_noun(static_cast<std::int64_t>(number), noun);
}

}  // namespace witnessmark
