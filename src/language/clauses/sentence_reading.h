#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "language/passage/passage.h"

namespace witnessmark::claims {

/// Who does it, as far as the words before the verb say; other: somebody or something of no list.
enum class Agent : std::uint8_t { none, we, other, it, them };

/// A verb of the lists (or a form of to be or to have used as a full verb) with what surrounds it.
struct Predicate {
  enum class Kind : std::uint8_t { verb, be, exist, have };
  Kind kind = Kind::verb;
  const Verb* verb = nullptr;
  std::uint32_t at = 0;        ///< The verb's token.
  Span span;                   ///< From the first auxiliary to the verb and a particle right after it.
  std::uint32_t particle = 0;  ///< Token of a particle that stands apart; 0 for none.
  bool passive = false;
  bool negated = false;
  bool unseen = false;  ///< Negated: "I never saw it used."
  bool present_tense = false;
  bool perfect_would = false;  ///< "they'd have taken".
  bool infinitive = false;
  bool inverted = false;  ///< "Down came the chimney."
  Agent agent = Agent::none;
  std::uint32_t clause = 0;
  Span left, right;  ///< Where its subject and its objects may stand.
};

/// A stretch around one predicate: everything in it belongs together.
struct Clause {
  Span span;
  Span core;  ///< Without trailing pieces that only add something else: what is quoted.
  std::uint32_t first_predicate = 0, past_predicate = 0;
  bool own_subject = true;   ///< False for "and put …": it shares subject and cues of the clause before.
  bool contrast = false;     ///< Begins with but, however …
  bool conditional = false;  ///< Hangs on an if.
  bool complement = false;   ///< Begins with "that": what is said, known or read in the clause before.
  bool relative = false;
};

struct SentenceReading {
  Span span;
  std::vector<Clause> clauses;
  std::vector<Predicate> predicates;
  bool question = false;
  bool of_source = false;  ///< A picture or a writing is spoken of; set by whoever follows the talk.
};

/// Finds predicates and clauses in one sentence of a passage; what turns out to be a verb's particle no
/// longer gives a role to the thing after it.
SentenceReading read_sentence(Passage& passage, const Words& words, Span span);

/// The predicates of a stretch, in order; clauses and windows are not yet set.
std::vector<Predicate> find_predicates(const Passage& passage, const Words& words, Span span);

/// Whether a clause begins at the token as its conjunction says: "and I went", "because", "who".
bool opens_clause(const Passage& passage, Span sentence, std::uint32_t i);

/// The first negative word in the range that no cue covers; nothing when there is none.
std::optional<std::uint32_t> negative_in(const Passage& passage, Span span);

}  // namespace witnessmark::claims
