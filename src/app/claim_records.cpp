#include "witnessmark/app/claim_records.h"

#include <algorithm>
#include <unordered_map>

#include "app/record_maker.h"
#include "witnessmark/app/date_meaning.h"

namespace witnessmark {

Result<void> for_each_record(const SiteFile& site, const ClaimFilter& filter,
                             const Surroundings& surroundings, Withholding& withholding,
                             const std::function<void(const ClaimRecord&)>& visit) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  RecordMaker maker(site, *policy);
  maker.hold_differences();
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    if (withholding.may_show(stored.claim.interview, stored.claim.quotes))
      visit(maker.make(stored, withholding));
  });
  return {};
}

Result<void> for_each_record_of(const SiteFile& site, const std::vector<Id>& claims,
                                const Surroundings& surroundings, Withholding& withholding,
                                const std::function<void(const ClaimRecord&)>& visit) {
  constexpr std::size_t kBatch = 500;
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  RecordMaker maker(site, *policy);
  maker.hold_differences();
  for (std::size_t begin = 0; begin < claims.size(); begin += kBatch) {
    const std::size_t past = std::min(begin + kBatch, claims.size());
    ClaimFilter filter;
    filter.ids.assign(claims.begin() + static_cast<std::ptrdiff_t>(begin),
                      claims.begin() + static_cast<std::ptrdiff_t>(past));
    std::unordered_map<Id, StoredClaim> held;
    for_each_claim(site, filter, [&](const StoredClaim& stored) { held.emplace(stored.claim.id, stored); });
    for (const Id& id : filter.ids) {
      const auto at = held.find(id);
      if (at == held.end()) continue;
      const Claim& claim = at->second.claim;
      if (withholding.may_show(claim.interview, claim.quotes)) visit(maker.make(at->second, withholding));
    }
  }
  return {};
}

}  // namespace witnessmark
