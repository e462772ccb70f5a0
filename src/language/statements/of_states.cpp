// What forms of "to be" state: that something is or was there, how many, what it was like, that
// it was gone, that something happened, where the site lay, or when what was just spoken of took place.
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

void StatementReader::exists(const Predicate& p) {
  const Span clause = c_.reading.clauses[p.clause].span;
  std::vector<Subject> subjects = things(arguments_.group_in({p.span.past, clause.past}));
  // "How many bunks were there?"
  if (subjects.empty() && c_.asking) subjects = things(arguments_.group_in({clause.first, p.span.first}));
  if (subjects.empty()) {
    event(p);
    if (unlisted(p)) return;
    if (bare_count(&p, {p.span.past, std::min(clause.past, p.span.past + 3)})) return;
    // "There wasn't one", "there was one just there": of what was just spoken of.
    had_one(p);
    return;
  }
  add_counted_elsewhere(p, clause, subjects);
  for (const Subject& subject : subjects) {
    bool negated = things_between_negated(p, subject.thing) || subject.thing->negated;
    const bool excepted =
        subject.thing->head > 0 && arguments_.has(subject.thing->head - 1, WordClass::terminator);
    if (p.negated && !excepted) negated = true;
    const std::size_t made = drafts_.size();
    add_state(&p, subject, negated);
    for (std::size_t d = made; d < drafts_.size(); ++d) {
      if (!drafts_[d].place && c_.asked_place) carry_place(drafts_[d], *c_.asked_place);
    }
  }
}

/// "It was a thing like a suitcase", "it was about the size of two wardrobes": what a thing or place was
/// like.
bool StatementReader::is_like(const Predicate& p, const std::vector<Subject>& subjects) {
  if (subjects.empty() || p.present_tense) return false;
  std::uint32_t first = p.span.past;
  while (first < p.right.past &&
         (arguments_.has(first, WordClass::adverb) || arguments_.has(first, WordClass::already) ||
          passage_.notes[first].number >= 0 || arguments_.has(first, WordClass::negative))) {
    ++first;
  }
  if (first + 1 >= p.right.past || arguments_.is_mark(first)) return false;
  const bool like = arguments_.has(first, WordClass::like);
  if (!like && !arguments_.has(first, WordClass::indefinite) && !arguments_.has(first, WordClass::determiner))
    return false;
  if (!like && !arguments_.has(first, WordClass::indefinite)) {
    // "the size of …": of definite phrases only measures.
    bool measure = false;
    for (std::uint32_t k = first + 1; k < std::min(p.right.past, first + 3); ++k)
      measure = measure || arguments_.has(k, WordClass::measure);
    if (!measure) return false;
  }
  std::uint32_t past = first + 1;
  while (past < p.right.past && past < first + 9 && !arguments_.is_mark(past) &&
         !arguments_.has(past, WordClass::subordinator) && !arguments_.has(past, WordClass::coordinator)) {
    const Note& note = passage_.notes[past];
    if (note.thing >= 0 || note.date >= 0 || note.flags.has(WordClass::person) ||
        note.flags.has(WordClass::event_noun) || (past < first + 4 && note.flags.has(WordClass::abstract))) {
      return false;
    }
    ++past;
  }
  if (past < first + 2) return false;
  const bool negated = p.negated || negative_in(passage_, {p.span.past, first}).has_value();
  for (const Subject& subject : subjects) {
    Draft& draft = add(&p, Statement::attribute, subject, negated);
    draft.quantity.reset();
    draft.attribute = in_words(kAttributeIs, {first, past});
    place_it(draft, &p, false);
  }
  return true;
}

void StatementReader::event(const Predicate& p) {
  const Span clause = c_.reading.clauses[p.clause].span;
  for (std::uint32_t i = p.span.past; i < std::min(clause.past, p.span.past + 5); ++i) {
    if (!arguments_.has(i, WordClass::event_noun)) continue;
    std::optional<Referent> place = arguments_.place_for(&p, p.clause, false);
    if (!place) return;
    const bool negated = p.negated || negative_in(passage_, {p.span.past, i}).has_value();
    Draft& draft = add(&p, Statement::happened, {}, negated);
    draft.attribute = std::string(passage_.words({i, i + 1}));
    draft.place = place;
    return;
  }
}

