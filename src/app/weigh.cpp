#include "witnessmark/app/weigh.h"

#include <algorithm>

#include "app/people.h"
#include "witnessmark/app/claim_records.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/weigh/agreement.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {
namespace {

constexpr std::size_t kBatch = 10'000;

}  // namespace

Result<std::int64_t> weigh(SiteFile& site, bool all, const Surroundings& surroundings) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  const Register evidence = load_register(site);
  const AuthorityLists lists = load_lists(site);
  const RegisterIndex index(evidence, lists, *policy);
  const People people(site);

  ClaimFilter filter;
  filter.with_mentions = false;
  if (!all) {
    filter.ids = claims_to_weigh(site);
    if (filter.ids.empty()) return 0;
  }
  std::vector<Weighing> batch;
  std::int64_t weighed = 0;
  for (const StoredClaim& stored : load_claims(site, filter)) {
    const Claim& claim = stored.claim;
    const Interview& interview = people.interview(claim.interview);
    batch.push_back({claim.id, recall_of(claim.when, interview, people.narrator(claim), *policy),
                     compare(claim, interview, index)});
    ++weighed;
    if (batch.size() < kBatch) continue;
    if (const auto saved = save_weighings(site, batch); !saved) return saved.error();
    batch.clear();
  }
  if (const auto saved = save_weighings(site, batch); !saved) return saved.error();
  return weighed;
}

Outcome foremost(const std::vector<Comparison>& comparisons) {
  constexpr Outcome kOrder[] = {Outcome::conflicts, Outcome::agrees, Outcome::compatible,
                                Outcome::cannot_tell};
  const auto counts_as = [](const Comparison& comparison) {
    return comparison.outcome == Outcome::agrees && comparison.circular ? Outcome::compatible : comparison.outcome;
  };
  for (const Outcome outcome : kOrder) {
    if (std::any_of(comparisons.begin(), comparisons.end(),
                    [&](const Comparison& comparison) { return counts_as(comparison) == outcome; }))
      return outcome;
  }
  return Outcome::silent;
}

Result<WeighingAccount> weighing_account(const SiteFile& site, const Surroundings& surroundings) {
  WeighingAccount account;
  Withholding withholding(site, surroundings.today);
  ClaimFilter filter;
  filter.with_mentions = false;
  const auto seen = for_each_record(site, filter, surroundings, withholding, [&](const ClaimRecord& record) {
    const ClaimStatus status = record.claim.status;
    if (record.claim.withdrawn || status == ClaimStatus::misread || status == ClaimStatus::set_aside) return;
    const Outcome outcome = foremost(record.comparisons);
    ++account.claims_by_outcome[outcome];
    account.intention_only += outcome == Outcome::compatible &&
                              std::all_of(record.comparisons.begin(), record.comparisons.end(),
                                          [](const Comparison& comparison) { return comparison.intention; });
    account.outside_service += record.recall.in_service == Answer::no;
    if (outcome == Outcome::conflicts) account.conflicts.push_back(record);
    if (outcome == Outcome::agrees) account.agreements.push_back(record);
    if (outcome == Outcome::silent) account.silent.push_back(record);
  });
  if (!seen) return seen.error();
  for (auto* records : {&account.conflicts, &account.agreements, &account.silent})
    std::stable_sort(records->begin(), records->end(), [](const ClaimRecord& a, const ClaimRecord& b) {
      return a.claim.rank < b.claim.rank;
    });
  account.withheld = withholding.account();
  return account;
}

}  // namespace witnessmark
