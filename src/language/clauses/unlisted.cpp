#include "language/clauses/unlisted.h"

namespace witnessmark::claims {

std::optional<std::uint32_t> last_unlisted(const Passage& passage, Span span, bool anywhere) {
  std::optional<std::uint32_t> last;
  for (std::uint32_t i = span.first; i + 1 < span.past; ++i) {
    const Flags& f = passage.notes[i].flags;
    if (!f.has(WordClass::indefinite) || !f.has(WordClass::determiner) || passage.notes[i].thing >= 0)
      continue;
    if (i > span.first && !anywhere) {
      const Flags& before = passage.notes[i - 1].flags;
      if (before.has(WordClass::as) || before.has(WordClass::with) || before.has(WordClass::at) ||
          before.has(WordClass::of) || before.has(WordClass::by) || before.has(WordClass::for_) ||
          before.has(WordClass::to) || before.has(WordClass::like) || passage.notes[i].cue >= 0) {
        continue;
      }
    }
    for (std::uint32_t k = i + 1; k < span.past && k < i + 4; ++k) {
      const Note& note = passage.notes[k];
      if (passage.is_mark(k) || note.thing >= 0 || note.date >= 0 || note.number >= 0) break;
      const Flags& g = note.flags;
      if (g.has(WordClass::abstract) || g.has(WordClass::person) || g.has(WordClass::event_noun) ||
          g.has(WordClass::activity)) {
        break;
      }
      if (!g.any() && note.cue < 0 && passage.tokens[k].kind == Token::Kind::word) {
        last = i;
        break;
      }
      if (!g.has(WordClass::quality) && !g.has(WordClass::old) && !g.has(WordClass::colour) &&
          !g.has(WordClass::material) && !g.has(WordClass::condition) && !g.has(WordClass::indefinite)) {
        break;
      }
    }
  }
  return last;
}

}  // namespace witnessmark::claims
