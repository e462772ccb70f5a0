#include "witnessmark/read/plain_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "read/transcripts/decoded_readers.h"
#include "read/transcripts/sentence_end.h"
#include "read/transcripts/spoken_parts.h"
#include "read/transcripts/stamp_order.h"
#include "read/transcripts/text_lines.h"
#include "read/transcripts/text_paragraphs.h"
#include "read/transcripts/utterance_times.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// "END OF TAPE 1": the transcriber's, without brackets.
bool is_end_line(std::string_view words) {
  return words.starts_with("END OF ") && words.size() < 60 &&
         std::none_of(words.begin(), words.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

struct Turn {
  std::string_view speaker;
  std::size_t begin = 0;
  std::size_t end = 0;
};

struct TextMark {
  std::size_t at = 0;     ///< First word the stamp speaks of.
  std::size_t stamp = 0;  ///< Where it stands.
  Millisecond time;
};

class TextReader {
 public:
  explicit TextReader(const ReadingTask& task)
      : task_(task), out_(start_transcript(task, "text")), lines_(task.decoded.text) {
    out_.reading_text = task.decoded.text;
  }

  Result<Transcript> read() {
    const std::string_view text = out_.reading_text;
    const TextParagraphs cut = cut_paragraphs(text, task_.source, task_.rules, out_.diagnostics);
    note_heading(cut.heading_lines);
    for (const TextParagraph& paragraph : cut.paragraphs) add(paragraph);
    remarks_ = find_remarks(text, task_.rules.brackets);
    find_inner_stamps();
    drop_outer_stamps();
    place_utterances();
    place_marks();
    set_remarks(out_, std::move(remarks_), made_);
    drop_utterances_without_words(out_);
    if (out_.utterances.empty()) {
      return Error{std::string(task_.source), 0, 0, "the transcript holds no spoken words",
                   "check that this is the right file"};
    }
    set_utterance_times(out_, task_.recording_length);
    return std::move(out_);
  }

 private:
  std::string_view text() const { return out_.reading_text; }

  void note_heading(std::int64_t lines) {
    if (lines == 0) return;
    out_.diagnostics.push_back(
        {Diagnostic::Severity::note,
         {std::string(task_.source), 1, 1,
          lines == 1 ? "1 line before the first speaker or time is taken as a heading"
                     : fmt::format("{} lines before the first speaker or time are taken as a heading", lines),
          ""}});
  }

  void add(const TextParagraph& paragraph) {
    if (!paragraph.label.empty()) speaker_ = paragraph.label;
    if (!paragraph.aside.empty()) {
      const auto at = static_cast<std::size_t>(paragraph.aside.data() - text().data());
      made_.push_back(byte_range(at, at + paragraph.aside.size()));
    }
    if (paragraph.stamp) pending_ = TextMark{paragraph.begin, paragraph.opening_begin, *paragraph.stamp};
    if (paragraph.begin == paragraph.end) return;
    const std::string_view words = text().substr(paragraph.begin, paragraph.end - paragraph.begin);
    if (is_end_line(words)) {
      made_.push_back(byte_range(paragraph.begin, paragraph.end));
      can_join_ = false;
      return;
    }
    if (pending_) {
      pending_->at = paragraph.begin;
      marks_.push_back(*pending_);
    }
    pending_.reset();
    if (goes_on(paragraph)) {
      // The stamp stands inside the turn now: a remark to whoever reads the words.
      const std::string_view opening =
          text().substr(paragraph.opening_begin, paragraph.begin - paragraph.opening_begin);
      made_.push_back(byte_range(paragraph.opening_begin, paragraph.opening_begin + trim(opening).size()));
      turns_.back().end = paragraph.end;
    } else {
      turns_.push_back({speaker_, paragraph.begin, paragraph.end});
    }
    can_join_ = true;
  }

  /// A paragraph that opens with a stamp in the middle of a sentence.
  bool goes_on(const TextParagraph& paragraph) const {
    if (!can_join_ || turns_.empty() || !paragraph.stamp || !paragraph.label.empty()) return false;
    const Turn& last = turns_.back();
    if (static_cast<std::int64_t>(last.end - last.begin) >= task_.rules.longest_turn) return false;
    return !ends_sentence(text().substr(last.begin, last.end - last.begin));
  }

  /// Stamps in square brackets among the words.
  void find_inner_stamps() {
    auto turn = turns_.begin();
    std::vector<TextMark> inner;
    for (const ByteRange& remark : remarks_) {
      const auto begin = static_cast<std::size_t>(remark.begin.value);
      const auto end = static_cast<std::size_t>(remark.end.value);
      while (turn != turns_.end() && turn->end <= begin) ++turn;
      if (turn == turns_.end()) break;
      if (begin < turn->begin || text()[begin] != '[') continue;
      const auto stamp = read_bracketed_stamp(text().substr(begin, end - begin));
      if (!stamp || stamp->length != end - begin || is_opening(begin)) continue;
      if (!stamp->time) {
        warn_bad_stamp(begin, end);
        continue;
      }
      const std::size_t next = std::min(text().find_first_not_of(" \t\n", end), text().size());
      inner.push_back({std::min(next, turn->end), begin, *stamp->time});
    }
    const auto middle = static_cast<std::ptrdiff_t>(marks_.size());
    marks_.insert(marks_.end(), inner.begin(), inner.end());
    std::inplace_merge(marks_.begin(), marks_.begin() + middle, marks_.end(),
                       [](const TextMark& a, const TextMark& b) { return a.stamp < b.stamp; });
  }

  /// A stamp outside all turns is no remark on anything.
  void drop_outer_stamps() {
    auto turn = turns_.begin();
    std::erase_if(remarks_, [&](const ByteRange& remark) {
      const auto begin = static_cast<std::size_t>(remark.begin.value);
      while (turn != turns_.end() && turn->end <= begin) ++turn;
      if (turn != turns_.end() && turn->begin <= begin) return false;
      const auto stamp = read_bracketed_stamp(text().substr(begin));
      return stamp && static_cast<std::int64_t>(stamp->length) == remark.length();
    });
  }

  /// Whether the stamp there is one a joined paragraph opens with, and so is a mark already.
  bool is_opening(std::size_t at) const {
    const auto found =
        std::lower_bound(made_.begin(), made_.end(), at, [](const ByteRange& range, std::size_t byte) {
          return range.begin.value < static_cast<std::int64_t>(byte);
        });
    return found != made_.end() && found->begin.value == static_cast<std::int64_t>(at);
  }

  void warn_bad_stamp(std::size_t begin, std::size_t end) {
    out_.diagnostics.push_back(
        {Diagnostic::Severity::warning,
         {std::string(task_.source), lines_.line(begin), lines_.column(begin),
          fmt::format("{} is no time and is left out", text().substr(begin, end - begin)),
          "write m:ss or h:mm:ss, with seconds, and minutes after hours, from 00 to 59"}});
  }

  void place_utterances() {
    const CodePointIndex index(text());
    for (const Turn& turn : turns_) {
      Utterance utterance;
      utterance.speaker = turn.speaker;
      utterance.range = index.to_code_points(byte_range(turn.begin, turn.end));
      out_.utterances.push_back(std::move(utterance));
    }
  }

  void place_marks() {
    std::vector<PlacedStamp> stamps;
    for (const TextMark& mark : marks_)
      stamps.push_back({mark.time, lines_.line(mark.stamp), lines_.column(mark.stamp)});
    const std::vector<bool> keep = keep_in_order(stamps, task_.source, out_.diagnostics);
    if (task_.recording_length)
      check_length(stamps, keep, *task_.recording_length, task_.source, out_.diagnostics);
    const CodePointIndex index(text());
    for (std::size_t i = 0; i < marks_.size(); ++i) {
      if (!keep[i]) continue;
      const CodePoint at = index.to_code_point({static_cast<std::int64_t>(marks_[i].at)});
      if (!out_.marks.empty() && out_.marks.back().at == at) out_.marks.pop_back();
      out_.marks.push_back({at, marks_[i].time});
    }
  }

  const ReadingTask& task_;
  Transcript out_;
  TextLines lines_;
  std::string_view speaker_;
  std::optional<TextMark> pending_;  // a stamp whose words have not come yet
  bool can_join_ = false;
  std::vector<Turn> turns_;
  std::vector<TextMark> marks_;
  std::vector<ByteRange> made_;  // remarks that are no brackets of the words
  std::vector<ByteRange> remarks_;
};

}  // namespace

Result<Transcript> text_transcript(const ReadingTask& task) {
  return TextReader(task).read();
}

Result<Transcript> read_plain_text(std::string_view bytes, std::string_view source,
                                   std::optional<Millisecond> recording_length, const ReadingRules& rules) {
  auto decoded = decode_transcript(bytes, source);
  if (!decoded) return decoded.error();
  return text_transcript({*std::move(decoded), source, recording_length, rules});
}

}  // namespace witnessmark
