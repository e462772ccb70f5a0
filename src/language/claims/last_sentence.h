#pragma once
#include <cstddef>
#include <vector>

#include "language/claims/answers/opening.h"
#include "witnessmark/model/claim.h"

namespace witnessmark::claims {

/// What the narrator's last sentence stated, which the next one may deny, say when more closely, or round
/// off.
class LastSentence {
 public:
  /// The claims must outlive it; they are only ever added to at their end.
  explicit LastSentence(std::vector<Claim>& claims) : claims_(claims) {}

  /// Claims written from now on are of this sentence.
  void begin(CodePointRange sentence, Span tokens);
  /// Claims were added that state what somebody did.
  void stated(Agent agent) { agents_.resize(claims_.size() - first_, agent); }

  /// What it stated is denied by the sentence; its words become a second quote.
  void deny(CodePointRange sentence, Denial denial);
  /// "Yes. No." of one turn: what was only gone along with is taken back.
  void unsay(const StatementContext& context, CodePointRange sentence);
  /// "Fifty-nine. It was the February.", "They took it out in fifty-four. In the spring.": by a sentence that
  /// says nothing but when and says it more closely. Tells whether that is what it did.
  bool narrow(const StatementContext& context, CodePointRange sentence);
  /// "So I was told.", "I think.": by a sentence that says nothing but how it is known, or how surely: of all
  /// that was stated. Its words become a second quote. Tells whether that is all it says.
  bool qualify(const StatementContext& context, CodePointRange sentence);
  /// "The crane came in June. No, I tell a lie, it was the August.": what it stated is taken back where the
  /// sentence says it again otherwise.
  void take_back(const StatementContext& context, const std::vector<Draft>& again);
  /// "Absolutely. I've the certificate.": a sentence that states nothing of its own rounds off a short one.
  void round_off(CodePointRange sentence, Span tokens);

 private:
  std::vector<Claim>& claims_;
  std::size_t first_ = 0;      ///< Its first claim.
  std::vector<Agent> agents_;  ///< Who did what the claims from that one on state.
  CodePoint end_;              ///< Where it ended, or what was said of how it is known.
  CodePointRange short_;       ///< The sentence, if it was short.
};

}  // namespace witnessmark::claims
