#include "language/claims/last_sentence.h"

#include <algorithm>
#include <ranges>

#include "language/claims/write_claim.h"
#include "language/statements/times.h"

namespace witnessmark::claims {
namespace {

/// A sentence of so few tokens is quoted with the one that rounds it off, if that is no longer than this.
constexpr std::uint32_t kShortAnswer = 6;
constexpr std::uint32_t kRoundingOff = 12;
/// Between two sentences that follow each other stand at most so many characters.
constexpr std::int64_t kBetween = 3;
/// Who goes along with something has thought again within so many characters: "Wait a minute now."
constexpr std::int64_t kHesitation = 40;

void withdraw(Claim& claim) {
  claim.withdrawn = true;
  claim.rank += kRankOfTakenBack;
  claim.reason += "; the next sentence takes it back";
}

}  // namespace

void LastSentence::begin(CodePointRange sentence, Span tokens) {
  first_ = claims_.size();
  end_ = sentence.end;
  agents_.clear();
  short_ = tokens.past - tokens.first <= kShortAnswer ? sentence : CodePointRange{};
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

void LastSentence::unsay(const StatementContext& context, CodePointRange sentence) {
  const Passage& passage = context.passage;
  bool no = false;
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    if (passage.is_mark(i)) continue;
    const auto cues = passage.cues_in({i, i + 1});
    const bool says_no = std::any_of(cues.begin(), cues.end(), [&](const CueSpan& cue) {
      return context.words.cues[cue.cue].cue == CueClass::no;
    });
    if (!says_no && !passage.has(i, WordClass::filler)) return;
    no = no || says_no;
  }
  if (!no) return;
  for (Claim& claim : claims_ | std::views::reverse) {
    const std::int64_t since = sentence.begin.value - claim.quotes.front().end.value;
    if (since > kHesitation) break;
    if (!claim.led || claim.withdrawn || since < 0) continue;
    withdraw(claim);
  }
}

bool LastSentence::narrow(const StatementContext& context, CodePointRange sentence) {
  const std::int64_t apart = sentence.begin.value - end_.value;
  if (apart < 0 || apart > kBetween || !only_dates(context)) return false;
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
    CodePointRange& quote = claim.quotes.front();
    if (quote.end == end_) {
      quote.end = sentence.end;
    } else {
      claim.quotes.push_back(sentence);
    }
    claim.reason += "; the next sentence says when more closely: '" + said.text + "'";
    narrowed = true;
  }
  if (narrowed) end_ = sentence.end;
  return narrowed;
}

namespace {

/// What a sentence says of how something is known that says nothing else. Said after it, "I wouldn't swear to
/// it" makes no guess of it.
struct OnlyHowKnown {
  Basis basis = Basis::unstated;
  Firmness firmness = Firmness::firm;
  bool any() const { return basis != Basis::unstated || firmness != Firmness::firm; }
};

OnlyHowKnown only_how_known(const StatementContext& context) {
  OnlyHowKnown known;
  const Passage& passage = context.passage;
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    const Note& note = passage.notes[i];
    if (passage.is_mark(i) || note.flags.has(WordClass::filler) || note.flags.has(WordClass::coordinator))
      continue;
    if (note.cue < 0) return {};
    const Cue& cue = context.words.cues[passage.cues[static_cast<std::size_t>(note.cue)].cue];
    switch (cue.cue) {
      case CueClass::told:
        if (cue.value == CueValue::sound) return {};  // "The hooter went. I heard that."
        known.basis = Basis::told;
        break;
      case CueClass::read:
        known.basis = Basis::read;
        break;
      case CueClass::hedge:
        known.firmness = Firmness::hedged;
        break;
      default:
        return {};
    }
  }
  return known;
}

}  // namespace

bool LastSentence::qualify(const StatementContext& context, CodePointRange sentence) {
  const OnlyHowKnown known = only_how_known(context);
  if (!known.any()) return false;
  const std::int64_t apart = sentence.begin.value - end_.value;
  if (apart < 0 || apart > kBetween) return true;
  for (std::size_t c = first_; c < claims_.size(); ++c) {
    Claim& claim = claims_[c];
    if (known.basis != Basis::unstated) claim.basis = known.basis;
    claim.firmness = std::max(claim.firmness, known.firmness);
    claim.quotes.push_back(sentence);
    claim.reason += "; the next sentence says how that is known: '" +
                    std::string(context.passage.words(context.reading.span)) + "'";
  }
  end_ = sentence.end;
  return true;
}

namespace {

/// Whether the draft's subject, or its place where it has none, is the claim's.
bool speaks_of(const StatementContext& context, const Draft& draft, const Claim& claim) {
  const bool of_subject = draft.subject.has_value();
  const std::optional<Referent>& what = of_subject ? draft.subject : draft.place;
  if (!what) return false;
  const std::vector<Term>& terms = list_of(context.finders, what->kind).terms();
  const std::string& key = of_subject ? claim.subject : claim.place;
  return std::any_of(what->terms.begin(), what->terms.end(),
                     [&](std::uint32_t term) { return terms[term].key == key; });
}

/// "No, it was 1964", "sorry, 1964".
bool corrects(const StatementContext& context) {
  const Span span = context.reading.span;
  const auto cues = context.passage.cues_in(span);
  return std::any_of(cues.begin(), cues.end(), [&](const CueSpan& cue) {
    const CueClass what = context.words.cues[cue.cue].cue;
    return what == CueClass::correction || (what == CueClass::no && cue.span.first == span.first);
  });
}

}  // namespace

void LastSentence::take_back(const StatementContext& context, const std::vector<Draft>& again) {
  const auto said_again = [&](const Claim& claim) {
    return std::any_of(again.begin(), again.end(), [&](const Draft& draft) {
      const bool other_date = draft.date && claim.when.dated.value && !claim.when.carried &&
                              draft.date->expression.edtf != claim.when.dated.value;
      const bool other_number =
          draft.statement == Statement::count && draft.quantity && claim.quantity &&
          (draft.quantity->least != claim.quantity->least || draft.quantity->most != claim.quantity->most);
      return draft.elliptical && draft.polarity == Polarity::affirmed && (other_date || other_number) &&
             draft.statement == claim.statement && speaks_of(context, draft, claim);
    });
  };
  if (!corrects(context)) return;
  for (std::size_t c = first_; c < claims_.size(); ++c) {
    Claim& claim = claims_[c];
    if (claim.withdrawn || !said_again(claim)) continue;
    withdraw(claim);
  }
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
