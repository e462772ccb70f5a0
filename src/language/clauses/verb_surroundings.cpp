#include "language/clauses/verb_surroundings.h"

#include <algorithm>

#include "language/clauses/whereabouts.h"

namespace witnessmark::claims {

bool VerbSurroundings::noun_position(std::uint32_t i) const {
  if (i == span_.first) return false;
  const std::uint32_t before = i - 1;
  if (is_mark(before)) return false;
  const Flags& f = notes_[before].flags;
  // "Six pumps", but "the new one came".
  const bool stands_alone = has(before, WordClass::one) && before > span_.first &&
                            (has(before - 1, WordClass::new_) || has(before - 1, WordClass::old) ||
                             has(before - 1, WordClass::quality) || has(before - 1, WordClass::this_));
  if (notes_[before].number >= 0) return !stands_alone;
  if (f.has(WordClass::determiner) && !f.has(WordClass::relative) && !f.has(WordClass::it) &&
      !f.has(WordClass::them) && !f.has(WordClass::this_)) {
    return true;
  }
  return f.has(WordClass::old) || f.has(WordClass::of) || f.has(WordClass::colour) ||
         f.has(WordClass::negative_determiner) || (f.has(WordClass::quality) && !is_aux(before));
}

std::uint32_t VerbSurroundings::particle_at(std::uint32_t i, const Verb& verb) const {
  const auto length = static_cast<std::uint32_t>(verb.particle_forms.size());
  if (length == 0) return i;
  const auto matches = [&](std::uint32_t k) {
    if (k + length > span_.past) return false;
    for (std::uint32_t n = 0; n < length; ++n) {
      if (passage_.tokens[k + n].form != verb.particle_forms[n]) return false;
    }
    return true;
  };
  // "Down came the chimney."
  if (length == 1 && verb.frame == VerbFrame::subject && i > span_.first && matches(i - 1) &&
      (i - 1 == span_.first || is_mark(i - 2) || has(i - 2, WordClass::coordinator))) {
    return i - 1;
  }
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + kParticleReach); ++k) {
    if (matches(k) && (k == i + 1 || (length == 1 && verb.frame == VerbFrame::object))) {
      if (is_particle(k, k + length, k == i + 1, verb.frame == VerbFrame::subject)) return k;
    }
    if (is_mark(k) || has(k, WordClass::be) || has(k, WordClass::have) || has(k, WordClass::relative) ||
        has(k, WordClass::when) || has(k, WordClass::subordinator) || has(k, WordClass::modal)) {
      return kNowhere;
    }
    const WordInfo* info = notes_[k].info;
    const bool verb_here =
        info && notes_[k].thing < 0 && (info->verb_forms[0] & 4U) != 0 && k > i + 1 && !noun_position(k);
    if (verb_here) return kNowhere;
    if (k > i + 1 && (has(k, WordClass::at) || has(k, WordClass::to)) && notes_[k].thing < 0 && !matches(k)) {
      // A prepositional phrase between verb and particle: "put on the deck off" does not happen.
      if (length == 1 && k + 1 < span_.past && matches(k + 1)) continue;
      return kNowhere;
    }
  }
  return kNowhere;
}

bool VerbSurroundings::is_particle(std::uint32_t k, std::uint32_t past, bool adjacent,
                                   bool subject_frame) const {
  if (notes_[k].date >= 0) return false;
  // "The hoist went up the stairs", "ran along the wall": how far, not that it was put up.
  const bool on_a_way = adjacent && subject_frame && has(k, WordClass::along) && past == k + 1 &&
                        past < span_.past && notes_[past].date < 0 && has(past, WordClass::determiner) &&
                        !has(past, WordClass::this_) && (past + 1 >= span_.past || notes_[past + 1].date < 0);
  if (on_a_way) return false;
  if (!has(k, WordClass::at) && !has(k, WordClass::to)) return true;
  if (past >= span_.past || is_mark(past)) return true;
  if (notes_[past].date >= 0) return false;
  // "It went in watches": of a verb without object a noun phrase follows a preposition.
  if (adjacent && subject_frame) return is_adverb(past) || is_grammar(past);
  if (adjacent) return true;
  return !has(past, WordClass::determiner) && notes_[past].thing < 0 && notes_[past].number < 0;
}

bool VerbSurroundings::never_any(std::uint32_t i) const {
  if (i + 1 >= span_.past || i == span_.first || !has(i - 1, WordClass::never)) return false;
  return has(i + 1, WordClass::one) || has(i + 1, WordClass::any);
}

