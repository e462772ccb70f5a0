#include "language/claims/journeys.h"

#include <algorithm>

#include "language/claims/arguments.h"
#include "language/clauses/whereabouts.h"

namespace witnessmark::claims {
namespace {

/// An answer that says when or where is short.
constexpr std::uint32_t kLongestAnswer = 16;

/// People as the subject of token verb: the nearest before it.
bool find_people(const StatementContext& c, std::uint32_t verb, JourneyAsked& asked) {
  const Passage& passage = c.passage;
  for (std::uint32_t k = verb; k > c.reading.span.first; --k) {
    const std::uint32_t i = k - 1;
    const Flags& f = passage.notes[i].flags;
    if (passage.notes[i].thing >= 0) {
      const Thing& thing = passage.things[static_cast<std::size_t>(passage.notes[i].thing)];
      if (thing.kind == ThingKind::equipment) return false;
      if (thing.kind != ThingKind::person) continue;
      asked.draft.subject = referent_of(c, thing);
      return true;
    }
    if (f.has(WordClass::person)) {
      std::uint32_t first = i;
      while (first > c.reading.span.first && passage.notes[first - 1].flags.has(WordClass::determiner)) --first;
      asked.draft.subject_words = std::string(passage.words({first, i + 1}));
      return true;
    }
    if (f.has(WordClass::it)) return false;
    if (f.has(WordClass::they) || f.has(WordClass::we) || f.has(WordClass::she)) {
      const std::string_view word = passage.words({i, i + 1});
      asked.of_narrator = word.starts_with("you") || word.starts_with("You");
      if (asked.of_narrator) asked.draft.subject_words = std::string(word);
      return true;
    }
  }
  return false;
}

}  // namespace

std::optional<JourneyAsked> journey_asked(const StatementContext& question) {
  const Passage& passage = question.passage;
  const Span span = question.reading.span;
  JourneyAsked asked;
  std::uint32_t verb = span.past;
  for (std::uint32_t i = span.first; i < span.past && verb == span.past; ++i) {
    const Note& note = passage.notes[i];
    if (note.thing >= 0 || note.date >= 0) continue;
    if (!note.flags.has(WordClass::journey) && !note.flags.has(WordClass::leaving)) continue;
    if (!find_people(question, i, asked)) continue;
    verb = i;
    asked.leaving = note.flags.has(WordClass::leaving);
  }
  if (verb == span.past) return std::nullopt;
  const bool equipment = std::any_of(passage.things.begin(), passage.things.end(), [&](const Thing& thing) {
    return thing.kind == ThingKind::equipment && span.holds(thing.span.first) && thing.role == Role::none;
  });
  if (equipment) return std::nullopt;
  asked.draft.statement = Statement::located;
  const Arguments arguments(question);
  if (const Thing* place = arguments.place_in(span, {Role::at, Role::to, Role::none})) {
    asked.draft.place = referent_of(question, *place);
    asked.draft.place->carried = true;
  } else if (const Span where = destination_after(passage, span, verb + 1); !where.empty()) {
    asked.draft.place_words = std::string(passage.words(where));
  }
  return asked;
}

std::optional<Draft> journey_answered(const StatementContext& answer, const JourneyAsked& asked) {
  const Span span = answer.reading.span;
  if (span.past - span.first > kLongestAnswer) return std::nullopt;
  Draft draft = asked.draft;
  draft.fragment = true;
  draft.clause_range = answer.positions.range_of(answer.passage, span);
  if (asked.of_narrator) {
    if (answer.narrator) {
      draft.subject = *answer.narrator;
      draft.subject->words = draft.subject_words;
    }
    draft.subject_words.clear();
    draft.basis = Basis::first_hand;
  }
  if (draft.subject) draft.subject->carried = true;
  bool any = false;
  for (auto [d, past] = answer.passage.dates_in(span); d < past; ++d) {
    const Span& at = answer.passage.date_spans[d];
    const DateExpression& said = answer.passage.dates[d];
    if (at.empty() || !span.holds(at.first) || said.corrected || !said.edtf) continue;
    if (said.type == TimexType::duration || said.type == TimexType::set) continue;
    draft.date = ChosenDate{said, false};
    if (asked.leaving) draft.date->expression.edtf = as_interval(at_the_latest(*said.edtf));
    any = true;
  }
  const Arguments arguments(answer);
  if (const Thing* place = arguments.place_in(span, {Role::at, Role::to, Role::none})) {
    draft.place = referent_of(answer, *place);
    draft.place_words.clear();
    any = true;
  } else if (const Span where = whereabouts_after(answer.passage, span, span.first); !where.empty()) {
    draft.place_words = std::string(answer.passage.words(where));
    any = true;
  }
  if (!any) return std::nullopt;
  if (!draft.place && draft.place_words.empty()) draft.place_words = asked.leaving ? "away" : "there";
  return draft;
}

}  // namespace witnessmark::claims
