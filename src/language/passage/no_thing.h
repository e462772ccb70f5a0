#pragma once
#include "language/passage/passage.h"

namespace witnessmark::claims {

/// Whether words that a list has are none of its things here: a verb ("I saw"), a pronoun ("no one").
bool names_no_thing(const Passage& passage, const Words& words, Span span);

}  // namespace witnessmark::claims
