#include <fmt/format.h>

#include <algorithm>

#include "base/utf8.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// The control characters of Unicode Standard Annex #9, table of explicit and implicit directional formatting
/// characters.
bool is_bidirectional_control(char32_t c) {
  return c == 0x061C || c == 0x200E || c == 0x200F || (c >= 0x202A && c <= 0x202E) ||
         (c >= 0x2066 && c <= 0x2069);
}

bool is_control(char32_t c) {
  return (c < 0x20 && c != '\t' && c != '\n') || (c >= 0x7F && c <= 0x9F);
}

}  // namespace

std::string visible(std::string_view text) {
  std::string shown;
  shown.reserve(text.size());
  while (!text.empty()) {
    const std::size_t length = well_formed_sequence(text);
    if (length == 0) {
      // A stray byte may be a C1 control to a terminal that does not read UTF-8.
      shown += fmt::format("<byte {:02X}>", static_cast<unsigned char>(text[0]));
    } else {
      const char32_t c = code_point_of(text.substr(0, length));
      if (is_control(c) || is_bidirectional_control(c)) {
        shown += fmt::format("<U+{:04X}>", static_cast<std::uint32_t>(c));
      } else {
        shown += text.substr(0, length);
      }
    }
    text.remove_prefix(std::max<std::size_t>(1, length));
  }
  return shown;
}

}  // namespace witnessmark
