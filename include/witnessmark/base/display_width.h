#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace witnessmark {

/// What a reader sees as one character (Unicode Standard Annex #29, extended grapheme cluster) and the columns it takes
/// on a terminal.
struct Grapheme {
  std::string_view text;
  int columns = 0;  ///< 0, 1 or 2.
};

/// The characters of a UTF-8 text in order. Columns by Unicode Standard Annex #11: wide and fullwidth take two, combining
/// marks, joiners and format characters none, ambiguous ones one.
std::vector<Grapheme> graphemes(std::string_view text);

/// Columns a text takes on a terminal. Controls count none: make the text visible() first.
int display_width(std::string_view text);

/// The longest beginning that takes at most `columns`, cut between characters.
std::string_view fit_columns(std::string_view text, int columns);

/// The text in exactly `columns`: blanks added at its end, or cut and ended with "…".
std::string pad_columns(std::string_view text, int columns);

}  // namespace witnessmark
