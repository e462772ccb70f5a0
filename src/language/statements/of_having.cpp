// What forms of "to have" state: what somebody or a place had, the parts of a thing, where people lived, what
// was done with a thing they had; and parts set beside a name with "with".
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

/// "a names board, with gold on it", "a voice pipe with a whistle in it": a property said in the same breath.
void StatementReader::with_part(std::size_t of) {
  const Draft& state = drafts_[of];
  if (state.subject_thing < 0 || state.statement != Statement::present) return;
  std::uint32_t i = passage_.things[static_cast<std::size_t>(state.subject_thing)].span.past;
  constexpr std::uint32_t kReach = 16;
  const std::uint32_t end = std::min(c_.reading.span.past, i + kReach);
  while (i < end && !arguments_.has(i, WordClass::with)) {
    if (passage_.names(i, ThingKind::equipment)) return;
    ++i;
  }
  if (i + 1 >= end) return;
  std::uint32_t past = i + 1;
  while (past < c_.reading.span.past && past < i + 8 && !arguments_.is_mark(past) &&
         passage_.notes[past].date < 0 && !arguments_.has(past, WordClass::coordinator) &&
         !arguments_.has(past, WordClass::relative)) {
    if (arguments_.has(past, WordClass::person) || passage_.notes[past].thing >= 0) return;
    ++past;
  }
  const bool on_it = past > i + 2 && arguments_.has(past - 1, WordClass::it);
  const bool part =
      arguments_.has(i + 1, WordClass::indefinite) || arguments_.has(i + 1, WordClass::negative_determiner);
  if (!on_it && !part) return;
  Draft draft = state;
  draft.statement = Statement::attribute;
  draft.attribute = "with: " + std::string(passage_.words({i + 1, past}));
  drafts_.push_back(std::move(draft));
}

/// "It had a handle like a tram's": a part or property of what is spoken of.
void StatementReader::part_of(const Predicate& p) {
  std::uint32_t first = p.span.past;
  while (first < p.right.past && arguments_.has(first, WordClass::adverb)) ++first;
  if (first >= p.right.past) return;
  if (!arguments_.has(first, WordClass::determiner) && !arguments_.has(first, WordClass::negative_determiner))
    return;
  std::uint32_t past = first;
  while (past < p.right.past && past < first + 8 && !arguments_.is_mark(past) &&
         passage_.notes[past].date < 0 && !arguments_.has(past, WordClass::relative) &&
         !arguments_.has(past, WordClass::subordinator)) {
    if (passage_.notes[past].thing >= 0 || arguments_.has(past, WordClass::person)) return;
    ++past;
  }
  if (past < first + 2) return;
  for (const Subject& subject : subjects_or_pronoun(p)) {
    Draft& draft = add(&p, Statement::attribute, subject, p.negated);
    draft.quantity.reset();
    draft.no_joined_date = true;
    draft.attribute = (arguments_.has(first, WordClass::negative_determiner) ? "without: " : "with: ") +
                      std::string(passage_.words({first, past}));
    place_it(draft, &p, false);
  }
}

/// "I'd number three", "we had the cabin next the stairs": people had a place as theirs.
bool StatementReader::lived_at(const Predicate& p) {
  Subject who = person_before(p);
  if (!who.referent && who.words.empty() && p.agent == Agent::them) {
    // "He'd the drum house": nobody of the lists, but not the site either.
    who.words = they_before(p);
  }
  if (!who.referent && who.words.empty() && p.agent != Agent::we) return false;
  const Thing* where = arguments_.place_in(p.right, {Role::none});
  if (!where || where->head > p.span.past + 1 || where->negated) return false;
  Draft& draft = add(&p, Statement::located, who, p.negated);
  draft.quantity.reset();
  draft.place = referent_of(c_, *where);
  return true;
}

