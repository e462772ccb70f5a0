// A whereabouts phrase is one of the words of the class ("aboard"), a preposition of place with a definite
// noun phrase, or both. Indefinite phrases ("in a temper"), abstract nouns ("in the way"), people and things
// of the equipment list ("on the crane") are where nobody is said to be.
#include "language/clauses/whereabouts.h"

#include <algorithm>

namespace witnessmark::claims {
namespace {

class WhereaboutsFinder {
 public:
  WhereaboutsFinder(const Passage& passage, Span sentence, bool towards)
      : passage_(passage), notes_(passage.notes), span_(sentence), towards_(towards) {}

  Span after(std::uint32_t from) const {
    std::uint32_t k = from;
    for (int skipped = 0; k < span_.past && skipped < 3 && notes_[k].thing < 0; ++k, ++skipped) {
      if (is_stop(k) || has(k, WordClass::whereabouts) || opens_place(k)) break;
      const Flags& f = notes_[k].flags;
      const bool on_the_way =
          f.has(WordClass::way) || f.has(WordClass::adverb) || f.has(WordClass::everything);
      if (towards_ ? !on_the_way : f.any() && !on_the_way && !f.has(WordClass::quality)) return {};
    }
    if (k >= span_.past || is_stop(k)) return {};
    if (has(k, WordClass::whereabouts)) {
      const std::uint32_t past = k + reach(k);
      if (past < span_.past && opens_place(past)) {
        if (const Span longer = phrase(past, k); !longer.empty()) return longer;
      }
      return {k, past};
    }
    return opens_place(k) ? phrase(k, k) : Span{};
  }

 private:
  bool has(std::uint32_t i, WordClass c) const { return i < span_.past && notes_[i].flags.has(c); }
  bool is_stop(std::uint32_t i) const { return passage_.is_mark(i) || notes_[i].date >= 0; }
  std::uint32_t reach(std::uint32_t i) const { return notes_[i].reach; }

  bool opens_place(std::uint32_t i) const {
    return (has(i, WordClass::at) || has(i, WordClass::relation) || has(i, WordClass::off) ||
            (towards_ && has(i, WordClass::to))) &&
           !has(i, WordClass::by) && !has(i, WordClass::for_);
  }

  /// Words that end a noun phrase.
  bool ends_phrase(std::uint32_t i) const {
    for (const WordClass c :
         {WordClass::coordinator, WordClass::subordinator, WordClass::when, WordClass::be, WordClass::have,
          WordClass::we, WordClass::then, WordClass::relative, WordClass::before, WordClass::after,
          WordClass::until, WordClass::for_, WordClass::with}) {
      if (has(i, c)) return true;
    }
    return false;
  }

  bool is_no_place(std::uint32_t i) const {
    return has(i, WordClass::abstract) || has(i, WordClass::person) || has(i, WordClass::activity) ||
           has(i, WordClass::event_noun);
  }

  /// From token first to the end of the noun phrase behind the preposition.
  Span phrase(std::uint32_t preposition, std::uint32_t first) const {
    std::uint32_t begin = preposition + reach(preposition);
    while (begin < span_.past && opens_place(begin)) begin += reach(begin);  // "up in", "down at"
    if (begin >= span_.past || is_stop(begin)) return {};
    // "In Tolbeck", "to the Hob Rocks"; behind other words ("under Rudd") a name is as often somebody's.
    const bool at_or_to = has(preposition, WordClass::at) || has(preposition, WordClass::to);
    const bool named =
        notes_[begin].thing >= 0 || (at_or_to && passage_.capitalised(begin) && !notes_[begin].flags.any());
    if (passage_.names(begin, ThingKind::person)) return {};
    if (has(begin, WordClass::she) &&
        (begin + 1 >= span_.past || is_stop(begin + 1) || notes_[begin + 1].flags.any())) {
      return {first, begin + 1};
    }
    const Flags& f = notes_[begin].flags;
    if (!named && (!f.has(WordClass::determiner) || f.has(WordClass::indefinite) ||
                   f.has(WordClass::negative_determiner))) {
      return {};
    }
    std::uint32_t past = begin;
    for (; past < span_.past && past < begin + 9 && !is_stop(past); ++past) {
      if (const Thing* thing = passage_.thing_at(past)) {
        if (thing->kind == ThingKind::equipment && past < begin + 2) return {};
        continue;
      }
      if (past > begin && ends_phrase(past)) break;
      if (past < begin + 4 && is_no_place(past)) return {};
    }
    while (past > begin && (opens_place(past - 1) || has(past - 1, WordClass::from))) --past;
    return past > begin + (named ? 0 : 1) ? Span{first, past} : Span{};
  }

  const Passage& passage_;
  const std::vector<Note>& notes_;
  Span span_;
  bool towards_;
};

}  // namespace

Span whereabouts_after(const Passage& passage, Span sentence, std::uint32_t from) {
  return WhereaboutsFinder(passage, sentence, false).after(from);
}

Span destination_after(const Passage& passage, Span sentence, std::uint32_t from) {
  return WhereaboutsFinder(passage, sentence, true).after(from);
}

}  // namespace witnessmark::claims
