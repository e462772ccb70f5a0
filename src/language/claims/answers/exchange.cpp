// Question and answer. A question that already holds the fact ("It was taken off in 1962, wasn't it?") and is
// only confirmed makes a claim that is marked as led: the interviewer supplied it. Denied, it makes the
// denial, and what the narrator puts in its place. Yes and no are of the state asked about, whichever way the
// question was put ("There was no stove?" "No."). A question for the time, place or number supplies subject
// and statement; the fact is the narrator's, so nothing is led but a date that only the interviewer said. An
// answer that declines ("I wouldn't know") makes nothing.
#include "language/claims/answers/exchange.h"

#include <algorithm>

#include "language/claims/answers/completion.h"
#include "language/claims/answers/opening.h"
#include "language/claims/from_talk.h"
#include "language/statements/arguments.h"

namespace witnessmark::claims {
namespace {

bool same_subject(const Draft& a, const Draft& b) {
  if (!a.subject || !b.subject) return !a.subject && !b.subject;
  return a.subject->terms == b.subject->terms;
}

/// "When you came aboard, was the winch …?": a "when" with its subject right behind it asks nothing.
bool opens_subordinate(const StatementContext& c, std::uint32_t i) {
  if (!c.passage.has(i, WordClass::when) || i + 1 >= c.reading.span.past) return false;
  const Note& next = c.passage.notes[i + 1];
  const Flags& f = next.flags;
  const bool auxiliary =
      f.has(WordClass::be) || f.has(WordClass::do_) || f.has(WordClass::have) || f.has(WordClass::modal);
  return !auxiliary && (next.thing >= 0 || f.has(WordClass::they) || f.has(WordClass::we) ||
                        f.has(WordClass::she) || f.has(WordClass::it) || f.has(WordClass::determiner));
}

/// "Was there not a stove?", "when you came, wasn't it gone?": the verb before its subject, and no tag
/// ("…, was it?").
bool asks_inverted(const StatementContext& c) {
  const Span span = c.reading.span;
  bool opens = true;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    const Note& note = c.passage.notes[i];
    const Flags& f = note.flags;
    if (c.passage.is_mark(i)) {
      opens = true;
      continue;
    }
    if (f.has(WordClass::filler) || f.has(WordClass::coordinator) || f.has(WordClass::then)) continue;
    const bool auxiliary =
        f.has(WordClass::be) || f.has(WordClass::do_) || f.has(WordClass::have) || f.has(WordClass::modal);
    const bool contracted = f.has(WordClass::it) || f.has(WordClass::this_) || f.has(WordClass::they) ||
                            f.has(WordClass::we) || f.has(WordClass::she) || f.has(WordClass::exist);
    const bool tag = i + 2 >= span.past || c.passage.is_mark(i + 2);
    if (opens && auxiliary && !contracted && note.cue < 0 && !tag) return true;
    opens = false;
  }
  return false;
}

/// "There was no stove?", "the stove wasn't there, was it?": the drafts are turned into what they deny, and
/// yes and no are of that. "Wasn't there a stove?" asks whether there was one.
void put_positively(const StatementContext& c, Asked& asked) {
  if (!asked.yes_no) return;
  const auto negative = [](const Draft& draft) {
    return draft.statement == Statement::absent || draft.polarity == Polarity::denied;
  };
  const bool journey = asked.journey && negative_in(c.passage, c.reading.span);
  const bool all = !asked.drafts.empty() && std::all_of(asked.drafts.begin(), asked.drafts.end(), negative);
  if (!journey && !all) return;
  for (Draft& draft : asked.drafts) {
    if (draft.statement == Statement::absent) draft.statement = Statement::present;
    draft.polarity = Polarity::affirmed;
  }
  asked.put_negative = !asks_inverted(c);
}

}  // namespace

