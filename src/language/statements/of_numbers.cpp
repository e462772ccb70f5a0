// Counts, and things of no list: numbers with places of their own, bare numbers of what was just spoken of,
// "one", and what is brought in with "a" at a place.
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

/// "ten cylinders in the port rack and ten cylinders in the starboard rack": each further number with its
/// place.
void StatementReader::add_counted_elsewhere(const Predicate& p, Span clause,
                                            const std::vector<Subject>& subjects) {
  const std::uint32_t from = subjects.back().thing->span.past;
  for (const Thing& thing : passage_.things_in(clause)) {
    if (!clause.holds(thing.span.first) || thing.span.first < from || thing.kind != ThingKind::equipment ||
        thing.shadowed || thing.quantity < 0 || thing.role != Role::none || thing.head == 0 ||
        !arguments_.has(thing.head - 1, WordClass::coordinator)) {
      continue;
    }
    const Thing* place = arguments_.place_in({thing.span.past, clause.past}, {Role::at, Role::relation});
    if (!place) continue;
    const std::size_t made = drafts_.size();
    add_state(&p, {referent_of(c_, thing), &thing}, p.negated || thing.negated);
    drafts_[made].place = referent_of(c_, *place);
  }
}

/// Where something of no list stands: a place of its clause, of "in there", of the question, else the place
/// just spoken of.
std::optional<Referent> StatementReader::place_of_unlisted(const Predicate& p, const Thing*& named) const {
  const Span clause = c_.reading.clauses[p.clause].span;
  named = arguments_.place_in({p.span.past, clause.past}, {Role::at, Role::relation});
  if (named) return referent_of(c_, *named);
  const Referent* carried = nullptr;
  Referent earlier;
  if (const Thing* before = arguments_.place_in({c_.reading.span.first, p.span.first},
                                                {Role::at, Role::none, Role::to, Role::relation})) {
    earlier = referent_of(c_, *before);
    carried = &earlier;
  }
  if (!carried) carried = c_.asked_place;
  const bool pointed =
      arguments_.any_in(clause, WordClass::in_there) || arguments_.any_in(clause, WordClass::in_place);
  if (!carried) carried = c_.focus.place_within(pointed ? 12 : 8);
  if (!carried) return std::nullopt;
  Referent place = *carried;
  place.carried = true;
  return place;
}

/// Something the lists do not have, said to be at a place they do have: "There was a hole in the forecastle."
bool StatementReader::unlisted(const Predicate& p) {
  const Span clause = c_.reading.clauses[p.clause].span;
  const Thing* named = nullptr;
  const std::optional<Referent> place = place_of_unlisted(p, named);
  if (!place) return false;
  bool led_in = false;
  bool noun = false;
  bool negated = p.negated;
  std::int32_t number = -1;
  std::uint32_t past = p.span.past;
  const std::uint32_t limit = named ? named->head : std::min(clause.past, past + 8);
  for (; past < limit; ++past) {
    const Flags& f = passage_.notes[past].flags;
    if (!named && led_in && noun &&
        (arguments_.is_mark(past) || f.has(WordClass::relative) || f.has(WordClass::relation) ||
         f.has(WordClass::with) || passage_.notes[past].date >= 0 || f.has(WordClass::coordinator) ||
         f.has(WordClass::when) || f.has(WordClass::in_there))) {
      break;
    }
    if (arguments_.is_mark(past) || passage_.notes[past].thing >= 0 || f.has(WordClass::person) ||
        f.has(WordClass::people_count) || f.has(WordClass::they) || f.has(WordClass::event_noun) ||
        f.has(WordClass::activity) || f.has(WordClass::nothing) || f.has(WordClass::everything) ||
        f.has(WordClass::abstract) || f.has(WordClass::modal) || f.has(WordClass::never) ||
        (!named && passage_.notes[past].date >= 0)) {
      return false;
    }
    if (passage_.notes[past].number >= 0) number = passage_.notes[past].number;
    if (f.has(WordClass::negative_determiner)) negated = true;
    if (led_in && f.has(WordClass::at) && !f.has(WordClass::quality)) break;
    const bool describes = f.has(WordClass::quality) || f.has(WordClass::colour) ||
                           f.has(WordClass::material) || f.has(WordClass::condition) || f.has(WordClass::old);
    noun = noun || (led_in && passage_.tokens[past].kind == Token::Kind::word &&
                    passage_.notes[past].number < 0 && (!f.any() || describes));
    led_in = led_in || f.has(WordClass::determiner) || passage_.notes[past].number >= 0;
  }
  if (!led_in || past <= p.span.past + 1) return false;
  // Without a place of its own only "a" or "some" brings in a thing: "four missing" counts what was spoken
  // of.
  if (!named && (!noun || negated || number >= 0)) return false;
  if (number >= 0 && !passage_.countable(passage_.numbers[static_cast<std::size_t>(number)])) return false;
  Draft& draft = add(&p, negated ? Statement::absent : Statement::present, {}, false);
  draft.subject_words = std::string(passage_.words({p.span.past, past}));
  draft.place = place;
  if (number >= 0 && !negated) {
    const Number& count = passage_.numbers[static_cast<std::size_t>(number)];
    if (count.most > 1) {
      draft.statement = Statement::count;
      draft.quantity = Quantity{count.least, count.most, std::string(passage_.words(count.span))};
    }
  }
  return true;
}

