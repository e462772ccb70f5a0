#pragma once
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "read/transcripts/line_opening.h"
#include "witnessmark/base/error.h"
#include "witnessmark/read/reading_rules.h"

namespace witnessmark {

/// A stretch of a plain-text transcript: words that follow one opening or stand between empty lines. Bytes of
/// the text.
struct TextParagraph {
  std::size_t begin = 0;             ///< Of the words.
  std::size_t end = 0;               ///< Past the last word; begin when there are none.
  std::string_view label;            ///< Accepted as a speaker; empty without.
  std::string_view aside;            ///< Brackets between label and colon.
  std::optional<Millisecond> stamp;  ///< That the paragraph opens with.
  std::size_t opening_begin = 0;     ///< Where stamp and label stand: from here to begin.
};

struct TextParagraphs {
  std::vector<TextParagraph> paragraphs;
  std::int64_t heading_lines = 0;
};

/// Cuts a text by the rules of plain_text.h, heading lines left out. Views point into the text.
TextParagraphs cut_paragraphs(std::string_view text, std::string_view source, const ReadingRules& rules,
                              std::vector<Diagnostic>& diagnostics);

}  // namespace witnessmark
