#pragma once
#include <vector>

#include "language/claims/draft.h"
#include "language/statements/statements.h"

namespace witnessmark::claims {

/// What was taken back comes behind everything else.
inline constexpr int kRankOfTakenBack = 100;

/// The list whose terms a referent of that kind counts.
const AuthorityList& list_of(const Finders& finders, ThingKind kind);

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

/// Puts the mentions of one utterance into the order of the text. Keeps its memory from call to call.
class MentionOrder {
 public:
  /// Orders the mentions from the one at `first` on; those of one range stay as they were.
  void put_in_order(std::vector<Mention>& mentions, std::size_t first);

 private:
  struct Place {
    CodePointRange range;
    std::size_t at = 0;
    auto operator<=>(const Place&) const = default;
  };
  std::vector<Place> places_;
  std::vector<Mention> ordered_;
};

}  // namespace witnessmark::claims
