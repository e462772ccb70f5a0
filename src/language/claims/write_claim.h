#pragma once
#include <vector>

#include "language/claims/draft.h"
#include "language/claims/statements.h"

namespace witnessmark::claims {

/// Writes drafts out as claims.
struct Writer {
  const ReadingContext& context;
  const Finders& finders;
  const Utterance& utterance;
  const SpeakerIdentity& speaker;

  /// One claim for each meaning of the subject's and the place's names.
  void write(const Draft& draft, std::vector<Claim>& claims) const;
};

/// Numbers claims of the same quote and statement.
void number_ordinals(std::vector<Claim>& claims);

/// Everything found in a passage, for display and search.
void collect_mentions(const Passage& passage, const Positions& positions, const Finders& finders,
                      const Words& words, std::vector<Mention>& mentions);
/// The verbs of a sentence that state something.
void collect_actions(const SentenceReading& reading, const StatementContext& context,
                     std::vector<Mention>& mentions);

}  // namespace witnessmark::claims
