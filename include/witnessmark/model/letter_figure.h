#pragma once
#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace witnessmark {

/// The published letter-figure scale (FM 2-22.3, Human Intelligence Collector Operations, 2006, appendix B): a letter A to F for
/// a source, a figure 1 to 6 for what it says, each judged without the other. It may be noted on an entry, one half or
/// both; never on a narrator, so for testimony the figure only.
struct LetterFigure {
  char letter = 0;   ///< 'A' to 'F'; 0 when not given.
  char figure = 0;   ///< '1' to '6'; 0 when not given.
  bool operator==(const LetterFigure&) const = default;
};

/// Reads "B2", "B", "2"; nothing for anything else.
std::optional<LetterFigure> parse_letter_figure(std::string_view text);
std::string to_string(const LetterFigure& noted);

/// "B usually reliable, 2 probably true".
std::string describe(const LetterFigure& noted);

/// Letters by letter, figures by figure. F and 6 mean "cannot be judged": they are neither better nor worse than any other, and
/// so is what was not given. Letter and figure that point different ways are unordered too.
std::partial_ordering compare(const LetterFigure& a, const LetterFigure& b);

}  // namespace witnessmark