bool VerbSurroundings::object_after(std::uint32_t i) const {
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 12); ++k) {
    if (passage_.is_mark(k) && passage_.tokens[k].mark != ',') return false;
    if (has(k, WordClass::pronoun)) return true;
    if (passage_.names(k, ThingKind::equipment)) {
      return true;
    }
  }
  return false;
}

bool VerbSurroundings::ends_reach(std::uint32_t k) const {
  if (!is_mark(k)) return false;
  if (passage_.tokens[k].mark != ',') return true;
  return k + 1 < span_.past && (has(k + 1, WordClass::coordinator) || has(k + 1, WordClass::subordinator) ||
                                has(k + 1, WordClass::relative) || has(k + 1, WordClass::when));
}

bool VerbSurroundings::thing_after(std::uint32_t i, std::uint32_t limit, bool with_role_to,
                                   bool with_role_from, bool any_place) const {
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + limit); ++k) {
    if (ends_reach(k)) return false;
    const Flags& f = notes_[k].flags;
    if (any_place || with_role_to) {
      if (f.has(WordClass::in_place) || f.has(WordClass::in_there)) return true;
    }
    if (with_role_from && f.has(WordClass::from)) return true;
    const Thing* thing = passage_.thing_at(k);
    if (!thing) continue;
    if (thing->kind == ThingKind::equipment) {
      if (any_place && thing->role == Role::relation) return true;
      // "They put the bulb in the lens."
      if (with_role_to && k > i + 2 && (thing->role == Role::to || thing->role == Role::at)) return true;
      continue;
    }
    if (with_role_to && (thing->role == Role::to || thing->role == Role::at)) return true;
    if (any_place && thing->role != Role::from && thing->role != Role::of) return true;
  }
  return false;
}

bool VerbSurroundings::needs_met(std::uint32_t i, const Verb& verb, std::uint8_t forms,
                                 const Predicate& p) const {
  switch (verb.needs) {
    case VerbNeeds::nothing:
      return true;
    case VerbNeeds::thing:
      return verb.kind != VerbKind::happened || verb.frame == VerbFrame::subject || p.passive || acts_on(i) ||
             relative_before(i);
    case VerbNeeds::newthing:
      return new_thing_beside(i) && (p.passive || acts_on(i) || relative_before(i));
    case VerbNeeds::aboard:
      return agent_can_join(i) && boards_after(past_verb(i, verb));
    case VerbNeeds::seen:
      return object_after(i);
    case VerbNeeds::sight:
      return object_after(i) || never_any(i);
    case VerbNeeds::place:
      return thing_after(i, 16, false, false, true) || has(span_.first, WordClass::where) ||
             (verb.kind == VerbKind::present && beside_something(i));
    case VerbNeeds::returned:
      return p.passive || thing_after(i, 16, false, false, true) || (acts_on(i) && others_act(i));
    case VerbNeeds::toplace:
      return (thing_after(i, 16, true, false, false) || has(span_.first, WordClass::where) ||
              put_somewhere(i)) &&
             (verb.frame == VerbFrame::subject || p.passive || object_after(i) || relative_before(i));
    case VerbNeeds::fromplace:
      return thing_after(i, 12, false, true, false);
    case VerbNeeds::move: {
      for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 16); ++k) {
        const Thing* thing = passage_.thing_at(k);
        if (!thing) continue;
        if (thing->kind != ThingKind::equipment && thing->role == Role::to) return true;
      }
      return false;
    }
    case VerbNeeds::weobject:
      return (forms & 12U) != 0 && !p.passive && direct_object(i) && !has(i + 1, WordClass::pronoun);
    case VerbNeeds::past:
      return goes_away(i, forms);
    case VerbNeeds::swap:
      return swap_word_after(i);
    case VerbNeeds::colour:
      return class_after(i, WordClass::colour);
    case VerbNeeds::name:
      return true;
    case VerbNeeds::counted:
      return counted_after(i);
    case VerbNeeds::location:
      return (location_after(i) && who_can_be_somewhere(i)) ||
             (somebody_before(p.span.first) &&
              (place_behind(past_verb(i, verb)) ||
               ((has(i, WordClass::journey) || has(i, WordClass::leaving)) &&
                !destination_after(passage_, span_, past_verb(i, verb)).empty())));
  }
  return false;
}

bool VerbSurroundings::relative_before(std::uint32_t i) const {
  bool agent = false;
  for (std::uint32_t k = i; k > span_.first && k + 5 > i; --k) {
    if (has(k - 1, WordClass::relative)) return true;
    if (notes_[k - 1].thing >= 0) return agent;
    agent = agent || has(k - 1, WordClass::they) || has(k - 1, WordClass::we);
  }
  return false;
}

