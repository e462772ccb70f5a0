// Cues only suggest. One counts for the clause it stands in; cues that open a sentence also cover a following
// clause that has no subject of its own. "They say it was sold" leads in what is said; behind the statement
// only a stretch that stands alone tells how it is known ("it was sold, they say"), and "he came in and said
// so" does not. First-hand knowledge outweighs hearsay, hearsay outweighs inference; the weaker of two hedges
// wins. Failing memory blocks a claim unless a "but" stands between; an intention or order blocks what
// follows it.
#include "language/statements/cue_reading.h"

#include <algorithm>

#include "language/statements/statements.h"

namespace witnessmark::claims {
namespace {

/// Words that state nothing: "it was", "they did then".
bool is_light(const Flags& f) {
  return f.has(WordClass::adverb) || f.has(WordClass::filler) || f.has(WordClass::it) ||
         f.has(WordClass::this_) || f.has(WordClass::they) || f.has(WordClass::be) ||
         f.has(WordClass::have) || f.has(WordClass::do_) || f.has(WordClass::modal) ||
         f.has(WordClass::would) || f.has(WordClass::had_or_would);
}

/// A cue's stretch between marks, if it says nothing else: ", they told me", "or so somebody said", ", I
/// think it was". The words before it are who says it; those behind may be light ones. Empty where it says
/// more.
Span stretch_alone(const Passage& passage, Span sentence, Span cue, bool light_behind) {
  constexpr std::uint32_t kLongest = 5;
  std::uint32_t first = cue.first;
  bool joined = false;
  while (first > sentence.first && !passage.is_mark(first - 1) && !joined) {
    --first;
    const Note& note = passage.notes[first];
    const bool person = passage.names(first, ThingKind::person);
    if (cue.first - first > kLongest || (note.thing >= 0 && !person) || note.date >= 0 || note.number >= 0 ||
        note.flags.has(WordClass::relative))
      return {};
    joined = note.flags.has(WordClass::coordinator) || note.flags.has(WordClass::subordinator);
  }
  std::uint32_t past = cue.past;
  while (past < sentence.past && past < cue.past + 3 && !passage.is_mark(past)) {
    const Note& note = passage.notes[past];
    const bool passed_over = light_behind
                                 ? is_light(note.flags) || note.cue >= 0
                                 : note.flags.has(WordClass::adverb) || note.flags.has(WordClass::after);
    if (!passed_over) return {};
    ++past;
  }
  if (past < sentence.past && !passage.is_mark(past)) return {};
  // "And he said, carry on, ladies": speech follows.
  const bool ends = past + 1 >= sentence.past;
  if (!ends && joined && passage.has(first, WordClass::coordinator)) return {};
  return {first, past};
}

/// "I heard it was sold" is hearsay, "I heard the hooter" is not: whether a clause follows up to the next
/// mark.
bool clause_follows(const Passage& passage, Span sentence, std::uint32_t from) {
  for (std::uint32_t i = from; i < sentence.past && !passage.is_mark(i); ++i) {
    const Note& note = passage.notes[i];
    const Flags& f = note.flags;
    if (f.has(WordClass::coordinator)) return false;
    constexpr auto kFinite =
        static_cast<std::uint8_t>(VerbForm::past) | static_cast<std::uint8_t>(VerbForm::third);
    const bool verb = note.thing < 0 && note.info && (note.info->verb_forms[0] & kFinite) != 0;
    if (verb || f.has(WordClass::relative) || f.has(WordClass::be) || f.has(WordClass::have) ||
        f.has(WordClass::do_) || f.has(WordClass::modal) || f.has(WordClass::had_or_would) ||
        f.has(WordClass::past_form))
      return true;
  }
  return false;
}

/// "I'd told them": the narrator himself says it.
bool is_narrators_own(const Passage& passage, Span clause, Span cue) {
  const auto is_self = [&](std::uint32_t i) {
    const Flags& f = passage.notes[i].flags;
    return f.has(WordClass::we) && !f.has(WordClass::determiner);
  };
  if (is_self(cue.first)) return false;
  std::uint32_t i = cue.first;
  bool passive = false;  // "I have always been told"
  for (; i > clause.first; --i) {
    const Flags& f = passage.notes[i - 1].flags;
    passive = passive || f.has(WordClass::be);
    if (is_self(i - 1)) return !passive;
    if (!is_light(f)) return false;
  }
  return false;
}

bool contrast_between(const Passage& passage, std::uint32_t from, std::uint32_t to) {
  for (std::uint32_t i = from; i < to; ++i) {
    if (passage.has(i, WordClass::terminator)) return true;
  }
  return false;
}

/// Words before a cue of hearsay: who said it.
std::string knower_of(const Passage& passage, const Words& words, const CueSpan& cue, Span clause) {
  const std::string& phrase = words.cues[cue.cue].phrase;
  if (phrase.rfind("according to", 0) == 0 || phrase.ends_with("from")) {
    std::uint32_t past = cue.span.past;
    while (past < clause.past && past < cue.span.past + 4 && !passage.is_mark(past) &&
           passage.notes[past].thing < 0 && passage.notes[past].date < 0) {
      ++past;
    }
    return std::string(passage.words({cue.span.past, past}));
  }
  std::uint32_t first = cue.span.first;
  while (first > clause.first && first + 4 > cue.span.first) {
    const Token& token = passage.tokens[first - 1];
    const Note& note = passage.notes[first - 1];
    if (token.kind == Token::Kind::mark || note.date >= 0 || note.flags.has(WordClass::coordinator) ||
        note.flags.has(WordClass::subordinator) || note.flags.has(WordClass::terminator)) {
      break;
    }
    --first;
  }
  // Adverbs next to the verb are no part of the name.
  std::uint32_t past = cue.span.first;
  while (past > first && passage.has(past - 1, WordClass::adverb)) --past;
  if (past > first) return std::string(passage.words({first, past}));
  const Flags& f = passage.notes[cue.span.first].flags;
  if (f.has(WordClass::they) || f.has(WordClass::she))
    return std::string(passage.words({cue.span.first, cue.span.first + 1}));
  return {};
}

Firmness weaker(Firmness a, Firmness b) {
  return static_cast<int>(a) > static_cast<int>(b) ? a : b;
}

void weaken(CueReading& reading, CueValue value) {
  reading.firmness =
      weaker(reading.firmness, value == CueValue::guess ? Firmness::guess : Firmness::hedged);
}

int weight(Basis basis) {
  switch (basis) {
    case Basis::unstated:
      return 0;
    case Basis::inferred:
      return 1;
    case Basis::told:
      return 2;
    case Basis::read:
      return 3;
    case Basis::first_hand:
      return 4;
  }
  return 0;
}

void found_basis(CueReading& reading, Basis basis) {
  if (weight(basis) > weight(reading.basis)) reading.basis = basis;
}

/// Where a cue stands, seen from the clause that is read.
enum class Where : std::uint8_t { own, inherited, quoted, behind };

class Reader {
 public:
  Reader(const Passage& passage, const Words& words, const SentenceReading& sentence,
         const Predicate* predicate, Span clause, std::uint32_t said)
      : passage_(passage),
        words_(words),
        sentence_(sentence),
        predicate_(predicate),
        clause_(clause),
        said_(said) {}

