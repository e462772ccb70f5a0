// One sentence: each predicate makes its drafts, then dates and cues are laid over them, then what is only
// intended, asked or contrary to fact is dropped. A sentence without a predicate may still count or deny
// things ("No stove in the mess room").
#include "language/statements/statements.h"

#include <algorithm>

#include "language/statements/statement_reader.h"
#include "witnessmark/base/fold.h"

namespace witnessmark::claims {

Referent referent_of(const StatementContext& context, const Thing& thing) {
  Referent referent;
  referent.kind = thing.kind;
  referent.terms = thing.terms;
  referent.words = std::string(context.passage.words(thing.span));
  referent.plural = thing.plural;
  referent.near_match = thing.near_match;
  referent.carried = thing.carried;
  referent.range = context.positions.range_of(context.passage, thing.span);
  return referent;
}

std::vector<StatementReader::Subject> StatementReader::things(const std::vector<const Thing*>& found) const {
  std::vector<Subject> subjects;
  for (const Thing* thing : found) subjects.push_back({referent_of(c_, *thing), thing});
  return subjects;
}

std::vector<StatementReader::Subject> StatementReader::objects_or_pronoun(const Predicate& p) const {
  if (!p.passive) {
    if (auto named = arguments_.she(p, true)) return {{named, nullptr}};
    bool plural = false;
    // "took it off the crane": the pronoun right after the verb comes first.
    if (arguments_.pronoun_object(p, plural)) {
      if (auto referent = arguments_.pronoun(plural, p.at)) return {{referent, nullptr}};
      return {};
    }
    if (auto found = things(arguments_.objects(p)); !found.empty()) return found;
    // "the crane they fitted": nothing that could be an object follows the verb.
    if (!arguments_.open_after(p)) return {};
  }
  if (auto found = things(arguments_.subjects(p)); !found.empty()) return found;
  if (const Thing* antecedent = arguments_.antecedent(p)) return {{referent_of(c_, *antecedent), antecedent}};
  bool plural = false;
  if (p.passive && arguments_.pronoun_subject(p, plural)) {
    if (auto referent = arguments_.pronoun(plural, p.at)) return {{referent, nullptr}};
    return {};
  }
  if (p.passive) return things(arguments_.objects(p));
  return {};
}

std::vector<StatementReader::Subject> StatementReader::subjects_or_pronoun(const Predicate& p) const {
  // "Down came the chimney."
  if (p.inverted) {
    if (auto found = things(arguments_.objects(p)); !found.empty()) return found;
  }
  if (auto found = things(arguments_.subjects(p)); !found.empty()) return found;
  if (const Thing* antecedent = arguments_.antecedent(p)) return {{referent_of(c_, *antecedent), antecedent}};
  if (auto named = arguments_.she(p, false)) return {{named, nullptr}};
  bool plural = false;
  if (arguments_.pronoun_subject(p, plural)) {
    if (auto referent = arguments_.pronoun(plural, p.at)) return {{referent, nullptr}};
  }
  return {};
}

void StatementReader::set_number(Draft& draft, const Subject& subject) const {
  if (!subject.thing) return;
  const Thing& thing = *subject.thing;
  // "Earth closets, three of them in a row."
  const std::uint32_t behind = thing.span.past + 1;
  if (thing.quantity < 0 && thing.plural && behind + 1 < c_.reading.span.past &&
      arguments_.is_mark(behind - 1) && passage_.notes[behind].number >= 0) {
    const Number& number = passage_.numbers[static_cast<std::size_t>(passage_.notes[behind].number)];
    if (number.span.first == behind && number.span.past < c_.reading.span.past &&
        arguments_.has(number.span.past, WordClass::of_them)) {
      draft.quantity = Quantity{number.least, number.most, std::string(passage_.words(number.span))};
      return;
    }
  }
  if (thing.quantity >= 0) {
    const Number& number = passage_.numbers[static_cast<std::size_t>(thing.quantity)];
    Quantity quantity{number.least, number.most, std::string(passage_.words(number.span))};
    draft.quantity = quantity;
    if (number.about && draft.firmness == Firmness::firm) draft.firmness = Firmness::hedged;
    return;
  }
  for (std::uint32_t i = thing.head; i < thing.span.first; ++i) {
    if (arguments_.has(i, WordClass::both))
      draft.quantity = Quantity{2, 2, std::string(passage_.words({i, i + 1}))};
  }
}

Draft& StatementReader::add(const Predicate* p, Statement statement, const Subject& subject, bool negated) {
  Draft draft;
  draft.statement = statement;
  if (subject.referent && subject.referent->kind == ThingKind::place) {
    draft.place = subject.referent;
    draft.of_place = true;
  } else {
    draft.subject = subject.referent;
    draft.subject_words = subject.words;
  }
  draft.polarity = negated ? Polarity::denied : Polarity::affirmed;
  draft.clause = clause_of(p);
  draft.fragment = p == nullptr;
  draft.clause_range = c_.positions.range_of(passage_, c_.reading.clauses[draft.clause].span);
  if (subject.thing) draft.subject_thing = static_cast<std::int32_t>(subject.thing - passage_.things.data());
  set_number(draft, subject);
  if (p) {
    draft.agent = p->agent;
    const Span words = p->span.empty() ? Span{p->at, p->at + 1} : p->span;  // "The drum's still there."
    draft.action = std::string(passage_.words({p->at, words.past}));
    draft.is_now = p->present_tense && p->kind != Predicate::Kind::verb;
    // "It's been there": up to now, not now.
    draft.today = draft.is_now && (p->kind == Predicate::Kind::have ||
                                   arguments_.has(p->at, WordClass::present_be) || p->span.empty());
    if (p->particle > 0) draft.action += " … " + std::string(passage_.words({p->particle, p->particle + 1}));
    Mention mention;
    mention.kind = MentionKind::action;
    mention.range = c_.positions.range_of(passage_, words);
    mention.value = std::string(to_string(statement));
    mention.rule = p->verb ? p->verb->name : p->kind == Predicate::Kind::have ? "to have" : "to be";
    draft.cues.push_back(mention);
  }
  drafts_.push_back(std::move(draft));
  return drafts_.back();
}

/// "The walls of the Salle": a thing's own place, where its spoken name says it.
std::optional<Referent> StatementReader::place_in_name(const Draft& draft) const {
  if (draft.subject_thing < 0 || !draft.subject || draft.subject->kind != ThingKind::equipment)
    return std::nullopt;
  const std::string& home = c_.finders.equipment->list().terms()[draft.subject->terms.front()].place;
  if (home.empty()) return std::nullopt;
  const std::vector<Term>& places = c_.finders.places->list().terms();
  const std::string said = fold(draft.subject->words);
  for (std::uint32_t t = 0; t < places.size(); ++t) {
    if (places[t].key != home || said.find(fold(places[t].name)) == std::string::npos) continue;
    Referent referent;
    referent.kind = ThingKind::place;
    referent.terms = {t};
    referent.words = places[t].name;
    referent.range = draft.subject->range;
    return referent;
  }
  return std::nullopt;
}

void StatementReader::place_it(Draft& draft, const Predicate* p, bool ending) {
  if (draft.of_place) return;
  draft.place = arguments_.place_for(p, draft.clause, ending);
  if (!draft.place) {
    draft.place = place_in_name(draft);
    // "The cabin clock was over the door": where in the cabin.
    const std::string within = draft.place
                                   ? arguments_.relative_place(c_.reading.clauses[draft.clause].span, nullptr)
                                   : std::string();
    if (!within.empty()) draft.place->words = within;
  }
  if (!draft.place) {
    draft.place_words = arguments_.relative_place(c_.reading.clauses[draft.clause].span, nullptr);
  }
}

bool StatementReader::things_between_negated(const Predicate& p, const Thing* thing) const {
  if (!thing || thing->head < p.span.past) return false;
  bool negative = false;
  for (std::uint32_t i = p.span.past; i < thing->head; ++i) {
    if (arguments_.has(i, WordClass::terminator)) {
      negative = false;
    } else if (arguments_.has(i, WordClass::negative) && passage_.notes[i].cue < 0) {
      negative = true;
    }
  }
  return negative;
}

void StatementReader::add_state(const Predicate* p, const Subject& subject, bool negated) {
  Draft& draft = add(p, Statement::present, subject, false);
  place_it(draft, p, false);
  const Number* number = subject.thing && subject.thing->quantity >= 0
                             ? &passage_.numbers[static_cast<std::size_t>(subject.thing->quantity)]
                             : nullptr;
  bool only = false;
  if (subject.thing) {
    for (std::uint32_t i = subject.thing->head > 0 ? subject.thing->head - 1 : 0;
         i < subject.thing->span.first; ++i) {
      only = only || arguments_.has(i, WordClass::only);
    }
  }
  const bool counted = draft.quantity && (draft.quantity->most != 1 || only);
  if (counted) {
    draft.statement = Statement::count;
    const bool bounded = number && number->bound;
    if (negated && !bounded) draft.polarity = Polarity::denied;
    return;
  }
  draft.quantity.reset();
  if (negated) draft.statement = Statement::absent;
}

/// "There was a cream range in it": the adjective states a property too.
void StatementReader::called_in_passing(std::size_t of) {
  const Draft state = drafts_[of];
  const bool shows = state.statement == Statement::present || state.statement == Statement::count ||
                     state.statement == Statement::begins;
  if (!shows || state.subject_thing < 0 || !state.attribute.empty() || state.polarity == Polarity::denied)
    return;
  const Thing& thing = passage_.things[static_cast<std::size_t>(state.subject_thing)];
  if (!c_.reading.span.holds(thing.span.first)) return;
  for (std::uint32_t i = thing.head; i < thing.span.first; ++i) {
    const std::string property = property_at(i, thing.span.first, nullptr);
    if (property.empty() || arguments_.has(i, WordClass::old)) continue;
    Draft draft = state;
    draft.statement = Statement::attribute;
    draft.attribute = property;
    draft.quantity.reset();
    drafts_.push_back(std::move(draft));
    return;
  }
}

/// "They say it came off in 1961, but it didn't."
bool StatementReader::taken_back_after(const Predicate& p) const {
  const Clause& own = c_.reading.clauses[p.clause];
  const std::uint32_t end = c_.reading.span.past;
  // The "but" stands in the clause or opens the next.
  for (std::uint32_t i = p.span.past; i < std::min(end, own.span.past + 2); ++i) {
    if (!arguments_.has(i, WordClass::terminator) || !arguments_.has(i, WordClass::coordinator)) continue;
    std::uint32_t k = i + 1;
    while (k < end && (arguments_.has(k, WordClass::they) || arguments_.has(k, WordClass::it) ||
                       arguments_.has(k, WordClass::we) || arguments_.has(k, WordClass::never) ||
                       arguments_.has(k, WordClass::adverb))) {
      ++k;
    }
    const bool auxiliary =
        k < end && (arguments_.has(k, WordClass::do_) || arguments_.has(k, WordClass::be) ||
                    arguments_.has(k, WordClass::have));
    const bool ends = k + 1 >= end || arguments_.is_mark(k + 1);
    return auxiliary && ends && negative_in(passage_, {i + 1, k + 1}).has_value();
  }
  return false;
}

/// "About thirty feet by twenty", "about, oh, twelve foot": a size that is not exact.
bool StatementReader::rough_measure_in(Span span) const {
  for (const Number& number : passage_.numbers_in(span)) {
    if (!number.measure) continue;
    if (number.about) return true;
    std::uint32_t before = number.span.first;
    while (before > span.first &&
           (arguments_.is_mark(before - 1) || arguments_.has(before - 1, WordClass::filler)))
      --before;
    const WordInfo* info = before > span.first ? passage_.notes[before - 1].info : nullptr;
    if (info && info->quantity >= 0 &&
        c_.words.quantities[static_cast<std::size_t>(info->quantity)].quantity == QuantityClass::about_before)
      return true;
  }
  return false;
}

/// "I painted the winch before I came ashore": "I" is nobody but the narrator.
bool StatementReader::does_it_himself(const Predicate& p) const {
  for (std::uint32_t i = p.at + 1; i > p.left.first && !arguments_.is_mark(i - 1); --i)
    if (arguments_.has(i - 1, WordClass::self)) return passage_.notes[i - 1].cue < 0;
  return false;
}

/// "I'd put it back", "they would paint it": not what was, where that was asked.
bool StatementReader::would(const Predicate& p) const {
  return arguments_.any_in({p.span.first, p.at}, WordClass::would) ||
         arguments_.any_in({p.span.first, p.at}, WordClass::had_or_would);
}

void StatementReader::put_cues(const Predicate* p, std::uint32_t clause, std::size_t first_draft,
                               Span quoted) {
  const CueReading cues = read_cues(passage_, c_.words, c_.reading, p, clause, quoted);
  const Clause& own = c_.reading.clauses[clause];
  bool blocked = cues.blocked || own.conditional || (c_.supposing && p && would(*p));
  // "They were supposed to fit one but they never did": what was meant did not happen.
  bool never_did = false;
  if (cues.ordered && p) {
    Span after{p->span.past, c_.reading.span.past};
    for (std::uint32_t i = after.first; i < after.past; ++i) {
      if (!arguments_.has(i, WordClass::terminator)) continue;
      never_did = negative_in(passage_, {i + 1, after.past}).has_value() &&
                  (arguments_.any_in({i + 1, after.past}, WordClass::do_) ||
                   arguments_.any_in({i + 1, after.past}, WordClass::never));
      break;
    }
  }
  if (p && !never_did && taken_back_after(*p)) never_did = true;
  if (never_did) blocked = false;
  if (blocked && !c_.asking) {
    drafts_.resize(first_draft);
    return;
  }
  for (std::size_t d = first_draft; d < drafts_.size(); ++d) {
    Draft& draft = drafts_[d];
    if (never_did) draft.polarity = Polarity::denied;
    draft.not_there = draft.not_there || cues.not_there;
    const bool unstated = draft.basis == Basis::unstated && cues.basis == Basis::unstated;
    const bool took_part = unstated && p && p->agent == Agent::we && (!cues.not_there || does_it_himself(*p));
    if (took_part && (p->kind == Predicate::Kind::verb || p->kind == Predicate::Kind::have)) {
      draft.basis = Basis::first_hand;
      draft.because.emplace_back("the narrator took part → first-hand");
    }
    if (draft.statement == Statement::located && took_part) draft.basis = Basis::first_hand;
    const bool of_size =
        draft.statement == Statement::attribute && draft.attribute.starts_with(kAttributeAsTold);
    if (of_size && rough_measure_in({own.core.first, std::max(own.core.past, quoted.past)}) &&
        draft.firmness == Firmness::firm)
      draft.firmness = Firmness::hedged;
    if (cues.doubted || cues.denied) {
      if (draft.statement == Statement::present) {
        draft.statement = Statement::absent;
      } else if (draft.statement != Statement::absent) {
        draft.polarity = Polarity::denied;
      }
    }
    if (cues.not_as_if) draft.polarity = Polarity::denied;
    if (cues.not_until && draft.polarity == Polarity::denied) draft.polarity = Polarity::affirmed;
    lay(c_, cues, draft);
  }
}

std::vector<Draft> StatementReader::run() {
  if (c_.reading.predicates.empty()) {
    fragment();
    recounted();
    been_at_location();
    was_elsewhere();
    for (std::size_t d = 0, made = drafts_.size(); d < made; ++d) with_part(d);
    return std::move(drafts_);
  }
  if (c_.inventory && c_.asked_place) inventory_item();
  for (const Predicate& p : c_.reading.predicates) {
    const std::size_t first = drafts_.size();
    switch (p.kind) {
      case Predicate::Kind::verb:
        verb(p);
        break;
      case Predicate::Kind::exist:
        exists(p);
        break;
      case Predicate::Kind::have:
        has(p);
        break;
      case Predicate::Kind::be:
        is(p);
        break;
    }
    instead_of(p);
    put_dates(&p, first);
    put_cues(&p, p.clause, first);
    said_of_more(p, first);
  }
  been_at_location();
  was_elsewhere();
  for (std::size_t d = 0, made = drafts_.size(); d < made; ++d) with_part(d);
  for (std::size_t d = 0, made = drafts_.size(); d < made; ++d) called_in_passing(d);
  used_with_pronoun();
  named_in_passing();
  drop_repeated();
  // A place can be built, taken away, painted or said something of, but it stands nowhere.
  std::erase_if(drafts_, [](const Draft& draft) {
    return draft.of_place && draft.statement != Statement::attribute &&
           draft.statement != Statement::happened && draft.statement != Statement::begins &&
           draft.statement != Statement::ends;
  });
  return std::move(drafts_);
}

/// The same said twice in one sentence is one statement.
void StatementReader::drop_repeated() {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    Draft& draft = drafts_[i];
    const auto past_kept = drafts_.begin() + static_cast<std::ptrdiff_t>(kept);
    const bool repeated = std::any_of(drafts_.begin(), past_kept, [&](const Draft& other) {
      const auto terms = [](const std::optional<Referent>& r) {
        return r ? r->terms : std::vector<std::uint32_t>();
      };
      const auto date = [](const Draft& d) {
        return d.date && d.date->expression.edtf ? to_string(*d.date->expression.edtf) : std::string();
      };
      return other.statement == draft.statement && other.place_words == draft.place_words &&
             other.subject_words == draft.subject_words && other.polarity == draft.polarity &&
             other.attribute == draft.attribute && terms(other.subject) == terms(draft.subject) &&
             terms(other.place) == terms(draft.place) && date(other) == date(draft);
    });
    if (repeated) continue;
    if (kept != i) drafts_[kept] = std::move(draft);
    ++kept;
  }
  drafts_.resize(kept);
}