void ask(const StatementContext& context, CodePointRange quote, Asked& asked) {
  Asked next;
  next.quote = quote;
  next.drafts = read_statements(context);
  std::erase_if(next.drafts, [](const Draft& draft) { return draft.withdrawn; });
  next.yes_no = true;
  const std::uint32_t first = first_word(context);
  for (std::uint32_t i = first; i < std::min(context.reading.span.past, first + 4); ++i) {
    const Flags& f = context.passage.notes[i].flags;
    if (opens_subordinate(context, i)) continue;
    if (f.has(WordClass::how_many)) next.how_many = true;
    if (f.has(WordClass::when)) next.when = true;
    if (f.has(WordClass::where)) next.where = true;
    if (f.has(WordClass::question_word)) next.yes_no = false;
    next.of_people =
        next.of_people || f.has(WordClass::we) || f.has(WordClass::they) || f.has(WordClass::she);
    // "What year was that?"
    if (i > first && f.has(WordClass::when_noun) && !next.yes_no) next.when = true;
  }
  const auto cues = context.passage.cues_in(context.reading.span);
  next.supposes = std::any_of(cues.begin(), cues.end(), [&](const CueSpan& cue) {
    return context.words.cues[cue.cue].cue == CueClass::nonfactual;
  });
  for (std::uint32_t i = first; i < context.reading.span.past; ++i)
    next.of_extent = next.of_extent || context.passage.has(i, WordClass::throughout) ||
                     context.passage.has(i, WordClass::habit);
  if (next.drafts.empty()) next.journey = journey_asked(context);
  if (next.journey) next.journey->when = next.when;
  put_positively(context, next);
  for (const std::uint32_t d : dates_said(context.passage, context.reading.span)) {
    if (context.passage.dates[d].rule == "named-event" && next.drafts.empty())
      next.event = context.passage.dates[d].text;
  }
  // "When was that?": of what was last said.
  if (next.when && next.drafts.empty() && !next.journey && context.focus.repeatable())
    next.drafts = {*context.focus.repeatable()};
  const Arguments arguments(context);
  if (const Thing* place =
          arguments.place_in(context.reading.span, {Role::at, Role::none, Role::to, Role::relation})) {
    next.place = referent_of(context, *place);
  }
  if (!next.place && context.focus.place &&
      (arguments.any_in(context.reading.span, WordClass::in_there) ||
       arguments.any_in(context.reading.span, WordClass::there))) {
    next.place = context.focus.place;
  }
  const bool names_thing = std::any_of(next.drafts.begin(), next.drafts.end(), [](const Draft& draft) {
    return draft.subject && !draft.subject->carried;
  });
  next.inventory = next.place && !next.when && !next.where && !next.how_many && !names_thing;
  next.answered = false;
  // "You were aboard then. Right." adds nothing to the question before it in the same turn.
  const bool empty = next.drafts.empty() && !next.place && !next.journey && !context.reading.question;
  if (empty && !asked.answered) return;
  // "You mention the fall. Would you talk about that?"
  const bool goes_on = next.drafts.empty() && !next.journey && !next.place && next.event.empty();
  if (!asked.answered && goes_on) next.event = std::move(asked.event);
  asked = std::move(next);
}

namespace {

/// What an answer says of what was asked.
struct Verdict {
  bool says = false;      ///< Anything at all.
  bool affirmed = false;  ///< That it was so.
  bool led = false;       ///< As the interviewer put it.
};

/// Yes and no answer the state, not the form of the question: to "there was no stove, was there?" no says
/// that there was none. A bare yes to that may say either.
Verdict verdict_of(Opening opening, bool put_negative) {
  switch (opening) {
    case Opening::yes:
    case Opening::maybe:
      return {!put_negative, true, true};
    case Opening::agrees:
      return {true, !put_negative, true};
    case Opening::it_was:
      return {true, true, !put_negative};
    case Opening::no:
      return {true, false, put_negative};
    case Opening::no_it_was:
      return {true, put_negative, false};
    case Opening::other:
    case Opening::unknown:
      break;
  }
  return {};
}

bool says_the_same(const Draft& own, const Draft& asked) {
  return same_subject(own, asked) && own.statement == asked.statement && own.polarity == asked.polarity;
}

class Answerer {
 public:
  Answerer(const StatementContext& context, const Asked& asked, Opening opening)
      : c_(context), asked_(asked), opening_(opening) {}

