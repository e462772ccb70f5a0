// What the verbs of verbs.csv state of their subjects and objects.
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

void StatementReader::verb(const Predicate& p) {
  switch (p.verb->kind) {
    case VerbKind::begins:
      begins_or_ends(p, Statement::begins);
      break;
    case VerbKind::ends:
      begins_or_ends(p, Statement::ends);
      break;
    case VerbKind::move:
      move(p);
      break;
    case VerbKind::replace:
      replace(p);
      break;
    case VerbKind::swap:
      swap(p);
      break;
    case VerbKind::takeover:
      takeover(p);
      break;
    case VerbKind::present:
      if (p.verb->needs == VerbNeeds::seen || p.verb->needs == VerbNeeds::sight) {
        seen(p);
      } else {
        stands(p);
      }
      break;
    case VerbKind::paint:
      paint(p);
      break;
    case VerbKind::unpaint:
      unpaint(p);
      break;
    case VerbKind::name:
      name(p);
      break;
    case VerbKind::happened:
      happened(p);
      break;
    case VerbKind::located:
      located(p);
      break;
    case VerbKind::built:
      built(p);
      break;
    case VerbKind::does:
      does(p);
      break;
  }
}

void StatementReader::begins_or_ends(const Predicate& p, Statement statement) {
  const bool object = p.verb->frame == VerbFrame::object;
  const std::vector<Subject> subjects = object ? objects_or_pronoun(p) : subjects_or_pronoun(p);
  const bool ending = statement == Statement::ends;
  const bool everything = arguments_.any_in(p.right, WordClass::everything);
  for (const Subject& subject : subjects) {
    bool negated = p.negated || (subject.thing && subject.thing->negated);
    if (everything && subject.thing && subject.thing->head > 0 &&
        arguments_.has(subject.thing->head - 1, WordClass::terminator)) {
      negated = !negated;  // "took off everything except the anchor"
    }
    Draft& draft = add(&p, statement, subject, negated);
    place_it(draft, &p, ending);
    // "not yet fitted" says that it was not there.
    if (statement == Statement::begins && negated && arguments_.any_in(p.span, WordClass::yet)) {
      draft.statement = Statement::absent;
      draft.polarity = Polarity::affirmed;
    }
  }
  if (subjects.empty() && object) {
    // "They built the engine house", "the engine house was built".
    const Thing* place = arguments_.place_in(p.passive ? p.left : p.right, {Role::none});
    const bool right_there =
        place && (p.passive ? place->span.past + 2 >= p.span.first : place->head <= p.span.past + 1);
    if (right_there && !place->negated) is_of(add(&p, statement, {}, p.negated), *place);
    return;
  }
  if (subjects.empty()) return;
  for (const Thing* thing : arguments_.contrasted(c_.reading.clauses[p.clause].span)) {
    const bool already =
        std::any_of(subjects.begin(), subjects.end(), [&](const Subject& s) { return s.thing == thing; });
    if (already) continue;
    Draft& draft = add(&p, statement, {referent_of(c_, *thing), thing}, true);
    place_it(draft, &p, ending);
  }
}

