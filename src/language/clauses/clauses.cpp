// Cutting a sentence into clauses: at marks and at conjunctions; pieces without a predicate join a neighbour:
// leading pieces the next, others the one before, unless they begin with a conjunction and hold only a date.
#include <algorithm>

#include "language/clauses/sentence_reading.h"

namespace witnessmark::claims {
namespace {

/// A piece of a sentence between cuts.
struct Piece {
  Span span;
  std::uint32_t predicates = 0;
  bool conjunction = false;  ///< Begins with a conjunction.
  bool strong = false;       ///< Cut by more than a comma.
};

/// Words behind which a noun or pronoun belongs to what went before.
bool leads_on(const Flags& before) {
  for (const WordClass c : {WordClass::determiner,
                            WordClass::at,
                            WordClass::to,
                            WordClass::of,
                            WordClass::by,
                            WordClass::with,
                            WordClass::for_,
                            WordClass::relation,
                            WordClass::coordinator,
                            WordClass::subordinator,
                            WordClass::relative,
                            WordClass::when,
                            WordClass::where,
                            WordClass::before,
                            WordClass::after,
                            WordClass::until,
                            WordClass::if_,
                            WordClass::as,
                            WordClass::question_word,
                            WordClass::we,
                            WordClass::from,
                            WordClass::negative}) {
    if (before.has(c)) return true;
  }
  return false;
}

/// "… in 1965 | I polished it": a subject pronoun with its verb right behind it, where nothing before it asks
/// for a clause. Only far enough from the last cut: people who pause are written with commas.
bool opens_run_on(const Passage& passage, std::uint32_t piece_first, std::uint32_t i) {
  constexpr std::uint32_t kShortest = 5;
  if (i < piece_first + kShortest || i + 1 >= passage.notes.size()) return false;
  const Flags& f = passage.notes[i].flags;
  const bool pronoun = f.has(WordClass::we) || f.has(WordClass::exist) ||
                       (f.has(WordClass::they) && !f.has(WordClass::person)) || f.has(WordClass::it) ||
                       f.has(WordClass::she);
  if (!pronoun || f.has(WordClass::determiner)) return false;
  const auto verbal = [&](const Note& note) {
    return note.flags.has(WordClass::be) || note.flags.has(WordClass::have) ||
           note.flags.has(WordClass::do_) || note.flags.has(WordClass::modal) ||
           note.flags.has(WordClass::had_or_would) || note.flags.has(WordClass::used_to) ||
           note.flags.has(WordClass::used_word) || (note.info && (note.info->verb_forms[0] & 4U) != 0);
  };
  const bool own_verb = f.has(WordClass::be) || f.has(WordClass::have) || f.has(WordClass::had_or_would);
  if (!own_verb && !verbal(passage.notes[i + 1])) return false;
  const Note& before = passage.notes[i - 1];
  // "It was 1963 they fitted it": a cleft.
  if (before.date >= 0) {
    const Span date = passage.date_spans[static_cast<std::size_t>(before.date)];
    for (std::uint32_t k = date.first; k > piece_first && k + 3 > date.first; --k) {
      if (passage.has(k - 1, WordClass::be)) return false;
    }
  }
  if (before.cue >= 0 || verbal(before) || (before.info && before.info->verb_forms[0] != 0)) return false;
  return !leads_on(before.flags);
}

/// "They'd a tractor | the rails went for scrap": a listed name with its verb right behind it, where the
/// clause before has its verb already.
bool names_another(const Passage& passage, std::uint32_t piece_first, std::uint32_t i, std::uint32_t verb) {
  constexpr std::uint32_t kShortest = 3;
  if (i < piece_first + kShortest || !passage.has(i, WordClass::determiner)) return false;
  if (leads_on(passage.notes[i - 1].flags) || passage.notes[i - 1].cue >= 0) return false;
  for (std::uint32_t k = i + 1; k < verb && k < i + 5; ++k) {
    if (const Thing* thing = passage.thing_at(k))
      return thing->head == i && thing->span.past == verb && thing->kind == ThingKind::equipment;
  }
  return false;
}

std::vector<Piece> cut(const Passage& passage, Span span, const std::vector<Predicate>& predicates) {
  constexpr std::size_t kUsual = 8;
  std::vector<Piece> pieces;
  pieces.reserve(kUsual);
  Piece piece;
  piece.span = {span.first, span.first};
  const auto close = [&](std::uint32_t end, std::uint32_t next, bool conjunction, bool strong) {
    piece.span.past = end;
    if (!piece.span.empty()) pieces.push_back(piece);
    piece = Piece{};
    piece.span.first = next;
    piece.conjunction = conjunction;
    piece.strong = strong;
  };
  std::size_t next_predicate = 0;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    while (next_predicate < predicates.size() && predicates[next_predicate].at < i) ++next_predicate;
    if (passage.is_mark(i)) {
      const char mark = passage.tokens[i].mark;
      if (mark == '"' || mark == '\'') continue;
      close(i, i + 1, false, mark != ',');
      continue;
    }
    if (i == piece.span.first && !piece.conjunction) {
      const Flags& f = passage.notes[i].flags;
      piece.conjunction =
          f.has(WordClass::coordinator) || f.has(WordClass::subordinator) || f.has(WordClass::then);
    }
    if (i == piece.span.first || passage.notes[i].thing >= 0 || passage.notes[i].date >= 0 ||
        (passage.notes[i].cue >= 0 && !passage.has(i, WordClass::coordinator))) {
      continue;
    }
    // Cut only where a predicate stands on both sides, the next before another mark.
    const bool between = next_predicate > 0 && next_predicate < predicates.size() &&
                         predicates[next_predicate - 1].at >= piece.span.first;
    if (!between) continue;
    const Flags& f = passage.notes[i].flags;
    const bool run_on = opens_run_on(passage, piece.span.first, i) ||
                        (predicates[next_predicate - 1].span.past != i &&
                         names_another(passage, piece.span.first, i, predicates[next_predicate].span.first));
    const bool conjunction = run_on || f.has(WordClass::coordinator) || f.has(WordClass::subordinator) ||
                             f.has(WordClass::terminator) || f.has(WordClass::when) ||
                             f.has(WordClass::relative) || f.has(WordClass::if_) ||
                             (f.has(WordClass::where) && !f.has(WordClass::in_place));
    if (!conjunction || passage.notes[i].number >= 0) continue;
    bool reachable = true;
    for (std::uint32_t k = i; k < predicates[next_predicate].at; ++k)
      reachable = reachable && !passage.is_mark(k);
    if (!reachable) continue;
    if (run_on && predicates[next_predicate].at > i + 4) continue;
    close(i, i, !run_on, !f.has(WordClass::relative));
  }
  close(span.past, span.past, false, false);
  for (Piece& p : pieces) {
    for (const Predicate& predicate : predicates) p.predicates += p.span.holds(predicate.at);
  }
  return pieces;
}

bool has_thing(const Passage& passage, Span span) {
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (passage.notes[i].thing >= 0) return true;
  }
  return false;
}

