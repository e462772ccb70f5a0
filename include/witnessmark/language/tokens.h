#pragma once
#include <cstdint>
#include <string_view>
#include <vector>

namespace witnessmark {

/// A word, number or mark of a UTF-8 text, found in one pass. Words are compared by a 64-bit hash of their
/// folded form. Hyphens between words are no tokens of their own, so that "two-inch" and "two inch" are the
/// same words.
struct Token {
  enum class Kind : std::uint8_t { word, number, mark };
  std::uint64_t form = 0;   ///< Hash of the folded word; of the digits without separators; of the mark.
  std::uint64_t stem = 0;   ///< Hash without a possessive 's or '; else equal to form.
  std::uint32_t begin = 0;  ///< Byte range in the text.
  std::uint32_t end = 0;
  Kind kind = Kind::word;
  bool capital = false;  ///< Begins with a capital letter (ASCII).
  bool joined = false;   ///< A hyphen, or nothing at all, stands between it and the token before.
  char mark = 0;  ///< For marks: , . ; : ? ! ( ) [ ] " - (a dash), ~ (an ellipsis), else another character.
};

/// Tokens of a text; bytes from 2^32 on are not read. Bytes that are not UTF-8 count as letters.
std::vector<Token> tokenize(std::string_view text);
/// The same, into a vector that is emptied first.
void tokenize(std::string_view text, std::vector<Token>& tokens);

/// The hash of a folded word as tokenize makes it.
std::uint64_t word_form(std::string_view folded_word);

}  // namespace witnessmark
