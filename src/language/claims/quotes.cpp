#include "language/claims/quotes.h"

#include <algorithm>

namespace witnessmark::claims {
namespace {

/// A sentence of no more tokens is quoted whole.
constexpr std::uint32_t kShortSentence = 20;

/// "… when it came", "… that you could see": a clause that belongs to the one before it.
bool hangs_on(const Passage& passage, const Clause& clause) {
  const Flags& opening = passage.notes[clause.span.first].flags;
  return clause.relative || opening.has(WordClass::when) || opening.has(WordClass::relative) ||
         opening.has(WordClass::subordinator) || opening.has(WordClass::before) ||
         opening.has(WordClass::after) || opening.has(WordClass::until);
}

}  // namespace

bool speak_of_several(const SentenceReading& reading, const std::vector<Draft>& drafts) {
  const bool apart = std::all_of(drafts.begin(), drafts.end(), [&](const Draft& draft) {
    return draft.clause == 0 || reading.clauses[draft.clause].own_subject;
  });
  if (!apart) return false;
  const auto about = [](const Draft& draft) {
    return draft.subject ? draft.subject->terms : std::vector<std::uint32_t>();
  };
  return std::any_of(drafts.begin(), drafts.end(), [&](const Draft& draft) {
    return draft.clause != drafts.front().clause && about(draft) != about(drafts.front());
  });
}

CodePointRange quote_of(const StatementContext& context, const Draft& draft, CodePointRange sentence,
                        bool of_several) {
  const Passage& passage = context.passage;
  const SentenceReading& reading = context.reading;
  const Clause& clause = reading.clauses[draft.clause];
  const bool whole = reading.clauses.size() < 2 && clause.core.past + 1 >= clause.span.past;
  const bool stopped = passage.is_mark(reading.span.past - 1);
  if (whole || (stopped && !of_several && reading.span.past - reading.span.first <= kShortSentence))
    return sentence;
  Span span = clause.core;
  // "It was red when it came": what hangs on the clause belongs to it.
  std::uint32_t last_clause = draft.clause;
  if (clause.core.past + 1 >= clause.span.past) {
    while (last_clause + 1 < reading.clauses.size() && hangs_on(passage, reading.clauses[last_clause + 1])) {
      span.past = reading.clauses[++last_clause].core.past;
      if (reading.clauses[last_clause].core.past + 1 < reading.clauses[last_clause].span.past) break;
    }
  }
  while (span.first + 1 < span.past &&
         (passage.has(span.first, WordClass::coordinator) || passage.is_mark(span.first))) {
    ++span.first;
  }
  while (span.past > span.first + 1 && passage.is_mark(span.past - 1)) --span.past;
  CodePointRange range = context.positions.range_of(passage, span);
  // The last clause runs to the full stop.
  const Clause& final_clause = reading.clauses[last_clause];
  const bool last =
      last_clause + 1 == reading.clauses.size() && final_clause.core.past + 1 >= final_clause.span.past;
  if (last) range.end = sentence.end;
  return range;
}

}  // namespace witnessmark::claims
