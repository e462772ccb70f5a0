// A thing can be subject or object when it is equipment, names no person ("the crane driver") and no
// preposition makes it a place or an instrument. Places are chosen by the preposition before them: for
// endings "off" and "out of" first, for everything else "in", "on", "to"; the nearest to the right of the
// verb first, then to its left, then in the clause.
#include "language/statements/arguments.h"

#include <algorithm>

#include "language/clauses/unlisted.h"

namespace witnessmark::claims {
namespace {

bool holds(const Span& span, const Thing& thing) {
  return span.holds(thing.span.first);
}

}  // namespace

bool Arguments::any_in(Span span, WordClass w) const {
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (has(i, w)) return true;
  }
  return false;
}

bool Arguments::candidate(const Thing& thing) const {
  if (thing.kind != ThingKind::equipment || thing.shadowed || thing.corrected) return false;
  // "a thing like a traction engine"
  if (thing.indefinite && thing.head > 0 && has(thing.head - 1, WordClass::like)) return false;
  return thing.role == Role::none || (thing.role == Role::of && thing.quantity >= 0);
}

bool Arguments::joined(const Thing& before, const Thing& after) const {
  bool link = false;
  for (std::uint32_t i = before.span.past; i < after.head; ++i) {
    if (has(i, WordClass::terminator)) return false;
    if (has(i, WordClass::coordinator) || (is_mark(i) && c_.passage.tokens[i].mark == ',')) {
      link = true;
    } else {
      return false;
    }
  }
  return link && after.head <= after.span.first && !(after.negated && !before.negated);
}

std::vector<const Thing*> Arguments::group_in(Span span, bool from_right) const {
  std::vector<const Thing*> inside;
  for (const Thing& thing : c_.passage.things_in(span)) {
    if (!holds(span, thing) || !candidate(thing)) continue;
    inside.push_back(&thing);
  }
  // A negated thing after a mark only stands against the others.
  std::erase_if(inside, [&](const Thing* thing) {
    return thing->negated && thing->head > span.first && is_mark(thing->head - 1);
  });
  if (inside.empty()) return {};
  std::vector<const Thing*> group;
  if (from_right) {
    group.push_back(inside.back());
    for (std::size_t i = inside.size() - 1; i > 0 && joined(*inside[i - 1], *inside[i]); --i) {
      group.insert(group.begin(), inside[i - 1]);
    }
  } else {
    group.push_back(inside.front());
    for (std::size_t i = 1; i < inside.size() && joined(*inside[i - 1], *inside[i]); ++i)
      group.push_back(inside[i]);
  }
  return group;
}

std::vector<const Thing*> Arguments::objects(const Predicate& p) const {
  std::vector<const Thing*> found = group_in(p.right);
  if (found.empty()) return found;
  for (std::uint32_t i = p.right.first; i < found.front()->head; ++i) {
    // Another subject begins another clause, marks or none.
    if (has(i, WordClass::we) || (has(i, WordClass::they) && !has(i, WordClass::pronoun))) return {};
    if (!is_mark(i) || c_.passage.tokens[i].mark == '"') continue;
    std::uint32_t past = i + 1;
    bool cue = false;
    while (past < p.right.past && !is_mark(past) && past < i + 8) {
      cue = cue || c_.passage.notes[past].cue >= 0;
      ++past;
    }
    if (!cue || past >= found.front()->head || !is_mark(past)) return {};
    i = past;
  }
  return found;
}

std::vector<const Thing*> Arguments::subjects(const Predicate& p) const {
  // Behind a comma of an earlier phrase the subject is the last group ("by then the winch wasn't …").
  std::vector<const Thing*> found = group_in(p.left, true);
  if (!found.empty() && other_noun_between(found.back()->span.past, p.span.first)) return {};
  return found;
}

/// "There was a boiler in the galley before the store was built": the verb behind "before" has a noun of its
/// own.
bool Arguments::other_noun_between(std::uint32_t from, std::uint32_t verb) const {
  for (std::uint32_t i = from; i + 2 < verb; ++i) {
    const bool opens = has(i, WordClass::before) || has(i, WordClass::after) || has(i, WordClass::when) ||
                       has(i, WordClass::until);
    if (opens && has(i + 1, WordClass::determiner) && !has(i + 1, WordClass::pronoun)) return true;
  }
  return false;
}

std::vector<const Thing*> Arguments::contrasted(Span span) const {
  std::vector<const Thing*> found;
  for (const Thing& thing : c_.passage.things_in(span)) {
    if (!holds(span, thing) || !candidate(thing) || !thing.negated) continue;
    if (thing.head > span.first && is_mark(thing.head - 1)) found.push_back(&thing);
  }
  return found;
}

