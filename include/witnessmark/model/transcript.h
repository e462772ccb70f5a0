#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/base/error.h"
#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// Where a time range comes from.
enum class Timing { none, stated, interpolated };

/// One speaker's turn in a reading text. The range covers the words, without label and time stamp.
struct Utterance {
  std::string speaker;              ///< Label as written; empty when none.
  CodePointRange range;
  std::optional<TimeRange> time;    ///< End of the last utterance without end stamp: the recording's end if known.
  Timing timing = Timing::none;
  bool operator==(const Utterance&) const = default;
};

/// A code point at which the recording stands at a time: a stamp in the transcript, also inside an utterance.
struct TimeMark {
  CodePoint at;
  Millisecond time;
  bool operator==(const TimeMark&) const = default;
};

/// A bracketed or parenthesised remark of the transcriber: [laughs], (pause), [sic: 1958], a NOTE block.
struct Remark {
  CodePointRange range;
  bool operator==(const Remark&) const = default;
};

/// A sentence of an utterance; its times are interpolated between time marks by code points, and marked so.
struct Sentence {
  std::size_t utterance = 0;        ///< Index into the transcript's utterances.
  CodePointRange range;
  std::optional<TimeRange> time;
  Timing timing = Timing::none;
  bool operator==(const Sentence&) const = default;
};

/// What a reader makes of one transcript file.
struct Transcript {
  std::string reading_text;         ///< UTF-8, LF, no byte order mark.
  std::string reader;               ///< "webvtt", "subrip", "text".
  std::string encoding_remark;      ///< What was found or assumed about the encoding.
  std::vector<Utterance> utterances;   ///< In order of the text, not overlapping.
  std::vector<TimeMark> marks;         ///< In order of the text.
  std::vector<Remark> remarks;
  std::vector<Diagnostic> diagnostics; ///< Bad stamps and the like; the rest was read all the same.
};

/// What of a range is words of one turn.
struct TurnPiece {
  std::size_t utterance = 0;  ///< Index into the transcript's utterances.
  CodePointRange range;
  bool operator==(const TurnPiece&) const = default;
};
/// The words of a range turn by turn, in order of the text: without labels and stamps, which are nobody's
/// words.
std::vector<TurnPiece> by_turn(const Transcript& transcript, CodePointRange range);

/// The time at a code point, between the nearest marks before and after within [utterance begin, end]; nothing without
/// marks. `interpolated` unless a mark stands exactly there.
struct TimeAt {
  Millisecond time;
  Timing timing = Timing::interpolated;
};
std::optional<TimeAt> time_at(const Transcript& transcript, CodePoint position);

/// Fills the time ranges of sentences from the transcript's marks and utterances.
void place_in_time(const Transcript& transcript, std::vector<Sentence>& sentences);

/// "1:02:03.4" for people, about when interpolated is said by the caller.
std::string to_timecode(Millisecond time);

/// One line for tests: "NAME [0:05-0:12] text…".
std::string dump(const Transcript& transcript, const Utterance& utterance);

}  // namespace witnessmark