std::string StatementReader::property_at(std::uint32_t from, std::uint32_t past, std::uint32_t* end) const {
  std::uint32_t i = from;
  while (i < past && (arguments_.has(i, WordClass::shade) && !arguments_.has(i, WordClass::colour))) ++i;
  if (i >= past) return {};
  struct Kind {
    WordClass word;
    const char* name;
  };
  for (const Kind kind : {Kind{WordClass::colour, "colour"}, Kind{WordClass::material, "material"},
                          Kind{WordClass::type, "type"}, Kind{WordClass::condition, "condition"}}) {
    if (!arguments_.has(i, kind.word)) continue;
    const std::uint32_t last = std::min<std::uint32_t>(past, i + passage_.notes[i].reach);
    if (end) *end = last;
    return std::string(kind.name) + ": " + std::string(passage_.words({from, last}));
  }
  return {};
}

bool StatementReader::is_gone(const Predicate& p, const std::vector<Subject>& subjects) {
  const Span clause = c_.reading.clauses[p.clause].span;
  for (std::uint32_t i = p.span.past; i < std::min(clause.past, p.span.past + 4); ++i) {
    if (arguments_.is_mark(i)) return false;
    if (!arguments_.has(i, WordClass::gone)) {
      if (arguments_.has(i, WordClass::adverb) || arguments_.has(i, WordClass::everything) ||
          arguments_.has(i, WordClass::already) || arguments_.has(i, WordClass::still)) {
        continue;
      }
      return false;
    }
    if (i + 1 < clause.past && arguments_.has(i + 1, WordClass::to)) return false;  // "had gone to …"
    const bool negated = p.negated || negative_in(passage_, {p.span.past, i}).has_value();
    for (const Subject& subject : subjects) {
      Draft& draft = add(&p, Statement::ends, subject, negated);
      draft.by_then = !negated;  // "In 1963 it was gone."
      place_it(draft, &p, true);
    }
    return true;
  }
  return false;
}

bool StatementReader::is_attribute(const Predicate& p, const std::vector<Subject>& subjects) {
  const Span clause = c_.reading.clauses[p.clause].span;
  bool negated = p.negated;
  for (std::uint32_t i = p.span.past; i < std::min(clause.past, p.span.past + 5); ++i) {
    if (arguments_.is_mark(i)) return false;
    if (passage_.notes[i].thing >= 0 || passage_.notes[i].date >= 0) return false;
    std::uint32_t end = i;
    const std::string property = property_at(i, clause.past, &end);
    if (!property.empty()) {
      // "It's only new to me": of the speaker, not of the thing.
      const bool coloured = property.starts_with("colour");
      if (!coloured && end < clause.past && arguments_.has(end, WordClass::to)) return false;
      // "a brass plate": the adjective of another noun, unless that is what the thing is said to be.
      if (end < clause.past && passage_.notes[end].thing >= 0 && property.rfind("type", 0) != 0) return false;
      for (const Subject& subject : subjects) {
        Draft& draft = add(&p, Statement::attribute, subject, negated);
        draft.attribute = property;
        place_it(draft, &p, false);
      }
      return true;
    }
    const Flags& f = passage_.notes[i].flags;
    if (f.has(WordClass::negative)) {
      negated = true;
      continue;
    }
    if (!f.has(WordClass::adverb) && !f.has(WordClass::determiner) && !f.has(WordClass::everything) &&
        !f.has(WordClass::habit) && !f.has(WordClass::still) && !f.has(WordClass::already) &&
        passage_.notes[i].cue < 0) {
      return false;
    }
  }
  return false;
}

/// "Where the boiler had been, they put …": by then it was gone.
bool StatementReader::had_been_there(const Predicate& p, const std::vector<Subject>& subjects) {
  const Span clause = c_.reading.clauses[p.clause].span;
  // Only where it opens the sentence and another clause says what came after.
  std::uint32_t opening = c_.reading.span.first;
  while (opening < clause.first + 3 && opening < p.at && arguments_.has(opening, WordClass::filler))
    ++opening;
  const bool where =
      arguments_.has(opening, WordClass::where) && p.clause == 0 && c_.reading.clauses.size() > 1;
  const bool ends_clause = p.span.past >= clause.past || arguments_.is_mark(p.span.past);
  if (!where || !ends_clause || !arguments_.any_in(p.span, WordClass::have)) return false;
  for (const Subject& subject : subjects) {
    Draft& draft = add(&p, Statement::ends, subject, p.negated);
    draft.by_then = true;
    place_it(draft, &p, true);
  }
  return true;
}

