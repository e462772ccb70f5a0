// Captions break talk by the clock and the width of a screen. Here it is put together again: the lines of all
// cues, in order, each either going on with the open utterance or opening the next. First every line's
// label-shaped opening is counted, since whether "Castray:" is a speaker depends on its coming again. Then
// the lines are written one by one, and the places of cue starts, cue ends and inner timestamps noted. Cues
// whose start runs backwards give words but no times.
#include "read/transcripts/caption_transcript.h"

#include <fmt/format.h>

#include <algorithm>

#include "read/transcripts/caption_text.h"
#include "read/transcripts/sentence_end.h"
#include "read/transcripts/speaker_labels.h"
#include "read/transcripts/stamp_order.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::int64_t kPauseBetweenCues = 500;  // ms from which a cue's end is a mark of its own

/// ">>" or, where dashes stand for it, "- ": the sign of another speaker. Length in bytes, 0 when there is
/// none.
std::size_t change_sign(std::string_view words, bool dashes) {
  std::size_t length = 0;
  if (words.starts_with(">>")) length = std::min(words.find_first_not_of('>'), words.size());
  for (const std::string_view dash : {"- ", "\u2013 ", "\u2014 "}) {
    if (dashes && words.starts_with(dash)) length = dash.size();
  }
  return length == 0 ? 0 : std::min(words.find_first_not_of(' ', length), words.size());
}

bool has_dialogue_dashes(const CaptionCue& cue) {
  return std::count_if(cue.lines.begin(), cue.lines.end(),
                       [](const CaptionLine& line) { return change_sign(line.words, true) > 0; }) > 1;
}

/// What opens a line: a speaker, named or not, and the words behind that.
struct Opening {
  std::optional<std::string> speaker;
  std::string_view aside;
  std::string_view words;
  bool changes = false;  ///< A sign of another speaker stands there.
};

class CaptionJoiner {
 public:
  CaptionJoiner(const ReadingTask& task, Transcript transcript, const std::vector<CaptionCue>& cues,
                const std::vector<CaptionNote>& notes)
      : task_(task),
        text_(std::move(transcript)),
        cues_(cues),
        notes_(notes),
        labels_(task.rules.speaker_labels) {}

  Result<Transcript> join() {
    count_labels();
    order_cues();
    for (cue_ = 0; cue_ < cues_.size(); ++cue_) add_cue();
    close();
    if (carried_ > 0 && named_ > 0) {
      const std::string message =
          carried_ == 1
              ? "1 cue names no speaker and is taken as going on with the speaker before"
              : fmt::format("{} cues name no speaker and are taken as going on with the speaker before",
                            carried_);
      text_.diagnostics().push_back(
          {Diagnostic::Severity::note, {std::string(task_.source), 0, 0, message, ""}});
    }
    Transcript transcript = text_.finish(task_.rules.brackets);
    if (!transcript.utterances.empty()) return transcript;
    return Error{std::string(task_.source), 0, 0, "the transcript holds no spoken words",
                 "check that this is the right file"};
  }

 private:
  void count_labels() {
    for (const CaptionCue& cue : cues_) {
      for (const CaptionLine& line : cue.lines) {
        if (line.voice) continue;
        const std::string_view words = std::string_view(line.words).substr(change_sign(line.words, true));
        if (const auto shape = label_shape(words)) labels_.add(shape->name);
      }
    }
  }

  void order_cues() {
    std::vector<PlacedStamp> stamps;
    for (const CaptionCue& cue : cues_) stamps.push_back({cue.start, cue.line, 1});
    keep_ = keep_in_order(stamps, task_.source, text_.diagnostics());
    if (task_.recording_length)
      check_length(stamps, keep_, *task_.recording_length, task_.source, text_.diagnostics());
    ends_.resize(cues_.size());
    said_by_.resize(cues_.size());
    Millisecond next = task_.recording_length.value_or(Millisecond{0});
    bool has_next = false;
    for (std::size_t i = cues_.size(); i-- > 0;) {
      ends_[i] = cues_[i].end ? *cues_[i].end : std::max(cues_[i].start, next);
      said_by_[i] = ends_[i];
      if (!keep_[i]) continue;
      if (has_next) said_by_[i] = std::min(ends_[i], next);
      next = cues_[i].start;
      has_next = true;
    }
  }

  void add_cue() {
    const CaptionCue& cue = cues_[cue_];
    const bool dashes = has_dialogue_dashes(cue);
    cue_length_ = 0;
    for (const CaptionLine& line : cue.lines) cue_length_ += line.words.size() + 1;
    cue_done_ = 0;
    cue_said_ = false;
    bool opens = true;
    for (const CaptionLine& line : cue.lines) {
      if (!line.words.empty()) {
        add_line(line, opens, dashes);
        opens = false;
      }
      cue_done_ += line.words.size() + 1;
    }
    if (cue_said_ && keep_[cue_]) end_cue();
  }

  Opening opening_of(const CaptionLine& line, bool opens, bool dashes) const {
    Opening opening;
    const std::size_t sign = change_sign(line.words, dashes);
    opening.words = std::string_view(line.words).substr(sign);
    opening.changes = sign > 0;
    if (line.voice && !line.voice->empty()) {
      opening.speaker = line.voice;
    } else if (const auto shape = label_shape(opening.words);
               shape && labels_.accepts(shape->name, opens || sign > 0, false)) {
      opening.speaker = std::string(shape->name);
      opening.aside = shape->aside;
      opening.words.remove_prefix(shape->words_at);
    } else if (sign > 0) {
      opening.speaker = "";
    }
    opening.words = trim(opening.words);  // no-break spaces too
    return opening;
  }

