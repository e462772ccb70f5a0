#pragma once
#include <optional>

#include "witnessmark/model/transcript.h"

namespace witnessmark {

/// Gives utterances their times from the marks: stated where one begins at a mark, interpolated by code
/// points between marks (and the recording's end, at the end of the text) elsewhere, none before the first
/// mark and, without a recording length, after the last. Each ends where the next begins.
void set_utterance_times(Transcript& transcript, std::optional<Millisecond> recording_length);

}  // namespace witnessmark
