#pragma once
#include <optional>
#include <string>
#include <vector>

#include "language/claims/draft.h"

namespace witnessmark::claims {

struct StatementContext;

/// What the cues around one predicate suggest.
struct CueReading {
  Basis basis = Basis::unstated;
  std::string knower;
  Firmness firmness = Firmness::firm;
  bool doubted = false;  ///< "I don't think …": denies, and hedges the denial.
  bool blocked = false;  ///< No claim: memory fails, an order, a wish, a condition.
  std::uint32_t blocked_past = 0;  ///< Token behind the cue that blocks.
  bool ordered = false;  ///< Blocked because only intended or ordered.
  bool not_until = false;
  bool not_as_if = false;
  bool contrary = false;
  bool denied = false;              ///< "can't have been"
  bool not_there = false;           ///< "Before my time": only "I" is the narrator himself.
  std::vector<std::uint32_t> used;  ///< Indices into the passage's cues.
};

/// What a cue says, for a reason that a person reads: "hedged", "told", "no denial".
std::string said_by(const Cue& cue);

/// What is read for a statement: cues in the predicate's clause, and in the clause before when it shares that
/// one's subject. What is quoted for the statement, if that is known, may go beyond the clause. Without a
/// predicate, what stands before `said` stands before the statement: all of the clause where that is not given.
CueReading read_cues(const Passage& passage, const Words& words, const SentenceReading& reading,
                     const Predicate* predicate, std::uint32_t clause, Span quoted = {},
                     std::optional<std::uint32_t> said = std::nullopt);

/// Adds another reading of the same sentence: the weightier basis, the weaker firmness, whatever either denies,
/// doubts or blocks.
void merge(const CueReading& other, CueReading& reading);

/// Lays basis, knower and firmness over a draft that does not have them yet, and gives the cues as reasons, each
/// once. What the cues deny or block is for the caller to judge.
void lay(const StatementContext& context, const CueReading& reading, Draft& draft);

}  // namespace witnessmark::claims