bool begins_relative(const Passage& passage, Span span) {
  const Flags& f = passage.notes[span.first].flags;
  return f.has(WordClass::relative) || f.has(WordClass::when);
}

/// Whether a piece only says "it was" and a date.
bool dates_only(const Passage& passage, Span span, const std::vector<Predicate>& predicates) {
  const Predicate* only = nullptr;
  for (const Predicate& p : predicates) {
    if (!span.holds(p.at)) continue;
    if (only || p.kind != Predicate::Kind::be) return false;
    only = &p;
  }
  if (!only || has_thing(passage, span)) return false;
  for (std::uint32_t k = only->span.past; k < span.past; ++k) {
    if (passage.notes[k].date >= 0) return true;
  }
  return false;
}

/// Joins pieces without predicate to a neighbour.
std::vector<Clause> join(const Passage& passage, const std::vector<Piece>& pieces,
                         const std::vector<Predicate>& predicates) {
  std::vector<Clause> clauses;
  clauses.reserve(pieces.size());
  constexpr std::size_t kNone = static_cast<std::size_t>(-1);
  std::size_t cleft = kNone;          // A clause that gives only a date.
  std::optional<std::uint32_t> open;  // First token of leading pieces still without predicate.
  bool contrast = false;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Piece& piece = pieces[i];
    const bool more = i + 1 < pieces.size();
    if (piece.predicates == 0) {
      bool date_only = false;
      for (std::uint32_t k = piece.span.first; k < piece.span.past; ++k)
        date_only |= passage.notes[k].date >= 0;
      date_only = date_only && !has_thing(passage, piece.span);
      const bool later = std::any_of(pieces.begin() + static_cast<std::ptrdiff_t>(i), pieces.end(),
                                     [](const Piece& p) { return p.predicates > 0; });
      const bool forward =
          clauses.empty() || (later && more && (piece.conjunction || piece.strong) && date_only);
      if (forward && later) {
        if (!open) open = piece.span.first;
        contrast = contrast || passage.has(piece.span.first, WordClass::terminator);
        continue;
      }
      if (clauses.empty()) {
        Clause clause;
        clause.span = {open.value_or(piece.span.first), piece.span.past};
        clause.core = clause.span;
        clauses.push_back(clause);
        open.reset();
      } else {
        Clause& last = clauses.back();
        const bool whole = last.core.past + 1 >= last.span.past;
        last.span.past = piece.span.past;
        bool bears = has_thing(passage, piece.span);
        for (std::uint32_t k = piece.span.first; k < piece.span.past; ++k)
          bears = bears || passage.notes[k].date >= 0;
        if (whole && (bears || !piece.conjunction)) last.core.past = piece.span.past;
      }
      continue;
    }
    // "It was 1962, not 1963, that the derrick went": the date belongs to what follows.
    if (!clauses.empty() && cleft == clauses.size() - 1 && begins_relative(passage, piece.span)) {
      clauses.back().span.past = clauses.back().core.past = piece.span.past;
      cleft = kNone;
      continue;
    }
    Clause clause;
    clause.span = {open.value_or(piece.span.first), piece.span.past};
    clause.core = clause.span;
    open.reset();
    if (dates_only(passage, piece.span, predicates)) cleft = clauses.size();
    clause.contrast = contrast || passage.has(piece.span.first, WordClass::terminator);
    contrast = false;
    clauses.push_back(clause);
  }
  return clauses;
}