std::vector<const Thing*> Arguments::with_role(Span span, Role role) const {
  std::vector<const Thing*> found;
  for (const Thing& thing : c_.passage.things_in(span)) {
    if (!holds(span, thing) || thing.kind != ThingKind::equipment || thing.shadowed) continue;
    if (thing.role == role || (!found.empty() && joined(*found.back(), thing))) found.push_back(&thing);
  }
  return found;
}

const Thing* Arguments::place_in(Span span, std::initializer_list<Role> roles, bool locations) const {
  const Thing* found = nullptr;
  for (const Thing& thing : c_.passage.things_in(span)) {
    if (!holds(span, thing) || thing.shadowed || thing.corrected) continue;
    const bool fits =
        locations ? thing.kind == ThingKind::location || thing.location : thing.kind == ThingKind::place;
    if (!fits || std::find(roles.begin(), roles.end(), thing.role) == roles.end()) continue;
    // "in the locker room on the second deck": the inner of two that nest.
    if (found && !locations) {
      const AuthorityList& list = c_.finders.places->list();
      const std::string& inner = list.terms()[thing.terms.front()].key;
      const std::string& outer = list.terms()[found->terms.front()].key;
      if (list.within(inner, outer) && inner != outer) found = &thing;
      continue;
    }
    found = &thing;
  }
  return found;
}

std::optional<Referent> Arguments::place_for(const Predicate* p, std::uint32_t clause, bool ending) const {
  const Clause& own = c_.reading.clauses[clause];
  const Thing* found = nullptr;
  const auto look = [&](Span span) {
    if (found || span.empty()) return;
    if (ending) found = place_in(span, {Role::from});
    if (!found) found = place_in(span, {Role::at});
    if (!found && !ending) found = place_in(span, {Role::to});
    if (!found) found = place_in(span, {Role::relation});
    if (!found) found = place_in(span, {Role::none, Role::of});
  };
  if (p) {
    look(p->right);
    look(p->left);
  }
  look(own.span);
  if (found) return referent_of(c_, *found);
  // A place that opens the sentence covers all of it.
  if (clause > 0) {
    const Clause& first = c_.reading.clauses.front();
    const std::uint32_t verb = first.past_predicate > first.first_predicate
                                   ? c_.reading.predicates[first.first_predicate].span.first
                                   : first.span.past;
    if (const Thing* opening = place_in({first.span.first, verb}, {Role::at}))
      return referent_of(c_, *opening);
  }
  if (any_in(own.span, WordClass::in_place) || any_in(own.span, WordClass::in_there)) {
    for (std::uint32_t k = clause; k > 0; --k) {
      const Span before = c_.reading.clauses[k - 1].span;
      const Thing* earlier = place_in(before, {Role::from, Role::at, Role::to, Role::relation, Role::none});
      if (earlier) {
        Referent referent = referent_of(c_, *earlier);
        referent.carried = true;
        return referent;
      }
    }
    if (c_.focus.place) {
      Referent referent = *c_.focus.place;
      referent.carried = true;
      return referent;
    }
  }
  return std::nullopt;
}

std::string Arguments::relative_place(Span span, const Thing* subject) const {
  const Passage& passage = c_.passage;
  for (const Thing& thing : passage.things_in(span)) {
    if (!holds(span, thing) || thing.role != Role::relation || &thing == subject) continue;
    std::uint32_t first = thing.head;
    while (first > span.first && !is_mark(first - 1) && passage.notes[first - 1].thing < 0 &&
           (has(first - 1, WordClass::relation) || has(first - 1, WordClass::relation_degree) ||
            has(first - 1, WordClass::of) || has(first - 1, WordClass::side) ||
            has(first - 1, WordClass::to) || (first >= 2 && passage.notes[first - 2].reach > 1) ||
            (first >= 3 && passage.notes[first - 3].reach > 2))) {
      --first;
    }
    return std::string(passage.words({first, thing.span.past}));
  }
  // "over the door": a thing of no list.
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    const std::uint32_t reach = c_.passage.notes[i].reach;
    if (!has(i, WordClass::relation) || has(i, WordClass::at) || has(i, WordClass::by) ||
        i + reach + 1 >= span.past)
      continue;
    if (has(i + reach, WordClass::us) && c_.passage.notes[i].cue < 0)
      return std::string(passage.words({i, i + reach + 1}));
    if (!has(i + reach, WordClass::determiner) || c_.passage.notes[i + reach].date >= 0 ||
        c_.passage.notes[i].cue >= 0) {
      continue;
    }
    std::uint32_t past = i + reach + 1;
    while (past < span.past && past < i + reach + 4 && !is_mark(past) && c_.passage.notes[past].date < 0 &&
           !has(past, WordClass::at) && !has(past, WordClass::coordinator) &&
           !has(past, WordClass::subordinator) && !has(past, WordClass::be) &&
           !has(past, WordClass::relative) && !has(past, WordClass::to)) {
      ++past;
    }
    if (past == i + reach + 1) continue;
    std::uint32_t first = i;
    while (first > span.first && has(first - 1, WordClass::relation_degree)) --first;
    return std::string(passage.words({first, past}));
  }
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (!has(i, WordClass::side) || passage.notes[i].thing >= 0) continue;
    std::uint32_t first = i;
    while (first > span.first && (has(first - 1, WordClass::determiner) || has(first - 1, WordClass::at) ||
                                  has(first - 1, WordClass::to))) {
      --first;
    }
    return std::string(passage.words({first, std::min(span.past, i + passage.notes[i].reach)}));
  }
  return {};
}