  void read(const CueSpan& cue, std::uint32_t index, CueReading& reading, Where where) {
    const Cue& what = words_.cues[cue.cue];
    if (!counts_here(cue, what, where)) return;
    const bool inherited = where == Where::inherited;
    const bool before = cue.span.first < said_;
    bool used = true;
    switch (what.cue) {
      case CueClass::hedge:
        // "maybe" beside a number is about the number only.
        if (passage_.notes[cue.span.first].number >= 0) {
          used = false;
        } else {
          weaken(reading, what.value);
        }
        break;
      case CueClass::told:
        if (what.value == CueValue::sound && !is_hearsay(cue)) {
          found_basis(reading, Basis::first_hand);
          break;
        }
        used = !is_narrators_own(passage_, clause_, cue.span) &&
               (leads_in(cue.span) || alone(cue.span, false) || is_cleft(cue.span));
        if (!used) break;
        found_basis(reading, Basis::told);
        if (reading.knower.empty()) reading.knower = knower_of(passage_, words_, cue, clause_);
        break;
      case CueClass::told_order:
        used = before && predicate_ && !inherited;
        if (used) block(cue, reading);
        reading.ordered = reading.ordered || used;
        break;
      case CueClass::told_own:
        used = before;
        if (used) block(cue, reading);
        break;
      case CueClass::read:
        found_basis(reading, Basis::read);
        break;
      case CueClass::inferred:
        used = what.value != CueValue::dating || is_reckoned(cue);
        if (used) found_basis(reading, Basis::inferred);
        if (what.value == CueValue::not_) reading.denied = true;
        break;
      case CueClass::would_have:
        used = predicate_ && before && cue.span.past + 3 > predicate_->at;
        if (used) {
          found_basis(reading, Basis::inferred);
          weaken(reading, CueValue::hedged);
        }
        break;
      case CueClass::own_would_have:
        used = before;
        if (used) block(cue, reading);
        break;
      case CueClass::first_hand:
        found_basis(reading, Basis::first_hand);
        break;
      case CueClass::memory:
        used = before && blocks(what.value) && !contrast_between(passage_, cue.span.past, said_) &&
               !inherited;
        if (used) block(cue, reading);
        break;
      case CueClass::pseudo:
        if (what.value == CueValue::not_until) reading.not_until = true;
        if (what.value == CueValue::not_as_if) reading.not_as_if = true;
        if (what.value == CueValue::contrary) reading.contrary = true;
        break;
      case CueClass::doubt:
        used = before;
        if (used) {
          reading.doubted = true;
          weaken(reading, CueValue::hedged);
        }
        break;
      case CueClass::nonfactual:
        used = before;
        if (used) block(cue, reading);
        break;
      case CueClass::before_time:
        used = what.value != CueValue::child;
        if (used) reading.not_there = true;
        break;
      default:
        used = false;
        break;
    }
    if (used) reading.used.push_back(index);
  }