  /// What yes or no makes of the asked drafts, beside the answer's own.
  std::vector<Draft> judge(const Verdict& verdict, std::vector<Draft>& own) {
    // "Six, yes." repeats the number that was asked.
    if (verdict.affirmed) std::erase_if(own, [&](const Draft& o) { return repeats_number(o); });
    for (const Draft& asked : asked_.drafts) {
      if (!verdict.affirmed && asked_.of_extent && is_state(asked.statement)) continue;
      Draft draft = asked_again(c_, asked);
      if (!verdict.affirmed) deny(draft);
      const bool said =
          std::any_of(own.begin(), own.end(), [&](const Draft& o) { return says_the_same(o, draft); });
      if (!said) {
        draft.led = verdict.led;
        lay_cues(c_, draft);
        if (opening_ == Opening::maybe && draft.firmness == Firmness::firm) draft.firmness = Firmness::hedged;
        add(std::move(draft));
      }
      if (verdict.affirmed || asked_.put_negative || !own.empty()) continue;
      if (std::optional<Draft> instead = corrected(c_, asked)) add(std::move(*instead));
    }
    return std::move(drafts_);
  }

  /// What was asked with the time, the place or the number of the answer.
  std::vector<Draft> complete() {
    if (asked_.where && asked_.drafts.empty()) {
      if (std::optional<Draft> told = whereabouts(c_, asked_)) add(std::move(*told));
    }
    for (const Draft& asked : asked_.drafts)
      for (Draft& draft : completed(c_, asked_, asked)) add(std::move(draft));
    return std::move(drafts_);
  }

 private:
  bool repeats_number(const Draft& own) const {
    return own.fragment && own.statement == Statement::count &&
           std::any_of(asked_.drafts.begin(), asked_.drafts.end(), [&](const Draft& draft) {
             return draft.statement == Statement::count && same_subject(own, draft);
           });
  }

  void add(Draft draft) {
    if (draft.date && draft.date->carried) {
      if (forgets_when(c_)) {
        draft.date.reset();
      } else {
        credit_date(asked_, draft);
      }
    }
    draft.quotes = {c_.positions.range_of(c_.passage, c_.reading.span), asked_.quote};
    drafts_.push_back(std::move(draft));
  }

  const StatementContext& c_;
  const Asked& asked_;
  Opening opening_;
  std::vector<Draft> drafts_;
};

/// Where people were, as asked, with the answer's date or place, or said yes or no to.
std::optional<Draft> tell_journey(const StatementContext& context, const Asked& asked, Opening opening) {
  if (opening == Opening::maybe) return std::nullopt;
  const Verdict verdict = verdict_of(opening, asked.put_negative);
  std::optional<Draft> told;
  if (opening == Opening::other || opening == Opening::yes || verdict.affirmed)
    told = journey_answered(context, *asked.journey);
  if (!told && asked.yes_no && verdict.says)
    told = journey_confirmed(context, *asked.journey, !verdict.affirmed);
  if (!told) return std::nullopt;
  if (asked.journey->of_narrator && told->basis == Basis::unstated) told->basis = Basis::first_hand;
  told->quotes = {context.positions.range_of(context.passage, context.reading.span), asked.quote};
  return told;
}

}  // namespace

std::vector<Draft> answer(const StatementContext& context, const Asked& asked, std::vector<Draft> own) {
  const Opening opening = opening_of(context);
  if (asked.answered && !asked.journey && asked.event.empty()) return own;
  if (asked.journey && own.empty()) {
    if (std::optional<Draft> told = tell_journey(context, asked, opening)) return {std::move(*told)};
  }
  // "Would you talk about the fall?" "It was February 1937.": the event has its date.
  if (!asked.event.empty() && only_dates(context)) {
    if (std::optional<Draft> dated = dated_event(context, asked)) return {std::move(*dated)};
    return own;
  }
  if (asked.answered || opening == Opening::unknown || (asked.drafts.empty() && !asked.where)) return own;
  Answerer answerer(context, asked, opening);
  const Verdict verdict = verdict_of(opening, asked.put_negative);
  std::vector<Draft> drafts;
  if (verdict.says && asked.yes_no) {
    drafts = answerer.judge(verdict, own);
  } else if (opening == Opening::other && own.empty() && !asked.yes_no) {
    drafts = answerer.complete();
  }
  for (Draft& draft : own) drafts.push_back(std::move(draft));
  return drafts;
}

}  // namespace witnessmark::claims
