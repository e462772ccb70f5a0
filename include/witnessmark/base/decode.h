#pragma once
#include <string>
#include <string_view>

#include "witnessmark/base/result.h"

namespace witnessmark {

enum class Encoding { utf8, utf16_little_endian, utf16_big_endian, windows_1252 };

/// "UTF-8", "UTF-16LE", "UTF-16BE", "windows-1252".
std::string_view to_string(Encoding encoding);

struct DecodedText {
  std::string text;  ///< Valid UTF-8, no byte order mark, lines ended by LF.
  Encoding encoding = Encoding::utf8;
  bool had_mark = false;  ///< A byte order mark settled the encoding.
  bool assumed = false;   ///< No mark, and not plain valid UTF-8: the encoding is an assumption.
  bool had_carriage_returns = false;
  std::string remark;  ///< One sentence for people: what was found or assumed.
};

/// Decodes bytes of a text file. Detected in this order: a byte order mark; UTF-16 without mark (many zero
/// bytes in every second place, next to none in the others); valid UTF-8; else windows-1252 (WHATWG Encoding
/// Standard: its five unassigned bytes are C1 controls). CRLF and lone CR become LF. Fails, naming line and
/// column, on a NUL or on broken UTF-16 or on UTF-8 after a UTF-8 mark that is not valid.
Result<DecodedText> decode_text(std::string_view bytes, std::string_view source);

}  // namespace witnessmark