const Thing* Arguments::antecedent(const Predicate& p) const {
  const Clause& own = c_.reading.clauses[p.clause];
  if (!own.relative || own.span.first <= c_.reading.span.first) return nullptr;
  const Thing* found = nullptr;
  for (const Thing& thing : c_.passage.things_in(c_.reading.span)) {
    if (!c_.reading.span.holds(thing.span.first) || thing.span.past > own.span.first || !candidate(thing))
      continue;
    if (thing.span.past + 2 > own.span.first) found = &thing;
  }
  return found;
}

std::optional<Referent> Arguments::pronoun(bool plural, std::uint32_t at) const {
  // Within the sentence the nearest before it; a name set after a comma comes too ("it was never there, the
  // winch").
  const Thing* inside = nullptr;
  for (const Thing& thing : c_.passage.things_in(c_.reading.span)) {
    if (!c_.reading.span.holds(thing.span.first) || thing.plural != plural || !candidate(thing)) continue;
    if (thing.span.past <= at) inside = &thing;
  }
  if (inside) return referent_of(c_, *inside);
  // "Mum kept a tin of peaches, and she opened it": of no list.
  constexpr std::uint32_t kNear = 14;
  const std::uint32_t from = at > c_.reading.span.first + kNear ? at - kNear : c_.reading.span.first;
  // "put by with a sheet on it": the sheet is on something else.
  const bool by_preposition = at > from && (has(at - 1, WordClass::at) || has(at - 1, WordClass::relation) ||
                                            has(at - 1, WordClass::with));
  if (last_unlisted(c_.passage, {from, by_preposition && at > from + 2 ? at - 2 : at}, true))
    return std::nullopt;
  const std::optional<Referent> before = c_.focus.pronoun(plural, c_.asking);
  const Focus::Mentioned& nearest = plural ? c_.focus.things : c_.focus.thing;
  if (!before || c_.focus.words - nearest.at > 15) {
    for (const Thing& thing : c_.passage.things_in(c_.reading.span)) {
      if (!c_.reading.span.holds(thing.span.first) || thing.plural != plural || !candidate(thing)) continue;
      if (thing.span.first > at && thing.head > 0 && is_mark(thing.head - 1)) return referent_of(c_, thing);
    }
  }
  return before;
}

/// "the old one", "a steel one": one of what is spoken of.
bool Arguments::stands_for_noun(std::uint32_t i, bool& plural) const {
  if (i == 0 || !has(i, WordClass::one) || c_.passage.notes[i].thing >= 0) return false;
  const bool described = has(i - 1, WordClass::old) || has(i - 1, WordClass::new_) ||
                         has(i - 1, WordClass::quality) || has(i - 1, WordClass::colour) ||
                         has(i - 1, WordClass::material) || has(i - 1, WordClass::type);
  if (!described) return false;
  plural = false;
  return true;
}

