// Sentences without a verb, and names that open an answer: "The old bell.", "Two davits on the boat deck.",
// "A chair that was bolted down.", "Buff."
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

/// Whether the sentence is hardly more than the thing's name.
bool StatementReader::bare_name(const Thing& thing) const {
  const Span span = c_.reading.span;
  std::uint32_t other = 0;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (arguments_.is_mark(i) || thing.span.holds(i) || (i >= thing.head && i < thing.span.first)) continue;
    const Flags& f = passage_.notes[i].flags;
    if (f.has(WordClass::filler) || f.has(WordClass::adverb) || f.has(WordClass::coordinator)) continue;
    ++other;
  }
  return other <= 2;
}

/// "The loop for the direction finder over your head": the name comes first.
bool StatementReader::opens_with(const Thing& thing) const {
  std::uint32_t i = c_.reading.span.first;
  while (i < thing.head &&
         (arguments_.is_mark(i) || arguments_.has(i, WordClass::filler) ||
          arguments_.has(i, WordClass::coordinator) || arguments_.has(i, WordClass::then))) {
    ++i;
  }
  return i >= thing.head;
}

/// What a sentence opens with, over words that say nothing, to the first mark, preposition or relative
/// clause; empty when a verb stands in it.
Span StatementReader::opening_name() const {
  Span name = c_.reading.span;
  while (name.first < name.past &&
         (arguments_.is_mark(name.first) || arguments_.has(name.first, WordClass::filler) ||
          arguments_.has(name.first, WordClass::coordinator) ||
          arguments_.has(name.first, WordClass::then))) {
    ++name.first;
  }
  std::uint32_t past = name.first;
  while (past < name.past && !arguments_.is_mark(past) && !arguments_.has(past, WordClass::at) &&
         !arguments_.has(past, WordClass::to) && !arguments_.has(past, WordClass::with) &&
         !arguments_.has(past, WordClass::relation) && !arguments_.has(past, WordClass::coordinator) &&
         (past == name.first || !arguments_.has(past, WordClass::relative))) {
    ++past;
  }
  name.past = past;
  for (const Predicate& p : c_.reading.predicates) {
    if (p.span.first < name.past && name.first < p.span.past) return {name.first, name.first};
  }
  return name;
}

/// "The old transmitter to your left, which …", "A chair that was bolted down": a name opens the answer to
/// what there was, and whatever follows only tells more of it.
void StatementReader::inventory_item() {
  const Span name = opening_name();
  if (name.empty() || name.past >= c_.reading.span.past) return;
  const bool tells_more =
      arguments_.is_mark(name.past) || arguments_.has(name.past, WordClass::relative) ||
      arguments_.has(name.past, WordClass::with) || arguments_.has(name.past, WordClass::to) ||
      arguments_.has(name.past, WordClass::at) || arguments_.has(name.past, WordClass::relation);
  if (!tells_more || !arguments_.has(name.first, WordClass::determiner)) return;
  for (const Thing& thing : passage_.things_in(name)) {
    if (thing.kind != ThingKind::equipment || thing.shadowed || !name.holds(thing.span.first)) continue;
    add_state(nullptr, {referent_of(c_, thing), &thing}, thing.negated);
    if (!drafts_.back().place) carry_place(drafts_.back(), *c_.asked_place);
    return;
  }
  if (arguments_.has(name.past, WordClass::relative)) unlisted_name(name);
}

void StatementReader::carry_place(Draft& draft, const Referent& place) const {
  draft.place = place;
  draft.place->carried = true;
}

/// "The key. A chair." in answer to what there was at a place.
void StatementReader::unlisted_name(Span name) {
  std::uint32_t first = name.first;
  std::uint32_t past = name.past;
  while (first < past &&
         (arguments_.is_mark(first) || arguments_.has(first, WordClass::filler) ||
          arguments_.has(first, WordClass::coordinator) || arguments_.has(first, WordClass::then))) {
    ++first;
  }
  while (past > first && arguments_.is_mark(past - 1)) --past;
  if (past - first < 2 || past - first > 10) return;
  if (!arguments_.has(first, WordClass::determiner) && passage_.notes[first].number < 0) return;
  for (std::uint32_t i = first; i < past; ++i) {
    if (passage_.notes[i].date >= 0 || arguments_.has(i, WordClass::person) ||
        arguments_.has(i, WordClass::we) || arguments_.has(i, WordClass::abstract))
      return;
  }
  Draft& draft = add(nullptr, Statement::present, {}, false);
  draft.subject_words = std::string(passage_.words({first, past}));
  carry_place(draft, *c_.asked_place);
  if (passage_.notes[first].number >= 0) {
    const Number& number = passage_.numbers[static_cast<std::size_t>(passage_.notes[first].number)];
    if (number.most > 1 && passage_.countable(number)) {
      draft.statement = Statement::count;
      draft.quantity = Quantity{number.least, number.most, std::string(passage_.words(number.span))};
    }
  }
  put_cues(nullptr, 0, drafts_.size() - 1);
}

