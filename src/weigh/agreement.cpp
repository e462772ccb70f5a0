#include "witnessmark/weigh/agreement.h"

#include "circularity.h"
#include "meaning.h"
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

Outcome lowered_by_intention(const Claim& claim, const RegisterIndex::Item& item, Outcome outcome) {
  if (outcome == Outcome::cannot_tell) return outcome;
  const bool change = claim.statement == Statement::begins || claim.statement == Statement::ends;
  if (!change || claim.statement != item.entry->statement) return Outcome::cannot_tell;
  if (claim.when.period && item.period && before(*claim.when.period, *item.period) == Answer::yes)
    return Outcome::cannot_tell;  // done before anyone wanted it done
  return Outcome::compatible;
}

/// An entry dated or identified by the thing itself settles nothing about it. What rests on the same testimony, or was
/// shown to the narrator, stands as it stands: it is only no independent witness, which the mark says.
Outcome lowered_by_circle(Outcome outcome, Circle circle) {
  const bool rests_on_itself = circle == Circle::date_rests_on_subject || circle == Circle::identity_rests_on_subject;
  return rests_on_itself ? Outcome::cannot_tell : outcome;
}

/// The days a statement can be about: any within its period, unless it holds throughout.
Period days_meant(const Period& period, Reading reading) {
  return reading == Reading::within ? some_time_within(period) : period;
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
  if (item.entry->subject != claim.subject || absence_not_seen(item)) outcome = Outcome::cannot_tell;
  outcome = lowered_by_identification(outcome, item.entry->identification);
  const Circle circle = circle_between(claim, interview, item, evidence);
  comparison.circular = circle != Circle::none;
  comparison.outcome = lowered_by_circle(outcome, circle);
  if (comparison.outcome == Outcome::conflicts && claim.when.period && item.period)
    comparison.gap = distance_in_days(days_meant(*claim.when.period, claim.when.reading),
                                      days_meant(*item.period, item.entry->reading));
  return comparison;
}

std::vector<Comparison> compare(const Claim& claim, const Interview& interview,
                                const RegisterIndex& evidence) {
  std::vector<Comparison> comparisons;
  if (claim.statement == Statement::located) {
    comparisons = compare_whereabouts(claim, evidence);
  } else if (!claim.subject.empty() || !claim.place.empty()) {
    for (const RegisterIndex::Item* item : evidence.on(claim.subject, claim.place)) {
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
