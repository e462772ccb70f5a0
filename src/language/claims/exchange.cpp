// Question and answer. A question that already holds the fact ("It was taken off in 1962, wasn't it?") and is
// only confirmed makes a claim that is marked as led: the interviewer supplied it. Denied, it makes the
// denial, and what the narrator puts in its place. A question for the time, place or number supplies subject
// and statement; the fact is the narrator's, so nothing is led. An answer that declines ("I wouldn't know")
// makes nothing.
#include "language/claims/exchange.h"

#include <algorithm>
#include <functional>

#include "language/claims/opening.h"
#include "language/statements/arguments.h"
#include "language/statements/cue_reading.h"

namespace witnessmark::claims {
namespace {

bool same_subject(const Draft& a, const Draft& b) {
  if (!a.subject || !b.subject) return !a.subject && !b.subject;
  return a.subject->terms == b.subject->terms;
}

void lay_cues(const StatementContext& c, Draft& draft, Opening opening) {
  CueReading cues;
  for (std::uint32_t clause = 0; clause < c.reading.clauses.size(); ++clause) {
    const CueReading found = read_cues(c.passage, c.words, c.reading, nullptr, clause);
    if (found.basis != Basis::unstated && cues.basis == Basis::unstated) cues.basis = found.basis;
    if (static_cast<int>(found.firmness) > static_cast<int>(cues.firmness)) cues.firmness = found.firmness;
    if (cues.knower.empty()) cues.knower = found.knower;
    for (const std::uint32_t used : found.used) {
      const CueSpan& span = c.passage.cues[used];
      Mention mention;
      mention.kind = MentionKind::cue;
      mention.range = c.positions.range_of(c.passage, span.span);
      mention.value = std::string(to_string(c.words.cues[span.cue].cue));
      mention.rule = c.words.cues[span.cue].phrase;
      draft.because.push_back("'" + std::string(c.passage.words(span.span)) + "' → " +
                              said_by(c.words.cues[span.cue]));
      draft.cues.push_back(std::move(mention));
    }
  }
  draft.basis = cues.basis;
  draft.knower = cues.knower;
  draft.firmness = cues.firmness;
  if (opening == Opening::maybe && draft.firmness == Firmness::firm) draft.firmness = Firmness::hedged;
}

Draft asked_again(const StatementContext& c, const Draft& asked) {
  Draft draft = asked;
  draft.clause = 0;  // It was a clause of the question.
  draft.subject_thing = -1;
  draft.basis = Basis::unstated;
  draft.firmness = Firmness::firm;
  draft.cues.clear();
  draft.because.clear();
  if (draft.subject) draft.subject->carried = true;
  if (draft.place) draft.place->carried = true;
  if (draft.date) draft.date->carried = true;
  draft.clause_range = c.positions.range_of(c.passage, c.reading.span);
  return draft;
}

/// The place that holds all others; nothing where there are several such or none.
std::optional<std::uint32_t> whole_site(const AuthorityList& places) {
  std::optional<std::uint32_t> whole;
  for (std::uint32_t t = 0; t < places.terms().size(); ++t) {
    if (!places.terms()[t].broader.empty()) continue;
    if (whole) return std::nullopt;
    whole = t;
  }
  return whole;
}

/// What the answer adds: a date, a place or a number of its own. False when it has none of them.
bool complete(const StatementContext& c, bool when, Draft& draft) {
  bool any = false;
  if (const auto dates = dates_said(c.passage, c.reading.span); !dates.empty()) {
    draft.date = ChosenDate{c.passage.dates[dates.front()], false};
    any = true;
  }
  if (!any && when) {
    if (std::optional<ChosenDate> year = bare_year(c)) {
      draft.date = std::move(*year);
      any = true;
    }
  }
  const Arguments arguments(c);
  if (const Thing* place =
          arguments.place_in(c.reading.span, {Role::at, Role::relation, Role::none, Role::to})) {
    draft.place = referent_of(c, *place);
    any = true;
  }
  return any;
}

/// A number that answers how many there were stands so near the beginning, in tokens.
constexpr std::uint32_t kEarly = 6;

bool complete_number(const StatementContext& c, Draft& draft) {
  for (const Number& number : c.passage.numbers_in(c.reading.span)) {
    if (!c.passage.countable(number)) continue;
    if (number.span.first >= c.reading.span.first + kEarly) return false;
    draft.statement = Statement::count;
    draft.quantity = Quantity{number.least, number.most, std::string(c.passage.words(number.span))};
    if (number.about && draft.firmness == Firmness::firm) draft.firmness = Firmness::hedged;
    return true;
  }
  return false;
}

/// "Where were you that winter?" "In Skarra Sound."
void whereabouts(const StatementContext& c, const Asked& asked, const std::function<void(Draft)>& add) {
  const Arguments arguments(c);
  const Thing* where = arguments.place_in(c.reading.span, {Role::at, Role::none}, true);
  if (!where || !asked.of_people || c.reading.span.past - c.reading.span.first > 15) return;
  Draft draft;
  draft.statement = Statement::located;
  draft.fragment = true;
  draft.place = referent_of(c, *where);
  draft.clause_range = c.positions.range_of(c.passage, c.reading.span);
  lay_cues(c, draft, Opening::other);
  if (std::optional<ChosenDate> date = last_date_in(c.passage, c.reading.span)) draft.date = std::move(*date);
  add(std::move(draft));
}

/// "When you came aboard, was the winch …?": a "when" with its subject right behind it asks nothing.
bool opens_subordinate(const StatementContext& c, std::uint32_t i) {
  if (!c.passage.notes[i].flags.has(WordClass::when) || i + 1 >= c.reading.span.past) return false;
  const Note& next = c.passage.notes[i + 1];
  const Flags& f = next.flags;
  const bool auxiliary =
      f.has(WordClass::be) || f.has(WordClass::do_) || f.has(WordClass::have) || f.has(WordClass::modal);
  return !auxiliary && (next.thing >= 0 || f.has(WordClass::they) || f.has(WordClass::we) ||
                        f.has(WordClass::she) || f.has(WordClass::it) || f.has(WordClass::determiner));
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
  if (next.drafts.empty()) next.journey = journey_asked(context);
  if (next.journey) next.journey->when = next.when;
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

/// The asked event at the site, with the date of the answer.
Draft dated_event(const StatementContext& context, const Asked& asked) {
  Draft draft;
  draft.statement = Statement::happened;
  draft.attribute = asked.event;
  draft.fragment = true;
  draft.clause_range = context.positions.range_of(context.passage, context.reading.span);
  draft.quotes = {draft.clause_range, asked.quote};
  lay_cues(context, draft, Opening::other);
  if (std::optional<ChosenDate> date = last_date_in(context.passage, context.reading.span))
    draft.date = std::move(*date);
  if (asked.place) {
    draft.place = asked.place;
  } else if (const std::optional<std::uint32_t> site = whole_site(context.finders.places->list())) {
    Referent whole;
    whole.kind = ThingKind::place;
    whole.terms = {*site};
    whole.words = context.finders.places->list().terms()[*site].name;
    whole.range = asked.quote;
    draft.place = whole;
  }
  if (draft.place) draft.place->carried = true;
  return draft;
}

}  // namespace

std::vector<Draft> answer(const StatementContext& context, const Asked& asked, std::vector<Draft> own) {
  const Opening opening = opening_of(context);
  if (asked.answered && !asked.journey && asked.event.empty()) return own;
  if (asked.journey && own.empty()) {
    const bool confirms = asked.yes_no && (opening == Opening::yes || opening == Opening::no);
    std::optional<Draft> told;
    if (opening == Opening::other || opening == Opening::yes)
      told = journey_answered(context, *asked.journey);
    if (!told && confirms) told = journey_confirmed(context, *asked.journey, opening == Opening::no);
    if (told) {
      lay_cues(context, *told, opening);
      if (asked.journey->of_narrator && told->basis == Basis::unstated) told->basis = Basis::first_hand;
      told->quotes = {context.positions.range_of(context.passage, context.reading.span), asked.quote};
      return {std::move(*told)};
    }
  }
  // "Would you talk about the fall?" "It was February 1937.": the event has its date.
  if (!asked.event.empty() && only_dates(context)) return {dated_event(context, asked)};
  if (asked.answered) return own;
  if (asked.drafts.empty() && !asked.where) return own;
  std::vector<Draft> drafts;
  const auto add = [&](Draft draft) {
    draft.quotes = {context.positions.range_of(context.passage, context.reading.span), asked.quote};
    drafts.push_back(std::move(draft));
  };
  switch (opening) {
    case Opening::unknown:
      return own;
    case Opening::yes:
    case Opening::maybe:
      if (!asked.yes_no) break;
      // "Six, yes." repeats the number that was asked.
      std::erase_if(own, [&](const Draft& o) {
        return o.fragment && o.statement == Statement::count &&
               std::any_of(asked.drafts.begin(), asked.drafts.end(), [&](const Draft& draft) {
                 return draft.statement == Statement::count && same_subject(o, draft);
               });
      });
      for (const Draft& draft : asked.drafts) {
        const bool said = std::any_of(own.begin(), own.end(), [&](const Draft& o) {
          return same_subject(o, draft) && o.statement == draft.statement;
        });
        if (said) continue;
        Draft led = asked_again(context, draft);
        led.led = true;
        lay_cues(context, led, opening);
        add(std::move(led));
      }
      break;
    case Opening::no:
      if (!asked.yes_no) break;
      for (const Draft& draft : asked.drafts) {
        Draft corrected = asked_again(context, draft);
        const bool completes = own.empty() && complete(context, false, corrected);
        Draft denied = asked_again(context, draft);
        if (denied.statement == Statement::present) {
          denied.statement = Statement::absent;
        } else if (denied.statement == Statement::absent) {
          denied.statement = Statement::present;
        } else {
          denied.polarity = Polarity::denied;
        }
        lay_cues(context, denied, Opening::no);
        add(std::move(denied));
        if (completes) {
          lay_cues(context, corrected, Opening::no);
          add(std::move(corrected));
        }
      }
      break;
    case Opening::other: {
      if (!own.empty() || asked.yes_no) break;
      if (asked.where && asked.drafts.empty()) whereabouts(context, asked, add);
      if (asked.drafts.empty()) break;
      for (const Draft& draft : asked.drafts) {
        Draft completed = asked_again(context, draft);
        const bool timed = (asked.when || asked.where) && complete(context, asked.when, completed);
        const bool numbered = asked.how_many && complete_number(context, completed);
        if (!timed && !numbered) continue;
        lay_cues(context, completed, opening);
        add(std::move(completed));
      }
      break;
    }
  }
  for (Draft& draft : own) drafts.push_back(std::move(draft));
  return drafts;
}

}  // namespace witnessmark::claims