void StatementReader::move(const Predicate& p) {
  const std::vector<Subject> subjects =
      p.verb->frame == VerbFrame::object ? objects_or_pronoun(p) : subjects_or_pronoun(p);
  const Span clause = c_.reading.clauses[p.clause].span;
  const Thing* to = arguments_.place_in({p.at, clause.past}, {Role::to});
  const Thing* from = arguments_.place_in({p.at, clause.past}, {Role::from});
  if (!to && !from) to = arguments_.place_in({p.at, clause.past}, {Role::at});
  if (subjects.empty()) {
    // "Then we moved up to number two."
    const Subject who = person_before(p);
    const bool people = who.referent || !who.words.empty() || p.agent == Agent::we;
    if (people && in_past_form(p)) located_in_words(p, who, true);
    return;
  }
  // "The turbine went into the turbine house" says nothing of an earlier place.
  const bool only_comes = p.verb->frame == VerbFrame::subject && p.verb->needs == VerbNeeds::move && !from;
  const bool somewhere = to || from || !arguments_.relative_place({p.at, clause.past}, nullptr).empty() ||
                         arguments_.any_in({p.at, clause.past}, WordClass::in_there) ||
                         arguments_.any_in({p.at, clause.past}, WordClass::side) ||
                         arguments_.any_in({p.at, clause.past}, WordClass::whereabouts);
  for (const Subject& subject : subjects) {
    const bool negated = p.negated || (subject.thing && subject.thing->negated);
    if (!somewhere && !negated) {
      // "Somebody moved it": that it was moved is all that is said.
      Draft& moved = add(&p, Statement::happened, subject, negated);
      moved.attribute = moved.action;
      place_it(moved, &p, false);
      continue;
    }
    // "I carried carbide drums into the store": what was handled, not what came to stay.
    const bool handled = p.agent == Agent::we && p.verb->needs == VerbNeeds::move && subject.thing &&
                         subject.thing->plural && subject.thing->head == subject.thing->span.first;
    if (handled && to && !from) {
      Draft& happened = add(&p, Statement::happened, subject, negated);
      happened.attribute = happened.action;
      happened.place = referent_of(c_, *to);
      continue;
    }
    if (only_comes) {
      Draft& comes = add(&p, Statement::begins, subject, negated);
      if (to) comes.place = referent_of(c_, *to);
      continue;
    }
    Draft& ends = add(&p, Statement::ends, subject, negated);
    const Draft* before = c_.focus.repeatable();
    const bool said_of_it = before && before->place && before->subject && subject.referent &&
                            subject.referent->carried && before->subject->terms == subject.referent->terms;
    if (from) {
      ends.place = referent_of(c_, *from);
    } else if (said_of_it) {
      // Moved from where it was said to be.
      ends.place = before->place;
      ends.place->carried = true;
    } else if (subject.referent && subject.referent->carried && !drafts_.empty()) {
      for (const Draft& earlier : drafts_) {
        if (earlier.place && earlier.subject && earlier.subject->terms == subject.referent->terms) {
          ends.place = earlier.place;
        }
      }
    }
    if (negated || (from && !to)) continue;
    Draft& begins = add(&p, Statement::begins, subject, false);
    if (to) {
      begins.place = referent_of(c_, *to);
    } else {
      begins.place_words = arguments_.relative_place({p.at, clause.past}, subject.thing);
    }
  }
}

void StatementReader::replace(const Predicate& p) {
  const Span clause = c_.reading.clauses[p.clause].span;
  const auto with = arguments_.with_role({p.at, clause.past}, Role::with);
  auto by = arguments_.with_role({p.at, clause.past}, Role::by);
  std::vector<Subject> gone;
  std::vector<Subject> come;
  if (p.passive) {
    gone = subjects_or_pronoun(p);
    come = things(by.empty() ? with : by);
  } else {
    gone = objects_or_pronoun(p);
    come = things(with);
    if (come.empty()) {
      // "The turbine replaced the wheel."
      const auto left = arguments_.subjects(p);
      const auto right = arguments_.objects(p);
      if (!left.empty() && (!right.empty() || (!gone.empty() && !gone[0].thing))) come = things(left);
    }
  }
  for (const Subject& subject : gone) {
    Draft& draft = add(&p, Statement::ends, subject, p.negated);
    place_it(draft, &p, true);
  }
  if (p.negated) return;
  // "They replaced the stove": a new one of the same kind.
  if (come.empty()) come = gone;
  for (const Subject& subject : come) {
    Draft& draft = add(&p, Statement::begins, subject, false);
    place_it(draft, &p, false);
  }
}

