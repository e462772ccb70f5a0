#include "witnessmark/model/letter_figure.h"

#include <array>

namespace witnessmark {
namespace {

// Headings of FM 2-22.3 (2006), appendix B, tables B-1 and B-2.
constexpr std::array<std::string_view, 6> kLetters = {"reliable",        "usually reliable",
                                                      "fairly reliable", "not usually reliable",
                                                      "unreliable",      "cannot be judged"};
constexpr std::array<std::string_view, 6> kFigures = {"confirmed",       "probably true", "possibly true",
                                                      "doubtfully true", "improbable",    "cannot be judged"};

/// Earlier is better; the last of the six, and none, cannot be compared.
std::partial_ordering compare_half(char a, char b, char first) {
  const auto judged = [first](char half) { return half >= first && half < first + 5; };
  if (a == b) return std::partial_ordering::equivalent;
  if (!judged(a) || !judged(b)) return std::partial_ordering::unordered;
  return a < b ? std::partial_ordering::less : std::partial_ordering::greater;
}

}  // namespace

std::optional<LetterFigure> parse_letter_figure(std::string_view text) {
  LetterFigure noted;
  if (!text.empty() && text.front() >= 'A' && text.front() <= 'F') {
    noted.letter = text.front();
    text.remove_prefix(1);
  }
  if (!text.empty() && text.front() >= '1' && text.front() <= '6') {
    noted.figure = text.front();
    text.remove_prefix(1);
  }
  if (!text.empty() || noted == LetterFigure{}) return std::nullopt;
  return noted;
}

std::string to_string(const LetterFigure& noted) {
  std::string text;
  if (noted.letter != 0) text += noted.letter;
  if (noted.figure != 0) text += noted.figure;
  return text;
}

std::string describe(const LetterFigure& noted) {
  std::string text;
  if (noted.letter != 0)
    text += std::string{noted.letter, ' '} +
            std::string(kLetters.at(static_cast<std::size_t>(noted.letter - 'A')));
  if (noted.letter != 0 && noted.figure != 0) text += ", ";
  if (noted.figure != 0)
    text += std::string{noted.figure, ' '} +
            std::string(kFigures.at(static_cast<std::size_t>(noted.figure - '1')));
  return text;
}

std::partial_ordering compare(const LetterFigure& a, const LetterFigure& b) {
  const auto letters = compare_half(a.letter, b.letter, 'A');
  const auto figures = compare_half(a.figure, b.figure, '1');
  if (letters == figures) return letters;
  if (letters == std::partial_ordering::equivalent) return figures;
  if (figures == std::partial_ordering::equivalent) return letters;
  return std::partial_ordering::unordered;
}

}  // namespace witnessmark