bool StatementReader::is_somewhere(const Predicate& p, const std::vector<Subject>& subjects) {
  const Span clause = c_.reading.clauses[p.clause].span;
  const Span right{p.span.past, std::max(p.span.past, p.right.past)};
  const bool inverted = right.empty();
  const Thing* place = arguments_.place_in(right, {Role::at, Role::relation});
  if (!place) place = arguments_.place_in({p.span.past, clause.past}, {Role::at, Role::relation});
  if (!place && inverted) place = arguments_.place_in(p.left, {Role::at});
  // "It was on the roof of the winding house."
  if (!place && !right.empty() &&
      (arguments_.has(right.first, WordClass::at) || arguments_.has(right.first, WordClass::relation))) {
    place = arguments_.place_in(right, {Role::of});
  }
  std::string words = place ? std::string() : arguments_.relative_place({p.span.past, clause.past}, nullptr);
  bool there = false;
  for (std::uint32_t i = p.span.past; i < std::min(right.past, p.span.past + 4); ++i) {
    there = there || arguments_.has(i, WordClass::there) || arguments_.has(i, WordClass::in_there);
    // "It's a high one there" says what it is, not where.
    if (arguments_.is_mark(i) || arguments_.has(i, WordClass::indefinite)) break;
  }
  // "It's all there, in the typing": nothing stands anywhere.
  if (there && p.present_tense &&
      arguments_.any_in({p.span.past, std::min(right.past, p.span.past + 2)}, WordClass::everything))
    there = false;
  if (!place && words.empty() && !there) return false;
  const bool negated = p.negated ||
                       negative_in(passage_, {p.span.past, place ? place->head : p.span.past}).has_value() ||
                       arguments_.any_in(p.right, WordClass::no_longer);
  for (const Subject& subject : subjects) {
    const std::size_t made = drafts_.size();
    add_state(&p, subject, negated || (subject.thing && subject.thing->negated));
    Draft& draft = drafts_[made];
    if (place && !draft.place) draft.place = referent_of(c_, *place);
    if (!draft.place && draft.place_words.empty()) draft.place_words = words;
    if (!draft.place && there && c_.focus.place) {
      draft.place = c_.focus.place;
      draft.place->carried = true;
    }
  }
  return true;
}

void StatementReader::is_dated(const Predicate& p, const std::vector<Subject>& subjects) {
  const Span clause = c_.reading.clauses[p.clause].span;
  // The first content after the verb is a date.
  bool date_first = false;
  std::uint32_t i = p.span.past;
  for (; i < clause.past; ++i) {
    if (passage_.notes[i].date >= 0) {
      date_first = true;
      break;
    }
    const Flags& f = passage_.notes[i].flags;
    if (arguments_.is_mark(i) || (!f.has(WordClass::adverb) && !f.has(WordClass::at) &&
                                  !f.has(WordClass::determiner) && passage_.notes[i].cue < 0)) {
      break;
    }
  }
  if (!date_first) return;
  const bool negated = p.negated || negative_in(passage_, {p.span.past, i}).has_value();
  const Clause& own = c_.reading.clauses[p.clause];
  if (own.past_predicate - own.first_predicate > 1) return;  // A cleft: the date is the other verb's.
  if (!subjects.empty() && subjects[0].thing) {
    // "The turbine must be 1954": dated to its beginning.
    if (c_.passage.has(p.at, WordClass::be) && p.infinitive) return;
    for (const Subject& subject : subjects) add(&p, Statement::begins, subject, negated);
    return;
  }
  const Draft* last = nullptr;
  for (const Draft& draft : drafts_) {
    if (!draft.withdrawn) last = &draft;
  }
  if (!last) last = c_.focus.repeatable();
  if (!last || p.agent == Agent::we) return;
  // "It was there. That was 1962.": of lasting states and of where somebody was the date is of something else
  // as often.
  const bool event = is_change(last->statement) || last->statement == Statement::count;
  if (!event && drafts_.empty()) return;
  bool plural = false;
  if (!arguments_.pronoun_subject(p, plural)) return;
  Draft again = said_again(*last);
  again.polarity = negated ? Polarity::denied : Polarity::affirmed;
  again.clause = p.clause;
  again.clause_range = c_.positions.range_of(passage_, clause);
  drafts_.push_back(std::move(again));
}

/// What was stated before, to be given another date or number here.
Draft StatementReader::said_again(const Draft& before) const {
  Draft again = before;
  again.elliptical = true;
  again.subject_thing = -1;  // It was named elsewhere.
  again.polarity = Polarity::affirmed;
  again.date.reset();
  again.basis = Basis::unstated;
  again.knower.clear();
  again.firmness = Firmness::firm;
  again.cues.clear();
  again.because.clear();
  again.quotes.clear();
  again.led = again.withdrawn = false;
  again.clause = 0;
  again.clause_range = c_.positions.range_of(passage_, c_.reading.span);
  if (again.subject) again.subject->carried = true;
  if (again.place) again.place->carried = true;
  return again;
}