void StatementReader::swap(const Predicate& p) {
  const Span clause = c_.reading.clauses[p.clause].span;
  auto come = arguments_.with_role({p.at, clause.past}, Role::for_);
  if (come.empty()) come = arguments_.with_role({p.at, clause.past}, Role::with);
  if (come.empty()) come = arguments_.with_role({p.at, clause.past}, Role::to);
  if (come.empty()) return;
  for (const Subject& subject : objects_or_pronoun(p)) {
    Draft& draft = add(&p, Statement::ends, subject, p.negated);
    place_it(draft, &p, true);
  }
  for (const Subject& subject : things(come)) {
    Draft& draft = add(&p, Statement::begins, subject, p.negated);
    place_it(draft, &p, false);
  }
}

void StatementReader::takeover(const Predicate& p) {
  const Span clause = c_.reading.clauses[p.clause].span;
  const std::vector<Subject> left = subjects_or_pronoun(p);
  std::vector<Subject> right = things(arguments_.group_in({p.span.past, clause.past}));
  if (right.empty()) {
    for (const Role role : {Role::from, Role::to, Role::for_}) {
      if (right.empty()) right = things(arguments_.with_role({p.at, clause.past}, role));
    }
  }
  if (left.empty() || right.empty()) return;
  const bool newcomer_left = p.verb->particle.starts_with("over");
  for (const Subject& subject : left) {
    Draft& draft = add(&p, newcomer_left ? Statement::begins : Statement::ends, subject, p.negated);
    place_it(draft, &p, !newcomer_left);
  }
  for (const Subject& subject : right) {
    Draft& draft = add(&p, newcomer_left ? Statement::ends : Statement::begins, subject, p.negated);
    place_it(draft, &p, newcomer_left);
  }
}

/// "Instead of the searchlight they gave us a loudhailer."
void StatementReader::instead_of(const Predicate& p) {
  if (p.kind != Predicate::Kind::verb || p.verb->kind != VerbKind::begins || p.negated) return;
  for (const Subject& subject :
       things(arguments_.with_role(c_.reading.clauses[p.clause].span, Role::instead))) {
    Draft& draft = add(&p, Statement::ends, subject, false);
    place_it(draft, &p, true);
  }
}

/// "The winch came in 1946 and the stove in 1948": the verb is not said again.
void StatementReader::said_of_more(const Predicate& p, std::size_t first) {
  if (drafts_.size() == first || p.kind != Predicate::Kind::verb) return;
  const Draft said = drafts_[first];
  if (!is_change(said.statement) || !said.subject) return;
  Span rest{p.span.past, c_.reading.span.past};
  for (const Predicate& other : c_.reading.predicates)
    if (other.at > p.at) rest.past = std::min(rest.past, other.span.first);
  const bool dated = said.date && !said.date->carried;
  for (const Thing& thing : passage_.things_in(rest)) {
    if (!rest.holds(thing.span.first) || thing.shadowed || thing.kind != ThingKind::equipment ||
        thing.head <= rest.first ||
        (!arguments_.has(thing.head - 1, WordClass::coordinator) && !arguments_.is_mark(thing.head - 1)))
      continue;
    std::uint32_t behind = thing.span.past;
    if (behind < rest.past && arguments_.has(behind, WordClass::at)) ++behind;
    if (behind >= rest.past) continue;
    const std::int32_t date = passage_.notes[behind].date;
    const bool other_date = dated && date >= 0 && passage_.dates[static_cast<std::size_t>(date)].edtf &&
                            passage_.date_spans[static_cast<std::size_t>(date)].first <= behind;
    if (!other_date) continue;
    Draft& draft = add(&p, said.statement, {referent_of(c_, thing), &thing}, false);
    draft.polarity = said.polarity;
    draft.basis = said.basis;
    draft.knower = said.knower;
    draft.firmness = said.firmness;
    draft.date = ChosenDate{passage_.dates[static_cast<std::size_t>(date)], false};
  }
}

/// Of the place itself, which is what "it" stands for from here.
void StatementReader::is_of(Draft& draft, const Thing& place) const {
  draft.place = referent_of(c_, place);
  draft.of_place = true;
}

