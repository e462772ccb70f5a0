#pragma once
#include <vector>

#include "witnessmark/model/transcript.h"
#include "witnessmark/read/reading_rules.h"

namespace witnessmark {

/// Gives the transcript its remarks: `found` and `made`, byte ranges of the reading text, in order, those of
/// `found` that overlap one of `made` left out.
void set_remarks(Transcript& transcript, std::vector<ByteRange> found, const std::vector<ByteRange>& made);

/// Takes out utterances that are nothing but remarks: [music], [END OF TRACK 1].
void drop_utterances_without_words(Transcript& transcript);

}  // namespace witnessmark
