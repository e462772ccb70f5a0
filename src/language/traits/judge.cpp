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
/// What happened to a thing besides coming or going.
constexpr double kLeastBesidesChange = 0.45;
/// What rules read of something that is not named is left out where it is less likely than this.
constexpr double kLeastOfRules = 0.06;
/// What a candidate adds to the odds of a stretch no rule has read from is hardly ever above this, in
/// hundredths: stretches that would need more are passed over. A shortcut.
constexpr std::int32_t kMostOfSubject = 250;
/// Another part of the sentence is quoted for what a rule has read where its odds are so much better, in
/// hundredths.
constexpr std::int32_t kMuchLikelier = 100;
/// A sentence of more tokens is none anybody said; weighing one takes time that grows with its square.
constexpr std::uint32_t kLongestSentence = 400;
constexpr std::size_t kSentencesBefore = 3, kQuestionWords = 2;

constexpr double kHundredths = 100;
/// In hundredths of the natural logarithm.
double odds_of(double probability) {
  return kHundredths * std::log(probability / (1 - probability));
}

/// What a stretch was taken to state, or what a rule has found.
struct Found {
  Statement statement;
  CodePointRange range;
  const Referent* of_rule = nullptr;
  const Candidate* candidate = nullptr;

  bool is_of(const Candidate& other) const {
    if (candidate) return candidate->kind == other.kind && candidate->term == other.term;
    return of_rule && other.is(*of_rule);
  }
};

/// "They took off the old winch and put the new one in its place": what came did not go in the same words.
bool opposite(Statement a, Statement b) {
  const auto are = [&](Statement first, Statement second) {
    return (a == first && b == second) || (a == second && b == first);
  };
  return are(Statement::begins, Statement::ends) || are(Statement::present, Statement::absent);
}

/// "They took it out": that something happened to it is said with the change.
bool told_by_change(Statement happened, Statement other) {
  return happened == Statement::happened && is_change(other);
}

/// "The crane had gone off the quay": the quay did not go.
bool only_says_where(const Thing& thing, Statement statement) {
  return thing.kind == ThingKind::place && thing.role != Role::none && thing.role != Role::of &&
         statement != Statement::happened;
}

/// Whether the stretch has most of a clause, or the clause most of it.
bool holds_most(const Stretch& stretch, const Span& clause) {
  const std::uint32_t first = std::max(stretch.span.first, clause.first);
  const std::uint32_t past = std::min(stretch.span.past, clause.past);
  if (first >= past) return false;
  return 2 * (past - first) > std::min(clause.past - clause.first, stretch.span.past - stretch.span.first);
}

const Referent* about(const Draft& draft) {
  return draft.subject ? &*draft.subject : draft.place ? &*draft.place : nullptr;
}

}  // namespace

Judge::Judge(const TraitWeights& weights, TraitObserver* observer)
    : weights_(weights),
      observer_(observer),
      stretches_(WeighingBook(weights)),
      subjects_(WeighingBook(weights)) {}

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
    candidates_.find(context, recent_);
    if (observer_) {
      show(context, asked, sentence, drafts);
    } else {
      stretches_.read(context, asked, drafts, sentence);
      judgement = judge(context, drafts);
    }
  }
  after_question_ = false;
  question_words_.clear();
  remember(context, drafts, false);
  return judgement;
}

void Judge::show(const StatementContext& context, const TalkTraits& asked, CodePointRange sentence,
                 const std::vector<Draft>& drafts) {
  StretchReader<SpellingBook> stretches{SpellingBook()};
  SubjectReader<SpellingBook> subjects{SpellingBook()};
  stretches.read(context, asked, drafts, sentence);
  subjects.read(context, candidates_.list(), drafts);
  for (std::size_t s = 0; s < stretches.stretches().size(); ++s) {
    const Stretch& stretch = stretches.stretches()[s];
    observer_->stretch(stretch.range, stretches.tally(s).traits);
    subjects.read(stretch);
    for (std::size_t c = 0; c < candidates_.list().size(); ++c) {
      const Candidate& candidate = candidates_.list()[c];
      const TermFinder& finder =
          candidate.kind == ThingKind::equipment ? *context.finders.equipment : *context.finders.places;
      observer_->subject(candidate.kind, finder.list().terms()[candidate.term].key, subjects.tally(c).traits);
    }
  }
}

