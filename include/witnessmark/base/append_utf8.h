#pragma once
#include <cstdint>
#include <string>

namespace witnessmark {

/// Adds a code point (0 to 0x10FFFF, no surrogate) in UTF-8 (Unicode Standard, table 3-6).
void append_utf8(std::string& out, std::uint32_t code_point);

}  // namespace witnessmark