/// "Number two was dry as a bone", "the cold store was down a deck": whatever is said of a place or thing
/// that is named right before.
bool StatementReader::is_said_of(const Predicate& p, const std::vector<Subject>& subjects) {
  const Thing* named = nullptr;
  for (const Thing& thing : passage_.things_in(p.left)) {
    if (p.left.holds(thing.span.first) && !thing.shadowed && thing.role == Role::none) named = &thing;
  }
  if (!named || named->span.past > p.span.first || named->kind == ThingKind::person ||
      named->kind == ThingKind::location)
    return false;
  for (std::uint32_t i = named->span.past; i < p.span.first; ++i)
    if (!arguments_.has(i, WordClass::adverb)) return false;
  if (named->kind == ThingKind::equipment && (subjects.empty() || subjects[0].thing != named)) return false;
  std::uint32_t first = p.span.past;
  while (first < p.right.past &&
         (arguments_.has(first, WordClass::adverb) || arguments_.has(first, WordClass::negative)))
    ++first;
  std::uint32_t past = first;
  for (; past < p.right.past && past < first + 9 && !arguments_.is_mark(past) &&
         !arguments_.has(past, WordClass::subordinator) && !arguments_.has(past, WordClass::coordinator) &&
         !arguments_.has(past, WordClass::relative);
       ++past) {
    const Note& note = passage_.notes[past];
    if (past < first + 3 &&
        (note.date >= 0 || note.flags.has(WordClass::person) || note.flags.has(WordClass::abstract) ||
         note.flags.has(WordClass::when) || note.thing >= 0))
      return false;
  }
  if (first >= past) return false;
  const bool of_place = named->kind == ThingKind::place;
  const auto plain = [&](std::uint32_t i) {
    return i < past && !passage_.notes[i].flags.any() && passage_.notes[i].number < 0;
  };
  // "Down a deck", "round on the other side" are said of places only.
  const bool where = of_place && past > first + 1 &&
                     (arguments_.has(first, WordClass::way) || arguments_.has(first, WordClass::at) ||
                      arguments_.has(first, WordClass::relation) || arguments_.has(first, WordClass::off) ||
                      arguments_.has(first, WordClass::side));
  // "The horn was going."
  const bool under_way = !of_place && c_.words.is_going(passage_.words({first, first + 1}));
  if (!plain(first) && !arguments_.has(first, WordClass::quality) && !where && !under_way) return false;
  const bool negated = p.negated || negative_in(passage_, {p.span.past, first}).has_value();
  Draft& draft = add(&p, under_way ? Statement::happened : Statement::attribute,
                     {referent_of(c_, *named), named}, negated);
  draft.quantity.reset();
  draft.attribute = in_words(kAttributeIs, {first, past});
  place_it(draft, &p, false);
  return true;
}

/// An attribute that keeps words as they were said, on one line; without a name the words alone.
std::string StatementReader::in_words(std::string_view name, Span words) const {
  std::string made(name);
  if (!made.empty()) made += ": ";
  made += passage_.words(words);
  std::replace(made.begin(), made.end(), '\n', ' ');
  return made;
}

/// Whether the first thing after the verb is a name or a date, as in "it was the winch", "it was 1962".
bool StatementReader::complement_is_named(const Predicate& p, std::uint32_t limit) const {
  for (std::uint32_t k = p.span.past; k < limit; ++k) {
    const Note& note = passage_.notes[k];
    if (note.date >= 0) return true;
    if (const Thing* thing = passage_.thing_at(k)) return thing->role == Role::none;
    const Flags& f = note.flags;
    if (!f.has(WordClass::determiner) && !f.has(WordClass::adverb) && !f.has(WordClass::negative) &&
        !f.has(WordClass::old) && !f.has(WordClass::at) && note.cue < 0) {
      return false;
    }
  }
  return false;
}

/// "When I came it was bottles", "it was a motor": what there was, where "it" stands for nothing named.
bool StatementReader::it_was(const Predicate& p, bool another) {
  if (another || p.negated || p.present_tense || c_.asking || p.agent != Agent::it || p.infinitive)
    return false;
  for (const Thing& thing : passage_.things_in(p.right)) {
    if (thing.kind != ThingKind::equipment || thing.shadowed || thing.negated ||
        !p.right.holds(thing.span.first))
      continue;
    const bool next = thing.head <= p.span.past + 1 && thing.role == Role::none;
    const bool unnamed =
        thing.indefinite || (thing.plural && thing.head == thing.span.first) || thing.quantity >= 0;
    if (!next || !unnamed || arguments_.has(p.at, WordClass::she)) return false;
    add_state(&p, {referent_of(c_, thing), &thing}, false);
    return true;
  }
  return false;
}

