// What a witness saw was there, and of what he never saw there was none: "I never saw a stove there", "never
// saw one". Not so of one that is known ("I never saw the stove", "it", "him"), nor of what it did or was
// like ("I never saw a stove smoke", "one like it"), nor where seeing came late ("I'd never seen one", "not
// till then").
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

void StatementReader::seen(const Predicate& p) {
  // Only when nothing else in the clause says what was seen.
  const Clause& clause = c_.reading.clauses[p.clause];
  for (std::uint32_t i = clause.first_predicate; i < clause.past_predicate; ++i) {
    if (c_.reading.predicates[i].at > p.at) return;
  }
  if (p.negated) {
    if (p.verb->needs == VerbNeeds::sight) never_saw(p);
    return;
  }
  for (const Subject& subject : objects_or_pronoun(p)) {
    if (!subject.thing) continue;
    const bool placed = arguments_.place_in(p.right, {Role::at, Role::relation}) != nullptr;
    if (!placed && dates_for(passage_, c_.reading, &p, p.clause).empty()) continue;
    add_state(&p, subject, subject.thing->negated);
  }
}

/// "I never saw", "never saw": the narrator, or whoever is asked.
bool StatementReader::says_never(const Predicate& p) const {
  for (std::uint32_t i = p.span.first; i < p.at; ++i)
    if (arguments_.has(i, WordClass::have) || arguments_.has(i, WordClass::had_or_would)) return false;
  std::uint32_t i = p.at;
  bool never = false;
  for (; i > p.left.first && arguments_.has(i - 1, WordClass::adverb); --i)
    never = never || arguments_.has(i - 1, WordClass::never);
  if (!never) return false;
  if (i == p.left.first || arguments_.is_mark(i - 1)) return true;
  const Flags& who = passage_.notes[i - 1].flags;
  if (c_.asking) return who.has(WordClass::you);
  return who.has(WordClass::we) || who.has(WordClass::you) || who.has(WordClass::filler) ||
         who.has(WordClass::coordinator);
}

/// Whether a stretch says at most where and when.
bool StatementReader::only_where_and_when(Span span) const {
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    const Note& note = passage_.notes[i];
    if (note.date >= 0 || note.cue >= 0 || arguments_.is_mark(i)) continue;
    if (note.thing >= 0) {
      const ThingKind kind = passage_.things[static_cast<std::size_t>(note.thing)].kind;
      if (kind != ThingKind::place && kind != ThingKind::location) return false;
      continue;
    }
    bool fits = false;
    for (const WordClass w : {WordClass::there, WordClass::in_there, WordClass::whereabouts,
                              WordClass::my_time, WordClass::of_them, WordClass::at, WordClass::relation,
                              WordClass::determiner, WordClass::side, WordClass::until})
      fits = fits || note.flags.has(w);
    const bool leads_on = note.flags.has(WordClass::before) || note.flags.has(WordClass::like);
    if (!fits || leads_on) return false;
    i += std::max<std::uint32_t>(1, note.reach) - 1;
  }
  return true;
}

/// One of what is spoken of ("one", "any").
std::optional<Referent> StatementReader::one_spoken_of(std::uint32_t at) const {
  std::optional<Referent> found = arguments_.pronoun(false, at);
  if (!found) found = arguments_.pronoun(true, at);
  return found && found->kind == ThingKind::equipment ? found : std::nullopt;
}

void StatementReader::never_saw(const Predicate& p) {
  if (!says_never(p) || p.span.past >= p.right.past) return;
  std::uint32_t past = p.right.past;
  for (std::uint32_t i = p.span.past; i < past; ++i)
    if (arguments_.is_mark(i) || (arguments_.has(i, WordClass::coordinator) && passage_.notes[i].thing < 0))
      past = i;
  const std::size_t first = drafts_.size();
  for (const Thing& thing : passage_.things_in({p.span.past, past})) {
    const bool unknown = thing.indefinite || arguments_.has(thing.head, WordClass::any) ||
                         (thing.plural && thing.head == thing.span.first);
    if (thing.kind != ThingKind::equipment || thing.shadowed || thing.head > p.span.past || !unknown ||
        !only_where_and_when({thing.span.past, past}))
      return;
    if (thing.quantity < 0) add_state(&p, {referent_of(c_, thing), &thing}, true);
    break;
  }
  const std::uint32_t next = p.span.past;
  const bool one = arguments_.has(next, WordClass::one) || arguments_.has(next, WordClass::any);
  if (drafts_.size() == first && one && only_where_and_when({next + 1, past})) {
    if (std::optional<Referent> subject = one_spoken_of(p.at)) add_state(&p, {subject, nullptr}, true);
  }
  for (std::size_t d = first; d < drafts_.size(); ++d) drafts_[d].basis = Basis::first_hand;
}

}  // namespace witnessmark::claims
