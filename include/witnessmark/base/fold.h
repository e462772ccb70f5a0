#pragma once
#include <string>
#include <string_view>

namespace witnessmark {

/// Folding for matching: NFKC_Casefold (Unicode Standard, chapter 3.13), apostrophes and dashes made plain
/// ASCII, runs of Unicode White_Space made one space, ends trimmed. Bytes that are not UTF-8 become U+FFFD.
/// Folding twice changes nothing more. Never shown to people.
std::string fold(std::string_view text);

/// White space at both ends removed (ASCII white space and U+00A0).
std::string_view trim(std::string_view text);

/// Whether every byte sequence is well-formed UTF-8 (Unicode Standard, table 3-7).
bool is_valid_utf8(std::string_view text);

/// Makes a text safe to print to a terminal or a log: C0 and C1 controls (but for tab and LF), DEL and
/// bidirectional controls are shown as visible marks such as <U+001B>, bytes that are not UTF-8 as <byte 9B>.
std::string visible(std::string_view text);

}  // namespace witnessmark