void set_windows(const Passage& passage, SentenceReading& reading) {
  std::uint32_t p = 0;
  for (std::uint32_t c = 0; c < reading.clauses.size(); ++c) {
    Clause& clause = reading.clauses[c];
    clause.first_predicate = p;
    while (p < reading.predicates.size() && reading.predicates[p].at < clause.span.past) {
      Predicate& predicate = reading.predicates[p];
      predicate.clause = c;
      predicate.left = {clause.span.first, std::max(clause.span.first, predicate.span.first)};
      if (p > clause.first_predicate) predicate.left.first = reading.predicates[p - 1].span.past;
      if (predicate.left.past < predicate.left.first) predicate.left.past = predicate.left.first;
      predicate.right = {predicate.span.past, clause.span.past};
      const bool next_inside =
          p + 1 < reading.predicates.size() && reading.predicates[p + 1].at < clause.span.past;
      if (next_inside)
        predicate.right.past = std::max(predicate.right.first, reading.predicates[p + 1].span.first);
      ++p;
    }
    clause.past_predicate = p;
    // "and put a crane on": a conjunction right before the verb.
    if (c > 0 && clause.past_predicate > clause.first_predicate) {
      const Predicate& first = reading.predicates[clause.first_predicate];
      std::uint32_t at = clause.span.first;
      const Flags& f = passage.notes[at].flags;
      const bool joined = f.has(WordClass::coordinator) && !f.has(WordClass::terminator);
      while (at < first.span.first &&
             (passage.has(at, WordClass::coordinator) || passage.has(at, WordClass::then) ||
              passage.has(at, WordClass::adverb))) {
        ++at;
      }
      clause.own_subject = !(joined && at >= first.span.first);
      const Flags& opening = passage.notes[clause.span.first].flags;
      clause.complement = opening.has(WordClass::relative) && opening.has(WordClass::this_);
      clause.relative = opening.has(WordClass::relative);
    }
    for (std::uint32_t k = clause.span.first; k < clause.span.past; ++k) {
      if (passage.has(k, WordClass::if_) && passage.notes[k].cue < 0) clause.conditional = true;
    }
  }
}

/// A word that can be the subject of a clause, or a verb of one: what stands behind "what" or "who" where
/// nothing is asked ("what we did was", "what happened was").
bool begins_told(const Passage& passage, const Words& words, std::uint32_t i) {
  const Note& note = passage.notes[i];
  for (const WordClass c : {WordClass::we, WordClass::they, WordClass::it, WordClass::she, WordClass::this_,
                            WordClass::you, WordClass::exist, WordClass::there, WordClass::past_form})
    if (note.flags.has(c)) return true;
  constexpr auto kPast = static_cast<std::uint8_t>(VerbForm::past);
  const bool listed = note.info && (note.info->verb_forms[0] & kPast) != 0;
  return listed || (note.thing < 0 && words.is_past(passage.words({i, i + 1})));
}

