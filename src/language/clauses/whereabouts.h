#pragma once
#include <cstdint>

#include "language/passage/passage.h"

namespace witnessmark::claims {

/// Where somebody was, as words of no list: "aboard", "on the coast station", "at the falls of the boat".
/// Looked for behind token from, over adverbs and a participle; empty when nothing of the kind follows.
Span whereabouts_after(const Passage& passage, Span sentence, std::uint32_t from);

/// Where somebody went: the same behind "to", "out to", "back to", and a name of no list in capitals ("to the
/// Hob Rocks").
Span destination_after(const Passage& passage, Span sentence, std::uint32_t from);

}  // namespace witnessmark::claims
