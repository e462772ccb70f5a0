// Where the site or a person was. Locations of the itinerary and places of the list come first; else the
// words themselves are kept ("at the falls of the boat"). "I" is the narrator; "we" and "she" are the site.
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

/// "lying off the Widow Bank": off is where one lies, from is where one comes from.
const Thing* StatementReader::lying_off(Span span) const {
  const Thing* where = arguments_.place_in(span, {Role::from}, true);
  return where && where->role_at >= 0 &&
                 arguments_.has(static_cast<std::uint32_t>(where->role_at), WordClass::off)
             ? where
             : nullptr;
}

/// "he" of "he'd the drum house".
std::string StatementReader::they_before(const Predicate& p) const {
  std::uint32_t at = p.at;
  while (at > p.left.first && !arguments_.has(at, WordClass::they)) --at;
  const std::string_view word = passage_.words({at, at + 1});
  return std::string(word.substr(0, std::min(word.find('\''), word.find("\u2019"))));
}

/// The person before a predicate: named, or the narrator for "I".
StatementReader::Subject StatementReader::person_before(const Predicate& p) const {
  Subject who;
  for (const Thing& thing : passage_.things_in(p.left)) {
    if (thing.kind == ThingKind::person && p.left.holds(thing.span.first))
      who = {referent_of(c_, thing), &thing};
  }
  if (who.referent) return who;
  // "My father", "the cook": somebody of no list.
  for (std::uint32_t i = p.span.first; i > p.left.first; --i) {
    if (arguments_.is_mark(i - 1) || passage_.notes[i - 1].thing >= 0) break;
    if (!arguments_.has(i - 1, WordClass::person) || arguments_.has(i - 1, WordClass::we)) continue;
    std::uint32_t first = i - 1;
    while (first > p.left.first && arguments_.has(first - 1, WordClass::determiner)) --first;
    who.words = std::string(passage_.words({first, i}));
    return who;
  }
  if (!c_.narrator) return who;
  for (std::uint32_t i = p.span.past; i > p.left.first; --i) {
    if (arguments_.is_mark(i - 1)) break;
    if (!arguments_.has(i - 1, WordClass::self) || !arguments_.has(i - 1, WordClass::we)) continue;
    who.referent = *c_.narrator;
    who.referent->words = std::string(passage_.words({i - 1, i}));
    who.referent->range = c_.positions.range_of(passage_, {i - 1, i});
    break;
  }
  return who;
}

bool StatementReader::is_of_site(const Predicate& p) const {
  const Span clause = c_.reading.clauses[p.clause].span;
  if (p.agent == Agent::we) return true;
  if (!arguments_.any_in({clause.first, p.span.past}, WordClass::she)) return false;
  // "I met Vera there, she was in the office."
  return !arguments_.names_somebody({c_.reading.span.first, p.span.first});
}

/// Whereabouts in words of no list; false when there are none.
bool StatementReader::located_in_words(const Predicate& p, const Subject& who, bool towards) {
  Span words = towards ? destination_after(passage_, c_.reading.span, p.span.past)
                       : whereabouts_after(passage_, c_.reading.span, p.span.past);
  if (words.empty()) return false;
  const bool negated = p.negated || negative_in(passage_, {p.span.past, words.first}).has_value();
  Draft& draft = add(&p, Statement::located, who, negated);
  draft.quantity.reset();
  for (const Thing& thing : passage_.things_in(words)) {
    if (!words.holds(thing.span.first) || thing.shadowed) continue;
    if (thing.kind == ThingKind::place || thing.kind == ThingKind::location)
      draft.place = referent_of(c_, thing);
  }
  if (arguments_.has(words.first, WordClass::at) && words.past > words.first + 1) ++words.first;
  draft.place_words = std::string(passage_.words(words));
  return true;
}

void StatementReader::located(const Predicate& p) {
  const Span clause = c_.reading.clauses[p.clause].span;
  const Subject who = person_before(p);
  if (p.verb->needs == VerbNeeds::aboard) {
    Draft& draft = add(&p, Statement::located, who, p.negated);
    draft.quantity.reset();
    if (const Thing* site = arguments_.place_in(p.right, {Role::none, Role::at, Role::to, Role::of})) {
      draft.place = referent_of(c_, *site);
    } else {
      const Span words = whereabouts_after(passage_, c_.reading.span, p.at + 1);
      draft.place_words = words.empty() ? draft.action : std::string(passage_.words(words));
    }
    return;
  }
  const Thing* where = arguments_.place_in({p.at, clause.past}, {Role::at, Role::to, Role::none}, true);
  if (!where) where = lying_off({p.at, clause.past});
  if (!where) where = arguments_.place_in(clause, {Role::at}, true);
  if (!where) where = arguments_.place_in({p.at, clause.past}, {Role::at, Role::to});
  const bool named_site = arguments_.place_in(p.left, {Role::none}) != nullptr;
  if (!who.referent && who.words.empty() && p.agent != Agent::we && p.agent != Agent::it && !named_site)
    return;
  if (!where) {
    const bool somebody = who.referent || !who.words.empty() || p.agent == Agent::we;
    if (somebody && in_past_form(p)) located_in_words(p, who, true);
    return;
  }
  Draft& draft = add(&p, Statement::located, who, p.negated);
  draft.quantity.reset();
  draft.place = referent_of(c_, *where);
}