/// Everything each stretch may state of each candidate, as far as it is likely enough.
void Judge::weigh(const StatementContext& context, const std::vector<Draft>& drafts) {
  static const auto kLeast = static_cast<std::int32_t>(std::ceil(odds_of(kLeastProbability)));
  choices_.clear();
  of_drafts_.assign(drafts.size(), {});
  subjects_.read(context, candidates_.list(), drafts);
  std::vector<std::size_t> alike, holding;  // Drafts quoted like the stretch; with their clause in it.
  for (std::size_t k = 0; k < stretches_.stretches().size(); ++k) {
    const Stretch& stretch = stretches_.stretches()[k];
    const Scores& own = stretches_.tally(k);
    bool read_by_rule = false;
    alike.clear();
    holding.clear();
    for (std::size_t d = 0; d < drafts.size(); ++d) {
      if (drafts[d].quotes.empty()) continue;
      const CodePointRange& quote = drafts[d].quotes.front();
      read_by_rule = read_by_rule || quote.overlaps(stretch.range);
      if (stretch.range.shared_with(quote) >= kAlike) alike.push_back(d);
      if (holds_most(stretch, context.reading.clauses[drafts[d].clause].core)) holding.push_back(d);
    }
    const auto add = [&](Statement statement, std::int32_t odds, const Candidate* candidate) {
      if (odds >= kLeast) choices_.push_back({odds, statement, &stretch, candidate});
      const auto speaks_of = [&](const Draft& draft) {
        const Referent* of_rule = about(draft);
        return draft.statement == statement && (!candidate || (of_rule && candidate->is(*of_rule)));
      };
      for (const std::size_t d : alike) {
        if (speaks_of(drafts[d])) of_drafts_[d].odds = std::max(odds, of_drafts_[d].odds.value_or(odds));
      }
      for (const std::size_t d : holding) {
        OfDraft& of_draft = of_drafts_[d];
        if (!speaks_of(drafts[d]) || (of_draft.best && odds <= *of_draft.best)) continue;
        of_draft.best = odds;
        of_draft.quoted = &stretch;
      }
    };
    add(Statement::located, own[Statement::located], nullptr);
    std::int32_t best = own.of.front();
    for (std::size_t s = 0; s < kStatements; ++s) {
      if (static_cast<Statement>(s) != Statement::located) best = std::max(best, own.of[s]);
    }
    if (!read_by_rule && best + kMostOfSubject < kLeast) continue;
    subjects_.read(stretch);
    for (std::size_t c = 0; c < candidates_.list().size(); ++c) {
      Scores scores = subjects_.tally(c);
      scores += own;
      for (std::size_t s = 0; s < kStatements; ++s) {
        const auto statement = static_cast<Statement>(s);
        if (statement != Statement::located) add(statement, scores.of[s], &candidates_.list()[c]);
      }
    }
  }
  std::stable_sort(choices_.begin(), choices_.end(),
                   [](const Choice& a, const Choice& b) { return a.odds > b.odds; });
}

Judgement Judge::judge(const StatementContext& context, const std::vector<Draft>& drafts) {
  static const double kBesides = odds_of(kLeastBesides), kOfRules = odds_of(kLeastOfRules),
                      kBesidesChange = odds_of(kLeastBesidesChange);
  weigh(context, drafts);
  std::vector<Found> known;
  for (const Draft& draft : drafts) {
    if (!draft.quotes.empty()) known.push_back({draft.statement, draft.quotes.front(), about(draft)});
  }
  Judgement judgement;
  for (std::size_t d = 0; d < drafts.size(); ++d) {
    const std::optional<std::int32_t>& odds = of_drafts_[d].odds;
    const bool names_it = drafts[d].subject && !drafts[d].subject->carried;
    judgement.doubted.push_back(odds && *odds < kOfRules && !drafts[d].led && !names_it);
    judgement.odds.push_back(odds ? std::optional(*odds / kHundredths) : std::nullopt);
    const OfDraft& own = of_drafts_[d];
    const bool rather = own.quoted && (!odds || *own.best > *odds + kMuchLikelier);
    judgement.quotes.push_back(rather ? std::optional(own.quoted->range) : std::nullopt);
  }
  for (const Choice& choice : choices_) {
    const Thing* thing = choice.candidate ? named_in(*choice.candidate, *choice.stretch) : nullptr;
    const bool known_already = std::any_of(known.begin(), known.end(), [&](const Found& other) {
      if (!other.range.overlaps(choice.stretch->range)) return false;
      const bool of_it = choice.candidate && other.is_of(*choice.candidate);
      // One stretch is about one thing, unless more are named in it.
      if (other.statement == choice.statement)
        return of_it || !thing || only_says_where(*thing, choice.statement);
      if (of_it && opposite(other.statement, choice.statement)) return true;
      if (of_it && told_by_change(choice.statement, other.statement) && choice.odds < kBesidesChange &&
          other.range.shared_with(choice.stretch->range) >= kAlike)
        return true;
      return of_it && choice.odds < kBesides && other.range.shared_with(choice.stretch->range) >= kAlike;
    });
    if (known_already) continue;
    known.push_back({choice.statement, choice.stretch->range, nullptr, choice.candidate});
    Judged made;
    made.finding = {choice.statement,
                    choice.candidate ? choice.candidate->referent() : Referent(),
                    thing,
                    choice.stretch->span,
                    choice.stretch->range,
                    choice.stretch->clause};
    made.odds = choice.odds / kHundredths;
    made.telling = stretches_.telling(*choice.stretch, choice.statement);
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
