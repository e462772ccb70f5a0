#include "witnessmark/app/claim_records.h"

#include "app/record_maker.h"
#include "witnessmark/app/date_meaning.h"

namespace witnessmark {

Result<void> for_each_record(const SiteFile& site, const ClaimFilter& filter,
                             const Surroundings& surroundings, Withholding& withholding,
                             const std::function<void(const ClaimRecord&)>& visit) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  RecordMaker maker(site, *policy);
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    if (withholding.may_show(stored.claim.interview, stored.claim.quotes))
      visit(maker.make(stored, withholding));
  });
  return {};
}

}  // namespace witnessmark
