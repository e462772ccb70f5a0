#include "witnessmark/app/recall_table.h"

#include "app/weighing/heard_evidence.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/store/weighings.h"

namespace witnessmark {

Result<RecallAccount> recall_account(const SiteFile& site, const Surroundings& surroundings) {
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  std::vector<RecallCase> reviewed, all;
  const auto add = [&](const Id& id, const Recall& recall, Outcome outcome) {
    const StoredClaim* stored = (*heard)->find(id);
    if (stored == nullptr) return;
    all.push_back({recall, stored->claim.basis, outcome});
    if (stored->claim.status == ClaimStatus::said_so) reviewed.push_back(all.back());
  };
  if ((*heard)->entries_left_out() == 0) {
    for_each_standing(site, [&](const ClaimStanding& standing) {
      add(standing.claim, standing.recall, standing.foremost);
    });
  } else {
    for_each_weighing(site, [&](const Weighing& weighing) {
      // An entry that rests on withheld testimony has no part in it.
      std::vector<Comparison> shown = weighing.comparisons;
      std::erase_if(shown, [&](const Comparison& comparison) {
        return !comparison.entry.empty() && (*heard)->index().find(comparison.entry) == nullptr &&
               (*heard)->index().find_stay(comparison.entry) == nullptr;
      });
      add(weighing.claim, weighing.recall, foremost(shown));
    });
  }
  return RecallAccount{tabulate_recall(reviewed), tabulate_recall(all), (*heard)->withheld()};
}

}  // namespace witnessmark
