// Cues only suggest. One counts for the clause it stands in; cues that open a sentence also cover a following
// clause that has no subject of its own. First-hand knowledge outweighs hearsay, hearsay outweighs inference;
// the weaker of two hedges wins. Failing memory blocks a claim unless a "but" stands between; an intention or
// order blocks what follows it.
#include "language/statements/cue_reading.h"

#include <algorithm>

namespace witnessmark::claims {
namespace {

bool contrast_between(const Passage& passage, std::uint32_t from, std::uint32_t to) {
  for (std::uint32_t i = from; i < to; ++i) {
    if (passage.notes[i].flags.has(WordClass::terminator)) return true;
  }
  return false;
}

/// Words before a cue of hearsay: who said it.
std::string knower_of(const Passage& passage, const Words& words, const CueSpan& cue, Span clause) {
  const std::string& phrase = words.cues[cue.cue].phrase;
  if (phrase.rfind("according to", 0) == 0 || phrase.ends_with("from")) {
    std::uint32_t past = cue.span.past;
    while (past < clause.past && past < cue.span.past + 4 && passage.tokens[past].kind != Token::Kind::mark &&
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
  while (past > first && passage.notes[past - 1].flags.has(WordClass::adverb)) --past;
  if (past > first) return std::string(passage.words({first, past}));
  const Flags& f = passage.notes[cue.span.first].flags;
  if (f.has(WordClass::they) || f.has(WordClass::she))
    return std::string(passage.words({cue.span.first, cue.span.first + 1}));
  return {};
}

void weaken(CueReading& reading, const std::string& value) {
  const Firmness wanted = value == "guess" ? Firmness::guess : Firmness::hedged;
  if (static_cast<int>(wanted) > static_cast<int>(reading.firmness)) reading.firmness = wanted;
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

class Reader {
 public:
  Reader(const Passage& passage, const Words& words, const Predicate* predicate, Span clause)
      : passage_(passage), words_(words), predicate_(predicate), clause_(clause) {}

  void read(const CueSpan& cue, std::uint32_t index, CueReading& reading, bool inherited) {
    const Cue& what = words_.cues[cue.cue];
    const std::uint32_t verb = predicate_ ? predicate_->at : clause_.past;
    const bool before = cue.span.first < verb;
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
        found_basis(reading, Basis::told);
        if (reading.knower.empty()) reading.knower = knower_of(passage_, words_, cue, clause_);
        break;
      case CueClass::told_order:
        used = before && predicate_ && !inherited;
        if (used) reading.blocked = reading.ordered = true;
        break;
      case CueClass::told_own:
        used = before;
        if (used) reading.blocked = true;
        break;
      case CueClass::read:
        found_basis(reading, Basis::read);
        break;
      case CueClass::inferred:
        found_basis(reading, Basis::inferred);
        if (what.value == "not") reading.denied = true;
        break;
      case CueClass::would_have:
        used = predicate_ && before && cue.span.past + 3 > predicate_->at;
        if (used) {
          found_basis(reading, Basis::inferred);
          weaken(reading, "hedged");
        }
        break;
      case CueClass::own_would_have:
        used = before;
        if (used) reading.blocked = true;
        break;
      case CueClass::first_hand:
        found_basis(reading, Basis::first_hand);
        break;
      case CueClass::memory:
        used = before && what.value == "blocks" && !contrast_between(passage_, cue.span.past, verb) &&
               !inherited;
        if (used) reading.blocked = true;
        break;
      case CueClass::pseudo:
        if (what.value == "not_until") reading.not_until = true;
        if (what.value == "not_as_if") reading.not_as_if = true;
        if (what.value == "contrary") reading.contrary = true;
        break;
      case CueClass::doubt:
        used = before;
        if (used) {
          reading.doubted = true;
          weaken(reading, "hedged");
        }
        break;
      case CueClass::nonfactual:
        used = before;
        if (used) reading.blocked = true;
        break;
      default:
        used = false;
        break;
    }
    if (used) reading.used.push_back(index);
  }

 private:
  const Passage& passage_;
  const Words& words_;
  const Predicate* predicate_;
  Span clause_;
};

}  // namespace

CueReading read_cues(const Passage& passage, const Words& words, const SentenceReading& reading,
                     const Predicate* predicate, std::uint32_t clause) {
  CueReading result;
  const Clause& own = reading.clauses[clause];
  // A clause that shares its subject shares what was said before that subject's verb.
  std::uint32_t first_inherited = own.span.first;
  for (std::uint32_t c = clause; c > 0 && (!reading.clauses[c].own_subject || reading.clauses[c].complement);
       --c) {
    first_inherited = reading.clauses[c - 1].span.first;
  }
  Reader reader(passage, words, predicate, {first_inherited, own.span.past});
  const auto begin =
      std::lower_bound(passage.cues.begin(), passage.cues.end(), first_inherited,
                       [](const CueSpan& cue, std::uint32_t at) { return cue.span.first < at; });
  for (auto cue = begin; cue != passage.cues.end() && cue->span.first < own.span.past; ++cue) {
    const bool inherited = cue->span.first < own.span.first;
    if (inherited) {
      // Only what stands before the verb of the clause it came from, unless this clause is its complement.
      const auto clause_of = std::find_if(reading.clauses.begin(), reading.clauses.end(),
                                          [&](const Clause& c) { return c.span.holds(cue->span.first); });
      if (clause_of == reading.clauses.end()) continue;
      const bool leading =
          own.complement || (clause_of->past_predicate > clause_of->first_predicate &&
                             cue->span.first < reading.predicates[clause_of->first_predicate].at);
      if (!leading) continue;
    }
    // What a trailing "and …" adds tells how he knows, or how sure he is, but not what others said.
    if (cue->span.first >= own.core.past) {
      const CueClass what = words.cues[cue->cue].cue;
      if (what != CueClass::hedge && what != CueClass::first_hand) continue;
    }
    reader.read(*cue, static_cast<std::uint32_t>(cue - passage.cues.begin()), result, inherited);
  }
  // "Contrary to what the book says": it is not what he goes by.
  if (result.contrary && (result.basis == Basis::read || result.basis == Basis::told)) {
    result.basis = Basis::unstated;
    result.knower.clear();
  }
  return result;
}

}  // namespace witnessmark::claims