/// "That's the crane", "this is the bell": pointed at, so it is there.
bool StatementReader::points_at(const Predicate& p) {
  if (c_.asking || p.negated || !p.present_tense) return false;
  const bool points = arguments_.has(p.at, WordClass::this_) ||
                      (p.span.first > p.left.first && arguments_.has(p.span.first - 1, WordClass::this_));
  if (!points) return false;
  for (const Thing& thing : passage_.things_in(p.right)) {
    if (thing.kind != ThingKind::equipment || thing.shadowed || thing.role != Role::none ||
        !p.right.holds(thing.span.first))
      continue;
    if (thing.head > p.span.past + 1 || thing.indefinite || thing.negated) return false;
    const std::size_t made = drafts_.size();
    add_state(&p, {referent_of(c_, thing), &thing}, false);
    if (!drafts_[made].place && c_.asked_place) carry_place(drafts_[made], *c_.asked_place);
    return true;
  }
  return false;
}

void StatementReader::is(const Predicate& p) {
  const Clause& own = c_.reading.clauses[p.clause];
  std::vector<Subject> subjects = subjects_or_pronoun(p);
  const std::size_t before = drafts_.size();
  // "Where was the searchlight?", "Was the awning on the deck?"
  if (subjects.empty() && c_.asking) subjects = things(arguments_.objects(p));
  // A cleft: "it was the winch they took off". The other verb states it.
  bool another = false;
  for (std::uint32_t i = own.first_predicate; i < own.past_predicate; ++i) {
    const Predicate& other = c_.reading.predicates[i];
    if (other.at <= p.at || other.clause != p.clause) continue;
    another = complement_is_named(p, other.span.first);
  }
  if (p.clause + 1 < c_.reading.clauses.size())
    another = another || c_.reading.clauses[p.clause + 1].relative;
  const Thing* person = nullptr;
  for (const Thing& thing : passage_.things_in(p.left)) {
    if (thing.kind == ThingKind::person && p.left.holds(thing.span.first)) person = &thing;
  }
  const bool she = !subjects.empty() && arguments_.she(p, false);
  if (person ||
      (!she && (p.agent == Agent::we || p.agent == Agent::it) && (subjects.empty() || !subjects[0].thing))) {
    if (was_somewhere(p)) return;
    if (person || p.agent == Agent::we) return;
  }
  // "was without a hoist"
  for (const Thing& thing : passage_.things_in(p.right)) {
    if (thing.kind != ThingKind::equipment || !thing.negated || !p.right.holds(thing.span.first) ||
        thing.head == 0 || arguments_.is_mark(thing.head - 1) || !subjects.empty()) {
      continue;
    }
    add_state(&p, {referent_of(c_, thing), &thing}, true);
    if (const Thing* place = arguments_.place_in(p.left, {Role::none}))
      drafts_.back().place = referent_of(c_, *place);
    return;
  }
  if (points_at(p) || it_was(p, another)) return;
  if (!subjects.empty() && had_been_there(p, subjects)) return;
  if (!subjects.empty() && !another) {
    if (is_gone(p, subjects) || is_attribute(p, subjects) || is_somewhere(p, subjects) ||
        is_like(p, subjects))
      return;
  }
  if (subjects.empty()) {
    // "The salle was cream."
    if (const Thing* place = arguments_.place_in(p.left, {Role::none}); place && !another) {
      if (is_attribute(p, {Subject{}})) {
        is_of(drafts_.back(), *place);
        return;
      }
    }
  }
  if (drafts_.size() == before && (p.agent == Agent::it || p.agent == Agent::them || subjects.empty()) &&
      p.span.past < p.right.past && bare_count(&p, {p.span.past, p.span.past + 1})) {
    return;
  }
  if (drafts_.size() == before && !another && !c_.asking && is_said_of(p, subjects)) return;
  if (drafts_.size() == before) is_dated(p, subjects);
  // "Where was the searchlight?" wants a place.
  if (c_.asking && drafts_.size() == before && !subjects.empty() && !another &&
      arguments_.any_in(c_.reading.span, WordClass::where)) {
    for (const Subject& subject : subjects) add_state(&p, subject, false);
  }
}

}  // namespace witnessmark::claims