void StatementReader::paint(const Predicate& p) {
  std::vector<Subject> subjects = objects_or_pronoun(p);
  const Span clause = c_.reading.clauses[p.clause].span;
  const Thing* place = nullptr;
  if (subjects.empty()) {
    place = arguments_.place_in(p.passive ? p.left : p.right, {Role::none});
    if (!place) return;
    subjects.push_back({});
  }
  const bool dated = !dates_for(passage_, c_.reading, &p, p.clause).empty();
  for (const Subject& subject : subjects) {
    bool any = false;
    std::uint32_t last_end = p.span.past;
    for (std::uint32_t i = p.span.past; i < clause.past;) {
      std::uint32_t end = i;
      const std::string colour = arguments_.has(i, WordClass::colour) || arguments_.has(i, WordClass::shade)
                                     ? property_at(i, clause.past, &end)
                                     : std::string();
      // A second colour counts only when joined to the first: not "red with a white band".
      const bool apart = any && i > last_end && !arguments_.has(i - 1, WordClass::coordinator) &&
                         !arguments_.has(i - 1, WordClass::negative) && !arguments_.is_mark(i - 1);
      if (colour.empty() || passage_.notes[i].thing >= 0 || apart ||
          arguments_.any_in({last_end, i}, WordClass::we)) {
        ++i;
        continue;
      }
      bool negated = p.negated;
      if (i > 0 && arguments_.has(i - 1, WordClass::negative) && i - 1 >= p.span.past) negated = true;
      Draft& draft =
          add(&p, p.passive && !dated ? Statement::attribute : Statement::begins, subject, negated);
      draft.attribute = colour;
      if (place) {
        is_of(draft, *place);
      } else {
        place_it(draft, &p, false);
      }
      any = true;
      i = last_end = std::max(end, i + 1);
    }
    if (any) continue;
    Draft& draft = add(&p, Statement::happened, subject, p.negated);
    draft.attribute = "painted";
    if (place) {
      is_of(draft, *place);
    } else {
      place_it(draft, &p, false);
    }
  }
}

void StatementReader::unpaint(const Predicate& p) {
  const Span clause = c_.reading.clauses[p.clause].span;
  std::string colour;
  for (std::uint32_t i = p.at + 1; i < clause.past && colour.empty(); ++i) {
    if (arguments_.has(i, WordClass::colour)) colour = property_at(i, clause.past, nullptr);
  }
  if (colour.empty()) return;
  for (const Thing& thing : passage_.things_in(clause)) {
    if (thing.kind != ThingKind::equipment || !clause.holds(thing.span.first)) continue;
    Draft& draft = add(&p, Statement::ends, {referent_of(c_, thing), &thing}, p.negated);
    draft.attribute = colour;
    place_it(draft, &p, true);
    return;
  }
}

void StatementReader::name(const Predicate& p) {
  std::vector<Subject> subjects = p.passive ? subjects_or_pronoun(p) : objects_or_pronoun(p);
  if (subjects.empty()) return;
  std::uint32_t first = p.span.past;
  if (!p.passive) {
    if (subjects[0].thing && subjects[0].thing->span.first >= p.at) {
      first = subjects[0].thing->span.past;
    } else {
      ++first;  // Over the pronoun.
    }
  }
  std::uint32_t past = first;
  while (past < p.right.past && !arguments_.is_mark(past) && past < first + 5 &&
         !arguments_.has(past, WordClass::subordinator) && passage_.notes[past].date < 0) {
    ++past;
  }
  const std::string words(passage_.words({first, past}));
  if (words.empty() || passage_.notes[first].number >= 0) return;
  for (const Subject& subject : subjects) {
    Draft& draft = add(&p, Statement::attribute, subject, p.negated);
    draft.attribute = "name: " + words;
    place_it(draft, &p, false);
  }
}

