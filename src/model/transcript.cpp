// Times between two marks are interpolated by code points: talk runs at no steady pace, so such a time is
// "about", and says so. Inside an utterance its own begin and end stand as marks too; a mark of the
// transcript wins where both stand at one place.
#include "witnessmark/model/transcript.h"

#include <fmt/format.h>

#include <algorithm>

#include "witnessmark/base/code_point_index.h"

namespace witnessmark {
namespace {

/// The utterance that holds the position; its end counts as inside, unless the next begins there.
const Utterance* utterance_at(const Transcript& transcript, CodePoint position) {
  const auto& all = transcript.utterances;
  auto after = std::upper_bound(all.begin(), all.end(), position,
                                [](CodePoint at, const Utterance& u) { return at < u.range.begin; });
  if (after == all.begin()) return nullptr;
  const Utterance& utterance = *std::prev(after);
  return position <= utterance.range.end ? &utterance : nullptr;
}

struct Bracket {
  std::optional<TimeMark> before;  ///< The last at or before the position.
  std::optional<TimeMark> after;   ///< The first after it.
  bool stated = true;              ///< `before` is a stamp rather than an utterance's interpolated end.
};

Bracket nearest_marks(const Transcript& transcript, CodePoint position, const Utterance* utterance) {
  const auto& marks = transcript.marks;
  auto next = std::upper_bound(marks.begin(), marks.end(), position,
                               [](CodePoint at, const TimeMark& mark) { return at < mark.at; });
  Bracket bracket;
  if (next != marks.begin()) bracket.before = *std::prev(next);
  if (next != marks.end()) bracket.after = *next;
  if (!utterance || !utterance->time) return bracket;
  const TimeMark begin{utterance->range.begin, utterance->time->begin};
  const TimeMark end{utterance->range.end, utterance->time->end};
  const auto take = [&](const TimeMark& mark) {
    bracket.before = mark;
    bracket.stated = utterance->timing == Timing::stated;
  };
  if (begin.at <= position && (!bracket.before || bracket.before->at < begin.at)) take(begin);
  if (position < end.at && (!bracket.after || end.at < bracket.after->at)) bracket.after = end;
  if (position == end.at && (!bracket.before || bracket.before->at < end.at)) take(end);
  return bracket;
}

}  // namespace

std::vector<TurnPiece> by_turn(const Transcript& transcript, CodePointRange range) {
  const auto& all = transcript.utterances;
  auto turn = std::partition_point(all.begin(), all.end(),
                                   [&](const Utterance& u) { return u.range.end <= range.begin; });
  std::vector<TurnPiece> pieces;
  for (; turn != all.end() && turn->range.begin < range.end; ++turn)
    pieces.push_back({static_cast<std::size_t>(turn - all.begin()),
                      {std::max(range.begin, turn->range.begin), std::min(range.end, turn->range.end)}});
  return pieces;
}

std::optional<TimeAt> time_at(const Transcript& transcript, CodePoint position) {
  const Utterance* utterance = utterance_at(transcript, position);
  const Bracket bracket = nearest_marks(transcript, position, utterance);
  if (bracket.before && bracket.before->at == position) {
    return TimeAt{bracket.before->time, bracket.stated ? Timing::stated : Timing::interpolated};
  }
  if (bracket.before && bracket.after) {
    const std::int64_t length = bracket.after->at.value - bracket.before->at.value;
    const std::int64_t span = bracket.after->time.value - bracket.before->time.value;
    // Marks that run backwards (a reset clock) leave the last time known.
    if (length <= 0 || span < 0) return TimeAt{bracket.before->time, Timing::interpolated};
    const double share =
        static_cast<double>(position.value - bracket.before->at.value) / static_cast<double>(length);
    return TimeAt{{bracket.before->time.value + static_cast<std::int64_t>(static_cast<double>(span) * share)},
                  Timing::interpolated};
  }
  if (bracket.before) return TimeAt{bracket.before->time, Timing::interpolated};
  return std::nullopt;
}

void place_in_time(const Transcript& transcript, std::vector<Sentence>& sentences) {
  for (Sentence& sentence : sentences) {
    const std::optional<TimeAt> begin = time_at(transcript, sentence.range.begin);
    const std::optional<TimeAt> end = time_at(transcript, sentence.range.end);
    if (!begin || !end) {
      sentence.time.reset();
      sentence.timing = Timing::none;
      continue;
    }
    sentence.time = TimeRange{begin->time, std::max(begin->time, end->time)};
    const bool stated = begin->timing == Timing::stated && end->timing == Timing::stated;
    sentence.timing = stated ? Timing::stated : Timing::interpolated;
  }
}

std::string to_timecode(Millisecond time) {
  const std::int64_t tenths = std::max<std::int64_t>(time.value, 0) / 100;
  const std::int64_t seconds = tenths / 10 % 60;
  const std::int64_t minutes = tenths / 600 % 60;
  const std::int64_t hours = tenths / 36000;
  return hours > 0 ? fmt::format("{}:{:02}:{:02}.{}", hours, minutes, seconds, tenths % 10)
                   : fmt::format("{}:{:02}.{}", minutes, seconds, tenths % 10);
}

std::string dump(const Transcript& transcript, const Utterance& utterance) {
  std::string line = utterance.speaker.empty() ? "-" : utterance.speaker;
  if (utterance.time) {
    line += fmt::format(" [{}-{}{}]", to_timecode(utterance.time->begin), to_timecode(utterance.time->end),
                        utterance.timing == Timing::interpolated ? " about" : "");
  }
  const CodePointIndex index(transcript.reading_text);
  return line + " " + std::string(index.slice(utterance.range));
}

}  // namespace witnessmark
