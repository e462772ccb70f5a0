#pragma once
#include <vector>

#include "language/claims/draft.h"
#include "language/claims/focus.h"
#include "language/statements/cue_reading.h"
#include "language/statements/times.h"

namespace witnessmark::claims {

/// Positions and places of one utterance in the reading text.
struct Positions {
  const CodePointIndex* index = nullptr;
  CodePointRange range_of(const Passage& passage, Span span) const {
    if (span.empty()) return {};
    const std::int64_t begin = passage.tokens[span.first].begin;
    const std::int64_t end = passage.tokens[span.past - 1].end;
    if (passage.ascii) return {{passage.base_code_point + begin}, {passage.base_code_point + end}};
    return index->to_code_points({{passage.base_byte + begin}, {passage.base_byte + end}});
  }
};

/// What the reader of statements works on.
struct StatementContext {
  const Passage& passage;
  const Words& words;
  const Finders& finders;
  const SentenceReading& reading;
  const Positions& positions;
  const DatePolicy* policy;
  Focus& focus;         ///< Read for pronouns; brought up to date by the caller.
  bool asking = false;  ///< The sentence is a question: what it would state is wanted.
  /// Place or thing the question was about, for answers.
  const Referent* asked_place = nullptr;
  const Referent* narrator = nullptr;  ///< Who "I" is, if a person of the list.
  const ChosenDate* today = nullptr;   ///< When the interview was, for what is pointed at.
  bool asked_what = false;             ///< Answers a question for what it was.
  bool answering = false;              ///< Soon after the question.
  bool asked_when = false;             ///< Answers a question for when: a bare number is a year.
  bool supposing = false;      ///< Soon after a question for what would be: "I'd put" is no "I had put".
  bool asked_leaving = false;  ///< Soon after a question for when somebody left.
  bool inventory = false;      ///< "What was in the wheelhouse?": bare names answer it.
};

/// Part of a sentence found to state something by other means than its verbs.
struct Finding {
  Statement statement = Statement::present;
  Referent referent;             ///< What it speaks of; of no kind with `located`.
  const Thing* thing = nullptr;  ///< If that is named in it.
  Span span;
  CodePointRange range;
  std::uint32_t clause = 0;  ///< The first it has part of.
};

/// The finding with whatever stands beside it: place, dates, number, how it is known. Several with several
/// dates; none when its number is missing or it is only wished, ordered or forgotten.
std::vector<Draft> drafts_of(const StatementContext& context, const Finding& finding);

/// The statements of one sentence, in its order.
std::vector<Draft> read_statements(const StatementContext& context);

/// A referent of something named in the passage.
Referent referent_of(const StatementContext& context, const Thing& thing);

}  // namespace witnessmark::claims
