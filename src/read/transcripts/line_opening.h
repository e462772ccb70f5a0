#pragma once
#include <optional>
#include <string_view>

#include "read/transcripts/speaker_labels.h"
#include "read/transcripts/stamps.h"

namespace witnessmark {

/// What a line of a plain-text transcript opens with, by shape alone: a stamp, a label, or both in either
/// order. Offsets are bytes in the line.
struct LineOpening {
  std::optional<Millisecond> stamp;  ///< Before the label or, without one, before the words.
  std::size_t stamp_begin = 0;
  std::size_t bad_stamp_end = 0;  ///< A stamp whose seconds run over stands at stamp_begin to here; 0: none.
  std::size_t after_stamp = 0;    ///< Where words begin when no label is taken.

  std::optional<LabelShape> label;         ///< Views into the line; words_at counts in the line.
  std::optional<Millisecond> label_stamp;  ///< Inside or behind the label.
  std::size_t after_label = 0;             ///< Where words begin when the label is taken.
  std::size_t label_begin = 0;
};

LineOpening read_line_opening(std::string_view line);

/// A name alone on a line with nothing but a time on the line below it, as some machines write speakers:
/// gives the name's line label and time, and says whether it was so.
bool take_time_below(std::string_view name_line, const LineOpening& below, std::size_t below_size,
                     LineOpening& opening);

/// A time in brackets, [0:14], (1:02:03) or with a second time [0:14-0:20]; the length is that of brackets
/// and all.
std::optional<StampReading> read_bracketed_stamp(std::string_view text);

}  // namespace witnessmark
