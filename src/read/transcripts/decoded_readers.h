#pragma once
#include <optional>
#include <string_view>

#include "witnessmark/base/decode.h"
#include "witnessmark/model/transcript.h"
#include "witnessmark/read/reading_rules.h"

namespace witnessmark {

/// What all readers are given once the bytes are text.
struct ReadingTask {
  DecodedText decoded;
  std::string_view source;
  std::optional<Millisecond> recording_length;
  const ReadingRules& rules;
};

Result<Transcript> webvtt_transcript(const ReadingTask& task);
Result<Transcript> subrip_transcript(const ReadingTask& task);
Result<Transcript> text_transcript(const ReadingTask& task);

/// decode_text, but a NUL in what opens as WebVTT in UTF-8 becomes U+FFFD, as that standard wants.
Result<DecodedText> decode_transcript(std::string_view bytes, std::string_view source);

/// A transcript with what was found about the encoding; a note when the encoding is an assumption.
Transcript start_transcript(const ReadingTask& task, std::string_view reader);

}  // namespace witnessmark
