#include "witnessmark/base/display_width.h"

#include <unicode/brkiter.h>
#include <unicode/uchar.h>
#include <unicode/utext.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

namespace witnessmark {
namespace {

bool all_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char byte) { return static_cast<unsigned char>(byte) < 0x80; });
}

int columns_of(UChar32 c) {
  switch (u_charType(c)) {
    case U_NON_SPACING_MARK:
    case U_ENCLOSING_MARK:
    case U_FORMAT_CHAR:
    case U_CONTROL_CHAR:
    case U_LINE_SEPARATOR:
    case U_PARAGRAPH_SEPARATOR:
      return 0;
    default:
      break;
  }
  // Vowels and finals of a Hangul syllable join its first letter.
  if (c >= 0x1160 && c <= 0x11FF) return 0;
  const int width = u_getIntPropertyValue(c, UCHAR_EAST_ASIAN_WIDTH);
  return width == U_EA_WIDE || width == U_EA_FULLWIDTH ? 2 : 1;
}

/// The widest of its code points: marks add nothing to the letter they stand on. The sign that asks for the
/// picture form of a symbol (U+FE0F) makes it wide.
int columns_of_cluster(std::string_view cluster) {
  int columns = 0;
  for (std::int32_t at = 0; at < static_cast<std::int32_t>(cluster.size());) {
    UChar32 c = 0;
    U8_NEXT_OR_FFFD(reinterpret_cast<const std::uint8_t*>(cluster.data()), at,
                    static_cast<std::int32_t>(cluster.size()), c);
    columns = std::max(columns, c == 0xFE0F && columns == 1 ? 2 : columns_of(c));
  }
  return columns;
}

struct CloseText {
  void operator()(UText* text) const { utext_close(text); }
};

std::vector<Grapheme> ascii_graphemes(std::string_view text) {
  std::vector<Grapheme> found;
  found.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i)
    found.push_back({text.substr(i, 1), text[i] < ' ' || text[i] == 0x7F ? 0 : 1});
  return found;
}

}  // namespace

std::vector<Grapheme> graphemes(std::string_view text) {
  if (all_ascii(text)) return ascii_graphemes(text);
  UErrorCode status = U_ZERO_ERROR;
  const std::unique_ptr<icu::BreakIterator> breaks(
      icu::BreakIterator::createCharacterInstance(icu::Locale::getRoot(), status));
  const std::unique_ptr<UText, CloseText> read(
      utext_openUTF8(nullptr, text.data(), static_cast<std::int64_t>(text.size()), &status));
  if (U_SUCCESS(status)) breaks->setText(read.get(), status);
  if (U_FAILURE(status)) throw std::runtime_error("ICU cannot divide text into characters");
  std::vector<Grapheme> found;
  std::int32_t begin = breaks->first();
  for (std::int32_t end = breaks->next(); end != icu::BreakIterator::DONE;
       begin = end, end = breaks->next()) {
    const auto cluster = text.substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin));
    found.push_back({cluster, columns_of_cluster(cluster)});
  }
  return found;
}

int display_width(std::string_view text) {
  int columns = 0;
  for (const Grapheme& grapheme : graphemes(text)) columns += grapheme.columns;
  return columns;
}

std::string_view fit_columns(std::string_view text, int columns) {
  std::size_t bytes = 0;
  for (const Grapheme& grapheme : graphemes(text)) {
    if (columns < grapheme.columns) break;
    columns -= grapheme.columns;
    bytes += grapheme.text.size();
  }
  return text.substr(0, bytes);
}

std::string pad_columns(std::string_view text, int columns) {
  const int width = display_width(text);
  if (columns <= 0) return "";
  if (width <= columns)
    return std::string(text) + std::string(static_cast<std::size_t>(columns - width), ' ');
  std::string cut(fit_columns(text, columns - 1));
  const int left = columns - 1 - display_width(cut);
  return cut + "…" + std::string(static_cast<std::size_t>(std::max(0, left)), ' ');
}

}  // namespace witnessmark
