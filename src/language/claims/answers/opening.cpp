#include "language/claims/answers/opening.h"

#include <algorithm>

namespace witnessmark::claims {

std::uint32_t first_word(const StatementContext& c) {
  std::uint32_t i = c.reading.span.first;
  while (i < c.reading.span.past && (c.passage.is_mark(i) || c.passage.has(i, WordClass::filler))) {
    ++i;
  }
  return i;
}

namespace {

/// "I was.", "We did, there was …", "There wasn't.": a pronoun and what the question asked with.
Opening short_form(const StatementContext& c, std::uint32_t first) {
  std::uint32_t i = first;
  const auto flags = [&](std::uint32_t k) {
    return k < c.reading.span.past ? c.passage.notes[k].flags : Flags{};
  };
  const Flags f = flags(i);
  if (!f.has(WordClass::we) && !f.has(WordClass::they) && !f.has(WordClass::it) && !f.has(WordClass::she) &&
      !f.has(WordClass::exist))
    return Opening::other;
  ++i;
  while (flags(i).has(WordClass::adverb) && !flags(i).has(WordClass::never)) ++i;  // "They ever did."
  const Flags auxiliary = flags(i);
  if (!auxiliary.has(WordClass::be) && !auxiliary.has(WordClass::do_) && !auxiliary.has(WordClass::have))
    return Opening::other;
  bool negative = auxiliary.has(WordClass::negative);
  for (++i; flags(i).has(WordClass::negative) || flags(i).has(WordClass::never); ++i) negative = true;
  const bool ends = i >= c.reading.span.past || c.passage.is_mark(i);
  if (!ends) return Opening::other;
  return negative ? Opening::no : Opening::it_was;
}

/// "I don't think they did.", "I don't believe it was.": what is doubted is not so.
Opening doubted_form(const StatementContext& c, std::uint32_t first) {
  for (const CueSpan& cue : c.passage.cues_in({first, first + 1})) {
    if (cue.span.first != first || c.words.cues[cue.cue].cue != CueClass::doubt) continue;
    const Opening doubted = short_form(c, cue.span.past);
    if (doubted == Opening::it_was) return Opening::no;
    if (doubted == Opening::no) return Opening::it_was;
  }
  return Opening::other;
}

/// What a cue says as an answer.
Opening said_with(const Cue& cue) {
  switch (cue.cue) {
    case CueClass::yes:
      return cue.value == CueValue::agrees   ? Opening::agrees
             : cue.value == CueValue::states ? Opening::it_was
                                             : Opening::yes;
    case CueClass::maybe:
      return Opening::maybe;
    case CueClass::no:
      return Opening::no;
    case CueClass::unknown:
      return Opening::unknown;
    default:
      return Opening::other;
  }
}

struct Reply {
  Opening opening = Opening::other;
  std::uint32_t past = 0;  ///< Token behind its words.
};

/// The longest words at a token that answer.
Reply reply_at(const StatementContext& c, std::uint32_t first) {
  Reply reply{Opening::other, first};
  for (const CueSpan& cue : c.passage.cues_in({first, first + 1})) {
    const Opening what = said_with(c.words.cues[cue.cue]);
    if (what == Opening::other || cue.span.past < reply.past) continue;
    if (cue.span.past > reply.past || static_cast<int>(what) > static_cast<int>(reply.opening))
      reply = {what, cue.span.past};
  }
  return reply;
}

/// "It was yellow", "no radar there": the words begin a statement. A mark, the end or another such word must
/// follow, if not a short yes.
bool stands_alone(const StatementContext& c, std::uint32_t first, const Reply& reply) {
  constexpr std::uint32_t kShort = 5;  // Letters.
  if (reply.opening == Opening::maybe || reply.opening == Opening::unknown) return true;
  if (reply.past >= c.reading.span.past || c.passage.is_mark(reply.past)) return true;
  const std::uint32_t letters = c.passage.tokens[first].end - c.passage.tokens[first].begin;
  if (reply.opening != Opening::no && reply.past == first + 1 && letters <= kShort) return true;
  const auto after = c.passage.cues_in({reply.past, reply.past + 1});
  return std::any_of(after.begin(), after.end(), [&](const CueSpan& cue) {
    const CueClass what = c.words.cues[cue.cue].cue;
    // "There was never two."
    return opens_answer(what) && (what != CueClass::no || reply.opening == Opening::no);
  });
}

/// "I don't remember one", "I couldn't tell you": begins at a token.
bool memory_fails(const StatementContext& c, std::uint32_t i) {
  const auto cues = c.passage.cues_in({i, i + 1});
  return std::any_of(cues.begin(), cues.end(), [&](const CueSpan& span) {
    const Cue& cue = c.words.cues[span.cue];
    return cue.cue == CueClass::memory && blocks(cue.value);
  });
}

/// "Yes, it was", "no, they did": the short form behind it says what was so. "No, I don't remember one" says
/// nothing.
Opening with_what_follows(const StatementContext& c, const Reply& reply) {
  std::uint32_t i = reply.past;
  while (i < c.reading.span.past && (c.passage.is_mark(i) || c.passage.has(i, WordClass::filler))) ++i;
  if (i >= c.reading.span.past || reply.opening == Opening::unknown) return reply.opening;
  const bool sure = reply.opening != Opening::no && reply.opening != Opening::maybe;
  if (!sure && memory_fails(c, i)) return Opening::unknown;
  const Opening behind = reply.opening == Opening::maybe ? Opening::other : short_form(c, i);
  if (behind == Opening::it_was && reply.opening == Opening::no) return Opening::no_it_was;
  return behind == Opening::other ? reply.opening : behind;
}

/// "Six, yes.", but not "six, I don't remember exactly."
bool ends_with_yes(const StatementContext& c) {
  constexpr std::uint32_t kShort = 8;  // Tokens.
  const Span span = c.reading.span;
  if (span.past - span.first >= kShort || !c.reading.predicates.empty()) return false;
  const auto cues = c.passage.cues_in(span);
  return std::any_of(cues.begin(), cues.end(), [&](const CueSpan& cue) {
    const bool last =
        cue.span.past == span.past || (cue.span.past + 1 == span.past && c.passage.is_mark(cue.span.past));
    const bool part = std::any_of(cues.begin(), cues.end(), [&](const CueSpan& other) {
      return other.span.first < cue.span.first && other.span.past >= cue.span.past;
    });
    return last && !part && c.words.cues[cue.cue].cue == CueClass::yes;
  });
}

}  // namespace

Opening opening_of(const StatementContext& context) {
  const std::uint32_t first = first_word(context);
  if (first >= context.reading.span.past) return Opening::other;
  for (const Opening found : {short_form(context, first), doubted_form(context, first)})
    if (found != Opening::other) return found;
  const Reply reply = reply_at(context, first);
  if (reply.opening == Opening::other) return ends_with_yes(context) ? Opening::yes : Opening::other;
  if (!stands_alone(context, first, reply)) return Opening::other;
  return with_what_follows(context, reply);
}

bool only_dates(const StatementContext& context) {
  bool dated = false;
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    const Note& note = context.passage.notes[i];
    if (note.date >= 0) dated = true;
    const Flags& f = note.flags;
    const bool empty = note.date >= 0 || note.cue >= 0 || context.passage.is_mark(i) ||
                       f.has(WordClass::filler) || f.has(WordClass::adverb) || f.has(WordClass::it) ||
                       f.has(WordClass::this_) || f.has(WordClass::be) || f.has(WordClass::modal) ||
                       f.has(WordClass::would) || f.has(WordClass::have) || f.has(WordClass::determiner) ||
                       f.has(WordClass::at) || f.has(WordClass::coordinator) ||
                       f.has(WordClass::question_word);
    const bool denies = f.has(WordClass::negative) && note.cue < 0;
    if (!empty || denies || f.has(WordClass::we)) return false;
  }
  return dated;
}

