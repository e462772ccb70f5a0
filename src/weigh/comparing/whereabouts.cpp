#include "witnessmark/weigh/whereabouts.h"

#include <algorithm>

#include "weigh/comparing/beside_stay.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {
namespace {

using Names = std::vector<std::string>;

bool same_location(const RegisterIndex::StayItem& stay, const Names& names) {
  return std::any_of(names.begin(), names.end(), [&](const std::string& name) {
    return std::find(stay.folded_locations.begin(), stay.folded_locations.end(), name) !=
           stay.folded_locations.end();
  });
}

/// Days from the told time to the nearest stay at the place told of; nothing when there was none.
std::optional<Distance> gap_to_stay_there(const std::vector<const RegisterIndex::StayItem*>& stays,
                                          const Names& names, const Period& told) {
  std::optional<Distance> nearest;
  for (const RegisterIndex::StayItem* stay : stays) {
    if (!same_location(*stay, names)) continue;
    const Distance distance = distance_in_days(some_time_within(told), *stay->period);
    if (!nearest || distance.least < nearest->least) nearest = distance;
  }
  return nearest;
}

}  // namespace

Outcome beside_stay(bool here, bool own_stay, bool denied, const Period& told, const Period& stayed) {
  if (!own_stay) return overlap(told, stayed) == Answer::no ? Outcome::silent : Outcome::cannot_tell;
  // At some time within the told period the party was there: surely so when stay and period surely share a
  // day.
  if (here) {
    const Answer shared = overlap(told, stayed);
    if (shared == Answer::no) return Outcome::silent;
    if (denied) return within(told, stayed) == Answer::yes ? Outcome::conflicts : Outcome::cannot_tell;
    return shared == Answer::yes ? Outcome::agrees : Outcome::compatible;
  }
  if (within(told, stayed) != Answer::yes) return Outcome::silent;
  return denied ? Outcome::agrees : Outcome::conflicts;
}

std::vector<Comparison> compare_whereabouts(const Claim& claim, const RegisterIndex& evidence,
                                            const std::vector<ServicePeriod>& service) {
  std::vector<Comparison> comparisons;
  if (!claim.when.period || claim.place_words.empty()) return comparisons;
  const Period& told = *claim.when.period;
  const Names location = evidence.location_names(claim.place_words);
  std::vector<const RegisterIndex::StayItem*> stays;
  for (const RegisterIndex::StayItem& stay : evidence.stays()) {
    if (stay.period && (stay.stay->party == claim.subject || stay.stay->party.empty()))
      stays.push_back(&stay);
  }
  const Answer in_service_then = in_service(told, service, evidence.policy()).inside;
  for (const RegisterIndex::StayItem* stay : stays) {
    const bool here = same_location(*stay, location);
    const bool own = stay->stay->party == claim.subject;
    const bool denied = claim.polarity == Polarity::denied;
    Outcome outcome = beside_stay(here, own, denied, told, *stay->period);
    if (!own && outcome == Outcome::cannot_tell) {
      if (in_service_then == Answer::no) continue;
      if (in_service_then == Answer::yes && here && !denied) outcome = Outcome::compatible;
    }
    if (outcome == Outcome::silent) continue;
    Comparison comparison;
    comparison.claim = claim.id;
    comparison.entry = stay->stay->key;
    comparison.outcome = outcome;
    comparison.relation = possible_relations(told, *stay->period);
    if (outcome == Outcome::conflicts) comparison.gap = gap_to_stay_there(stays, location, told);
    comparisons.push_back(std::move(comparison));
  }
  return comparisons;
}

}  // namespace witnessmark