std::vector<Draft> read_statements(const StatementContext& context) {
  // A question the narrator asks states nothing, but for "or was it 1950?" behind a statement.
  if (context.reading.question && !context.asking) {
    const auto cues = context.passage.cues_in(context.reading.span);
    const bool tag = std::any_of(cues.begin(), cues.end(), [&](const CueSpan& cue) {
      return cue.span.first > context.reading.span.first &&
             (context.words.cues[cue.cue].cue == CueClass::hedge ||
              context.words.cues[cue.cue].cue == CueClass::pseudo);
    });
    const Flags& opening = context.passage.notes[context.reading.span.first].flags;
    const bool asks = opening.has(WordClass::question_word) || opening.has(WordClass::be) ||
                      opening.has(WordClass::do_) || opening.has(WordClass::have) ||
                      opening.has(WordClass::modal);
    if (asks) return {};
    if (!tag) {
      // "The book says it was gone, and I thought, was it?": only the last clause asks.
      std::vector<Draft> drafts = StatementReader(context).run();
      const std::uint32_t last = static_cast<std::uint32_t>(context.reading.clauses.size()) - 1;
      std::erase_if(drafts, [last](const Draft& draft) { return draft.clause >= last; });
      return drafts;
    }
  }
  return StatementReader(context).run();
}

}  // namespace witnessmark::claims
