#include "language/claims/opening.h"

#include <algorithm>

namespace witnessmark::claims {

std::uint32_t first_word(const StatementContext& c) {
  std::uint32_t i = c.reading.span.first;
  while (i < c.reading.span.past &&
         (c.passage.tokens[i].kind == Token::Kind::mark || c.passage.notes[i].flags.has(WordClass::filler))) {
    ++i;
  }
  return i;
}

namespace {

/// "I was.", "We did, there was …", "She hadn't.": a pronoun and what the question asked with.
Opening short_form(const StatementContext& c, std::uint32_t first) {
  std::uint32_t i = first;
  const auto flags = [&](std::uint32_t k) {
    return k < c.reading.span.past ? c.passage.notes[k].flags : Flags{};
  };
  const Flags f = flags(i);
  if (!f.has(WordClass::we) && !f.has(WordClass::they) && !f.has(WordClass::it) && !f.has(WordClass::she))
    return Opening::other;
  const Flags auxiliary = flags(++i);
  if (!auxiliary.has(WordClass::be) && !auxiliary.has(WordClass::do_) && !auxiliary.has(WordClass::have))
    return Opening::other;
  bool negative = auxiliary.has(WordClass::negative);
  for (++i; flags(i).has(WordClass::negative) || flags(i).has(WordClass::never); ++i) negative = true;
  const bool ends = i >= c.reading.span.past || c.passage.tokens[i].kind == Token::Kind::mark;
  if (!ends) return Opening::other;
  return negative ? Opening::no : Opening::yes;
}

}  // namespace

Opening opening_of(const StatementContext& context) {
  const std::uint32_t first = first_word(context);
  if (first >= context.reading.span.past) return Opening::other;
  Opening found = short_form(context, first);
  if (found != Opening::other) return found;
  std::uint32_t length = 0;
  for (const CueSpan& cue : context.passage.cues_in({first, first + 1})) {
    Opening what = Opening::other;
    switch (context.words.cues[cue.cue].cue) {
      case CueClass::yes:
        what = Opening::yes;
        break;
      case CueClass::maybe:
        what = Opening::maybe;
        break;
      case CueClass::no:
        what = Opening::no;
        break;
      case CueClass::unknown:
        what = Opening::unknown;
        break;
      default:
        continue;
    }
    const std::uint32_t here = cue.span.past - cue.span.first;
    if (here > length || (here == length && static_cast<int>(what) > static_cast<int>(found))) {
      found = what;
      length = here;
    }
  }
  if (found != Opening::other) {
    // "It was yellow", "no radar there": the words begin a statement. A mark, the end or another such word
    // must follow.
    const std::uint32_t next = first + length;
    const bool ends =
        next >= context.reading.span.past || context.passage.tokens[next].kind == Token::Kind::mark;
    const std::uint32_t size = context.passage.tokens[first].end - context.passage.tokens[first].begin;
    const bool plain_word = length == 1 && size <= 5;
    const auto after = context.passage.cues_in({next, next + 1});
    const bool another = !ends && std::any_of(after.begin(), after.end(), [&](const CueSpan& cue) {
      return opens_answer(context.words.cues[cue.cue].cue);
    });
    if (!ends && !another && !(found == Opening::yes && plain_word) && found != Opening::maybe &&
        found != Opening::unknown) {
      return Opening::other;
    }
    return found;
  }
  // "Six, yes."
  for (const CueSpan& cue : context.passage.cues_in(context.reading.span)) {
    if (cue.span.past == context.reading.span.past ||
        (cue.span.past + 1 == context.reading.span.past &&
         context.passage.tokens[cue.span.past].kind == Token::Kind::mark)) {
      if (context.reading.span.holds(cue.span.first) && context.words.cues[cue.cue].cue == CueClass::yes &&
          context.reading.span.past - context.reading.span.first < 8 && context.reading.predicates.empty()) {
        return Opening::yes;
      }
    }
  }
  return Opening::other;
}

bool only_dates(const StatementContext& context) {
  bool dated = false;
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    const Note& note = context.passage.notes[i];
    if (note.date >= 0) dated = true;
    const Flags& f = note.flags;
    const bool empty = note.date >= 0 || note.cue >= 0 ||
                       context.passage.tokens[i].kind == Token::Kind::mark || f.has(WordClass::filler) ||
                       f.has(WordClass::adverb) || f.has(WordClass::it) || f.has(WordClass::this_) ||
                       f.has(WordClass::be) || f.has(WordClass::modal) || f.has(WordClass::would) ||
                       f.has(WordClass::have) || f.has(WordClass::determiner) || f.has(WordClass::at) ||
                       f.has(WordClass::coordinator) || f.has(WordClass::question_word);
    if (!empty || f.has(WordClass::we)) return false;
  }
  return dated;
}

bool only_denies(const StatementContext& context) {
  constexpr int kMostWords = 4;
  int words = 0;
  bool pronoun = false;
  bool negative = false;
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    if (context.passage.tokens[i].kind == Token::Kind::mark) continue;
    const Flags& f = context.passage.notes[i].flags;
    if (f.has(WordClass::filler)) continue;
    if (++words > kMostWords) return false;
    const bool auxiliary = f.has(WordClass::be) || f.has(WordClass::have) || f.has(WordClass::do_);
    if (words == 1) {
      pronoun =
          f.has(WordClass::it) || f.has(WordClass::they) || f.has(WordClass::this_) || f.has(WordClass::we);
    } else if (!auxiliary && !f.has(WordClass::negative) && !f.has(WordClass::never) &&
               !f.has(WordClass::adverb)) {
      return false;
    }
    negative = negative || f.has(WordClass::negative) || f.has(WordClass::never);
  }
  return pronoun && negative && words > 1;
}

bool opens_with_no(const StatementContext& context) {
  const std::uint32_t first = context.reading.span.first;
  for (const CueSpan& cue : context.passage.cues_in({first, first + 1})) {
    if (context.words.cues[cue.cue].cue != CueClass::no) continue;
    if (cue.span.past >= context.reading.span.past) return true;
    const Flags& next = context.passage.notes[cue.span.past].flags;
    if (next.has(WordClass::filler) || next.has(WordClass::we) || next.has(WordClass::it) ||
        next.has(WordClass::they) || next.has(WordClass::she) || next.has(WordClass::never)) {
      return true;
    }
  }
  return false;
}

}  // namespace witnessmark::claims
