// A finding says what is stated, of what and in which words. The rest is read from those words as for any
// other statement.
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

/// The narrator, by "I" or because nobody else is said.
Referent StatementReader::narrator_in(const Finding& finding) const {
  Referent narrator = *c_.narrator;
  narrator.carried = true;
  narrator.words = "the narrator";
  narrator.range = finding.range;
  for (std::uint32_t i = finding.span.first; i < finding.span.past; ++i) {
    if (!arguments_.has(i, WordClass::self)) continue;
    narrator.carried = false;
    narrator.words = std::string(passage_.words({i, i + 1}));
    narrator.range = c_.positions.range_of(passage_, {i, i + 1});
    break;
  }
  return narrator;
}

/// "He retired", "they walked through", where the narrator says nothing of himself ("they had me in the
/// hold"); empty when nobody is said.
std::string StatementReader::somebody_else_in(const Finding& finding) const {
  std::string somebody;
  for (std::uint32_t i = finding.span.first; i < finding.span.past; ++i) {
    for (const WordClass own : {WordClass::self, WordClass::we, WordClass::us, WordClass::you})
      if (arguments_.has(i, own)) return {};
    const bool other = arguments_.has(i, WordClass::they) || arguments_.has(i, WordClass::she);
    if (somebody.empty() && other && passage_.notes[i].thing < 0) somebody = passage_.words({i, i + 1});
  }
  return somebody;
}

/// Who was somewhere, and where: as named, else the narrator.
Draft& StatementReader::add_located(const Predicate* p, const Finding& finding, bool negated) {
  Subject who;
  if (p) who = person_before(*p);
  for (const Thing& thing : passage_.things_in(finding.span)) {
    if (!who.referent && who.words.empty() && thing.kind == ThingKind::person)
      who = {referent_of(c_, thing), &thing};
  }
  // "He was in the cabin", "the doctor was": not the narrator, whoever it was.
  const bool other = p && (p->agent == Agent::other || p->agent == Agent::it);
  if (!who.referent && who.words.empty() && p && p->agent == Agent::them) who.words = they_before(*p);
  if (!who.referent && who.words.empty() && other) {
    const std::uint32_t from = std::max(p->left.first, finding.span.first);
    std::uint32_t first = p->span.first;
    while (first > from && p->agent == Agent::other && !arguments_.has(first, WordClass::determiner)) --first;
    if (p->agent == Agent::it) first = from;
    std::uint32_t past = p->span.first;
    while (past > first && arguments_.has(past - 1, WordClass::adverb)) --past;
    who.words = std::string(passage_.words({first, past}));
  }
  if (!who.referent && who.words.empty()) who.words = somebody_else_in(finding);
  if (!who.referent && who.words.empty() && c_.narrator) who.referent = narrator_in(finding);
  Draft& draft = add(p, Statement::located, who, negated);
  draft.quantity.reset();
  for (const Thing& thing : passage_.things_in(finding.span)) {
    const bool somewhere = thing.kind == ThingKind::place || thing.kind == ThingKind::location;
    if (!somewhere || thing.shadowed || draft.place) continue;
    draft.place = referent_of(c_, thing);
  }
  if (draft.place) return draft;
  const std::uint32_t from = p ? p->span.past : finding.span.first;
  Span words = whereabouts_after(passage_, finding.span, from);
  if (words.empty()) words = destination_after(passage_, finding.span, from);
  draft.place_words = std::string(passage_.words(words));
  return draft;
}

/// "a wooden rack": an indefinite noun of no list; empty when there is none.
Span StatementReader::unlisted_in(Span span) const {
  constexpr std::uint32_t kLongest = 4;
  for (std::uint32_t i = span.first; i + 1 < span.past; ++i) {
    if (!arguments_.has(i, WordClass::indefinite) || !arguments_.has(i, WordClass::determiner)) continue;
    Span name{i + 1, i + 1};
    while (name.past < span.past && name.past - name.first < kLongest && !arguments_.is_mark(name.past) &&
           passage_.notes[name.past].thing < 0 && passage_.notes[name.past].date < 0) {
      const Flags& f = passage_.notes[name.past].flags;
      if (f.has(WordClass::at) || f.has(WordClass::of) || f.has(WordClass::with) || f.has(WordClass::for_) ||
          f.has(WordClass::to) || f.has(WordClass::from) || f.has(WordClass::relation) ||
          f.has(WordClass::coordinator) || f.has(WordClass::relative) || f.has(WordClass::be) ||
          f.has(WordClass::have) || f.has(WordClass::we) || f.has(WordClass::they) || f.has(WordClass::you)) {
        break;
      }
      ++name.past;
    }
    if (!name.empty()) return name;
  }
  return {};
}

/// "It stood on a concrete bed", "with a brass plate": the property at a token is of something else.
bool StatementReader::of_something_else(const Finding& finding, std::uint32_t property) const {
  for (std::uint32_t i = property + 1; i < finding.span.past && !arguments_.is_mark(i); ++i) {
    if (const Thing* thing = passage_.thing_at(i)) return thing != finding.thing;
    if (!is_adjective(passage_.notes[i].flags)) break;
  }
  std::uint32_t i = property;
  while (i > finding.span.first &&
         (arguments_.has(i - 1, WordClass::determiner) || is_adjective(passage_.notes[i - 1].flags) ||
          arguments_.has(i - 1, WordClass::adverb)))
    --i;
  if (i == property || i == finding.span.first) return false;
  const Flags& before = passage_.notes[i - 1].flags;
  for (const WordClass role : {WordClass::at, WordClass::to, WordClass::from, WordClass::with, WordClass::of,
                               WordClass::by, WordClass::for_, WordClass::relation})
    if (before.has(role)) return true;
  return false;
}

