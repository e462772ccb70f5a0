#pragma once
#include <vector>

#include "language/traits/judge.h"
#include "witnessmark/language/claims.h"

namespace witnessmark::claims {

/// Shows an interview as its claims are read: what rules read stands beside every stretch of talk, and the
/// weights are not asked.
void observe_traits(const ReadingContext& context, const Transcript& transcript,
                    const std::vector<Sentence>& sentences, TraitObserver& observer);

}  // namespace witnessmark::claims
