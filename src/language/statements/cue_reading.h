#pragma once
#include <string>
#include <vector>

#include "language/claims/draft.h"

namespace witnessmark::claims {

/// What the cues around one predicate suggest.
struct CueReading {
  Basis basis = Basis::unstated;
  std::string knower;
  Firmness firmness = Firmness::firm;
  bool doubted = false;  ///< "I don't think …": denies, and hedges the denial.
  bool blocked = false;  ///< No claim: memory fails, an order, a wish, a condition.
  bool ordered = false;  ///< Blocked because only intended or ordered.
  bool not_until = false;
  bool not_as_if = false;
  bool contrary = false;
  bool denied = false;              ///< "can't have been"
  std::vector<std::uint32_t> used;  ///< Indices into the passage's cues.
};

/// What a cue says, for a reason that a person reads: "hedged", "told", "no denial".
std::string said_by(const Cue& cue);

/// Cues in the predicate's clause, and in the clause before when it shares that one's subject. What is quoted
/// for the statement, if that is known, may go beyond the clause.
CueReading read_cues(const Passage& passage, const Words& words, const SentenceReading& reading,
                     const Predicate* predicate, std::uint32_t clause, Span quoted = {});

}  // namespace witnessmark::claims
