#pragma once
#include <vector>

#include "language/statements/statements.h"

namespace witnessmark::claims {

/// "And number two was dry as a bone, and the range drew.": clauses of one sentence that speak of different
/// things. "They took it off and put the crane in its place" hangs together.
bool speak_of_several(const SentenceReading& reading, const std::vector<Draft>& drafts);

/// The clause it was said in with what hangs on it; the whole sentence when that has no other clause or is
/// short and all of one thing.
CodePointRange quote_of(const StatementContext& context, const Draft& draft, CodePointRange sentence,
                        bool of_several);

}  // namespace witnessmark::claims