 private:
  static void block(const CueSpan& cue, CueReading& reading) {
    reading.blocked = true;
    reading.blocked_past = cue.span.past;
  }

  bool counts_here(const CueSpan& cue, const Cue& what, Where where) const {
    if (what.value == CueValue::grounds)
      return (where == Where::behind || where == Where::quoted) && is_ground(cue);
    if (what.value == CueValue::shown && !sentence_.of_source) return false;
    if (what.value == CueValue::alone && !alone(cue.span, false)) return false;
    if (where == Where::behind && what.value == CueValue::dating) return is_reckoned(cue);
    if (where < Where::quoted || what.cue == CueClass::first_hand) return true;
    // What a trailing "and …" adds tells how he knows only where it tells nothing else.
    const bool may = what.cue == CueClass::hedge || what.cue == CueClass::told ||
                     what.cue == CueClass::read || what.cue == CueClass::inferred ||
                     what.cue == CueClass::before_time;
    if (!may || (where == Where::quoted && what.cue != CueClass::hedge)) return may;
    const Span stretch = stretch_alone(passage_, sentence_.span, cue.span, what.cue != CueClass::told);
    // Of the next clause only if it is all of that.
    const bool next = where == Where::behind && cue.span.first >= clause_.past;
    return !stretch.empty() && (!next || stretch.first <= clause_.past + 1);
  }

  bool alone(Span cue, bool light_behind) const {
    return !stretch_alone(passage_, sentence_.span, cue, light_behind).empty();
  }

  /// "They say it was sold", but not "he went up the ladder and said so".
  bool leads_in(Span cue) const {
    if (predicate_) return cue.first <= predicate_->at;
    constexpr std::uint32_t kShort = 3;
    std::uint32_t first = cue.first;
    bool joined = false;
    while (first > clause_.first && !passage_.is_mark(first - 1) && !joined) {
      const Flags& f = passage_.notes[--first].flags;
      joined = f.has(WordClass::coordinator) || f.has(WordClass::until) || f.has(WordClass::relative);
    }
    return !joined || first < clause_.first + kShort;
  }