/// "I was on the coast station", "we were stuck in the sound".
bool StatementReader::was_somewhere(const Predicate& p) {
  const Subject who = person_before(p);
  if (!who.referent && who.words.empty() && !is_of_site(p)) return false;
  const Thing* where = arguments_.place_in(p.right, {Role::at}, true);
  if (!where) where = lying_off(p.right);
  if (!where) where = arguments_.place_in(p.right, {Role::at});
  if (!where) return located_in_words(p, who, false);
  const bool negated = p.negated || negative_in(passage_, {p.span.past, where->head}).has_value();
  Draft& draft = add(&p, Statement::located, who, negated);
  draft.quantity.reset();
  draft.place = referent_of(c_, *where);
  return true;
}

/// "I wasn't there", "I wasn't on watch that night", unless the sentence says where he was.
void StatementReader::was_elsewhere() {
  if (c_.asking) return;
  for (const Draft& draft : drafts_)
    if (draft.statement == Statement::located) return;
  for (const CueSpan& cue : passage_.cues_in(c_.reading.span)) {
    if (c_.words.cues[cue.cue].value != CueValue::elsewhere) continue;
    std::uint32_t where = cue.span.first;
    while (where < cue.span.past && !arguments_.has(where, WordClass::negative)) ++where;
    if (++where >= cue.span.past) continue;
    std::uint32_t clause = 0;
    while (clause + 1 < c_.reading.clauses.size() && c_.reading.clauses[clause].span.past <= cue.span.first)
      ++clause;
    Subject who;
    if (c_.narrator) {
      who.referent = *c_.narrator;
      who.referent->words = std::string(passage_.words({cue.span.first, cue.span.first + 1}));
      who.referent->range = c_.positions.range_of(passage_, {cue.span.first, cue.span.first + 1});
    }
    Draft& draft = add(nullptr, Statement::located, who, true);
    draft.fragment = false;
    draft.basis = Basis::first_hand;
    draft.clause = clause;
    draft.clause_range = c_.positions.range_of(passage_, c_.reading.clauses[clause].span);
    draft.place_words = std::string(passage_.words({where, cue.span.past}));
    // "I wasn't there, but the winch went in 1950": of something else.
    Span stretch = cue.span;
    while (stretch.first > c_.reading.span.first && !arguments_.is_mark(stretch.first - 1)) --stretch.first;
    while (stretch.past < c_.reading.span.past && !arguments_.is_mark(stretch.past)) ++stretch.past;
    const std::vector<std::uint32_t> dates = dates_said(passage_, stretch);
    if (!dates.empty()) draft.date = ChosenDate{passage_.dates[dates.front()], false};
    return;
  }
}

/// "Off the Widow Bank, in April.", "we tried it out there, off the Widow Bank": a location of the itinerary,
/// said with a date or by those who were there.
void StatementReader::been_at_location() {
  for (const Draft& draft : drafts_) {
    if (draft.statement == Statement::located) return;
  }
  const Span span = c_.reading.span;
  const auto named = passage_.things_in(span);
  const bool any = std::any_of(named.begin(), named.end(), [](const Thing& thing) {
    return thing.kind == ThingKind::location || thing.location;
  });
  if (!any) return;
  const Thing* where = arguments_.place_in(span, {Role::at}, true);
  if (!where) where = lying_off(span);
  const bool fragment = c_.reading.predicates.empty();
  if (!where) {
    const Thing* first = arguments_.place_in(span, {Role::none}, true);
    if (first && first->head <= span.first + 1) where = first;
  }
  if (!where && fragment) where = arguments_.place_in(span, {Role::none}, true);
  if (!where || where->negated) return;
  const Clause* own = nullptr;
  std::uint32_t clause = 0;
  for (std::uint32_t c = 0; c < c_.reading.clauses.size(); ++c) {
    if (!c_.reading.clauses[c].span.holds(where->span.first)) continue;
    own = &c_.reading.clauses[c];
    clause = c;
  }
  if (!own) return;
  const bool present_there =
      arguments_.any_in(own->span, WordClass::we) || arguments_.any_in(own->span, WordClass::she);
  const bool dated = !dates_for(passage_, c_.reading, nullptr, clause).empty();
  const bool opens = where->head <= span.first + 3;
  if (!present_there && !(dated && (fragment || opens))) return;
  if (fragment && span.past - span.first > 14) return;
  // "Not in the sound", "we were never there"; but "we didn't stay long there".
  const std::optional<std::uint32_t> no = negative_in(passage_, {own->span.first, where->head});
  const bool negated = no && (fragment || arguments_.has(*no, WordClass::be) ||
                              (*no > own->span.first && arguments_.has(*no - 1, WordClass::be)));
  const std::size_t first = drafts_.size();
  Draft& draft = add(nullptr, Statement::located, {}, negated);
  draft.clause = clause;
  draft.clause_range = c_.positions.range_of(passage_, own->span);
  draft.place = referent_of(c_, *where);
  put_dates(nullptr, first);
  put_cues(nullptr, clause, first);
}

}  // namespace witnessmark::claims
