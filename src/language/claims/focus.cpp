// A pronoun stands for the nearest thing named, unless something of no list was brought in since, or the
// place itself is what is spoken of ("What about the galley?" "It was white."). In a question "it" goes on
// with what was asked about before, however many things the answer has named.
#include "language/claims/focus.h"

#include <algorithm>

#include "language/claims/answers/opening.h"
#include "language/clauses/unlisted.h"
#include "language/statements/statements.h"
#include "language/statements/times.h"

namespace witnessmark::claims {
namespace {

constexpr int kPronounReach = 90;  // Words.
constexpr int kTopicReach = 250;
constexpr int kPlaceReach = 60;
constexpr int kAside = 8;  // Sentences.
constexpr int kKeepsDay = 4;
constexpr int kLeftBehind = 20;

bool stays_candidate(const Thing& thing) {
  return thing.kind == ThingKind::equipment && (thing.role == Role::none || thing.role == Role::of);
}

/// "It stood where the crane had been": only the place is told of the crane.
bool tells_where(const Passage& passage, const Thing& thing) {
  return thing.head > 0 && passage.has(thing.head - 1, WordClass::where);
}

/// "Saddle tank engine Edith": of the words behind the first the last alone has a capital letter.
bool has_own_name(const Term& term) {
  const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  std::size_t capitals = 0;
  for (std::size_t i = 1; i + 1 < term.name.size(); ++i)
    capitals += term.name[i] == ' ' && capital(term.name[i + 1]);
  const std::size_t last = term.name.rfind(' ');
  return capitals == 1 && last + 2 < term.name.size() && capital(term.name[last + 1]) &&
         !capital(term.name[last + 2]) && term.name.find_first_of("0123456789") == std::string::npos;
}

/// "Until November", "before the war": the date of one thing and of nothing else.
bool only_a_limit(const Edtf& value) {
  if (const auto* interval = std::get_if<EdtfInterval>(&value.value)) {
    return !std::holds_alternative<EdtfDate>(interval->begin) ||
           !std::holds_alternative<EdtfDate>(interval->end);
  }
  const auto* set = std::get_if<EdtfSet>(&value.value);
  return set && std::any_of(set->elements.begin(), set->elements.end(), [](const EdtfSetElement& element) {
           return element.is_span && (!element.first || !element.last);
         });
}

/// "It was the stocktaking, Easter, and there was a fuss": set between marks within a sentence.
bool explains(const Passage& passage, Span sentence, Span at) {
  return at.first > sentence.first && at.past + 1 < sentence.past && passage.is_mark(at.first - 1) &&
         passage.is_mark(at.past);
}

/// "He came in forty-seven", "they were married in fifty-five": when somebody did something, or was born,
/// dates nothing of the talk after it, unless he did it to a thing.
bool dates_a_life(const StatementContext& context, Span date, bool of_things) {
  const Passage& passage = context.passage;
  Span clause = context.reading.span;
  for (const Clause& c : context.reading.clauses)
    if (c.span.holds(date.first)) clause = c.span;
  if (of_things) return false;
  for (std::uint32_t i = clause.first; i < clause.past; ++i)
    if (passage.has(i, WordClass::life_event)) return true;
  std::uint32_t opens = clause.first;
  while (opens < date.first &&
         (passage.is_mark(opens) || passage.has(opens, WordClass::coordinator) ||
          passage.has(opens, WordClass::subordinator) || passage.has(opens, WordClass::filler) ||
          passage.has(opens, WordClass::adverb)))
    ++opens;
  return opens < date.first && passage.has(opens, WordClass::they) && !passage.has(opens, WordClass::them) &&
         !passage.has(opens, WordClass::you);
}

/// "The ledgers were on the bottom shelf, from 1862": how old they were, not when they were there.
bool dates_what_is_named(const Passage& passage, Span sentence, Span date) {
  std::uint32_t from = date.first;
  while (from > sentence.first && passage.has(from - 1, WordClass::determiner)) --from;
  return from > sentence.first + 1 && passage.has(from - 1, WordClass::from) && passage.is_mark(from - 2);
}

/// "It was a lovely thing": what is spoken of, and nothing else.
bool says_what_it_was(const Passage& passage, const SentenceReading& reading, std::uint32_t article) {
  return std::any_of(reading.predicates.begin(), reading.predicates.end(), [&](const Predicate& p) {
    if (p.kind != Predicate::Kind::be || p.agent != Agent::it || p.span.past > article) return false;
    for (std::uint32_t i = p.span.past; i < article; ++i)
      if (!passage.has(i, WordClass::adverb) && !passage.has(i, WordClass::negative)) return false;
    return true;
  });
}

/// The last noun of no list that is brought in: its article.
std::optional<std::uint32_t> brought_in(const Passage& passage, const SentenceReading& reading) {
  Span rest = reading.span;
  std::optional<std::uint32_t> found = last_unlisted(passage, rest);
  while (found && says_what_it_was(passage, reading, *found)) {
    rest.past = *found;
    found = last_unlisted(passage, rest);
  }
  return found;
}

/// "What colour was the lorry?": the last words of a question are a definite noun of no list, and nothing of
/// the lists is named.
bool asks_of_unlisted(const StatementContext& context) {
  const Passage& passage = context.passage;
  const Span span = context.reading.span;
  for (const Thing& thing : passage.things_in(span))
    if (span.holds(thing.span.first) && !thing.shadowed) return false;
  std::uint32_t past = span.past;
  while (past > span.first && passage.is_mark(past - 1)) --past;
  std::uint32_t noun = past;
  while (noun > span.first && past - noun < 3 && !passage.notes[noun - 1].flags.any() &&
         passage.notes[noun - 1].date < 0 && passage.notes[noun - 1].number < 0 &&
         passage.notes[noun - 1].cue < 0 && !passage.is_mark(noun - 1))
    --noun;
  return noun < past && noun > span.first && passage.has(noun - 1, WordClass::determiner) &&
         !passage.has(noun - 1, WordClass::indefinite) && !passage.has(noun - 1, WordClass::pronoun);
}

/// "Now", "today": when the interview was, not what is told of.
bool of_speaking(const DateExpression& said) {
  return said.timex3 == "PRESENT_REF" || said.rule == "day-word";
}

/// "When I was nineteen", "… two years after", "when I left": says when one thing was; talk does not stay
/// there. "The spring after the strike we put three more down" begins to tell of that spring.
bool looks_aside(const DateExpression& said, bool opens) {
  if (said.rule == "offset" || said.rule == "offset-unit") return !opens;
  return said.rule == "age" || said.rule == "service-ends" || said.rule == "between" ||
         said.rule == "season-of-life";
}

}  // namespace

std::optional<Referent> Focus::pronoun(bool plural, bool asking) const {
  if (asking && !plural && topic.referent && words - topic.at <= kTopicReach) {
    Referent found = *topic.referent;
    found.carried = true;
    return found;
  }
  const Mentioned& wanted = plural ? things : thing;
  if (!plural && place_topic.referent && place_topic.at > thing.at && place_topic.where > unlisted_at &&
      words - place_topic.at <= kPlaceReach) {
    Referent found = *place_topic.referent;
    found.carried = true;
    return found;
  }
  if (!wanted.referent || words - wanted.at > kPronounReach) return std::nullopt;
  if (!plural && unlisted_at > wanted.where) return std::nullopt;
  Referent found = *wanted.referent;
  found.carried = true;
  return found;
}

std::optional<Referent> Focus::counted_now() const {
  if (!counted.referent || words - counted.at > kPronounReach) return std::nullopt;
  Referent found = *counted.referent;
  found.carried = true;
  return found;
}

const Referent* Focus::place_within(int sentences_ago) const {
  return place && sentences - place_sentence <= sentences_ago ? &*place : nullptr;
}

const Draft* Focus::repeatable() const {
  return last && sentences - last_sentence <= 3 ? &*last : nullptr;
}

std::optional<Referent> Focus::she() const {
  if (!named_she.referent || words - named_she.at > kPronounReach || named_she.at < thing.at)
    return std::nullopt;
  Referent found = *named_she.referent;
  found.carried = true;
  return found;
}

void Focus::name(const StatementContext& context, const Referent& referent, int at) {
  Mentioned& held = referent.plural ? things : thing;
  held.referent = referent;
  held.referent->carried = false;
  held.at = words;
  held.where = at;
  if (!referent.plural && referent.kind == ThingKind::equipment &&
      has_own_name(context.finders.equipment->list().terms()[referent.terms.front()])) {
    named_she = held;
  }
}

void Focus::begin_exchange() {
  date_asked = false;
  when_unknown = false;
}

void Focus::bring_up_to_date(const StatementContext& context, std::vector<Draft> drafts) {
  const Passage& passage = context.passage;
  const Span span = context.reading.span;
  const auto said_at = [&, before = words](std::uint32_t token) {
    return before + static_cast<int>(token - span.first);
  };
  words += static_cast<int>(span.past - span.first);
  ++sentences;
  ++date_age;
  const std::vector<Clause>& clauses = context.reading.clauses;
  // Of several in a clause the thing of the lists counts as the last: "the crane had a hook".
  if (const std::optional<std::uint32_t> unlisted = brought_in(passage, context.reading)) {
    std::uint32_t begin = *unlisted;
    const auto begins = [&](const Clause& c) { return c.span.first == begin; };
    while (begin > span.first && !opens_clause(passage, span, begin) &&
           std::none_of(clauses.begin(), clauses.end(), begins))
      --begin;
    unlisted_at = said_at(begin);
  }
  // "What colour was the lorry?": of something else than what was spoken of.
  if (context.asking && asks_of_unlisted(context)) unlisted_at = words;
  // Where something is spoken of: where it is named, else in its clause.
  const auto draft_at = [&](const Draft& draft) {
    if (draft.subject_thing >= 0)
      return said_at(passage.things[static_cast<std::size_t>(draft.subject_thing)].span.first);
    const bool own = !draft.led && draft.clause < clauses.size();
    return own ? said_at(clauses[draft.clause].span.first) : words;
  };
  std::optional<Referent> about;
  std::optional<Referent> only_place;
  for (const Thing& thing_here : passage.things_in(span)) {
    if (!span.holds(thing_here.span.first) || thing_here.shadowed || thing_here.near_match) continue;
    if (thing_here.kind == ThingKind::place) {
      place = referent_of(context, thing_here);
      if (!only_place || context.asking) only_place = place;
      place_sentence = sentences;
    }
    // "Can we go to the fog bell?": a question is about what it names, whatever the preposition.
    const bool asked = context.asking && thing_here.kind == ThingKind::equipment && !about;
    // "What about the diesel engine, the loco?": the question's first name is what it is about.
    const bool again = context.asking && about && !thing_here.plural;
    if ((stays_candidate(thing_here) || asked) && !again &&
        (context.asking || !tells_where(passage, thing_here))) {
      about = referent_of(context, thing_here);
      name(context, *about, said_at(thing_here.span.first));
    }
  }
  Draft* stated = nullptr;
  bool of_things = false;
  for (Draft& draft : drafts) {
    of_things = of_things || (draft.subject && draft.subject->kind == ThingKind::equipment);
    const bool aside = draft.subject_thing >= 0 && !context.asking &&
                       tells_where(passage, passage.things[static_cast<std::size_t>(draft.subject_thing)]);
    if (draft.subject && draft.subject->kind == ThingKind::equipment && !aside) {
      about = draft.subject;
      name(context, *about, draft_at(draft));
    }
    if (draft.subject && draft.statement == Statement::count) counted = {draft.subject, words, words};
    if (!draft.withdrawn) stated = &draft;
    if (draft.of_place && draft.place && !draft.place->carried)
      place_topic = {draft.place, words, draft_at(draft)};
    if (draft.place && !draft.place->carried && draft.place->kind == ThingKind::place) {
      place = draft.place;
      place_sentence = sentences;
    }
  }
  if (stated) {
    last = std::move(*stated);
    last_sentence = sentences;
  }
  // "In the powder house, right out by itself."
  const bool answers_where = !context.asking && only_place && !about && context.reading.predicates.empty();
  if ((context.asking && only_place && !about) || answers_where) place_topic = {only_place, words, words};
  for (std::uint32_t i = span.first; context.asking && about && i < span.past; ++i) {
    if (passage.has(i, WordClass::how_many)) counted = {about, words, words};
  }
  if (context.asking && (about || only_place)) {
    // Asked about something else, the date that held for what was spoken of is left behind.
    const Referent& now = about ? *about : *only_place;
    if (!topic.referent || topic.referent->kind != now.kind || topic.referent->terms != now.terms)
      date_age += kLeftBehind;
    topic = {now, words, words};
  }
  for (const std::uint32_t d : dates_said(passage, span)) {
    const DateExpression& said = passage.dates[d];
    const Span& at = passage.date_spans[d];
    if (!said.edtf || of_speaking(said) || (context.today && said.edtf == context.today->expression.edtf) ||
        looks_aside(said, at.first == span.first) || only_a_limit(*said.edtf)) {
      continue;
    }
    // "The night of the fire, in 1951": the closer of the two.
    const bool said_here = date && date_age == 0;
    // "Tell me about the fire." "It was March, a cold one.": the day of the fire is still what is meant.
    const bool wider = date && date_age <= kKeepsDay && lies_in(date->expression, said);
    if (wider) {
      date_age = 0;
      continue;
    }
    const bool closer = said_here && lies_in(said, date->expression);
    // "The old one went in the big gale": looks aside, the talk stays where it was; asked about, it goes
    // there.
    if (said.rule == "named-event" && date && date_age <= kAside && !closer && !context.asking) continue;
    if (date && explains(passage, span, at) &&
        (said.rule == "named-day" || lies_in(said, date->expression))) {
      continue;
    }
    // "We had two of them in the war": talk goes there only when asked.
    const bool years = std::holds_alternative<EdtfInterval>(said.edtf->value);
    if (said.rule == "named-time" && years && !context.asking) continue;
    if (!context.asking && (dates_a_life(context, at, of_things) || dates_what_is_named(passage, span, at)))
      continue;
    ChosenDate reached{said, true};
    settle_service(date ? &*date : nullptr, *context.policy, reached.expression);
    date = std::move(reached);
    date_age = 0;
    date_asked = context.asking;
  }
  if (!context.asking) when_unknown = date_age > 0 && (when_unknown || forgets_when(context));
}

}  // namespace witnessmark::claims