bool VerbSurroundings::direct_object(std::uint32_t i) const {
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 7); ++k) {
    if (is_mark(k) || notes_[k].date >= 0) return false;
    if (has(k, WordClass::pronoun) || has(k, WordClass::one)) return true;
    if (const Thing* thing = passage_.thing_at(k)) return thing->kind == ThingKind::equipment;
    if (has(k, WordClass::at) || has(k, WordClass::to) || has(k, WordClass::from) ||
        has(k, WordClass::relation) || has(k, WordClass::coordinator) || has(k, WordClass::by) ||
        has(k, WordClass::with) || has(k, WordClass::when) || has(k, WordClass::be)) {
      return false;
    }
  }
  return false;
}

bool VerbSurroundings::new_thing_beside(std::uint32_t i) const {
  for (const Thing& thing : passage_.things_in(span_)) {
    if (!span_.holds(thing.span.first) || thing.kind != ThingKind::equipment) continue;
    if (thing.span.first + 8 < i || thing.span.first > i + 6) continue;
    for (std::uint32_t k = thing.head; k < thing.span.past; ++k) {
      if (has(k, WordClass::new_)) return true;
    }
  }
  return false;
}

bool VerbSurroundings::acts_on(std::uint32_t i) const {
  if (direct_object(i)) return true;
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 6); ++k) {
    if (is_mark(k) || notes_[k].date >= 0) return false;
    if (const Thing* thing = passage_.thing_at(k)) return thing->kind != ThingKind::person;
    if (!has(k, WordClass::determiner) && !has(k, WordClass::old) && !has(k, WordClass::everything) &&
        !is_adverb(k)) {
      return false;
    }
  }
  return false;
}

std::uint32_t VerbSurroundings::past_verb(std::uint32_t i, const Verb& verb) const {
  if (verb.particle_forms.empty()) return i + 1;
  return particle_at(i, verb) + static_cast<std::uint32_t>(verb.particle_forms.size());
}

bool VerbSurroundings::others_act(std::uint32_t i) const {
  for (std::uint32_t k = i; k > span_.first && k + 5 > i && !is_mark(k - 1); --k)
    if (has(k - 1, WordClass::they)) return true;
  return false;
}

bool VerbSurroundings::agent_can_join(std::uint32_t i) const {
  for (std::uint32_t k = i; k > span_.first && k + 7 > i; --k) {
    if (is_mark(k - 1)) return false;
    if (has(k - 1, WordClass::self) || has(k - 1, WordClass::we)) return true;
    if (const Thing* thing = passage_.thing_at(k - 1)) return thing->kind == ThingKind::person;
  }
  return false;
}

bool VerbSurroundings::boards_after(std::uint32_t i) const {
  const std::uint32_t first = std::max(i, span_.first + 1);
  for (std::uint32_t k = first; k < std::min(span_.past, first + 6); ++k) {
    if (is_mark(k) || notes_[k].date >= 0 || has(k, WordClass::she) || has(k, WordClass::it)) return true;
    if (const Thing* thing = passage_.thing_at(k))
      return thing->kind == ThingKind::place || thing->kind == ThingKind::location;
    if (!has(k, WordClass::determiner) && !has(k, WordClass::at) && !has(k, WordClass::of) &&
        !has(k, WordClass::to) && !is_adverb(k)) {
      return has(k, WordClass::when) || has(k, WordClass::coordinator);
    }
  }
  return true;
}

bool VerbSurroundings::dated_from(std::uint32_t i) const {
  return i < span_.past && (notes_[i].date >= 0 ||
                            (has(i, WordClass::determiner) && i + 1 < span_.past && notes_[i + 1].date >= 0));
}

