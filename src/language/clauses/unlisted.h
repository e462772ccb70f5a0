#pragma once
#include "language/passage/passage.h"

namespace witnessmark::claims {

/// "a washing machine", "a box": the article of the last indefinite noun of no list in the words that is
/// neither abstract nor a person; nothing when there is none. Behind a preposition only where `anywhere` is
/// set.
std::optional<std::uint32_t> last_unlisted(const Passage& passage, Span span, bool anywhere = false);

}  // namespace witnessmark::claims
