#include "language/claims/turn_dates.h"

#include <algorithm>
#include <iterator>
#include <numeric>
#include <string>

#include "language/claims/from_talk.h"
#include "language/language_data.h"

namespace witnessmark::claims {
namespace {

/// Stands between turns that are read together: a sign that no date runs across, and no new paragraph.
constexpr std::string_view kBetweenTurns = " | ";

Discourse begin_talk(const ReadingContext& context) {
  Discourse talk;
  talk.events.assign(context.events.begin(), context.events.end());
  talk.policy = context.policy;
  talk.century = context.century;
  if (context.interview) talk.speech_time = context.interview->date.value;
  return talk;
}

}  // namespace

TurnDates::TurnDates(const ReadingContext& context, const Transcript& transcript, const CodePointIndex& index,
                     Talkers& talkers)
    : context_(context),
      transcript_(transcript),
      index_(index),
      talkers_(talkers),
      reader_(context.language->dates(), begin_talk(context)) {
  const std::optional<Edtf>& today = reader_.talk().speech_time;
  if (!today) return;
  today_.emplace();
  today_->expression.text = to_string(*today);
  today_->expression.edtf = today;
  today_->expression.rule = "interview";
}

std::vector<DateExpression> TurnDates::take(std::size_t turn) {
  if (turn < first_ || turn >= first_ + past_.size()) read_from(turn);
  const std::size_t n = turn - first_;
  const auto begin = read_.begin() + (n > 0 ? past_[n - 1] : 0);
  return {std::make_move_iterator(begin), std::make_move_iterator(read_.begin() + past_[n])};
}

void TurnDates::set_life(const std::string& key) {
  if (key == reader_.talk().speaker && !key.empty()) return;
  served_.reset();
  const Person* known = talkers_.person(key);
  if (!known) return reader_.go_on_with(key, std::nullopt, {});
  served_ = time_of_service(known->service, context_.policy);
  reader_.go_on_with(key, known->birth.value, known->service);
}

void TurnDates::read_from(std::size_t first) {
  constexpr std::size_t kBatchBytes = 1U << 16;
  const std::string life = talkers_.life_of(talkers_.at(transcript_.utterances[first].speaker));
  set_life(life);
  first_ = first;
  std::string joined;
  std::vector<std::int64_t> starts;
  std::int64_t position = 0;
  for (std::size_t u = first; u < transcript_.utterances.size() && joined.size() < kBatchBytes; ++u) {
    const Utterance& utterance = transcript_.utterances[u];
    if (talkers_.life_of(talkers_.at(utterance.speaker)) != life) break;
    starts.push_back(position);
    joined += index_.slice(utterance.range);
    joined += kBetweenTurns;
    position += utterance.range.length() + static_cast<std::int64_t>(kBetweenTurns.size());
  }
  reader_.read(joined, read_);
  past_.assign(starts.size(), 0);
  std::size_t at = 0;
  for (DateExpression& date : read_) {
    while (at + 1 < starts.size() && starts[at + 1] <= date.range.begin.value) ++at;
    const std::int64_t length = transcript_.utterances[first + at].range.length();
    date.range = {{date.range.begin.value - starts[at]},
                  {std::min(date.range.end.value - starts[at], length)}};
    ++past_[at];
  }
  std::partial_sum(past_.begin(), past_.end(), past_.begin());
}

}  // namespace witnessmark::claims
