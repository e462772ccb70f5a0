#pragma once
#include <optional>
#include <string_view>

#include "witnessmark/base/result.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/model/transcript.h"
#include "witnessmark/read/reading_rules.h"

namespace witnessmark {

enum class TranscriptFormat { webvtt, subrip, text };

/// "webvtt", "subrip", "text".
std::string_view to_string(TranscriptFormat format);
std::optional<TranscriptFormat> parse_transcript_format(std::string_view text);

/// Content first: a first line WEBVTT, or a SubRip timing line among the first lines; then the name's ending
/// (.vtt, .srt); else text.
TranscriptFormat detect_format(std::string_view file_name, std::string_view decoded_text);

/// Reads a transcript file. `source` names it in messages; `format` is detected when not given;
/// `recording_length` ends the last utterance where the file does not. A bad stamp or cue is a diagnostic in
/// the result, and the rest is read; an Error comes back when the bytes are no text, the format asked for is
/// not there, or no words are found.
///
/// What positions count: code points of reading_text. Of plain text that is the decoded file as it is; of
/// captions it is a text the reader makes (webvtt.h, subrip.h). In both, utterance ranges cover the words
/// only: labels, stamps, cue ids and tags lie outside, but for a stamp that falls inside a run-on sentence of
/// plain text, which is given as a mark and as a remark too, so that whoever reads the words passes over it.
Result<Transcript> read_transcript(std::string_view bytes, std::string_view source,
                                   std::optional<TranscriptFormat> format = std::nullopt,
                                   std::optional<Millisecond> recording_length = std::nullopt,
                                   const ReadingRules& rules = {});

}  // namespace witnessmark