  /// "It was Gus who told me the mast had gone."
  bool is_cleft(Span cue) const {
    return predicate_ && predicate_->kind == Predicate::Kind::be && cue.first > sentence_.span.first &&
           passage_.has(cue.first - 1, WordClass::relative) &&
           clause_follows(passage_, sentence_.span, cue.past);
  }

  bool is_hearsay(const CueSpan& cue) const {
    return alone(cue.span, false) || clause_follows(passage_, sentence_.span, cue.span.past);
  }

  /// "It was forty-six, because Arne was home": a clause that only says when, and why that is so.
  bool is_ground(const CueSpan& cue) const {
    if (!predicate_ || predicate_->kind != Predicate::Kind::be) return false;
    const bool opens = std::any_of(sentence_.clauses.begin(), sentence_.clauses.end(),
                                   [&](const Clause& c) { return c.span.first == cue.span.first; });
    if (!opens) return false;
    bool dated = false;
    for (std::uint32_t i = clause_.first; i < cue.span.first; ++i) {
      const Note& note = passage_.notes[i];
      if (note.thing >= 0) return false;
      dated =
          dated || note.date >= 0 || note.flags.has(WordClass::before) || note.flags.has(WordClass::after);
    }
    return dated;
  }

  /// "So it'd be fifty-three", "it would be 1939, because …".
  bool is_reckoned(const CueSpan& cue) const {
    if (cue.span.first > sentence_.span.first && passage_.has(cue.span.first - 1, WordClass::subordinator))
      return true;
    const auto after = passage_.cues_in({cue.span.past, sentence_.span.past});
    return std::any_of(after.begin(), after.end(), [&](const CueSpan& other) {
      return words_.cues[other.cue].value == CueValue::grounds;
    });
  }

