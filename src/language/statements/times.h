#pragma once
#include <optional>
#include <vector>

#include "language/claims/draft.h"

namespace witnessmark::claims {

struct StatementContext;

/// A date of the sentence as it bears on one predicate.
struct DateUse {
  std::uint32_t date = 0;  ///< Index into the passage's dates.
  bool negated = false;    ///< "not in 1954"
  bool until = false;      ///< "until 1953"
  bool throughout = false;               ///< "all through 1957"
  bool by = false;                       ///< "by 1958"
  bool corrected = false;                ///< Taken back.
  std::optional<std::uint32_t> or_date;  ///< "1949, or was it 1950?"
};

/// Dates for a predicate: its own, else what the sentence says for all. Several only when joined by "and" or
/// "but".
std::vector<DateUse> dates_for(const Passage& passage, const SentenceReading& reading,
                               const Predicate* predicate, std::uint32_t clause);

/// Dates said in a stretch, in order, as indices into the passage's dates: each says when, if only in words
/// ("that spring"), and is not taken back.
std::vector<std::uint32_t> dates_said(const Passage& passage, Span span);
/// The last of them that has a value.
std::optional<ChosenDate> last_date_in(const Passage& passage, Span span);

/// "Fifty-three." in answer to when: a year of the hundred before the interview. Nothing where anything else
/// stands in the sentence but fillers and marks, or the day of the interview is not known.
std::optional<ChosenDate> bare_year(const StatementContext& answer);

/// The date at the near end of "until 1953": the value itself when it is no such interval.
Edtf end_of_until(const Edtf& value);

/// One of two dates; the first alone when they cannot be joined.
std::optional<Edtf> either(const std::optional<Edtf>& a, const std::optional<Edtf>& b);
/// That date or earlier; the value itself where no last day of it is known.
Edtf at_the_latest(const Edtf& value);
/// That date or later; the value itself where no first day of it is known.
Edtf at_the_earliest(const Edtf& value);
/// How things were up to that date, its last part included; the value itself where it has no last part.
Edtf up_to(const Edtf& value);
/// "X or earlier" as a stretch of time that a state lasted through.
Edtf as_interval(const Edtf& value);

/// "From April 1964", "since 1938": a stay that began then and goes on.
Edtf stay_from(const Edtf& value);

/// A date as the time of a state; the expression has an EDTF value. `by`: it was so by then. In late 1957 it
/// was so at some time in those months; by late 1957 no finer than at some time in 1957.
Edtf date_of_state(const DateExpression& expression, bool by);

/// "Fifty-nine. It was the February.": the date, or the one known end of a stretch, by one that lies within
/// it.
std::optional<Edtf> narrowed_to(const Edtf& value, const DateExpression& said, const DatePolicy& policy);

/// "When I came", of somebody who came twice: the coming that talk has reached; where it has reached none the
/// first. "When I left" is the last leaving. The others stay as what it may mean besides.
void settle_service(const ChosenDate* talked_of, const DatePolicy& policy, DateExpression& said);

/// Whether all of a date lies within another, which may be without beginning or end.
bool lies_in(const DateExpression& inner, const DateExpression& outer);

}  // namespace witnessmark::claims
