#pragma once
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "read/transcripts/decoded_readers.h"

namespace witnessmark {

/// One line of a cue, tags gone: what one voice says without line break.
struct CaptionLine {
  std::optional<std::string> voice;  ///< Speaker as a tag names it.
  std::string words;
  std::vector<std::pair<std::size_t, Millisecond>> times;  ///< Timestamps inside, at bytes of `words`.
};

struct CaptionCue {
  Millisecond start;
  std::optional<Millisecond> end;
  std::int64_t line = 0;
  std::vector<CaptionLine> lines;
};

/// A comment that stands before the cue of that index.
struct CaptionNote {
  std::string text;
  std::size_t before_cue = 0;
};

/// Joins cues into a transcript as webvtt.h describes it. Adds to `transcript`, which start_transcript made.
Result<Transcript> caption_transcript(const ReadingTask& task, Transcript transcript,
                                      const std::vector<CaptionCue>& cues,
                                      const std::vector<CaptionNote>& notes);

}  // namespace witnessmark