  void add_line(const CaptionLine& line, bool opens, bool dashes) {
    const Opening opening = opening_of(line, opens, dashes);
    const bool turns = opening.speaker && (opening.changes || *opening.speaker != speaker_);
    if (turns || must_cut()) close();
    if (opening.speaker) {
      speaker_ = *opening.speaker;
      named_ += speaker_.empty() ? 0 : 1;
    } else if (opens && !speaker_.empty()) {
      ++carried_;
    }
    if (!opening.aside.empty()) aside_ = opening.aside;
    if (!opening.words.empty()) write(line, opening.words);
  }

  /// Talk of nobody named is cut where it can be, and everywhere once it is far too long.
  bool must_cut() const {
    if (!text_.is_open() || !speaker_.empty() || turn_length_ < task_.rules.caption_turn) return false;
    if (turn_length_ >= task_.rules.longest_turn || ends_sentence(text_.words())) return true;
    return !cue_said_ && cue_ > 0 &&
           cues_[cue_].start.value - ends_[cue_ - 1].value >= task_.rules.caption_pause.value;
  }

  void write(const CaptionLine& line, std::string_view words) {
    if (!text_.is_open()) open();
    if (!aside_.empty()) text_.add(aside_);
    aside_.clear();
    const std::size_t at = text_.add(words);
    turn_length_ += 1 + std::count_if(words.begin(), words.end(),
                                      [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
    if (keep_[cue_]) place(line, line.words.size() - words.size(), at);
    cue_said_ = true;
  }

  void open() {
    write_notes();
    text_.open(speaker_);
    turn_length_ = 0;
    timed_ = false;
  }

  /// Times of words written at a byte of the text, without the first `cut` bytes of the line.
  void place(const CaptionLine& line, std::size_t cut, std::size_t at) {
    const CaptionCue& cue = cues_[cue_];
    if (!timed_) {
      timed_ = true;
      stated_ = !cue_said_;
      begin_ = end_ = cue_said_ ? within_cue() : cue.start;
    }
    if (!cue_said_) text_.mark(at, cue.start);
    for (const auto& [offset, time] : line.times) {
      if (offset >= cut && cue.start <= time && time <= ends_[cue_]) text_.mark(at + offset - cut, time);
    }
  }

  /// The time so far into the cue as its lines are written.
  Millisecond within_cue() const {
    const std::int64_t span = std::max<std::int64_t>(0, said_by_[cue_].value - cues_[cue_].start.value);
    const double share = static_cast<double>(cue_done_) / static_cast<double>(cue_length_);
    return {cues_[cue_].start.value + static_cast<std::int64_t>(static_cast<double>(span) * share)};
  }

  void end_cue() {
    end_ = std::max(end_, ends_[cue_]);
    if (ends_[cue_] <= cues_[cue_].start) return;
    const bool last = cue_ + 1 == cues_.size();
    if (last || cues_[cue_ + 1].start.value - ends_[cue_].value >= kPauseBetweenCues) {
      text_.mark(text_.size(), ends_[cue_]);
    }
  }

  void close() {
    if (text_.is_open()) {
      const bool inside_cue = cue_ < cues_.size() && cue_said_ && keep_[cue_];
      if (timed_ && inside_cue) {
        end_ = std::max(begin_, within_cue());
        stated_ = false;
      }
      text_.close(speaker_, timed_ ? std::optional(TimeRange{begin_, std::max(begin_, end_)}) : std::nullopt,
                  stated_ ? Timing::stated : Timing::interpolated);
    }
    write_notes();
  }

  void write_notes() {
    for (; note_ < notes_.size() && notes_[note_].before_cue <= cue_; ++note_)
      text_.add_comment(notes_[note_].text);
  }

  const ReadingTask& task_;
  CaptionText text_;
  const std::vector<CaptionCue>& cues_;
  const std::vector<CaptionNote>& notes_;
  SpeakerLabels labels_;
  std::vector<bool> keep_;         // cues whose start is in order
  std::vector<Millisecond> ends_;  // of each cue, stated or the next start
  std::vector<Millisecond>
      said_by_;  // the end, or the next start where cues overlap: what lies inside a cue is before it

  std::size_t cue_ = 0;
  std::size_t cue_length_ = 0;  // bytes of the cue's lines
  std::size_t cue_done_ = 0;    // bytes of the lines before this one
  bool cue_said_ = false;       // words of this cue are written
  std::string speaker_;         // of the open or last utterance
  std::string aside_;           // from a label, to be written before the words
  bool timed_ = false;          // begin_ and end_ hold
  bool stated_ = true;
  Millisecond begin_;
  Millisecond end_;
  std::int64_t turn_length_ = 0;  // code points
  std::size_t note_ = 0;
  std::int64_t carried_ = 0;
  std::int64_t named_ = 0;
};

}  // namespace

Result<Transcript> caption_transcript(const ReadingTask& task, Transcript transcript,
                                      const std::vector<CaptionCue>& cues,
                                      const std::vector<CaptionNote>& notes) {
  return CaptionJoiner(task, std::move(transcript), cues, notes).join();
}

}  // namespace witnessmark
