#include "read/transcripts/caption_text.h"

#include "read/transcripts/spoken_parts.h"
#include "witnessmark/base/code_point_index.h"

namespace witnessmark {

void CaptionText::start_line() {
  if (!out_.reading_text.empty()) out_.reading_text += "\n\n";
}

void CaptionText::open(std::string_view speaker) {
  start_line();
  if (!speaker.empty()) out_.reading_text.append(speaker).append(": ");
  begin_ = size();
  open_ = true;
}

std::size_t CaptionText::add(std::string_view words) {
  if (size() > begin_) out_.reading_text += ' ';
  const std::size_t at = size();
  out_.reading_text += words;
  return at;
}

void CaptionText::close(std::string_view speaker, std::optional<TimeRange> time, Timing timing) {
  Utterance utterance;
  utterance.speaker = speaker;
  utterance.time = time;
  utterance.timing = time ? timing : Timing::none;
  ranges_.push_back(byte_range(begin_, size()));
  out_.utterances.push_back(std::move(utterance));
  open_ = false;
}

void CaptionText::add_comment(std::string_view text) {
  start_line();
  const std::size_t begin = size();
  out_.reading_text.append("[").append(text).append("]");
  comments_.push_back(byte_range(begin, size()));
}

void CaptionText::mark(std::size_t byte, Millisecond time) {
  if (!marks_.empty() && (time < marks_.back().second || byte <= marks_.back().first)) return;
  marks_.emplace_back(byte, time);
}

Transcript CaptionText::finish(const BracketRules& brackets) {
  out_.reading_text += '\n';
  const CodePointIndex index(out_.reading_text);
  for (std::size_t i = 0; i < ranges_.size(); ++i)
    out_.utterances[i].range = index.to_code_points(ranges_[i]);
  for (const auto& [byte, time] : marks_) {
    out_.marks.push_back({index.to_code_point({static_cast<std::int64_t>(byte)}), time});
  }
  set_remarks(out_, find_remarks(out_.reading_text, brackets), comments_);
  drop_utterances_without_words(out_);
  return std::move(out_);
}

}  // namespace witnessmark