/// "Not in my time.": what was asked about was not there while the narrator was.
bool StatementReader::absent_in_service() {
  const Span span = c_.reading.span;
  std::uint32_t served = span.past;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (arguments_.has(i, WordClass::my_time)) served = i;
  }
  if (served == span.past || !negative_in(passage_, {span.first, served})) return false;
  const std::optional<Referent> subject = arguments_.pronoun(false, span.first);
  if (!subject || subject->kind != ThingKind::equipment) return false;
  const std::size_t first = drafts_.size();
  Draft& draft = add(nullptr, Statement::absent, {subject, nullptr}, false);
  if (c_.asked_place) carry_place(draft, *c_.asked_place);
  put_dates(nullptr, first);
  put_cues(nullptr, 0, first);
  return true;
}

/// "Buff.", "Red, with a white band.": a colour in answer to a question about a thing.
bool StatementReader::colour_of_topic() {
  const Span span = c_.reading.span;
  if (!c_.answering || span.past - span.first > 12) return false;
  for (std::uint32_t i = span.first; i < std::min(span.past, span.first + 4); ++i) {
    if (!arguments_.has(i, WordClass::colour) && !arguments_.has(i, WordClass::shade)) continue;
    const std::string colour = property_at(i, span.past, nullptr);
    if (colour.rfind("colour", 0) != 0) continue;
    bool plural = false;
    std::optional<Referent> topic = arguments_.pronoun(false, span.first);
    if (!topic) topic = arguments_.pronoun(plural = true, span.first);
    if (!topic) return false;
    const std::size_t first = drafts_.size();
    Draft& draft = add(nullptr, Statement::attribute, {topic, nullptr},
                       negative_in(passage_, {span.first, i}).has_value());
    draft.attribute = colour;
    put_dates(nullptr, first);
    put_cues(nullptr, 0, first);
    return true;
  }
  return false;
}

/// "Gone.", "Long gone, that.": an answer about what was asked.
bool StatementReader::gone_of_topic() {
  const Span span = c_.reading.span;
  if (!c_.answering || span.past - span.first > 6) return false;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (arguments_.has(i, WordClass::we) || arguments_.has(i, WordClass::they))
      return false;  // "I was away."
    if (!arguments_.has(i, WordClass::gone)) continue;
    const std::optional<Referent> topic = arguments_.pronoun(false, span.first);
    if (!topic || topic->kind != ThingKind::equipment) return false;
    const std::size_t first = drafts_.size();
    add(nullptr, Statement::ends, {topic, nullptr}, negative_in(passage_, {span.first, i}).has_value())
        .by_then = true;
    put_dates(nullptr, first);
    put_cues(nullptr, 0, first);
    return true;
  }
  return false;
}

/// "Tin bath in front of the fire on a Friday."
constexpr std::uint32_t kShortFragment = 16;

void StatementReader::fragment() {
  if (c_.reading.question && !c_.asking) return;  // "Radar? I don't remember."
  const Span span = c_.reading.span;
  std::vector<const Thing*> all = arguments_.group_in(span);
  if (all.empty()) {
    if (colour_of_topic() || absent_in_service() || gone_of_topic()) return;
    const Span name = opening_name();
    const std::size_t made = drafts_.size();
    if (!name.empty() && !c_.asked_when && span.past - span.first < 12 &&
        bare_count(nullptr, {name.first, name.first + 1})) {
      put_dates(nullptr, made);
      put_cues(nullptr, 0, made);
      return;
    }
    if (c_.inventory) unlisted_name(c_.reading.span);
    return;
  }
  const std::size_t first = drafts_.size();
  for (const Subject& subject : things(all)) {
    const Thing& thing = *subject.thing;
    const Thing* place = arguments_.place_in(span, {Role::at, Role::relation});
    const bool counted =
        thing.quantity >= 0 && !passage_.numbers[static_cast<std::size_t>(thing.quantity)].measure;
    const bool without =
        thing.negated && thing.head < thing.span.first && arguments_.has(thing.head, WordClass::negative) &&
        !arguments_.has(thing.head, WordClass::negative_determiner) && thing.head > span.first;
    // A bare name in answer to what there was: "A stove. The old bell."
    const bool named =
        (c_.asked_place && (bare_name(thing) || (c_.inventory && opens_with(thing)))) ||
        ((c_.asked_what || c_.answering) && thing.indefinite && bare_name(thing)) ||
        (c_.answering && opens_with(thing) && thing.role == Role::none &&
         span.past - span.first <= kShortFragment && (thing.head == thing.span.first || thing.indefinite));
    // "Black hull, buff funnel."
    for (std::uint32_t i = thing.head; i < thing.span.first; ++i) {
      const std::string colour =
          arguments_.has(i, WordClass::colour) ? property_at(i, thing.span.first, nullptr) : std::string();
      if (colour.empty() || span.past - span.first > 12) continue;
      add(nullptr, Statement::attribute, subject, thing.negated).attribute = colour;
      break;
    }
    if (!place && !counted && !without && !named &&
        !(thing.negated && !dates_for(passage_, c_.reading, nullptr, 0).empty()))
      continue;
    // Much talk beside a bare name is talk of something else.
    if (span.past - span.first > 25) continue;
    add_state(nullptr, subject, thing.negated);
    if (named && c_.asked_place && !drafts_.back().place) {
      carry_place(drafts_.back(), *c_.asked_place);
    }
  }
  put_dates(nullptr, first);
  put_cues(nullptr, 0, first);
}

}  // namespace witnessmark::claims
