#include "read/transcripts/utterance_times.h"

#include <algorithm>

namespace witnessmark {
namespace {

struct Begin {
  std::optional<Millisecond> time;
  Timing timing = Timing::none;
};

/// `next` is the first mark past the position.
Begin begin_at(const std::vector<TimeMark>& marks, std::size_t next, CodePoint at) {
  if (next == 0) return {};
  const TimeMark& before = marks[next - 1];
  if (before.at == at) return {before.time, Timing::stated};
  if (next == marks.size()) return {};
  const TimeMark& after = marks[next];
  const double share =
      static_cast<double>(at.value - before.at.value) / static_cast<double>(after.at.value - before.at.value);
  const auto passed =
      static_cast<std::int64_t>(static_cast<double>(after.time.value - before.time.value) * share);
  return {Millisecond{before.time.value + passed}, Timing::interpolated};
}

}  // namespace

void set_utterance_times(Transcript& transcript, std::optional<Millisecond> recording_length) {
  std::vector<Utterance>& utterances = transcript.utterances;
  if (utterances.empty() || transcript.marks.empty()) return;
  std::vector<TimeMark> marks = transcript.marks;
  const TimeMark last = marks.back();
  const CodePoint text_end = utterances.back().range.end;
  if (recording_length && *recording_length > last.time && text_end > last.at)
    marks.push_back({text_end, *recording_length});

  std::size_t next = 0;
  for (Utterance& utterance : utterances) {
    while (next < marks.size() && marks[next].at <= utterance.range.begin) ++next;
    const Begin begin = begin_at(marks, next, utterance.range.begin);
    utterance.timing = begin.timing;
    utterance.time.reset();
    if (begin.time) utterance.time = TimeRange{*begin.time, *begin.time};
  }
  std::size_t mark = 0;
  for (std::size_t i = 0; i < utterances.size(); ++i) {
    Utterance& utterance = utterances[i];
    while (mark < marks.size() && marks[mark].at <= utterance.range.end) ++mark;
    if (!utterance.time) continue;
    if (i + 1 < utterances.size() && utterances[i + 1].time) {
      utterance.time->end = utterances[i + 1].time->begin;
    } else if (mark > 0) {
      utterance.time->end = std::max(utterance.time->begin, marks[mark - 1].time);
    }
  }
}

}  // namespace witnessmark