/// The first colour, material, type or condition said of it; empty when there is none.
std::string StatementReader::property_in(const Finding& finding) const {
  for (std::uint32_t i = finding.span.first; i < finding.span.past; ++i) {
    if (passage_.notes[i].thing >= 0 || of_something_else(finding, i)) continue;
    std::string property = property_at(i, finding.span.past, nullptr);
    if (!property.empty()) return property;
  }
  return {};
}

/// What is said of the thing, in the words that say it: what follows "to be", else from what is done on, else
/// what stands behind the thing, or before it. Empty when nothing does.
Span StatementReader::said_of(const Finding& finding, const Predicate* p) const {
  constexpr std::uint32_t kLongest = 16;
  Span words = finding.span;
  const Thing* thing = finding.thing;
  const bool told = p && p->span.past < finding.span.past;
  if (told) {
    const bool states = p->kind == Predicate::Kind::be || p->kind == Predicate::Kind::exist;
    words.first = p->negated ? p->span.first : states ? p->span.past : p->at;
  } else if (thing && finding.span.holds(thing->span.first)) {
    std::uint32_t behind = thing->span.past;
    while (behind < finding.span.past && arguments_.is_mark(behind)) ++behind;
    words = behind < finding.span.past ? Span{behind, finding.span.past}
                                       : Span{finding.span.first, thing->span.first};
  }
  const auto empty = [&](std::uint32_t i) {
    return arguments_.is_mark(i) || arguments_.has(i, WordClass::coordinator) ||
           arguments_.has(i, WordClass::filler);
  };
  while (!words.empty() && empty(words.first)) ++words.first;
  words.past = std::min(words.past, words.first + kLongest);
  while (!words.empty() && empty(words.past - 1)) --words.past;
  return words;
}

/// The number a count speaks of, if the thing has none of its own; false when there is none.
bool StatementReader::count_in(const Finding& finding, Draft& draft) const {
  if (draft.quantity) return true;
  for (const Number& number : passage_.numbers_in(finding.span)) {
    if (!passage_.countable(number)) continue;
    draft.quantity = Quantity{number.least, number.most, std::string(passage_.words(number.span))};
    if (number.about && draft.firmness == Firmness::firm) draft.firmness = Firmness::hedged;
    return true;
  }
  return false;
}

std::vector<Draft> StatementReader::run(const Finding& finding) {
  const Statement statement = finding.statement;
  const auto predicate = std::find_if(c_.reading.predicates.begin(), c_.reading.predicates.end(),
                                      [&](const Predicate& p) { return finding.span.holds(p.at); });
  const Predicate* p = predicate == c_.reading.predicates.end() ? nullptr : &*predicate;
  const bool of_absence = statement == Statement::present || statement == Statement::absent;
  const bool negated = p && p->negated && !of_absence;
  if (statement == Statement::located) {
    // "The bell went to the chapel": nobody was anywhere.
    const std::vector<const Thing*> does = p ? arguments_.subjects(*p) : std::vector<const Thing*>();
    if (!does.empty() && does.front()->kind == ThingKind::equipment) return {};
    const bool it =
        p && p->agent == Agent::it && arguments_.any_in({finding.span.first, p->span.past}, WordClass::it);
    if (it && !arguments_.names_somebody(finding.span)) return {};  // "It was on the main deck."
    add_located(p, finding, negated);
  } else {
    Draft& draft = add(p, statement, {finding.referent, finding.thing}, negated);
    draft.clause = finding.clause;
    if (draft.of_place) {
      draft.place->carried = finding.referent.carried;
      const bool something = of_absence || statement == Statement::count;
      if (something) draft.subject_words = std::string(passage_.words(unlisted_in(finding.span)));
      if (something && draft.subject_words.empty()) return {};
    } else {
      place_it(draft, p, statement == Statement::ends);
    }
    if (statement == Statement::count && !count_in(finding, draft)) return {};
    if (statement != Statement::count) draft.quantity.reset();
    if (statement == Statement::attribute) draft.attribute = property_in(finding);
    const bool by_name = statement == Statement::happened && p && p->verb;
    if (by_name) draft.attribute = p->verb->name;
    if (draft.attribute.empty() && (statement == Statement::attribute || statement == Statement::happened)) {
      const Span words = said_of(finding, p);
      if (words.empty()) return {};
      const bool event = statement == Statement::happened;
      draft.attribute = in_words(event ? std::string_view() : kAttributeAsTold, words);
      // "It wasn't any bigger than that sideboard" says what it was like: the words have the denial in them.
      if (statement == Statement::attribute) draft.polarity = Polarity::affirmed;
    }
  }
  const std::uint32_t clause = p ? p->clause : finding.clause;
  put_dates(p, 0, finding.span);
  put_cues(p, clause, 0, finding.span);
  for (Draft& draft : drafts_) draft.quotes = {finding.range};
  return std::move(drafts_);
}

std::vector<Draft> drafts_of(const StatementContext& context, const Finding& finding) {
  return StatementReader(context).run(finding);
}

}  // namespace witnessmark::claims
