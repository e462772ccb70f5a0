// What an answer adds to its question: a date, a place, a number. "Not in 1950" rules one out: that makes the
// denial, and nothing else.
#include "language/claims/answers/completion.h"

#include <algorithm>

#include "language/statements/arguments.h"
#include "language/statements/cue_reading.h"

namespace witnessmark::claims {
namespace {

/// A number that answers how many there were stands so near the beginning, in tokens.
constexpr std::uint32_t kEarly = 6;
/// An answer that says where is no longer, in tokens.
constexpr std::uint32_t kLongestWhereabouts = 15;

bool mark_in(const Passage& passage, Span span) {
  for (std::uint32_t i = span.first; i < span.past; ++i)
    if (passage.is_mark(i)) return true;
  return false;
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

/// Takes date and place from these pieces of the answer; the token of the first that it finds.
std::optional<std::uint32_t> complete(const StatementContext& c, const std::vector<Span>& pieces, bool when,
                                      Draft& draft) {
  std::optional<std::uint32_t> said;
  for (const Span& piece : pieces) {
    const auto dates = dates_said(c.passage, piece);
    if (dates.empty()) continue;
    draft.date = ChosenDate{c.passage.dates[dates.front()], false};
    said = c.passage.date_spans[dates.front()].first;
    break;
  }
  for (const Span& piece : pieces) {
    const auto numbers = c.passage.numbers_in(piece);
    std::optional<ChosenDate> year = !said && when && !numbers.empty() ? bare_year(c) : std::nullopt;
    if (!year) continue;
    draft.date = std::move(*year);
    said = numbers.front().span.first;
  }
  const Arguments arguments(c);
  for (const Span& piece : pieces) {
    const Thing* place = arguments.place_in(piece, {Role::at, Role::relation, Role::none, Role::to});
    if (!place) continue;
    draft.place = referent_of(c, *place);
    said = std::min(said.value_or(place->head), place->head);
    break;
  }
  return said;
}

std::optional<std::uint32_t> complete_number(const StatementContext& c, const std::vector<Span>& pieces,
                                             Draft& draft) {
  for (const Span& piece : pieces) {
    for (const Number& number : c.passage.numbers_in(piece)) {
      if (!c.passage.countable(number)) continue;
      if (number.span.first >= c.reading.span.first + kEarly) return std::nullopt;
      draft.statement = Statement::count;
      draft.quantity = Quantity{number.least, number.most, std::string(c.passage.words(number.span))};
      if (number.about && draft.firmness == Firmness::firm) draft.firmness = Firmness::hedged;
      return number.span.first;
    }
  }
  return std::nullopt;
}

/// The asked draft with what these pieces give or rule out; nothing where that is nothing or blocked.
std::optional<Draft> complete_from(const StatementContext& c, const std::vector<Span>& pieces, bool ruled_out,
                                   const Asked& asked, const Draft& draft) {
  Draft made = asked_again(c, draft);
  std::optional<std::uint32_t> said;
  if (asked.when || asked.where) said = complete(c, pieces, asked.when, made);
  if (asked.how_many) {
    if (const auto number = complete_number(c, pieces, made)) said = number;
  }
  if (!said) return std::nullopt;
  const Standing standing = lay_cues_on(c, *said, made);
  if (standing == Standing::blocked) return std::nullopt;
  if (ruled_out || standing == Standing::denied) deny(made);
  return made;
}

}  // namespace

bool Pieces::rules_out(std::uint32_t token) const {
  return std::any_of(ruled_out.begin(), ruled_out.end(),
                     [token](const Span& piece) { return piece.holds(token); });
}

Pieces pieces_of(const StatementContext& answer) {
  const Passage& passage = answer.passage;
  const Span span = answer.reading.span;
  Pieces pieces;
  Span piece{span.first, span.first};
  bool ruled_out = false;
  const auto close = [&](std::uint32_t past, bool next_ruled_out) {
    piece.past = past;
    if (!piece.empty()) (ruled_out ? pieces.ruled_out : pieces.given).push_back(piece);
    piece.first = past;
    ruled_out = next_ruled_out;
  };
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    const Note& note = passage.notes[i];
    if (note.thing >= 0 || note.date >= 0) continue;
    const bool ends = passage.is_mark(i) || note.flags.has(WordClass::terminator) ||
                      note.flags.has(WordClass::until);  // "It didn't come until 1950."
    if (ends) {
      close(i, false);
    } else if (!ruled_out && note.flags.has(WordClass::negative) && note.cue < 0) {
      close(i, true);
    }
  }
  close(span.past, false);
  // Marks are nothing to go by where nothing is denied: "in the locker room, on the second deck".
  if (pieces.ruled_out.empty()) pieces.given = {span};
  return pieces;
}

Draft asked_again(const StatementContext& answer, const Draft& asked) {
  Draft draft = asked;
  draft.clause = 0;  // It was a clause of the question.
  draft.subject_thing = -1;
  draft.basis = Basis::unstated;
  draft.knower.clear();
  draft.firmness = Firmness::firm;
  draft.cues.clear();
  draft.because.clear();
  if (draft.subject) draft.subject->carried = true;
  if (draft.place) draft.place->carried = true;
  if (draft.date) draft.date->carried = true;
  draft.clause_range = answer.positions.range_of(answer.passage, answer.reading.span);
  return draft;
}

void lay_cues(const StatementContext& answer, Draft& draft) {
  CueReading cues;
  for (std::uint32_t clause = 0; clause < answer.reading.clauses.size(); ++clause)
    merge(read_cues(answer.passage, answer.words, answer.reading, nullptr, clause), cues);
  lay(answer, cues, draft);
}

Standing lay_cues_on(const StatementContext& answer, std::uint32_t said, Draft& draft) {
  Standing standing = Standing::stated;
  CueReading cues;
  for (std::uint32_t clause = 0; clause < answer.reading.clauses.size(); ++clause) {
    const Clause& own = answer.reading.clauses[clause];
    const bool here = own.span.holds(said);
    const CueReading found = read_cues(answer.passage, answer.words, answer.reading, nullptr, clause, {},
                                       here ? std::optional(said) : std::nullopt);
    if (here && (own.conditional || (found.blocked && !mark_in(answer.passage, {found.blocked_past, said}))))
      return Standing::blocked;
    if (here && (found.doubted || found.denied)) standing = Standing::denied;
    merge(found, cues);
  }
  lay(answer, cues, draft);
  return standing;
}

std::optional<Draft> corrected(const StatementContext& answer, const Draft& asked) {
  Draft draft = asked_again(answer, asked);
  const auto said = complete(answer, pieces_of(answer).given, false, draft);
  if (!said || lay_cues_on(answer, *said, draft) != Standing::stated) return std::nullopt;
  return draft;
}

std::vector<Draft> completed(const StatementContext& answer, const Asked& asked, const Draft& draft) {
  const Pieces pieces = pieces_of(answer);
  std::vector<Draft> made;
  if (std::optional<Draft> not_so = complete_from(answer, pieces.ruled_out, true, asked, draft))
    made.push_back(std::move(*not_so));
  if (std::optional<Draft> so = complete_from(answer, pieces.given, false, asked, draft))
    made.push_back(std::move(*so));
  return made;
}

std::optional<Draft> whereabouts(const StatementContext& answer, const Asked& asked) {
  const Span span = answer.reading.span;
  if (!asked.of_people || span.past - span.first > kLongestWhereabouts) return std::nullopt;
  const Arguments arguments(answer);
  const Pieces pieces = pieces_of(answer);
  for (const bool denied : {false, true}) {
    for (const Span& piece : denied ? pieces.ruled_out : pieces.given) {
      const Thing* where = arguments.place_in(piece, {Role::at, Role::none}, true);
      if (!where) continue;
      Draft draft;
      draft.statement = Statement::located;
      draft.fragment = true;
      draft.place = referent_of(answer, *where);
      draft.clause_range = answer.positions.range_of(answer.passage, span);
      const Standing standing = lay_cues_on(answer, where->head, draft);
      if (standing == Standing::blocked) return std::nullopt;
      if (denied || standing == Standing::denied) draft.polarity = Polarity::denied;
      if (std::optional<ChosenDate> date = last_date_in(answer.passage, span)) draft.date = std::move(*date);
      return draft;
    }
  }
  return std::nullopt;
}

std::optional<Draft> dated_event(const StatementContext& answer, const Asked& asked) {
  Draft draft;
  draft.statement = Statement::happened;
  draft.attribute = asked.event;
  draft.fragment = true;
  draft.clause_range = answer.positions.range_of(answer.passage, answer.reading.span);
  draft.quotes = {draft.clause_range, asked.quote};
  if (std::optional<ChosenDate> date = last_date_in(answer.passage, answer.reading.span))
    draft.date = std::move(*date);
  if (lay_cues_on(answer, answer.reading.span.past - 1, draft) != Standing::stated) return std::nullopt;
  if (asked.place) {
    draft.place = asked.place;
  } else if (const std::optional<std::uint32_t> site = whole_site(answer.finders.places->list())) {
    Referent whole;
    whole.kind = ThingKind::place;
    whole.terms = {*site};
    whole.words = answer.finders.places->list().terms()[*site].name;
    whole.range = asked.quote;
    draft.place = whole;
  }
  if (draft.place) draft.place->carried = true;
  return draft;
}

}  // namespace witnessmark::claims
