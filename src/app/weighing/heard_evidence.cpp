#include "app/weighing/heard_evidence.h"

#include <set>

#include "witnessmark/app/date_meaning.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {
namespace {

/// The register without what its sources have from interviews that may not go out.
Register register_to_be_heard(const SiteFile& site, Withholding& withholding) {
  Register evidence = load_register(site);
  std::set<std::string> closed;
  for (const Source& source : evidence.sources) {
    if (!source.interview.empty() && withholding.reason(source.interview, {}) != Withheld::none)
      closed.insert(source.key);
  }
  std::erase_if(evidence.entries, [&](const Entry& entry) {
    if (!closed.contains(entry.source)) return false;
    const auto source = std::find_if(evidence.sources.begin(), evidence.sources.end(),
                                     [&](const Source& held) { return held.key == entry.source; });
    return !withholding.may_show(source->interview, {});
  });
  std::erase_if(evidence.itinerary, [&](const Stay& stay) { return closed.contains(stay.source); });
  return evidence;
}

}  // namespace

HeardEvidence::HeardEvidence(const SiteFile& site, const DatePolicy& policy, Day today)
    : withholding_(site, today),
      people_(site),
      evidence_(register_to_be_heard(site, withholding_)),
      lists_(load_lists(site)),
      index_(evidence_, lists_, policy),
      records_(site, policy) {
  ClaimFilter filter;
  filter.with_mentions = false;
  filter.statuses = {ClaimStatus::proposed, ClaimStatus::said_so};
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    if (stored.claim.withdrawn || !withholding_.may_show(stored.claim.interview, stored.claim.quotes)) return;
    by_id_.emplace(stored.claim.id, claims_.size());
    claims_.push_back(stored);
  });
}

Result<std::unique_ptr<HeardEvidence>> HeardEvidence::load(const SiteFile& site,
                                                           const Surroundings& surroundings) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  return std::unique_ptr<HeardEvidence>(new HeardEvidence(site, *policy, surroundings.today));
}

const StoredClaim* HeardEvidence::find(const Id& claim) const {
  const auto at = by_id_.find(claim);
  return at == by_id_.end() ? nullptr : &claims_[at->second];
}

std::vector<Testimony> HeardEvidence::testimony(bool with_proposals) const {
  std::vector<Testimony> heard;
  for (const StoredClaim& stored : claims_) {
    const Claim& claim = stored.claim;
    if (claim.status == ClaimStatus::proposed && !with_proposals) continue;
    const Interview& interview = people_.interview(claim.interview);
    const Person& narrator = people_.narrator(claim);
    const Recall recall = recall_of(claim.when, interview, narrator, policy());
    heard.push_back({&claim, &interview, narrator.key, recall.in_service});
  }
  return heard;
}

ClaimRecord HeardEvidence::record(const StoredClaim& stored) {
  return records_.make(stored, withholding_);
}

}  // namespace witnessmark
