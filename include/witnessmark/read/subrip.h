#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/result.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/model/transcript.h"
#include "witnessmark/read/reading_rules.h"

namespace witnessmark {

struct SubripCue {
  std::string index;  ///< As written; empty when missing.
  Millisecond start;
  std::optional<Millisecond> end;  ///< Nothing when it lies before the start.
  std::string text;                ///< Lines joined by LF, tags not yet read.
  std::int64_t line = 0;           ///< Of the timing line, from 1.
};

struct SubripFile {
  std::vector<SubripCue> cues;
  std::vector<Diagnostic> diagnostics;
};

/// SubRip has no standard; what is read (common practice, no source): an optional number line, a timing line
/// h:mm:ss,ttt --> h:mm:ss,ttt (dot for the comma, hours optional, one to three decimals or none; anything
/// after it is passed over), text lines to the next empty line. Text after an empty line that leads to no
/// timing line belongs to the cue before, with a note. Fails when there is no timing line.
Result<SubripFile> parse_subrip(std::string_view text, std::string_view source);

/// Reads a SubRip transcript to the same kind of reading text, speakers and marks as read_webvtt. The tags b,
/// i, u, s, font and {\…} are dropped, character references with a semicolon read; other angle brackets stay.
Result<Transcript> read_subrip(std::string_view bytes, std::string_view source,
                               std::optional<Millisecond> recording_length = std::nullopt,
                               const ReadingRules& rules = {});

}  // namespace witnessmark