bool Arguments::pronoun_object(const Predicate& p, bool& plural) const {
  for (std::uint32_t i = p.at + 1; i < std::min(p.right.past, p.at + 5); ++i) {
    if (is_mark(i) || c_.passage.notes[i].thing >= 0) return false;
    if (has(i, WordClass::pronoun)) {
      plural = has(i, WordClass::them);
      return true;
    }
    if (stands_for_noun(i, plural)) return true;
    // "Mrs Hall got one": a further one.
    if (has(i, WordClass::one) && p.kind == Predicate::Kind::verb && p.verb->kind == VerbKind::begins &&
        (i + 1 >= p.right.past || is_mark(i + 1) || c_.passage.notes[i + 1].date >= 0)) {
      plural = false;
      return true;
    }
    if (has(i, WordClass::indefinite) || has(i, WordClass::us) ||
        (i + 1 < p.right.past && has(i + 1, WordClass::one))) {
      continue;  // "gave us a steel one"
    }
    // Only adverbs and the verb's own particle may stand between: not "put a sock in it".
    if (!has(i, WordClass::adverb) && !p.span.holds(i) && !has(i, WordClass::everything)) return false;
  }
  return false;
}

bool Arguments::open_after(const Predicate& p) const {
  std::uint32_t i = p.span.past;
  while (i < p.right.past && has(i, WordClass::adverb)) ++i;
  if (i >= c_.reading.span.past || i >= p.right.past || is_mark(i) || c_.passage.notes[i].date >= 0)
    return true;
  return has(i, WordClass::at) || has(i, WordClass::to) || has(i, WordClass::from) ||
         has(i, WordClass::when) || has(i, WordClass::coordinator) || has(i, WordClass::subordinator) ||
         has(i, WordClass::be) || has(i, WordClass::by) || has(i, WordClass::with) ||
         has(i, WordClass::relation) || has(i, WordClass::there) || has(i, WordClass::side) ||
         has(i, WordClass::before) || has(i, WordClass::after) || has(i, WordClass::of) ||
         has(i, WordClass::in_place);
}

bool Arguments::names_somebody(Span span) const {
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    const Note& note = c_.passage.notes[i];
    const bool name =
        i > span.first && c_.passage.capitalised(i) && !note.flags.any() && note.thing < 0 && note.date < 0;
    if (name || note.flags.has(WordClass::person)) return true;
  }
  return false;
}

std::optional<Referent> Arguments::she(const Predicate& p, bool object) const {
  if (object) {
    const std::uint32_t next = p.at + 2;
    const bool ends = next >= p.right.past || is_mark(next) || c_.passage.notes[next].date >= 0 ||
                      has(next, WordClass::at) || has(next, WordClass::to) || has(next, WordClass::way) ||
                      has(next, WordClass::adverb) || has(next, WordClass::coordinator) ||
                      has(next, WordClass::when);
    return p.at + 1 < p.right.past && has(p.at + 1, WordClass::she) && ends ? c_.focus.she() : std::nullopt;
  }
  if (names_somebody({c_.reading.span.first, p.span.first})) return std::nullopt;
  for (std::uint32_t i = p.at + 1; i > p.left.first && i + 5 > p.at; --i) {
    if (is_mark(i - 1) || c_.passage.notes[i - 1].thing >= 0) return std::nullopt;
    if (has(i - 1, WordClass::she) && !has(i - 1, WordClass::determiner)) return c_.focus.she();
  }
  return std::nullopt;
}

bool Arguments::pronoun_subject(const Predicate& p, bool& plural) const {
  const auto look = [&](std::uint32_t i) {
    if (has(i, WordClass::it) || has(i, WordClass::this_)) {
      plural = false;
      return true;
    }
    if (has(i, WordClass::them) && (has(i, WordClass::pronoun) || has(i, WordClass::they))) {
      plural = true;
      return true;
    }
    return stands_for_noun(i, plural);
  };
  const Clause& own = c_.reading.clauses[p.clause];
  for (std::uint32_t i = p.span.past; i > p.left.first; --i) {
    const std::uint32_t at = i - 1;
    // "a chair that was bolted down": no pronoun.
    if (own.relative && at == own.span.first) return false;
    if (has(at, WordClass::relative) && at > own.span.first && !is_mark(at - 1) &&
        c_.passage.notes[at - 1].cue < 0 && !has(at - 1, WordClass::coordinator) &&
        !has(at - 1, WordClass::filler)) {
      return false;
    }
    if (is_mark(at)) return false;
    const bool person = has(at, WordClass::we) || has(at, WordClass::us) ||
                        (has(at, WordClass::they) && !has(at, WordClass::them));
    if (person && !has(at, WordClass::it)) return false;
    if (at != p.at && look(at)) return true;
    if (at == p.at && (has(at, WordClass::it))) return look(at);
    if (c_.passage.notes[at].thing >= 0) return false;
  }
  return false;
}

}  // namespace witnessmark::claims
