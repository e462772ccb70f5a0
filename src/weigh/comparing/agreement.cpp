#include "witnessmark/weigh/agreement.h"

#include <algorithm>

#include "circularity.h"
#include "compare_timed.h"
#include "evidence_beside.h"
#include "meaning.h"
#include "property.h"
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
  return says_the_same(split_attribute(claim.attribute), split_attribute(entry.attribute));
}

/// An intention contradicts nobody, and bears out only that the same was meant to be done or to stand there.
Outcome lowered_by_intention(const Claim& claim, const RegisterIndex::Item& item, Outcome outcome) {
  const bool same = claim.statement == item.entry->statement && claim.polarity == Polarity::affirmed;
  if (!same || outside_intention(claim, item)) return Outcome::cannot_tell;
  const bool change = is_change(claim.statement);
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

/// Numbers at a place and at a part of it, or of all together, are not of one thing.
Outcome lowered_by_place(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence,
                         Outcome outcome) {
  if (claim.statement != Statement::count || item.entry->statement != Statement::count) return outcome;
  const std::string told = claim.place_carried ? "" : claim.place;
  if (!told.empty() && !item.entry->place.empty())
    return told == item.entry->place ? outcome : Outcome::cannot_tell;
  // A number told without a place may be of any place at which the register counts the thing, or of all together.
  const bool open = outcome == Outcome::conflicts && evidence.beside(claim.subject, "").counted_at_several_places;
  return open ? Outcome::cannot_tell : outcome;
}

/// An absence in a picture counts only where the spot can be seen in it.
bool absence_not_seen(const RegisterIndex::Item& item) {
  const bool picture = item.source != nullptr && item.source->kind == SourceKind::photograph;
  return picture && item.entry->statement == Statement::absent &&
         item.entry->spot_visible != SpotVisible::yes;
}

/// Whatever the two mean for one another, what lowers it.
HeldAgainst lowered(const TimedClaim& timed, const Interview& interview, const TimedEntry& entry,
                 const std::unordered_set<std::string>& lineage, const RegisterIndex& evidence,
                 const Meaning& meaning) {
  const Claim& claim = *timed.claim;
  const RegisterIndex::Item& item = entry.item;
  HeldAgainst standing{meaning.outcome, item.entry->nature == Nature::intended,
                    circle_between(claim, interview, item, lineage, evidence)};
  if (standing.intention) standing.outcome = lowered_by_intention(claim, item, standing.outcome);
  standing.outcome = lowered_by_place(claim, item, evidence, standing.outcome);
  if (item.entry->subject != claim.subject || absence_not_seen(item)) standing.outcome = Outcome::cannot_tell;
  standing.outcome = lowered_by_identification(standing.outcome, item.entry->identification);
  standing.outcome = lowered_by_circle(standing.outcome, standing.circle);
  return standing;
}

Comparison compared(const TimedClaim& timed, const TimedEntry& entry, const HeldAgainst& standing) {
  const Claim& claim = *timed.claim;
  const RegisterIndex::Item& item = entry.item;
  Comparison comparison;
  comparison.claim = claim.id;
  comparison.entry = item.entry->key;
  comparison.outcome = standing.outcome;
  comparison.intention = standing.intention;
  comparison.circular = standing.circle != Circle::none;
  if (claim.when.period && item.period) {
    comparison.relation = possible_relations(*claim.when.period, *item.period);
    if (standing.outcome == Outcome::conflicts) comparison.gap = days_apart(timed.days, entry.days);
  }
  return comparison;
}

}  // namespace

std::optional<HeldAgainst> held_against(const TimedClaim& claim, const Interview& interview, const TimedEntry& entry,
                                    const std::unordered_set<std::string>& lineage,
                                    const RegisterIndex& evidence) {
  const Meaning meaning = hold_against(claim, entry, evidence);
  if (!meaning.comparable) return std::nullopt;
  return lowered(claim, interview, entry, lineage, evidence, meaning);
}

Comparison compare(const Claim& claim, const Interview& interview, const RegisterIndex::Item& item,
                   const RegisterIndex& evidence) {
  const TimedClaim told = timed(claim, evidence.policy());
  const TimedEntry stated = timed(item, evidence);
  return compared(told, stated,
                  lowered(told, interview, stated, evidence.lineage(item.entry->source), evidence,
                          hold_against(told, stated, evidence)));
}

std::vector<Comparison> compare(const Claim& claim, const Interview& interview, const RegisterIndex& evidence,
                                const std::vector<ServicePeriod>& service) {
  std::vector<Comparison> comparisons;
  if (claim.statement == Statement::located) {
    comparisons = compare_whereabouts(claim, evidence, service);
  } else if (!claim.subject.empty() || !claim.place.empty()) {
    // A place carried over from the talk before may be the wrong one: it does not narrow.
    const bool narrows = !claim.place_carried || claim.subject.empty();
    const TimedClaim made = timed(claim, evidence.policy());
    const EvidenceBeside& beside = evidence.beside(claim.subject, narrows ? claim.place : "");
    comparisons.reserve(beside.entries.size());
    for (const PreparedEntry* entry : beside.entries) {
      const auto standing = held_against(made, interview, entry->timed, *entry->lineage, evidence);
      if (standing) comparisons.push_back(compared(made, entry->timed, *standing));
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