bool VerbSurroundings::goes_away(std::uint32_t i, std::uint8_t forms) const {
  // "it didn't come" as well as "it came".
  bool did = false;
  for (std::uint32_t k = i; k > span_.first && k + 3 > i; --k) did = did || has(k - 1, WordClass::do_);
  if ((forms & 4U) == 0 && !(did && (forms & 1U) != 0)) return false;
  // "It would come in time", "it started to come": not the past.
  std::uint32_t before = i;
  while (before > span_.first && is_adverb(before - 1)) --before;
  if (before > span_.first && (forms & 1U) != 0 &&
      (has(before - 1, WordClass::modal) || has(before - 1, WordClass::to)))
    return false;
  if (i + 1 >= span_.past || is_mark(i + 1)) return true;
  if (notes_[i + 1].date >= 0) return did || !lasts(i + 1);
  if (i + 2 < span_.past && notes_[i + 2].date >= 0 && !did && lasts(i + 2))
    return false;  // "It went for nine days."
  const Flags& f = notes_[i + 1].flags;
  return f.has(WordClass::when) || f.has(WordClass::then) || f.has(WordClass::adverb) ||
         f.has(WordClass::coordinator) || f.has(WordClass::before) || f.has(WordClass::after) ||
         (f.has(WordClass::until) && dated_from(i + 1 + notes_[i + 1].reach)) ||
         f.has(WordClass::subordinator) ||
         (f.has(WordClass::by) && i + 2 < span_.past && notes_[i + 2].date >= 0) ||
         ((f.has(WordClass::at) || f.has(WordClass::for_)) && i + 2 < span_.past &&
          (notes_[i + 2].date >= 0 || has(i + 2, WordClass::indefinite) ||
           // "It came in the June", "on the Monday."
           (has(i + 2, WordClass::determiner) && i + 3 < span_.past && notes_[i + 3].date >= 0)));
}

bool VerbSurroundings::swap_word_after(std::uint32_t i) const {
  for (std::uint32_t k = i + 1; k < span_.past && !ends_reach(k) && !opens_clause(passage_, span_, k); ++k) {
    if (!has(k, WordClass::for_) && !has(k, WordClass::with) && !has(k, WordClass::to)) continue;
    const auto behind = passage_.things_in({k + 1, span_.past});
    if (!behind.empty() && behind.front().kind == ThingKind::equipment && behind.front().head <= k + 1)
      return true;
  }
  return false;
}

bool VerbSurroundings::class_after(std::uint32_t i, WordClass c) const {
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 10); ++k) {
    if (ends_reach(k) || opens_clause(passage_, span_, k)) return false;
    if (has(k, c)) return true;
  }
  return false;
}

bool VerbSurroundings::who_can_be_somewhere(std::uint32_t i) const {
  for (std::uint32_t k = i; k > span_.first && k + 8 > i; --k) {
    if (is_mark(k - 1)) return false;
    if (const Thing* thing = passage_.thing_at(k - 1)) return thing->kind != ThingKind::equipment;
    if (has(k - 1, WordClass::we) || has(k - 1, WordClass::she) || has(k - 1, WordClass::it)) return true;
  }
  return false;
}

bool VerbSurroundings::counted_after(std::uint32_t i) const {
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 6); ++k) {
    if (is_mark(k) || notes_[k].date >= 0) return false;
    if (const Thing* thing = passage_.thing_at(k)) return thing->quantity >= 0;
  }
  return false;
}

bool VerbSurroundings::location_after(std::uint32_t i) const {
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 14); ++k) {
    if (passage_.is_mark(k) && passage_.tokens[k].mark != ',') return false;
    const Thing* thing = passage_.thing_at(k);
    if (!thing) continue;
    if (thing->kind == ThingKind::location || thing->location) return true;
  }
  return false;
}

bool VerbSurroundings::named_object(std::uint32_t i) const {
  if (!direct_object(i)) return false;
  for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 7); ++k) {
    if (notes_[k].thing >= 0) return true;
    if (has(k, WordClass::pronoun) || has(k, WordClass::one)) return false;
  }
  return false;
}

bool VerbSurroundings::put_somewhere(std::uint32_t i) const {
  if (!named_object(i)) return false;
  for (std::uint32_t k = i + 1; k + 1 < std::min(span_.past, i + 9); ++k) {
    if (is_mark(k) || notes_[k].date >= 0) return false;
    if (notes_[k].thing < 0 && (has(k, WordClass::at) || has(k, WordClass::to)))
      return has(k + 1, WordClass::determiner) && !has(k + 1, WordClass::pronoun) &&
             !has(k + 1, WordClass::indefinite);
  }
  return false;
}

bool VerbSurroundings::beside_something(std::uint32_t i) const {
  for (std::uint32_t k = i + 1; k + 1 < std::min(span_.past, i + 4); ++k) {
    if (is_mark(k) || notes_[k].date >= 0) return false;
    if (has(k, WordClass::side)) return true;
    if (!has(k, WordClass::relation) && !has(k, WordClass::at)) continue;
    const std::uint32_t next = k + notes_[k].reach;
    return next < span_.past && has(next, WordClass::determiner) && notes_[next].date < 0 &&
           !has(next, WordClass::pronoun);
  }
  return false;
}

