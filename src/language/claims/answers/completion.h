#pragma once
#include <optional>
#include <vector>

#include "language/claims/answers/exchange.h"

namespace witnessmark::claims {

/// A sentence in pieces: what it gives, and what stands behind a "not" up to the next mark or "but" ("In the
/// hold, not the galley.").
struct Pieces {
  std::vector<Span> given;
  std::vector<Span> ruled_out;
  bool rules_out(std::uint32_t token) const;
};
Pieces pieces_of(const StatementContext& answer);

/// What was asked, as the words of an answer would say it again: nothing of how it is known.
Draft asked_again(const StatementContext& answer, const Draft& asked);

/// Lays over a draft what the whole sentence says of how it is known.
void lay_cues(const StatementContext& answer, Draft& draft);
/// What the words before something make of it: no statement ("If only in 1950."), a denial ("I don't think in
/// 1950."), or what it says.
enum class Standing { stated, denied, blocked };
/// The same for a draft that rests on what stands at a token, and how that stands.
Standing lay_cues_on(const StatementContext& answer, std::uint32_t said, Draft& draft);

/// The asked draft with a date and a place of the sentence; nothing where it has neither.
std::optional<Draft> corrected(const StatementContext& answer, const Draft& asked);

/// The asked draft with what answers the question for when, where or how many, and, denied, with what the
/// sentence rules out.
std::vector<Draft> completed(const StatementContext& answer, const Asked& asked, const Draft& draft);

/// "Where were you that winter?" "In Skarra Sound."
std::optional<Draft> whereabouts(const StatementContext& answer, const Asked& asked);

/// The asked event at the site, with the date of the answer.
std::optional<Draft> dated_event(const StatementContext& answer, const Asked& asked);

}  // namespace witnessmark::claims
