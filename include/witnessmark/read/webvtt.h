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

struct WebvttCue {
  std::string id;
  Millisecond start;
  Millisecond end;
  std::string text;       ///< As in the file: tags and character references not yet read.
  std::int64_t line = 0;  ///< Of the timing line, from 1.
};

/// A comment block.
struct WebvttNote {
  std::string text;            ///< Without the word NOTE.
  std::size_t before_cue = 0;  ///< Index of the cue it stands before; the number of cues at the end.
  std::int64_t line = 0;
};

struct WebvttFile {
  std::vector<WebvttCue> cues;  ///< In the order of the file.
  std::vector<WebvttNote> notes;
  std::vector<Diagnostic> diagnostics;
};

/// The parser of the WebVTT standard (W3C, "WebVTT: The Web Video Text Tracks Format", section 6.1) on
/// decoded text with LF line ends: takes what the standard takes, drops what it drops, and says so in a
/// diagnostic. Style and region blocks are passed over. Fails when the first line is not WEBVTT.
Result<WebvttFile> parse_webvtt(std::string_view text, std::string_view source);

/// Reads a WebVTT transcript. The reading text is made by the reader: one line for each utterance, opened by
/// "Label: " where the speaker is known (outside the utterance's range), cues of one speaker joined by a
/// space, tags dropped, character references read, line breaks within a cue made spaces; comment blocks as
/// lines of their own in square brackets, after the utterance they interrupt. An empty line stands between
/// all of these.
///
/// Speakers: voice spans (<v Name>), else a label before a colon (the rules of plain_text.h), else the
/// speaker of the cue before (common practice, no source; a note counts such cues). A line that opens with
/// ">>" or, where one cue has several, "-" is another, unnamed speaker. Cues without any speaker are joined
/// as far as ReadingRules says.
///
/// Marks: every cue's start, its end where a pause follows, and timestamps within cues. Starts that run
/// backwards lose their marks and are diagnostics: the fewest that leave the rest in order. Bytes after a
/// UTF-8 "WEBVTT" may hold NUL, read as U+FFFD as the standard wants.
Result<Transcript> read_webvtt(std::string_view bytes, std::string_view source,
                               std::optional<Millisecond> recording_length = std::nullopt,
                               const ReadingRules& rules = {});

}  // namespace witnessmark