/// "I wound it every Friday", "they used to ring it": what was done again and again was there to do it to.
bool StatementReader::is_habit(const Predicate& p) const {
  if (p.negated) return false;
  const Span clause = c_.reading.clauses[p.clause].span;
  for (std::uint32_t i = clause.first; i < clause.past; ++i) {
    if (arguments_.has(i, WordClass::habit)) return true;
  }
  for (std::uint32_t i = p.span.first >= clause.first + 3 ? p.span.first - 3 : clause.first; i < p.at; ++i) {
    if (arguments_.has(i, WordClass::used_to)) return true;
  }
  return false;
}

/// "They tried it", not "nobody could try it", "for trying it": what happened is told in a past form.
bool StatementReader::in_past_form(const Predicate& p) const {
  const WordInfo* info = passage_.notes[p.at].info;
  if (p.verb == &c_.words.any_doing || p.verb == &c_.words.any_going || !info) return true;
  constexpr auto kPast =
      static_cast<std::uint8_t>(VerbForm::past) | static_cast<std::uint8_t>(VerbForm::participle);
  return ((info->verb_forms[0] | info->verb_forms[1]) & kPast) != 0;
}

void StatementReader::happened(const Predicate& p) {
  std::vector<Subject> subjects =
      p.verb->frame == VerbFrame::object ? objects_or_pronoun(p) : things(arguments_.subjects(p));
  const Thing* place = nullptr;
  if (subjects.empty()) {
    const bool left = p.verb->frame == VerbFrame::subject || p.passive;
    place = arguments_.place_in(left ? p.left : p.right, {Role::none});
    if (place) {
      subjects.push_back({});
    } else if (p.verb->frame == VerbFrame::subject) {
      subjects = subjects_or_pronoun(p);
    }
  }
  const bool again = is_habit(p);
  if (!again && (p.present_tense || (!p.passive && !in_past_form(p)))) return;
  for (const Subject& subject : subjects) {
    // "I passed it": a place is entered, passed and looked at without anything happening to it.
    if (subject.referent && subject.referent->kind == ThingKind::place && subject.referent->carried) continue;
    Draft& draft = add(&p, again ? Statement::present : Statement::happened, subject, p.negated);
    draft.attribute = draft.action;
    if (again) draft.quantity.reset();
    if (place) {
      is_of(draft, *place);
    } else {
      place_it(draft, &p, false);
    }
  }
}

void StatementReader::built(const Predicate& p) {
  if (!p.passive) return;
  for (const Subject& subject : subjects_or_pronoun(p)) {
    Draft& draft = add(&p, Statement::attribute, subject, p.negated);
    draft.attribute = "made";
    place_it(draft, &p, false);
  }
}

/// "It shuddered", "it ran on paraffin": what a thing does is what it is like.
void StatementReader::does(const Predicate& p) {
  std::uint32_t past = p.span.past;
  while (past < p.right.past && past < p.at + 9 && !arguments_.is_mark(past) &&
         passage_.notes[past].date < 0 && !arguments_.has(past, WordClass::coordinator) &&
         !arguments_.has(past, WordClass::subordinator)) {
    ++past;
  }
  for (const Subject& subject : subjects_or_pronoun(p)) {
    Draft& draft = add(&p, Statement::attribute, subject, p.negated);
    draft.quantity.reset();
    draft.attribute = "does: " + std::string(passage_.words({p.at, past}));
    place_it(draft, &p, false);
  }
}

void StatementReader::stands(const Predicate& p) {
  if (p.unseen) return;  // "I never saw it used": it may have been there.
  if (p.verb->frame == VerbFrame::object) {
    for (const Subject& subject : p.passive ? subjects_or_pronoun(p) : objects_or_pronoun(p)) {
      add_state(&p, subject, p.negated || (subject.thing && subject.thing->negated));
    }
    return;
  }
  for (const Subject& subject : subjects_or_pronoun(p)) {
    add_state(&p, subject, p.negated || (subject.thing && subject.thing->negated));
  }
}

}  // namespace witnessmark::claims
