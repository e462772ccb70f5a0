#pragma once
#include <string>
#include <string_view>

namespace witnessmark {

/// What stands for a reference at the start of the text (which begins with '&'), by the HTML standard's rules
/// for text: the longest name known, also without its semicolon where the standard allows that; numbers in
/// decimal or hexadecimal. Appends to `out` and returns the bytes read; when there is none, appends '&' and
/// returns 1.
std::size_t read_character_reference(std::string_view text, std::string& out);

}  // namespace witnessmark
