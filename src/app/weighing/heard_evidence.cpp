#include "app/weighing/heard_evidence.h"

#include <algorithm>

#include "app/shown_register.h"

#include "witnessmark/app/date_meaning.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {
HeardEvidence::HeardEvidence(const SiteFile& site, const DatePolicy& policy, Day today)
    : withholding_(site, today),
      people_(site),
      evidence_(shown_register(site, people_, withholding_, entries_left_out_)),
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

std::int64_t HeardEvidence::reviewed_claims() const {
  return std::count_if(claims_.begin(), claims_.end(),
                       [](const StoredClaim& stored) { return stored.claim.status == ClaimStatus::said_so; });
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

std::string HeardEvidence::withheld() const {
  return withheld_words(withholding_, entries_left_out_);
}

ClaimRecord HeardEvidence::record(const StoredClaim& stored) {
  return records_.make(stored, withholding_);
}

}  // namespace witnessmark