/// Captions have no question marks: "was there a stove", "what colour was it".
bool asks_without_mark(const Passage& passage, const Words& words, Span span) {
  std::uint32_t i = span.first;
  while (i < span.past && (passage.has(i, WordClass::filler) || passage.has(i, WordClass::coordinator) ||
                           passage.has(i, WordClass::then))) {
    ++i;
  }
  for (std::uint32_t k = span.first; k < span.past; ++k)
    if (passage.is_mark(k)) return false;
  const auto auxiliary = [&](std::uint32_t k) {
    if (k >= span.past) return false;
    const Flags& f = passage.notes[k].flags;
    return f.has(WordClass::be) || f.has(WordClass::do_) || f.has(WordClass::modal) || f.has(WordClass::have);
  };
  if (i + 1 >= span.past) return false;
  if (passage.has(i, WordClass::question_word) && !passage.has(i, WordClass::when)) {
    return auxiliary(i + 1) || (auxiliary(i + 2) && !begins_told(passage, words, i + 1));
  }
  const Flags& next = passage.notes[i + 1].flags;
  const bool subject = next.has(WordClass::it) || next.has(WordClass::they) || next.has(WordClass::this_) ||
                       next.has(WordClass::there) || next.has(WordClass::she) ||
                       passage.has(i + 1, WordClass::you);
  const Flags& f = passage.notes[i].flags;
  return auxiliary(i) && subject && !f.has(WordClass::it) && !f.has(WordClass::this_) &&
         !f.has(WordClass::exist);
}

}  // namespace

bool opens_clause(const Passage& passage, Span sentence, std::uint32_t i) {
  const Flags& f = passage.notes[i].flags;
  if (f.has(WordClass::subordinator) || f.has(WordClass::when)) return true;
  if (f.has(WordClass::relative)) return !f.has(WordClass::determiner);
  if (!f.has(WordClass::coordinator) || i + 1 >= sentence.past) return false;
  const Flags& next = passage.notes[i + 1].flags;
  const bool subject = next.has(WordClass::we) || next.has(WordClass::they) || next.has(WordClass::she) ||
                       next.has(WordClass::it) || next.has(WordClass::exist);
  return subject && !next.has(WordClass::determiner);
}

std::optional<std::uint32_t> negative_in(const Passage& passage, Span span) {
  std::optional<std::uint32_t> found;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    const Note& note = passage.notes[i];
    if (note.thing >= 0 || note.date >= 0) continue;
    if (note.flags.has(WordClass::terminator) && found) found.reset();
    if (note.flags.has(WordClass::negative) && note.cue < 0 && !note.flags.has(WordClass::terminator))
      found = i;
  }
  return found;
}

/// "I never went aboard but once": what is denied is not all of it.
static bool excepted(const Passage& passage, Span behind) {
  for (std::uint32_t i = behind.first; i < behind.past; ++i)
    if (passage.notes[i].flags.has(WordClass::exception)) return true;
  return false;
}

/// "I never saw it used", "never saw them take it down": what was never seen to be done.
static bool not_seen_done(const Passage& passage, const Predicate& sight, const Predicate& done) {
  if (sight.kind != Predicate::Kind::verb || sight.verb->needs != VerbNeeds::sight || !sight.negated ||
      done.kind != Predicate::Kind::verb || sight.clause != done.clause)
    return false;
  for (std::uint32_t i = sight.span.past; i < done.span.first; ++i) {
    const Flags& f = passage.notes[i].flags;
    if (passage.is_mark(i) || f.has(WordClass::coordinator) || f.has(WordClass::subordinator) ||
        f.has(WordClass::relative) || f.has(WordClass::question_word) || f.has(WordClass::when))
      return false;
  }
  return true;
}

SentenceReading read_sentence(Passage& passage, const Words& words, Span span) {
  passage.look_at(span);
  SentenceReading reading;
  reading.span = span;
  reading.predicates = find_predicates(passage, words, span);
  // "took off the derrick": a particle gives no role.
  for (Thing& thing : passage.things_in(span)) {
    if (thing.kind != ThingKind::equipment || thing.role_at < 0 || !span.holds(thing.span.first)) continue;
    const auto at = static_cast<std::uint32_t>(thing.role_at);
    for (const Predicate& p : reading.predicates) {
      if (p.span.holds(at) && at != p.at) thing.role = Role::none;
    }
  }
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (passage.is_mark(i, '?')) reading.question = true;
  }
  reading.question = reading.question || asks_without_mark(passage, words, span);
  reading.clauses = join(passage, cut(passage, span, reading.predicates), reading.predicates);
  set_windows(passage, reading);
  for (Predicate& predicate : reading.predicates) {
    const Span inside{predicate.span.first, predicate.span.past};
    Span before = predicate.left;
    // Only the last stretch before the verb without a mark.
    for (std::uint32_t k = before.past; k > before.first; --k) {
      if (passage.is_mark(k - 1)) {
        before.first = k;
        break;
      }
    }
    predicate.negated = (negative_in(passage, inside).has_value() || negative_in(passage, before).has_value()) &&
                        !excepted(passage, predicate.right);
  }
  for (std::size_t p = 1; p < reading.predicates.size(); ++p) {
    if (not_seen_done(passage, reading.predicates[p - 1], reading.predicates[p]))
      reading.predicates[p].negated = reading.predicates[p].unseen = true;
  }
  return reading;
}

}  // namespace witnessmark::claims
