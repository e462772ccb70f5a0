#include "language/traits/judge.h"

#include <algorithm>
#include <cmath>

#include "witnessmark/base/fold.h"

namespace witnessmark::claims {
namespace {

/// What is less likely than this by the weights is not proposed: near half of what coding and proposals agree
/// in, where for every claim missed about one too many is made.
constexpr double kLeastProbability = 0.14;
/// What one stretch states of one thing besides something else must be likelier.
constexpr double kLeastBesides = 0.25;
constexpr double kAlike = 0.5;  ///< Shares of quotes that are the same.
/// What a candidate adds to the odds of a stretch no rule has read from is below this: others need not be
/// tried.
constexpr float kMostOfSubject = 2.5F;
/// A sentence of more tokens is none anybody said; weighing one takes time that grows with its square.
constexpr std::uint32_t kLongestSentence = 400;
constexpr std::size_t kSentencesBefore = 3, kQuestionWords = 2;

double odds_of(double probability) {
  return std::log(probability / (1 - probability));
}

/// What rules read of something that is not named is left out where it is less likely than this.
constexpr double kLeastOfRules = 0.02;

/// What a stretch may state; of no candidate with `located`.
struct Choice {
  double odds;
  Statement statement;
  const Stretch* stretch;
  const Candidate* candidate;
};

/// What a stretch was taken to state, or what a rule has found.
struct Found {
  Statement statement;
  CodePointRange range;
  const Referent* about = nullptr;
  bool shares_term(const Referent& other) const {
    if (!about || about->kind != other.kind) return false;
    const auto& terms = about->terms;
    return std::find(terms.begin(), terms.end(), other.terms.front()) != terms.end();
  }
};

Found found_by_rule(const Draft& draft) {
  return {draft.statement, draft.quotes.front(),
          draft.subject ? &*draft.subject
          : draft.place ? &*draft.place
                        : nullptr};
}

}  // namespace

Judge::Judge(const TraitWeights& weights, TraitObserver* observer)
    : weights_(weights), observer_(observer), book_(observer ? nullptr : &weights) {}

void Judge::interviewer(const StatementContext& context) {
  after_question_ = true;
  question_words_.clear();
  for (std::uint32_t i = context.reading.span.first;
       i < context.reading.span.past && question_words_.size() < kQuestionWords; ++i) {
    if (context.passage.tokens[i].kind == Token::Kind::mark) continue;
    const std::string said = is_name(context.passage, i) ? "<name>" : fold(context.passage.words({i, i + 1}));
    question_words_.emplace_back(
        is_name(context.passage, i) ? dates::hash_word(said) : context.passage.tokens[i].form, said);
  }
  remember(context, {}, true);
}

Judgement Judge::narrator(const StatementContext& context, TalkTraits asked, CodePointRange sentence,
                          const std::vector<Draft>& drafts) {
  if (!observer_ && weights_.empty()) return {};
  asked.after_question = after_question_;
  for (const auto& [form, text] : question_words_) asked.asked_words.push_back({form, text});
  asked.before = before_;
  Judgement judgement;
  if (context.reading.span.past - context.reading.span.first <= kLongestSentence) {
    const StretchReader reader(context, book_, asked);
    const std::vector<Stretch> stretches = reader.run(drafts, sentence);
    const std::vector<Candidate> candidates = candidates_for(context, recent_);
    if (observer_) {
      show(context, stretches, candidates, drafts);
    } else {
      judgement = judge(context, reader, stretches, candidates, drafts);
    }
  }
  after_question_ = false;
  question_words_.clear();
  remember(context, drafts, false);
  return judgement;
}

void Judge::show(const StatementContext& context, const std::vector<Stretch>& stretches,
                 const std::vector<Candidate>& candidates, const std::vector<Draft>& drafts) {
  for (const Stretch& stretch : stretches) {
    observer_->stretch(stretch.range, stretch.tally.spelled);
    for (std::size_t c = 0; c < candidates.size(); ++c) {
      const Referent& referent = candidates[c].referent;
      const AuthorityList& list = referent.kind == ThingKind::equipment ? context.finders.equipment->list()
                                                                        : context.finders.places->list();
      observer_->subject(referent.kind, list.terms()[referent.terms.front()].key,
                         subject_tally(context, book_, stretch, candidates, c, recent_, drafts).spelled);
    }
  }
}

/// Everything each stretch may state of each candidate.
Judgement Judge::judge(const StatementContext& context, const StretchReader& reader,
                       const std::vector<Stretch>& stretches, const std::vector<Candidate>& candidates,
                       const std::vector<Draft>& drafts) const {
  static const double kLeast = odds_of(kLeastProbability), kBesides = odds_of(kLeastBesides),
                      kOfRules = odds_of(kLeastOfRules);
  std::vector<Choice> choices;
  std::vector<std::optional<double>> of_rules(drafts.size());  // The best of stretches like their quotes.
  for (const Stretch& stretch : stretches) {
    const auto weigh = [&](Statement statement, double odds, const Candidate* candidate) {
      if (odds >= kLeast) choices.push_back({odds, statement, &stretch, candidate});
      for (std::size_t d = 0; d < drafts.size(); ++d) {
        const bool same = drafts[d].statement == statement && !drafts[d].quotes.empty() &&
                          (!candidate || found_by_rule(drafts[d]).shares_term(candidate->referent));
        if (!same || stretch.range.shared_with(drafts[d].quotes.front()) < kAlike) continue;
        of_rules[d] = std::max(odds, of_rules[d].value_or(odds));
      }
    };
    constexpr auto kLocated = static_cast<std::size_t>(Statement::located);
    weigh(Statement::located, stretch.tally.scores[kLocated], nullptr);
    const bool read_by_rule = std::any_of(drafts.begin(), drafts.end(), [&](const Draft& draft) {
      return !draft.quotes.empty() && draft.quotes.front().overlaps(stretch.range);
    });
    float best = stretch.tally.scores.front();
    for (std::size_t s = 0; s < kLocated; ++s) best = std::max(best, stretch.tally.scores[s]);
    if (!read_by_rule && best + kMostOfSubject < kLeast) continue;
    for (std::size_t c = 0; c < candidates.size(); ++c) {
      const Tally of_subject = subject_tally(context, book_, stretch, candidates, c, recent_, drafts);
      for (std::size_t s = 0; s < kStatements; ++s) {
        if (s == kLocated) continue;
        weigh(static_cast<Statement>(s), stretch.tally.scores[s] + of_subject.scores[s], &candidates[c]);
      }
    }
  }
  std::stable_sort(choices.begin(), choices.end(),
                   [](const Choice& a, const Choice& b) { return a.odds > b.odds; });

  std::vector<Found> known;
  for (const Draft& draft : drafts) {
    if (!draft.quotes.empty()) known.push_back(found_by_rule(draft));
  }
  Judgement judgement;
  for (std::size_t d = 0; d < drafts.size(); ++d) {
    const bool names_it = drafts[d].subject && !drafts[d].subject->carried;
    if (of_rules[d] && *of_rules[d] < kOfRules && !drafts[d].led && !names_it) judgement.doubted.push_back(d);
  }
  for (const Choice& choice : choices) {
    const Thing* thing = choice.candidate ? named_in(*choice.candidate, *choice.stretch) : nullptr;
    const bool known_already = std::any_of(known.begin(), known.end(), [&](const Found& other) {
      if (!other.range.overlaps(choice.stretch->range)) return false;
      const bool of_it = choice.candidate && other.shares_term(choice.candidate->referent);
      // One stretch is about one thing, unless more are named in it.
      if (other.statement == choice.statement) return of_it || !thing;
      return of_it && choice.odds < kBesides && other.range.shared_with(choice.stretch->range) >= kAlike;
    });
    if (known_already) continue;
    known.push_back(
        {choice.statement, choice.stretch->range, choice.candidate ? &choice.candidate->referent : nullptr});
    Judged made;
    made.finding = {choice.statement,
                    choice.candidate ? choice.candidate->referent : Referent(),
                    thing,
                    choice.stretch->span,
                    choice.stretch->range,
                    choice.stretch->clause};
    made.odds = choice.odds;
    made.telling = reader.telling(*choice.stretch, choice.statement);
    judgement.found.push_back(std::move(made));
  }
  return judgement;
}

void Judge::remember(const StatementContext& context, const std::vector<Draft>& drafts, bool asking) {
  recent_.sentence(context);
  TalkTraits::Before now;
  now.asking = asking;
  for (const Thing& thing : context.passage.things_in(context.reading.span)) {
    if (thing.shadowed || (thing.kind != ThingKind::equipment && thing.kind != ThingKind::place)) continue;
    now.named = kind_part(thing.kind);
  }
  if (!drafts.empty()) now.stated = statement_part(drafts.back().statement);
  before_.insert(before_.begin(), now);
  if (before_.size() > kSentencesBefore) before_.pop_back();
}

}  // namespace witnessmark::claims
