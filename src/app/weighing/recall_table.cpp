#include "witnessmark/app/recall_table.h"

#include "app/weighing/heard_evidence.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/store/weighings.h"

namespace witnessmark {

Result<RecallAccount> recall_account(const SiteFile& site, const Surroundings& surroundings) {
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  std::vector<RecallCase> reviewed, all;
  for_each_weighing(site, [&](const Weighing& weighing) {
    const StoredClaim* stored = (*heard)->find(weighing.claim);
    if (stored == nullptr) return;
    // An entry that rests on withheld testimony has no part in it.
    std::vector<Comparison> shown = weighing.comparisons;
    std::erase_if(shown, [&](const Comparison& comparison) {
      return !comparison.entry.empty() && (*heard)->index().find(comparison.entry) == nullptr &&
             (*heard)->index().find_stay(comparison.entry) == nullptr;
    });
    all.push_back({weighing.recall, stored->claim.basis, foremost(shown)});
    if (stored->claim.status == ClaimStatus::said_so) reviewed.push_back(all.back());
  });
  return RecallAccount{tabulate_recall(reviewed), tabulate_recall(all), (*heard)->withheld()};
}

}  // namespace witnessmark