bool forgets_when(const StatementContext& context) {
  const auto cues = context.passage.cues_in(context.reading.span);
  return std::any_of(cues.begin(), cues.end(), [&](const CueSpan& span) {
    const Cue& cue = context.words.cues[span.cue];
    return cue.cue == CueClass::memory && (cue.value == CueValue::when || cue.value == CueValue::blocks_when);
  });
}

Denial only_denies(const StatementContext& context) {
  constexpr int kMostWords = 4;
  int words = 0;
  Denial of = Denial::none;
  bool negative = false;
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    if (context.passage.is_mark(i)) continue;
    const Flags& f = context.passage.notes[i].flags;
    if (f.has(WordClass::filler)) continue;
    if (++words > kMostWords) return Denial::none;
    const bool auxiliary = f.has(WordClass::be) || f.has(WordClass::have) || f.has(WordClass::do_);
    if (words == 1) {
      if (f.has(WordClass::we)) of = Denial::of_own_doing;
      if (f.has(WordClass::it) || f.has(WordClass::they) || f.has(WordClass::this_))
        of = Denial::of_what_was_said;
    } else if (!auxiliary && !f.has(WordClass::negative) && !f.has(WordClass::never) &&
               !f.has(WordClass::adverb)) {
      return Denial::none;
    }
    negative = negative || f.has(WordClass::negative) || f.has(WordClass::never);
  }
  return negative && words > 1 ? of : Denial::none;
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
