#pragma once
#include "language/passage/passage.h"

namespace witnessmark::claims {

/// "a washing machine", "a box": whether an indefinite noun of no list that is neither abstract nor a person
/// stands in the words. Behind a preposition only where `anywhere` is set.
bool brings_in_unlisted(const Passage& passage, Span span, bool anywhere = false);

}  // namespace witnessmark::claims