  const Passage& passage_;
  const Words& words_;
  const SentenceReading& sentence_;
  const Predicate* predicate_;
  Span clause_;
  std::uint32_t said_;  ///< Token of the verb, or of what says it without one.
};

}  // namespace

std::string said_by(const Cue& cue) {
  switch (cue.cue) {
    case CueClass::hedge:
      return cue.value == CueValue::guess ? "a guess" : "hedged";
    case CueClass::told:
    case CueClass::told_order:
    case CueClass::told_own:
      return "told";
    case CueClass::read:
      return "read";
    case CueClass::inferred:
    case CueClass::would_have:
    case CueClass::own_would_have:
      return "inferred";
    case CueClass::first_hand:
      return "first-hand";
    case CueClass::memory:
      return "memory fails";
    case CueClass::pseudo:
      return "no denial";
    case CueClass::doubt:
    case CueClass::maybe:
      return "doubted";
    case CueClass::correction:
      return "corrected";
    case CueClass::nonfactual:
      return "not said as a fact";
    case CueClass::yes:
      return "agrees";
    case CueClass::no:
      return "disagrees";
    case CueClass::unknown:
      return "not known";
    case CueClass::before_time:
      return "the narrator was not there";
  }
  return std::string(to_string(cue.cue));
}

CueReading read_cues(const Passage& passage, const Words& words, const SentenceReading& reading,
                     const Predicate* predicate, std::uint32_t clause, Span quoted,
                     std::optional<std::uint32_t> said) {
  CueReading result;
  const Clause& own = reading.clauses[clause];
  const std::uint32_t own_past = std::max(own.span.past, quoted.past);
  // A clause that shares its subject shares what was said before that subject's verb.
  std::uint32_t first_inherited = own.span.first;
  for (std::uint32_t c = clause; c > 0 && (!reading.clauses[c].own_subject || reading.clauses[c].complement);
       --c) {
    first_inherited = reading.clauses[c - 1].span.first;
  }
  const std::uint32_t at = predicate ? predicate->at : said.value_or(own_past);
  Reader reader(passage, words, reading, predicate, {first_inherited, own_past}, at);
  // The next clause may only say how this one is known: "it came in 1950, I think it was".
  const std::uint32_t past =
      std::max(own_past, clause + 1 < reading.clauses.size() ? reading.clauses[clause + 1].span.past : 0);
  for (const CueSpan& cue : passage.cues_in({first_inherited, past})) {
    Where where = Where::own;
    if (cue.span.first < own.span.first) {
      where = Where::inherited;
      // Only what stands before the verb of the clause it came from, unless this clause is its complement.
      const auto clause_of = std::find_if(reading.clauses.begin(), reading.clauses.end(),
                                          [&](const Clause& c) { return c.span.holds(cue.span.first); });
      if (clause_of == reading.clauses.end()) continue;
      const bool leading =
          own.complement || (clause_of->past_predicate > clause_of->first_predicate &&
                             cue.span.first < reading.predicates[clause_of->first_predicate].at);
      if (!leading) continue;
    } else if (cue.span.first >= own.core.past) {
      where = cue.span.first < quoted.past ? Where::quoted : Where::behind;
      // Of the narrator's own doing only what is added to this clause.
      if (cue.span.first >= own_past && words.cues[cue.cue].cue == CueClass::first_hand) continue;
    }
    reader.read(cue, static_cast<std::uint32_t>(&cue - passage.cues.data()), result, where);
  }
  // "It was before my time, but we had one": said for all that follows.
  for (const CueSpan& cue : passage.cues_in({reading.span.first, first_inherited})) {
    const Cue& what = words.cues[cue.cue];
    if (what.cue != CueClass::before_time || what.value == CueValue::child) continue;
    if (stretch_alone(passage, reading.span, cue.span, true).empty()) continue;
    result.not_there = true;
    result.used.push_back(static_cast<std::uint32_t>(&cue - passage.cues.data()));
  }
  // "Contrary to what the book says": it is not what he goes by.
  if (result.contrary && (result.basis == Basis::read || result.basis == Basis::told)) {
    result.basis = Basis::unstated;
    result.knower.clear();
  }
  return result;
}

void merge(const CueReading& other, CueReading& reading) {
  if (weight(other.basis) > weight(reading.basis)) {
    reading.basis = other.basis;
    if (!other.knower.empty()) reading.knower = other.knower;
  }
  if (reading.knower.empty()) reading.knower = other.knower;
  reading.firmness = weaker(reading.firmness, other.firmness);
  reading.doubted |= other.doubted;
  reading.blocked |= other.blocked;
  reading.blocked_past = std::max(reading.blocked_past, other.blocked_past);
  reading.ordered |= other.ordered;
  reading.not_until |= other.not_until;
  reading.not_as_if |= other.not_as_if;
  reading.contrary |= other.contrary;
  reading.denied |= other.denied;
  reading.used.insert(reading.used.end(), other.used.begin(), other.used.end());
}

void lay(const StatementContext& context, const CueReading& reading, Draft& draft) {
  if (draft.basis == Basis::unstated) draft.basis = reading.basis;
  if (draft.knower.empty()) draft.knower = reading.knower;
  draft.firmness = weaker(draft.firmness, reading.firmness);
  for (const std::uint32_t used : reading.used) {
    const CueSpan& span = context.passage.cues[used];
    const Cue& cue = context.words.cues[span.cue];
    Mention mention;
    mention.kind = MentionKind::cue;
    mention.range = context.positions.range_of(context.passage, span.span);
    mention.value = value_of(cue);
    mention.rule = cue.phrase;
    const bool given = std::any_of(draft.cues.begin(), draft.cues.end(), [&](const Mention& other) {
      return other.range == mention.range && other.value == mention.value;
    });
    if (given) continue;
    draft.because.push_back("'" + std::string(context.passage.words(span.span)) + "' → " + said_by(cue));
    draft.cues.push_back(std::move(mention));
  }
}

}  // namespace witnessmark::claims
