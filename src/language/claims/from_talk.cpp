// What is not said in a sentence but holds for it. A date goes on holding until another is said or talk turns
// to something else; a place as long as talk is about the same thing.
#include "language/claims/from_talk.h"

#include <algorithm>

#include "language/claims/answers/exchange.h"
#include "language/claims/answers/opening.h"

namespace witnessmark::claims {
namespace {

/// A date said so many sentences ago still dates what is told to have happened; how things were, less long.
constexpr int kDateReach = 14, kStateReach = 8;
/// A place named so many sentences ago is still where talk is, for what the lists say stands there.
constexpr int kHomeReach = 9;

bool any(const StatementContext& c, WordClass word) {
  for (std::uint32_t i = c.reading.span.first; i < c.reading.span.past; ++i)
    if (c.passage.notes[i].flags.has(word)) return true;
  return false;
}

}  // namespace

std::optional<ChosenDate> time_of_service(const std::vector<ServicePeriod>& service,
                                          const DatePolicy& policy) {
  std::optional<EdtfInterval> whole;
  std::optional<Day> first, past;
  for (const ServicePeriod& period : service) {
    const auto* span = period.when.value ? std::get_if<EdtfInterval>(&period.when.value->value) : nullptr;
    if (!span || !std::holds_alternative<EdtfDate>(span->begin) ||
        !std::holds_alternative<EdtfDate>(span->end))
      continue;
    const Period days = to_period(*period.when.value, policy);
    if (!whole) whole = *span;
    if (days.earliest() && (!first || *days.earliest() < *first)) {
      first = days.earliest();
      whole->begin = span->begin;
    }
    if (days.past_latest() && (!past || *days.past_latest() > *past)) {
      past = days.past_latest();
      whole->end = span->end;
    }
  }
  if (!whole) return std::nullopt;
  ChosenDate served;
  served.expression.text = to_string(Edtf{*whole});
  served.expression.edtf = Edtf{*whole};
  served.expression.rule = "service";
  served.expression.anchor = "service " + served.expression.text;
  return served;
}

namespace {

/// "There used to be a bell", "there had been four": so it was up to the date talk is of. What was used to be
/// done when the narrator came was done then; "where the bell had been" is of the bell.
bool is_over(const StatementContext& context, const Draft& draft, const ChosenDate& talk) {
  if (draft.clause >= context.reading.clauses.size()) return false;
  const bool coming = talk.expression.rule.starts_with("service");
  const Span clause = context.reading.clauses[draft.clause].span;
  for (std::uint32_t i = clause.first; i < clause.past; ++i) {
    if (context.passage.has(i, WordClass::where)) return false;
    if (context.passage.has(i, WordClass::used_to) && !coming) return true;
    if (context.passage.has(i, WordClass::had_been)) return true;
  }
  return false;
}

/// "When I came" says how things were, not when one of them was changed.
bool still_dates(const Focus& focus, const Draft& draft) {
  const bool state = is_state(draft.statement);
  const bool coming = focus.date->expression.rule.starts_with("service");
  if (coming && !state && draft.statement != Statement::located) return false;
  return focus.date_age <= (state ? kStateReach : kDateReach);
}

/// Talk is in the engine room, and the list has the boiler there: "It was black." What happened or ended may
/// have done so elsewhere.
const Referent* home_spoken_of(const StatementContext& context, const Focus& focus, const Draft& draft) {
  if (draft.statement == Statement::ends || draft.statement == Statement::happened) return nullptr;
  const Referent* place = focus.place_within(kHomeReach);
  if (!place || place->kind != ThingKind::place || draft.subject->kind != ThingKind::equipment)
    return nullptr;
  const std::vector<Term>& places = context.finders.places->list().terms();
  const std::vector<Term>& equipment = context.finders.equipment->list().terms();
  const bool all =
      std::all_of(draft.subject->terms.begin(), draft.subject->terms.end(), [&](std::uint32_t term) {
        return std::any_of(place->terms.begin(), place->terms.end(),
                           [&](std::uint32_t there) { return equipment[term].place == places[there].key; });
      });
  return all ? place : nullptr;
}

/// "Before that", "until then", "after that": of the date talk is of, not of "that" something.
bool says_beside(const StatementContext& context, const Draft& draft,
                 std::initializer_list<WordClass> which) {
  if (draft.clause >= context.reading.clauses.size()) return false;
  const Passage& passage = context.passage;
  const Span clause = context.reading.clauses[draft.clause].span;
  for (std::uint32_t i = clause.first; i + 1 < clause.past; ++i) {
    const auto is = [&](WordClass c) { return passage.has(i, c); };
    const std::uint32_t it = i + passage.notes[i].reach;
    if (std::none_of(which.begin(), which.end(), is) || it >= clause.past) continue;
    if (!passage.has(it, WordClass::this_) && !passage.has(it, WordClass::then)) continue;
    const std::uint32_t next = it + 1;
    if (next >= clause.past || passage.is_mark(next)) return true;
    const Note& behind = passage.notes[next];
    if (behind.thing < 0 && behind.date < 0 && behind.number < 0 && behind.flags.any() &&
        !is_adjective(behind.flags))
      return true;
  }
  return false;
}

/// The date talk is of, as the words "before that", "after that" make a limit of it.
Edtf limited_by_words(const StatementContext& context, const Draft& draft, const Edtf& when) {
  const bool state = is_state(draft.statement);
  if (says_beside(context, draft, {WordClass::before, WordClass::until}))
    return state ? up_to(when) : at_the_latest(when);
  if (says_beside(context, draft, {WordClass::after})) return state ? stay_from(when) : at_the_earliest(when);
  return when;
}

/// Whether two speak of one thing, or of one place and no thing.
bool of_the_same(const Draft& a, const Draft& b) {
  const auto terms = [](const std::optional<Referent>& r) {
    return r ? r->terms : std::vector<std::uint32_t>();
  };
  const bool nothing = !a.subject && !b.subject;
  return nothing ? terms(a.place) == terms(b.place) : terms(a.subject) == terms(b.subject);
}

/// What was before the narrator's birth the narrator does not tell first-hand.
bool before_birth(const DateExpression& date, const std::optional<Edtf>& birth, const DatePolicy& policy) {
  if (!birth || !date.period) return false;
  const auto past = date.period->past_latest();
  const auto born = to_period(*birth, policy).earliest();
  return past && born && *past <= *born;
}

}  // namespace

void credit_date(const Asked& asked, Draft& draft) {
  const auto change = [](const Draft& d) {
    return is_change(d.statement) || d.statement == Statement::happened;
  };
  if (draft.led || draft.polarity == Polarity::denied || (!change(draft) && !asked.when)) return;
  const bool put_forward = std::any_of(asked.drafts.begin(), asked.drafts.end(), [&](const Draft& put) {
    return of_the_same(put, draft) && (asked.when || (put.date && change(put)));
  });
  if (!put_forward) return;
  draft.date_led = true;
}

void carry(const StatementContext& context, const TalkBefore& talk, Draft& draft) {
  const Focus& focus = talk.focus;
  if (draft.date && !draft.date->carried)
    settle_service(focus.date ? &*focus.date : nullptr, *context.policy, draft.date->expression);
  if (!draft.date && talk.served && any(context, WordClass::my_time)) draft.date = *talk.served;
  // "It's stainless.", "The clock's gone.": as it was on the day of speaking.
  if (!draft.date && draft.today && is_state(draft.statement) && context.today && !context.asking)
    draft.date = *context.today;
  const bool own = draft.basis == Basis::first_hand || draft.statement == Statement::located;
  const bool unborn = own && focus.date && before_birth(focus.date->expression, talk.birth, *context.policy);
  const bool unknown = focus.when_unknown || forgets_when(context) || any(context, WordClass::other_time);
  if (!draft.date && !draft.is_now && focus.date && still_dates(focus, draft) && !unborn && !unknown) {
    draft.date = focus.date;
    draft.date->carried = true;
    std::optional<Edtf>& when = draft.date->expression.edtf;
    if (draft.by_then && when) when = at_the_latest(*when);
    if (when && is_state(draft.statement) && is_over(context, draft, *focus.date)) when = up_to(*when);
    if (when) when = limited_by_words(context, draft, *when);
    if (focus.date_asked) credit_date(talk.asked, draft);
  }
  const bool silent = !draft.place && draft.place_words.empty();
  // "That night I was in there": the place talk is of.
  const bool there = draft.statement == Statement::located && any(context, WordClass::in_there);
  if (const Referent* place = silent && there ? focus.place_within(kHomeReach) : nullptr) {
    draft.place = *place;
    draft.place->carried = true;
    return;
  }
  if (!silent || !draft.subject) return;
  // "We put three more down at the dry end. That made twenty-one."
  const bool goes_on = draft.statement == Statement::count && focus.last_sentence == focus.sentences;
  if ((draft.subject->carried || goes_on) && draft.statement != Statement::begins && focus.last &&
      focus.last->subject && focus.last->place && focus.last->subject->terms == draft.subject->terms) {
    draft.place = focus.last->place;
  } else if (const Referent* home = home_spoken_of(context, focus, draft)) {
    draft.place = *home;
  }
  if (draft.place) draft.place->carried = true;
}

namespace {

/// "I think", "as far as I know", "he told me": words that say how sure he is or whom he has it from, not
/// what he did.
bool in_cue(const StatementContext& c, std::uint32_t i) {
  constexpr std::uint32_t kLongestCue = 8;
  const auto cues = c.passage.cues_in({i >= kLongestCue ? i - kLongestCue : 0, i + 1});
  return std::any_of(cues.begin(), cues.end(), [&](const CueSpan& cue) {
    if (!cue.span.holds(i)) return false;
    switch (c.words.cues[cue.cue].cue) {
      case CueClass::first_hand:
      case CueClass::would_have:
      case CueClass::told_order:
      case CueClass::yes:
      case CueClass::no:
        return false;
      default:
        return true;
    }
  });
}

/// "I", "us", "my" say that the narrator was there; not so "my father", nor "before us", "taller than me".
bool shows_narrator(const StatementContext& c, std::uint32_t i) {
  const Flags& f = c.passage.notes[i].flags;
  if (!f.has(WordClass::self) && !f.has(WordClass::we) && !f.has(WordClass::us) && !f.has(WordClass::our))
    return false;
  if (in_cue(c, i)) return false;
  const bool of_somebody = f.has(WordClass::determiner) && i + 1 < c.reading.span.past &&
                           c.passage.notes[i + 1].flags.has(WordClass::person);
  if (of_somebody) return false;
  if (i == c.reading.span.first) return true;
  const Flags& before = c.passage.notes[i - 1].flags;
  return !before.has(WordClass::before) && !before.has(WordClass::after) && !before.has(WordClass::than) &&
         !before.has(WordClass::like) && !(before.has(WordClass::as) && !f.has(WordClass::we));
}

/// "You could hear it", "you wound it by hand": how it was for whoever was there, and so for the narrator.
bool shows_anybody_there(const StatementContext& c, std::uint32_t i) {
  const Passage& passage = c.passage;
  const Flags& f = passage.notes[i].flags;
  if (!f.has(WordClass::you) || in_cue(c, i)) return false;
  if (i > c.reading.span.first && passage.tokens[i - 1].kind != Token::Kind::mark) {
    const Flags& before = passage.notes[i - 1].flags;
    const bool opens = before.has(WordClass::coordinator) || before.has(WordClass::subordinator) ||
                       before.has(WordClass::when) || before.has(WordClass::where) ||
                       before.has(WordClass::as) || before.has(WordClass::if_) ||
                       before.has(WordClass::then) || before.has(WordClass::until) ||
                       passage.notes[i - 1].date >= 0;
    if (!opens) return false;
  }
  if (f.has(WordClass::had_or_would)) return true;
  std::uint32_t next = i + 1;
  while (next < c.reading.span.past && passage.notes[next].flags.has(WordClass::adverb)) ++next;
  if (next >= c.reading.span.past) return false;
  const Note& verb = passage.notes[next];
  constexpr auto kPast = static_cast<std::uint8_t>(VerbForm::past);
  const bool past_of_list = verb.info && (verb.info->verb_forms[0] & kPast) != 0;
  return past_of_list || verb.flags.has(WordClass::past_form) || verb.flags.has(WordClass::past_help);
}

}  // namespace

void settle_basis(const StatementContext& context, Draft& draft) {
  if (draft.basis != Basis::unstated || draft.led || draft.quotes.empty()) return;
  const CodePointRange& quote = draft.quotes.front();
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    if (!shows_narrator(context, i) && !shows_anybody_there(context, i)) continue;
    if (draft.not_there && !context.passage.has(i, WordClass::self)) continue;
    const CodePointRange at = context.positions.range_of(context.passage, {i, i + 1});
    if (at.begin < quote.begin || at.end > quote.end) continue;
    draft.basis = Basis::first_hand;
    draft.because.push_back("'" + std::string(context.passage.words({i, i + 1})) + "' → first-hand");
    return;
  }
}

}  // namespace witnessmark::claims
