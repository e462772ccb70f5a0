#include "witnessmark/weigh/agreement.h"

#include <algorithm>

#include "circularity.h"
#include "meaning.h"
#include "property.h"
#include "told_days.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/whereabouts.h"

namespace witnessmark {
namespace {

Outcome lowered_by_identification(Outcome outcome, Identification identification) {
  if (identification == Identification::certain) return outcome;
  if (outcome == Outcome::conflicts) return Outcome::cannot_tell;
  if (identification == Identification::possible) return Outcome::cannot_tell;
  return outcome == Outcome::agrees ? Outcome::compatible : outcome;
}

/// Whether the claim's time lies outside what was intended: before the order or drawing, or after the stretch
/// in which it was to be done. A single date says when it was ordered, and what is done may come any time
/// after.
bool outside_intention(const Claim& claim, const RegisterIndex::Item& item) {
  if (!claim.when.period || !item.period) return false;
  if (before(*claim.when.period, *item.period) == Answer::yes) return true;
  const bool stretch =
      item.entry->when.value && std::holds_alternative<EdtfInterval>(item.entry->when.value->value);
  return stretch && before(*item.period, *claim.when.period) == Answer::yes;
}

/// Whether the number or the property told is the one the entry states, where both give one.
bool says_the_same_thing(const Claim& claim, const Entry& entry) {
  if (claim.statement == Statement::count && claim.quantity && entry.number)
    return claim.quantity->least <= *entry.most() && *entry.number <= claim.quantity->most;
  if (claim.attribute.empty() || entry.attribute.empty()) return true;
  const Attribute told = split_attribute(claim.attribute);
  const Attribute stated = split_attribute(entry.attribute);
  return says_the_same(told.value, stated.value);
}

/// An intention contradicts nobody, and bears out only that the same was meant to be done or to stand there.
Outcome lowered_by_intention(const Claim& claim, const RegisterIndex::Item& item, Outcome outcome) {
  const bool same = claim.statement == item.entry->statement && claim.polarity == Polarity::affirmed;
  if (!same || outside_intention(claim, item)) return Outcome::cannot_tell;
  const bool change = claim.statement == Statement::begins || claim.statement == Statement::ends;
  // A change dated otherwise may still be the one intended; a state, a number or a property that differs is
  // not.
  if (outcome == Outcome::conflicts && !change) return Outcome::cannot_tell;
  if (!says_the_same_thing(claim, *item.entry)) return Outcome::cannot_tell;
  return outcome == Outcome::cannot_tell ? outcome : Outcome::compatible;
}

/// An entry dated or identified by the thing itself settles nothing about it. What rests on the same
/// testimony, or was shown to the narrator, stands as it stands: it is only no independent witness, which the
/// mark says.
Outcome lowered_by_circle(Outcome outcome, Circle circle) {
  const bool rests_on_itself =
      circle == Circle::date_rests_on_subject || circle == Circle::identity_rests_on_subject;
  return rests_on_itself ? Outcome::cannot_tell : outcome;
}

/// Whether the register counts the thing at more than one place: a number told without a place may then be of
/// any of them, or of all together.
bool counted_at_several_places(const std::string& subject, const RegisterIndex& evidence) {
  const std::string* first = nullptr;
  for (const RegisterIndex::Item* item : evidence.on(subject, "")) {
    if (item->entry->subject != subject || item->entry->statement != Statement::count) continue;
    if (first != nullptr && *first != item->entry->place) return true;
    first = &item->entry->place;
  }
  return false;
}

/// Numbers at a place and at a part of it, or of all together, are not of one thing.
Outcome lowered_by_place(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence,
                         Outcome outcome) {
  if (claim.statement != Statement::count || item.entry->statement != Statement::count) return outcome;
  const std::string told = claim.place_carried ? "" : claim.place;
  if (!told.empty() && !item.entry->place.empty())
    return told == item.entry->place ? outcome : Outcome::cannot_tell;
  const bool open = outcome == Outcome::conflicts && counted_at_several_places(claim.subject, evidence);
  return open ? Outcome::cannot_tell : outcome;
}

/// An absence in a picture counts only where the spot can be seen in it.
bool absence_not_seen(const RegisterIndex::Item& item) {
  const bool picture = item.source != nullptr && item.source->kind == SourceKind::photograph;
  return picture && item.entry->statement == Statement::absent &&
         item.entry->spot_visible != SpotVisible::yes;
}

}  // namespace

Comparison compare(const Claim& claim, const Interview& interview, const RegisterIndex::Item& item,
                   const RegisterIndex& evidence) {
  Comparison comparison;
  comparison.claim = claim.id;
  comparison.entry = item.entry->key;
  if (claim.when.period && item.period)
    comparison.relation = possible_relations(*claim.when.period, *item.period);
  const Meaning meaning = hold_against(claim, item, evidence);
  Outcome outcome = meaning.outcome;
  if (item.entry->nature == Nature::intended) {
    outcome = lowered_by_intention(claim, item, outcome);
    comparison.intention = true;
  }
  outcome = lowered_by_place(claim, item, evidence, outcome);
  if (item.entry->subject != claim.subject || absence_not_seen(item)) outcome = Outcome::cannot_tell;
  outcome = lowered_by_identification(outcome, item.entry->identification);
  const Circle circle = circle_between(claim, interview, item, evidence);
  comparison.circular = circle != Circle::none;
  comparison.outcome = lowered_by_circle(outcome, circle);
  if (comparison.outcome == Outcome::conflicts && claim.when.period && item.period)
    comparison.gap = days_apart(told_days(claim.when.dated.value, claim.when.period, evidence.policy()),
                                told_days(item.entry->when.value, item.period, evidence.policy()));
  return comparison;
}

std::vector<Comparison> compare(const Claim& claim, const Interview& interview,
                                const RegisterIndex& evidence) {
  std::vector<Comparison> comparisons;
  if (claim.statement == Statement::located) {
    comparisons = compare_whereabouts(claim, evidence);
  } else if (!claim.subject.empty() || !claim.place.empty()) {
    // A place carried over from the talk before may be the wrong one: it does not narrow.
    const bool narrows = !claim.place_carried || claim.subject.empty();
    for (const RegisterIndex::Item* item : evidence.on(claim.subject, narrows ? claim.place : "")) {
      if (hold_against(claim, *item, evidence).comparable)
        comparisons.push_back(compare(claim, interview, *item, evidence));
    }
  }
  if (comparisons.empty()) {
    Comparison silent;
    silent.claim = claim.id;
    comparisons.push_back(std::move(silent));
  }
  return comparisons;
}

}  // namespace witnessmark
