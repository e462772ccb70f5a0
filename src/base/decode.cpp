#include "witnessmark/base/decode.h"

#include <fmt/format.h>
#include <unicode/ucnv.h>
#include <unicode/utf16.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

#include "base/utf8.h"

namespace witnessmark {
namespace {

constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";
constexpr std::string_view kLittleEndianMark = "\xFF\xFE";
constexpr std::string_view kBigEndianMark = "\xFE\xFF";
constexpr std::string_view kUtf32LittleEndianMark{"\xFF\xFE\0\0", 4};
constexpr std::string_view kUtf32BigEndianMark{"\0\0\xFE\xFF", 4};

/// An error at the place just behind the text read so far (UTF-8, line breaks of any kind).
Error error_after(std::string_view before, std::string_view source, std::string message, std::string advice) {
  std::int64_t line = 1;
  std::size_t line_start = 0;
  for (std::size_t i = 0; i < before.size(); ++i) {
    const bool lone_return = before[i] == '\r' && (i + 1 == before.size() || before[i + 1] != '\n');
    if (before[i] != '\n' && !lone_return) continue;
    ++line;
    line_start = i + 1;
  }
  const std::int64_t column = count_code_points(before.substr(line_start)) + 1;
  return {std::string(source), line, column, std::move(message), std::move(advice)};
}

Error null_error(std::string_view before, std::string_view source) {
  return error_after(before, source, "a NUL character, which no text holds",
                     "is this a text file? Save it as plain text in UTF-8");
}

/// Text without mark is UTF-16 when nearly all its zero bytes stand in the same half of the byte pairs and a
/// good part of the pairs have one: the Latin letters, digits and spaces of any language but a few.
bool looks_like_utf16(std::string_view bytes, bool big_endian) {
  if (bytes.size() % 2 != 0) return false;
  std::size_t zeros[2] = {0, 0};
  for (std::size_t i = 0; i < bytes.size(); ++i) zeros[i % 2] += bytes[i] == '\0' ? 1 : 0;
  const std::size_t high = zeros[big_endian ? 0 : 1];
  const std::size_t low = zeros[big_endian ? 1 : 0];
  return high * 10 >= bytes.size() / 2 * 3 && high > 0 && low * 20 <= high;
}

Result<std::string> from_utf16(std::string_view bytes, bool big_endian, std::string_view source) {
  const auto unit_at = [&](std::size_t index) {
    const auto first = static_cast<unsigned char>(bytes[2 * index]);
    const auto second = static_cast<unsigned char>(bytes[2 * index + 1]);
    return static_cast<char16_t>(big_endian ? first << 8 | second : second << 8 | first);
  };
  const std::size_t units = bytes.size() / 2;
  const std::string advice = "the file is damaged or not UTF-16; save it anew as UTF-8";
  std::string text;
  text.reserve(units + units / 8);
  for (std::size_t i = 0; i < units; ++i) {
    UChar32 c = unit_at(i);
    if (U16_IS_SURROGATE(c)) {
      if (U16_IS_SURROGATE_TRAIL(c) || i + 1 == units || !U16_IS_TRAIL(unit_at(i + 1))) {
        return error_after(text, source, fmt::format("half of a UTF-16 surrogate pair ({:04X})", c), advice);
      }
      c = U16_GET_SUPPLEMENTARY(c, unit_at(++i));
    }
    char sequence[U8_MAX_LENGTH];
    std::size_t length = 0;
    U8_APPEND_UNSAFE(sequence, length, c);
    text.append(sequence, length);
  }
  if (bytes.size() % 2 != 0) return error_after(text, source, "UTF-16 text ends in half a character", advice);
  return text;
}

std::string from_windows_1252(std::string_view bytes) {
  UErrorCode status = U_ZERO_ERROR;
  const std::unique_ptr<UConverter, decltype(&ucnv_close)> from(ucnv_open("windows-1252", &status),
                                                                ucnv_close);
  const std::unique_ptr<UConverter, decltype(&ucnv_close)> to(ucnv_open("UTF-8", &status), ucnv_close);
  // Each byte becomes one code point of the basic plane: at most three bytes.
  std::string text(bytes.size() * 3 + 1, '\0');
  char* out = text.data();
  const char* in = bytes.data();
  ucnv_convertEx(to.get(), from.get(), &out, text.data() + text.size(), &in, bytes.data() + bytes.size(),
                 nullptr, nullptr, nullptr, nullptr, true, true, &status);
  if (U_FAILURE(status)) {
    throw std::runtime_error(std::string("ICU cannot convert windows-1252: ") + u_errorName(status));
  }
  text.resize(static_cast<std::size_t>(out - text.data()));
  return text;
}

/// CRLF and lone CR to LF, in place. Returns whether there was one.
bool unify_line_breaks(std::string& text) {
  std::size_t out = text.find('\r');
  if (out == std::string_view::npos) return false;
  for (std::size_t in = out; in < text.size(); ++in) {
    char byte = text[in];
    if (byte == '\r') {
      if (in + 1 < text.size() && text[in + 1] == '\n') continue;
      byte = '\n';
    }
    text[out++] = byte;
  }
  text.resize(out);
  return true;
}

/// The bytes windows-1252 leaves without a character.
std::int64_t count_unassigned(std::string_view bytes) {
  constexpr std::string_view kUnassigned = "\x81\x8D\x8F\x90\x9D";
  return std::count_if(bytes.begin(), bytes.end(),
                       [&](char byte) { return kUnassigned.find(byte) != std::string_view::npos; });
}

Result<DecodedText> finish(DecodedText decoded, std::string_view source) {
  if (const std::size_t null = decoded.text.find('\0'); null != std::string::npos) {
    return null_error(std::string_view(decoded.text).substr(0, null), source);
  }
  decoded.had_carriage_returns = unify_line_breaks(decoded.text);
  return decoded;
}

Result<DecodedText> decode_utf16(std::string_view bytes, bool big_endian, bool had_mark,
                                 std::string_view source) {
  auto text = from_utf16(bytes, big_endian, source);
  if (!text) return text.error();
  DecodedText decoded;
  decoded.text = *std::move(text);
  decoded.encoding = big_endian ? Encoding::utf16_big_endian : Encoding::utf16_little_endian;
  decoded.had_mark = had_mark;
  decoded.assumed = !had_mark;
  decoded.remark =
      had_mark ? fmt::format("{} by its byte order mark", to_string(decoded.encoding))
               : fmt::format("no byte order mark; taken as {} because every second byte is mostly zero",
                             to_string(decoded.encoding));
  return finish(std::move(decoded), source);
}

Result<DecodedText> decode_marked_utf8(std::string_view bytes, std::string_view source) {
  const std::size_t valid = well_formed_prefix(bytes);
  if (valid < bytes.size()) {
    return error_after(
        bytes.substr(0, valid), source,
        fmt::format("the file says it is UTF-8 (byte order mark), but byte {:02X} is not valid there",
                    static_cast<unsigned char>(bytes[valid])),
        "open it in the program it came from and save it anew as UTF-8");
  }
  DecodedText decoded;
  decoded.text = bytes;
  decoded.had_mark = true;
  decoded.remark = "UTF-8 by its byte order mark";
  return finish(std::move(decoded), source);
}

Result<DecodedText> decode_as_windows_1252(std::string_view bytes, std::size_t valid,
                                           std::string_view source) {
  DecodedText decoded;
  decoded.text = from_windows_1252(bytes);
  decoded.encoding = Encoding::windows_1252;
  decoded.assumed = true;
  const Error place = error_after(bytes.substr(0, valid), source, "", "");
  decoded.remark = fmt::format("not UTF-8 (byte {:02X} in line {}, column {}); taken as windows-1252",
                               static_cast<unsigned char>(bytes[valid]), place.line, place.column);
  if (const std::int64_t unassigned = count_unassigned(bytes); unassigned > 0) {
    decoded.remark += fmt::format(", though {} of its bytes have no character there", unassigned);
  }
  return finish(std::move(decoded), source);
}

}  // namespace

std::string_view to_string(Encoding encoding) {
  switch (encoding) {
    case Encoding::utf8:
      return "UTF-8";
    case Encoding::utf16_little_endian:
      return "UTF-16LE";
    case Encoding::utf16_big_endian:
      return "UTF-16BE";
    case Encoding::windows_1252:
      break;
  }
  return "windows-1252";
}

Result<DecodedText> decode_text(std::string_view bytes, std::string_view source) {
  if (bytes.starts_with(kUtf32LittleEndianMark) || bytes.starts_with(kUtf32BigEndianMark)) {
    return Error{std::string(source), 0, 0,
                 "the file is UTF-32 by its byte order mark, which is not read here", "save it as UTF-8"};
  }
  if (bytes.starts_with(kUtf8Mark)) return decode_marked_utf8(bytes.substr(kUtf8Mark.size()), source);
  if (bytes.starts_with(kLittleEndianMark)) return decode_utf16(bytes.substr(2), false, true, source);
  if (bytes.starts_with(kBigEndianMark)) return decode_utf16(bytes.substr(2), true, true, source);
  // UTF-16 of ASCII letters is valid UTF-8 with NULs in it, so a text with NULs is asked for UTF-16 first.
  if (bytes.find('\0') != std::string_view::npos) {
    for (const bool big_endian : {false, true}) {
      if (looks_like_utf16(bytes, big_endian)) return decode_utf16(bytes, big_endian, false, source);
    }
  }
  const std::size_t valid = well_formed_prefix(bytes);
  if (valid < bytes.size()) return decode_as_windows_1252(bytes, valid, source);
  DecodedText decoded;
  decoded.text = bytes;
  decoded.remark = ascii_prefix(bytes) == bytes.size() ? "plain ASCII, read as UTF-8" : "valid UTF-8";
  return finish(std::move(decoded), source);
}

}  // namespace witnessmark