bool VerbSurroundings::equipment_right_before(std::uint32_t i) const {
  std::uint32_t k = i;
  while (k > span_.first && is_adverb(k - 1)) --k;
  const Thing* thing = k == span_.first ? nullptr : passage_.thing_at(k - 1);
  return thing && thing->kind == ThingKind::equipment && thing->role == Role::none && !thing->shadowed;
}

bool VerbSurroundings::somebody_before(std::uint32_t i) const {
  for (std::uint32_t k = i; k > span_.first && k + 4 > i; --k) {
    const std::uint32_t at = k - 1;
    if (is_mark(at) || notes_[at].date >= 0) return false;
    if (const Thing* thing = passage_.thing_at(at)) return thing->kind == ThingKind::person;
    if (has(at, WordClass::we) || has(at, WordClass::she) || has(at, WordClass::person)) return true;
    if (has(at, WordClass::they) && !has(at, WordClass::them)) return true;
    if (!is_adverb(at) && !has(at, WordClass::both) && !has(at, WordClass::everything)) return false;
  }
  // A contraction holds its subject: "we'd gone".
  return i < span_.past && (has(i, WordClass::we) || has(i, WordClass::she) ||
                            (has(i, WordClass::they) && !has(i, WordClass::them)));
}

bool VerbSurroundings::place_behind(std::uint32_t i) const {
  for (std::uint32_t k = i; k < std::min(span_.past, i + 9); ++k) {
    if (is_mark(k) || has(k, WordClass::coordinator) || has(k, WordClass::relative) ||
        has(k, WordClass::subordinator))
      return false;
    const Thing* thing = passage_.thing_at(k);
    if (!thing) continue;
    if (thing->kind != ThingKind::place && thing->kind != ThingKind::location) return false;
    return thing->role == Role::at || thing->role == Role::to;
  }
  return false;
}

bool VerbSurroundings::in_cue_of_doubt(std::uint32_t i) const {
  if (notes_[i].cue < 0) return false;
  const CueClass cue = words_.cues[passage_.cues[static_cast<std::size_t>(notes_[i].cue)].cue].cue;
  return cue == CueClass::memory || cue == CueClass::hedge;
}

bool VerbSurroundings::asks_oneself(std::uint32_t i) const {
  std::uint32_t begin = i;
  while (begin > span_.first && !is_mark(begin - 1)) --begin;
  std::uint32_t past = i;
  while (past < span_.past && !is_mark(past)) ++past;
  return begin > span_.first && past < span_.past && past - begin <= 6 &&
         has(begin, WordClass::question_word);
}

bool VerbSurroundings::has_it_somewhere(std::uint32_t i) const {
  if (i + 2 >= span_.past || !has(i + 1, WordClass::pronoun) || has(i, WordClass::had_or_would)) return false;
  const WordInfo* next = notes_[i + 2].info;
  if (next && (next->verb_forms[0] & 8U) != 0) return false;
  for (std::uint32_t k = i + 2; k < std::min(span_.past, i + 9); ++k) {
    if (is_mark(k)) return false;
    const Thing* thing = passage_.thing_at(k);
    if (!thing) continue;
    return thing->kind == ThingKind::place && (thing->role == Role::at || thing->role == Role::relation);
  }
  return false;
}

bool VerbSurroundings::has_one(std::uint32_t i) const {
  return i + 1 < span_.past && has(i + 1, WordClass::one) && notes_[i + 1].thing < 0 &&
         (i + 2 >= span_.past || is_mark(i + 2) || has(i + 2, WordClass::at) ||
          has(i + 2, WordClass::adverb));
}

bool VerbSurroundings::has_something_somewhere(std::uint32_t i) const {
  if (i + 2 >= span_.past || !has(i + 1, WordClass::indefinite)) return false;
  for (std::uint32_t k = i + 2; k < std::min(span_.past, i + 10); ++k) {
    if (is_mark(k)) return false;
    if (has(k, WordClass::in_there)) return true;
    const Thing* thing = passage_.thing_at(k);
    if (!thing) continue;
    return thing->kind == ThingKind::place && (thing->role == Role::at || thing->role == Role::relation);
  }
  return false;
}

bool VerbSurroundings::has_part(std::uint32_t i) const {
  if (i + 2 >= span_.past || i == span_.first) return false;
  if (!has(i + 1, WordClass::indefinite) && !has(i + 1, WordClass::determiner) &&
      !has(i + 1, WordClass::negative_determiner)) {
    return false;
  }
  return notes_[i - 1].thing >= 0 || has(i - 1, WordClass::it) || has(i, WordClass::it);
}

}  // namespace witnessmark::claims
