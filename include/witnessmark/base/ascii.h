#pragma once

namespace witnessmark {

/// 0 to 9, whatever the locale.
constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

}  // namespace witnessmark
