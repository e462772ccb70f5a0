// What is spoken of only as part of what people did: "we used to ride down on the bogie", "I took bearings
// with it every day". That it was there is stated by the way; what was done once with it happened.
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

/// "used to", "would", "every Friday", "we were landing", "you": done again and again.
bool StatementReader::again_and_again(const Span& clause) const {
  for (std::uint32_t i = clause.first; i < clause.past; ++i) {
    for (const WordClass c :
         {WordClass::used_to, WordClass::habit, WordClass::would, WordClass::still, WordClass::never})
      if (arguments_.has(i, c)) return true;
    const std::string_view word = passage_.words({i, i + 1});
    if (arguments_.has(i, WordClass::you)) return true;
    // "were landing"
    const bool going = c_.words.is_going(word) && !arguments_.has(i, WordClass::be) && i > clause.first &&
                       arguments_.has(i - 1, WordClass::be);
    if (going) return true;
  }
  return false;
}

/// "We used to ride down on the bogie", "after he died it was two men and a hand winch".
void StatementReader::named_in_passing() {
  if (c_.asking) return;
  for (const Thing& thing : passage_.things_in(c_.reading.span)) {
    if (thing.kind != ThingKind::equipment || thing.shadowed || thing.corrected || thing.negated ||
        thing.near_match) {
      continue;
    }
    const bool stated = std::any_of(drafts_.begin(), drafts_.end(), [&](const Draft& draft) {
      return draft.subject && draft.subject->terms == thing.terms;
    });
    if (stated) continue;
    // "Put three more on the machine": the machine only says where.
    const bool says_where =
        (thing.role == Role::at || thing.role == Role::relation || thing.role == Role::to) &&
        std::any_of(drafts_.begin(), drafts_.end(), [&](const Draft& draft) {
          return c_.reading.clauses[draft.clause].span.holds(thing.span.first);
        });
    if (says_where) continue;
    const Predicate* of = nullptr;
    for (const Predicate& p : c_.reading.predicates) {
      if (c_.reading.clauses[p.clause].span.holds(thing.span.first)) of = &p;
    }
    if (!of || of->negated || of->present_tense) continue;
    const Span clause = c_.reading.clauses[of->clause].span;
    if (of->agent != Agent::we && !again_and_again(clause)) continue;
    const std::size_t first = drafts_.size();
    add_state(of, {referent_of(c_, thing), &thing}, false);
    put_dates(of, first);
    put_cues(of, of->clause, first);
  }
}

/// "I learned on it", "we worked Farrenby with it first": a preposition and a pronoun for what is spoken of.
void StatementReader::used_with_pronoun() {
  if (c_.asking || !drafts_.empty()) return;
  const Span span = c_.reading.span;
  for (std::uint32_t i = span.first + 2; i < span.past; ++i) {
    if (!arguments_.has(i, WordClass::pronoun) || passage_.notes[i].cue >= 0) continue;
    const bool by_means = arguments_.has(i - 1, WordClass::with) || arguments_.has(i - 1, WordClass::at) ||
                          arguments_.has(i - 1, WordClass::relation) ||
                          arguments_.has(i - 1, WordClass::from);
    if (!by_means || arguments_.has(i - 1, WordClass::by)) continue;
    std::uint32_t clause = 0;
    for (std::uint32_t c = 0; c < c_.reading.clauses.size(); ++c)
      if (c_.reading.clauses[c].span.holds(i)) clause = c;
    const Span own = c_.reading.clauses[clause].span;
    bool people = false;
    for (std::uint32_t k = own.first; k + 1 < i; ++k) {
      people = people || arguments_.has(k, WordClass::we) || arguments_.has(k, WordClass::person) ||
               (arguments_.has(k, WordClass::they) && !arguments_.has(k, WordClass::pronoun)) ||
               arguments_.has(k, WordClass::you);
    }
    if (!people || negative_in(passage_, {own.first, i})) continue;
    const std::optional<Referent> subject = arguments_.pronoun(arguments_.has(i, WordClass::them), i);
    if (!subject || subject->kind != ThingKind::equipment) continue;
    const bool again = again_and_again(own);
    const std::size_t first = drafts_.size();
    Draft& draft = add(nullptr, again ? Statement::present : Statement::happened, {subject, nullptr}, false);
    draft.clause = clause;
    draft.clause_range = c_.positions.range_of(passage_, own);
    draft.fragment = false;
    if (!again) draft.attribute = std::string(passage_.words({own.first, i + 1}));
    put_dates(nullptr, first);
    put_cues(nullptr, clause, first);
    return;
  }
}

}  // namespace witnessmark::claims
