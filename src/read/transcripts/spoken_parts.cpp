#include "read/transcripts/spoken_parts.h"

#include <algorithm>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {

void set_remarks(Transcript& transcript, std::vector<ByteRange> found, const std::vector<ByteRange>& made) {
  std::vector<ByteRange> all = made;
  auto next = made.begin();
  for (const ByteRange& range : found) {
    while (next != made.end() && next->end <= range.begin) ++next;
    if (next == made.end() || !range.overlaps(*next)) all.push_back(range);
  }
  std::sort(all.begin(), all.end());
  const CodePointIndex index(transcript.reading_text);
  transcript.remarks.clear();
  for (const ByteRange& range : all) transcript.remarks.push_back({index.to_code_points(range)});
}

void drop_utterances_without_words(Transcript& transcript) {
  const CodePointIndex index(transcript.reading_text);
  auto remark = transcript.remarks.begin();
  std::erase_if(transcript.utterances, [&](const Utterance& utterance) {
    CodePoint at = utterance.range.begin;
    while (remark != transcript.remarks.end() && remark->range.end <= at) ++remark;
    for (auto next = remark; next != transcript.remarks.end() && next->range.begin < utterance.range.end;
         ++next) {
      if (at < next->range.begin && !trim(index.slice({at, next->range.begin})).empty()) return false;
      at = std::max(at, next->range.end);
    }
    return at >= utterance.range.end || trim(index.slice({at, utterance.range.end})).empty();
  });
}

}  // namespace witnessmark