/// "There were six", "it was two", "Three to begin with.": of what was just counted or spoken of.
bool StatementReader::bare_count(const Predicate* p, Span where) {
  const Span clause = c_.reading.clauses[clause_of(p)].span;
  for (std::uint32_t i = where.first; i < where.past; ++i) {
    if (passage_.notes[i].number < 0) continue;
    const Number& number = passage_.numbers[static_cast<std::size_t>(passage_.notes[i].number)];
    if (!passage_.countable(number)) return false;
    // "There was one to the drum house": one of them, no count.
    const bool one =
        number.least == 1 && number.most == 1 && arguments_.has(number.span.first, WordClass::one);
    if (one && p && number.span.past < clause.past && arguments_.has(number.span.past, WordClass::to))
      return false;
    const std::uint32_t next = number.span.past;
    const bool alone =
        next >= clause.past || arguments_.is_mark(next) || arguments_.has(next, WordClass::of_them) ||
        passage_.notes[next].date >= 0 || arguments_.has(next, WordClass::at) ||
        arguments_.has(next, WordClass::there) || arguments_.has(next, WordClass::whereabouts) ||
        arguments_.has(next, WordClass::when) || arguments_.has(next, WordClass::to) ||
        arguments_.has(next, WordClass::coordinator) || arguments_.has(next, WordClass::adverb);
    if (!alone) return false;
    std::optional<Referent> subject;
    for (const Draft& earlier : drafts_) {
      if (earlier.subject && (earlier.subject->plural || earlier.statement == Statement::count))
        subject = earlier.subject;
    }
    if (!subject) subject = c_.focus.counted_now();
    if (!subject && p) subject = arguments_.pronoun(true, p->at);
    if (!subject) return false;
    subject->carried = true;
    // "There was never two."
    const bool negated =
        p && (p->negated || negative_in(passage_, {p->span.past, number.span.first}).has_value());
    Draft& draft = add(p, Statement::count, {subject, nullptr}, negated);
    draft.quantity = Quantity{number.least, number.most, std::string(passage_.words(number.span))};
    if (number.about) draft.firmness = Firmness::hedged;
    place_it(draft, p, false);
    if (!draft.place && drafts_.size() > 1 && drafts_.front().place)
      carry_place(draft, *drafts_.front().place);
    return true;
  }
  return false;
}

/// "There were two lamps." "No, I tell a lie, three.": another number of what was counted last.
void StatementReader::recounted() {
  const Draft* counted = c_.focus.repeatable();
  if (!drafts_.empty() || !counted || counted->statement != Statement::count || c_.asking) return;
  const Span span = c_.reading.span;
  const auto cues = passage_.cues_in(span);
  const auto correction = std::find_if(cues.begin(), cues.end(), [&](const CueSpan& cue) {
    return c_.words.cues[cue.cue].cue == CueClass::correction;
  });
  if (correction == cues.end()) return;
  for (const Number& number : passage_.numbers_in({correction->span.past, span.past})) {
    const bool alone = number.span.past >= span.past || arguments_.is_mark(number.span.past);
    if (!alone || !passage_.countable(number)) continue;
    Draft again = said_again(*counted);
    again.quantity = Quantity{number.least, number.most, std::string(passage_.words(number.span))};
    again.date = counted->date;
    drafts_.push_back(std::move(again));
    return;
  }
}

/// "We had one", "there wasn't one": one of what is spoken of.
bool StatementReader::had_one(const Predicate& p) {
  for (std::uint32_t i = p.span.past; i < std::min(p.right.past, p.span.past + 3); ++i) {
    if (!arguments_.has(i, WordClass::one)) continue;
    const bool alone = i + 1 >= p.right.past || arguments_.is_mark(i + 1) ||
                       arguments_.has(i + 1, WordClass::at) || arguments_.has(i + 1, WordClass::adverb) ||
                       arguments_.has(i + 1, WordClass::in_there) || arguments_.has(i + 1, WordClass::when) ||
                       passage_.notes[i + 1].date >= 0;
    if (!alone) return false;
    const std::optional<Referent> subject = arguments_.pronoun(false, p.at);
    if (!subject || subject->kind != ThingKind::equipment) return false;
    add_state(&p, {subject, nullptr}, p.negated || negative_in(passage_, {p.span.past, i + 1}).has_value());
    return true;
  }
  return false;
}

}  // namespace witnessmark::claims