/// "Number three had the damp", "the store had a flagged floor": what a place was like.
bool StatementReader::place_has(const Predicate& p) {
  const Thing* place = arguments_.place_in(p.left, {Role::none});
  if (!place || place->negated) return false;
  std::uint32_t past = p.span.past;
  while (past < p.right.past && past < p.span.past + 8 && !arguments_.is_mark(past) &&
         passage_.notes[past].date < 0 && !arguments_.has(past, WordClass::subordinator) &&
         !arguments_.has(past, WordClass::relative)) {
    if (passage_.notes[past].thing >= 0 || arguments_.has(past, WordClass::person)) return false;
    ++past;
  }
  if (past < p.span.past + 2 || !arguments_.has(p.span.past, WordClass::determiner)) return false;
  Draft& draft = add(&p, Statement::attribute, {referent_of(c_, *place), nullptr}, p.negated);
  draft.quantity.reset();
  draft.attribute = "with: " + std::string(passage_.words({p.span.past, past}));
  return true;
}

/// "They'd the hooter going", "I'd the crane painted": not that it was there but what was done.
bool StatementReader::had_done(const Predicate& p, const Subject& subject, bool negated) {
  const std::uint32_t next = subject.thing->span.past;
  if (next >= c_.reading.span.past || arguments_.is_mark(next) || passage_.notes[next].date >= 0)
    return false;
  for (const Predicate& other : c_.reading.predicates)
    if (other.at == next) return true;
  if (!c_.words.is_going(passage_.words({next, next + 1})) || arguments_.has(next, WordClass::at))
    return false;
  Draft& draft = add(&p, Statement::happened, subject, negated);
  draft.quantity.reset();
  draft.attribute = std::string(passage_.words({next, next + 1}));
  place_it(draft, &p, false);
  return true;
}

/// "They had thirty foot off the chimney.": a piece of it was taken.
bool StatementReader::had_off(const Predicate& p) {
  for (const Subject& subject : things(arguments_.with_role(p.right, Role::from))) {
    bool measured = false;
    for (const Number& number : passage_.numbers_in({p.span.past, subject.thing->head}))
      measured = measured || (number.measure && p.right.holds(number.span.first));
    if (!measured) continue;
    Draft& draft = add(&p, Statement::happened, subject, p.negated);
    draft.quantity.reset();
    draft.attribute = std::string(passage_.words({p.at, subject.thing->head}));
    place_it(draft, &p, false);
    return true;
  }
  return false;
}

void StatementReader::has(const Predicate& p) {
  std::vector<const Thing*> objects = arguments_.objects(p);
  bool plural = false;
  if (arguments_.pronoun_object(p, plural)) {
    if (const auto referent = arguments_.pronoun(plural, p.at)) add_state(&p, {referent, nullptr}, p.negated);
    return;
  }
  if (objects.empty() && had_off(p)) return;
  if (objects.empty() && had_one(p)) return;
  if (objects.empty() && lived_at(p)) return;
  if (objects.empty() && place_has(p)) return;
  // "The other ship had a brass plate in her mess": not here.
  const bool elsewhere = arguments_.place_in(p.left, {Role::none}, true) != nullptr;
  if (objects.empty() && p.agent != Agent::it && !elsewhere && unlisted(p)) return;
  if (objects.empty()) part_of(p);
  // "had twenty feet of chain": no count of chains.
  for (const Subject& subject : things(objects)) {
    bool negated = p.negated || things_between_negated(p, subject.thing) || subject.thing->negated;
    if (had_done(p, subject, negated)) continue;
    const bool excepted =
        subject.thing->head > 0 && arguments_.has(subject.thing->head - 1, WordClass::terminator);
    if (excepted) negated = false;
    const std::size_t made = drafts_.size();
    add_state(&p, subject, negated);
    Draft& draft = drafts_[made];
    if (!draft.place) {
      // "The salle had no guillotine."
      if (const Thing* place = arguments_.place_in(p.left, {Role::none}))
        draft.place = referent_of(c_, *place);
    }
    if (!draft.place && c_.asked_place) {
      draft.place = *c_.asked_place;
      draft.place->carried = true;
    }
  }
}

}  // namespace witnessmark::claims
