#include "language/claims/answers/journeys.h"

#include <algorithm>

#include "language/claims/answers/completion.h"
#include "language/clauses/whereabouts.h"
#include "language/statements/arguments.h"

namespace witnessmark::claims {
namespace {

/// An answer that says when or where is short.
constexpr std::uint32_t kLongestAnswer = 16;

/// People as the subject of what begins at token past: the nearest before it.
bool find_people(const StatementContext& c, std::uint32_t past, JourneyAsked& asked) {
  const Passage& passage = c.passage;
  for (std::uint32_t k = past; k > c.reading.span.first; --k) {
    const std::uint32_t i = k - 1;
    const Flags& f = passage.notes[i].flags;
    if (const Thing* thing = passage.thing_at(i)) {
      if (thing->kind == ThingKind::equipment) return false;
      if (thing->kind != ThingKind::person) continue;
      asked.draft.subject = referent_of(c, *thing);
      return true;
    }
    if (f.has(WordClass::person)) {
      std::uint32_t first = i;
      while (first > c.reading.span.first && passage.has(first - 1, WordClass::determiner)) --first;
      asked.draft.subject_words = std::string(passage.words({first, i + 1}));
      return true;
    }
    if (f.has(WordClass::it)) return false;
    if (f.has(WordClass::they) || f.has(WordClass::we) || f.has(WordClass::she)) {
      const std::string_view word = passage.words({i, i + 1});
      asked.of_narrator = f.has(WordClass::you);
      if (asked.of_narrator) asked.draft.subject_words = std::string(word);
      asked.people = c.positions.range_of(passage, {i, i + 1});
      return true;
    }
  }
  return false;
}

/// "When did you come out?", but not "When did you get married?": what stands behind a verb of coming, going
/// or staying, if anything, says where or when.
bool says_whereabouts(const StatementContext& c, std::uint32_t i) {
  const std::vector<Note>& notes = c.passage.notes;
  const std::uint32_t past = c.reading.span.past;
  const auto has = [&](WordClass w) { return i < past && notes[i].flags.has(w); };
  while (has(WordClass::way) || has(WordClass::adverb) || has(WordClass::everything)) ++i;
  if (has(WordClass::determiner) && i + 1 < past && notes[i + 1].thing >= 0) ++i;
  if (i >= past || c.passage.is_mark(i) || notes[i].date >= 0) return true;
  if (const Thing* thing = c.passage.thing_at(i))
    return thing->kind == ThingKind::place || thing->kind == ThingKind::location;
  for (const WordClass w : {WordClass::at, WordClass::to, WordClass::from, WordClass::relation,
                            WordClass::whereabouts, WordClass::self, WordClass::when, WordClass::then,
                            WordClass::before, WordClass::after, WordClass::coordinator, WordClass::she}) {
    if (has(w)) return true;
  }
  return false;
}

/// What was asked, as the narrator's.
Draft told_by(const StatementContext& answer, const JourneyAsked& asked) {
  Draft draft = asked.draft;
  draft.clause_range = answer.positions.range_of(answer.passage, answer.reading.span);
  if (asked.of_narrator) {
    if (answer.narrator) {
      draft.subject = *answer.narrator;
      draft.subject->words = draft.subject_words;
      draft.subject->range = asked.people;
    }
    draft.subject_words.clear();
  }
  if (draft.subject) draft.subject->carried = true;
  return draft;
}

/// "Were you aboard that autumn?", "You were there for all of that.": the token behind which the whereabouts
/// stand; the end of the sentence when there are none.
std::uint32_t being_somewhere(const StatementContext& c, JourneyAsked& asked) {
  const Span span = c.reading.span;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (!c.passage.has(i, WordClass::be) || c.passage.notes[i].thing >= 0) continue;
    std::uint32_t opening = span.first;
    while (opening < i && (c.passage.has(opening, WordClass::filler) ||
                           c.passage.has(opening, WordClass::coordinator) || c.passage.is_mark(opening))) {
      ++opening;
    }
    const bool inverted = i == opening;
    const std::uint32_t behind = inverted ? i + 1 : i;
    JourneyAsked tried;
    if (!find_people(c, inverted ? std::min(span.past, i + 2) : i, tried)) continue;
    if (whereabouts_after(c.passage, span, behind + 1).empty()) continue;
    asked = std::move(tried);
    return behind;
  }
  return span.past;
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
    // "Do you want to go up?" asks of no time past.
    if (i > span.first && passage.has(i - 1, WordClass::to)) continue;
    if (!says_whereabouts(question, i + note.reach) || !find_people(question, i, asked)) continue;
    verb = i;
    asked.verb = std::string(passage.words({i, i + note.reach}));
    asked.leaving = note.flags.has(WordClass::leaving);
  }
  if (verb == span.past) verb = being_somewhere(question, asked);
  if (verb == span.past) return std::nullopt;
  const auto named = passage.things_in(span);
  const bool equipment = std::any_of(named.begin(), named.end(), [](const Thing& thing) {
    return thing.kind == ThingKind::equipment && thing.role == Role::none;
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
  if (std::optional<ChosenDate> date = last_date_in(passage, span)) {
    asked.draft.date = std::move(*date);
    asked.draft.date->carried = true;
  }
  return asked;
}

std::optional<Draft> journey_confirmed(const StatementContext& answer, const JourneyAsked& asked,
                                       bool denied) {
  if (!asked.draft.place && asked.draft.place_words.empty()) return std::nullopt;
  Draft draft = told_by(answer, asked);
  draft.led = true;
  draft.polarity = denied ? Polarity::denied : Polarity::affirmed;
  lay_cues(answer, draft);
  return draft;
}

namespace {

/// Gives the draft the answer's date, as that of a coming, a leaving or a stay; its token.
std::optional<std::uint32_t> date_journey(const StatementContext& answer, const JourneyAsked& asked,
                                          const Pieces& pieces, Draft& draft) {
  std::optional<std::uint32_t> said;
  for (const std::uint32_t d : dates_said(answer.passage, answer.reading.span)) {
    const std::uint32_t at = answer.passage.date_spans[d].first;
    if (!answer.passage.dates[d].edtf || pieces.rules_out(at)) continue;
    draft.date = ChosenDate{answer.passage.dates[d], false};
    std::optional<Edtf>& when = draft.date->expression.edtf;
    if (at > answer.reading.span.first && answer.passage.has(at - 1, WordClass::from)) {
      when = stay_from(*when);
    } else if (asked.leaving) {
      when = as_interval(at_the_latest(*when));
    }
    said = at;
  }
  if (said || !asked.when || !pieces.ruled_out.empty()) return said;
  std::optional<ChosenDate> year = bare_year(answer);
  if (!year) return std::nullopt;
  draft.date = std::move(*year);
  if (asked.leaving) draft.date->expression.edtf = as_interval(at_the_latest(*draft.date->expression.edtf));
  return answer.reading.span.past - 1;
}

/// Gives the draft the place in these pieces of the answer; its token.
std::optional<std::uint32_t> place_journey(const StatementContext& answer, const std::vector<Span>& pieces,
                                           Draft& draft) {
  const Arguments arguments(answer);
  for (const Span& piece : pieces) {
    if (const Thing* place = arguments.place_in(piece, {Role::at, Role::to, Role::none})) {
      draft.place = referent_of(answer, *place);
      draft.place_words.clear();
      return place->head;
    }
    if (const Span where = whereabouts_after(answer.passage, piece, piece.first); !where.empty()) {
      draft.place_words = std::string(answer.passage.words(where));
      return where.first;
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<Draft> journey_answered(const StatementContext& answer, const JourneyAsked& asked) {
  const Span span = answer.reading.span;
  if (span.past - span.first > kLongestAnswer) return std::nullopt;
  const Pieces pieces = pieces_of(answer);
  Draft draft = told_by(answer, asked);
  draft.fragment = true;
  const std::optional<std::uint32_t> dated = date_journey(answer, asked, pieces, draft);
  std::optional<std::uint32_t> said = place_journey(answer, pieces.given, draft);
  if (dated) said = std::max(*dated, said.value_or(*dated));
  const bool ruled_out = !said;
  if (ruled_out) said = place_journey(answer, pieces.ruled_out, draft);
  if (!said) return std::nullopt;
  const Standing standing = lay_cues_on(answer, *said, draft);
  if (standing == Standing::blocked || (standing == Standing::denied && dated)) return std::nullopt;
  if (ruled_out || standing == Standing::denied) draft.polarity = Polarity::denied;
  if (!draft.place && draft.place_words.empty()) draft.place_words = asked.verb;
  return draft;
}

}  // namespace witnessmark::claims
