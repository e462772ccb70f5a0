#include "language/claims/answers/last_sentence.h"

#include <algorithm>

#include "language/statements/times.h"

namespace witnessmark::claims {
namespace {

/// A sentence of so few tokens is quoted with the one that rounds it off, if that is no longer than this.
constexpr std::uint32_t kShort = 6;
constexpr std::uint32_t kRoundingOff = 12;
/// Between two sentences that follow each other stand at most so many characters.
constexpr std::int64_t kBetween = 3;

}  // namespace

void LastSentence::begin(CodePointRange sentence, Span tokens) {
  first_ = claims_.size();
  agents_.clear();
  short_ = tokens.past - tokens.first <= kShort ? sentence : CodePointRange{};
}

void LastSentence::deny(CodePointRange sentence, Denial denial) {
  for (std::size_t c = first_; c < claims_.size(); ++c) {
    if (denial == Denial::of_own_doing && agents_[c - first_] != Agent::we) continue;
    Claim& claim = claims_[c];
    const CodePoint end = claim.quotes.front().end;
    if (end < sentence.begin && sentence.begin.value - end.value > kBetween) continue;
    if (claim.statement == Statement::present || claim.statement == Statement::absent) {
      claim.statement = claim.statement == Statement::present ? Statement::absent : Statement::present;
    } else {
      claim.polarity = claim.polarity == Polarity::denied ? Polarity::affirmed : Polarity::denied;
    }
    claim.quotes.push_back(sentence);
    claim.reason += "; the next sentence denies it";
  }
  short_ = {};
}

bool LastSentence::narrow(const StatementContext& context, CodePointRange sentence) {
  if (short_.length() <= 0 || sentence.begin < short_.end || !only_dates(context)) return false;
  const std::vector<std::uint32_t> dates = dates_said(context.passage, context.reading.span);
  if (dates.empty()) return false;
  const DateExpression& said = context.passage.dates[dates.back()];
  bool narrowed = false;
  for (std::size_t c = first_; c < claims_.size(); ++c) {
    Claim& claim = claims_[c];
    if (claim.when.carried || !claim.when.dated.value) continue;
    const std::optional<Edtf> closer = narrowed_to(*claim.when.dated.value, said, *context.policy);
    if (!closer) continue;
    claim.when.dated.value = closer;
    claim.when.dated.written += ", " + said.text;
    claim.when.period = to_period(*closer, *context.policy);
    claim.quotes.front().end = sentence.end;
    claim.reason += "; the next sentence says when more closely: '" + said.text + "'";
    narrowed = true;
  }
  return narrowed;
}

void LastSentence::round_off(CodePointRange sentence, Span tokens) {
  if (short_.length() <= 0 || tokens.past - tokens.first > kRoundingOff) return;
  if (sentence.begin < short_.end || sentence.begin.value - short_.end.value > kBetween) return;
  for (std::size_t c = first_; c < claims_.size(); ++c) {
    Claim& claim = claims_[c];
    // "And the closets were away." says all of it.
    const bool whole =
        claim.statement != Statement::located && !claim.subject.empty() && !claim.subject_carried &&
        std::any_of(claim.mentions.begin(), claim.mentions.end(),
                    [](const Mention& mention) { return mention.kind == MentionKind::action; });
    CodePointRange& quote = claim.quotes.front();
    if (quote.begin == short_.begin && !whole) quote.end = sentence.end;
  }
}

}  // namespace witnessmark::claims
