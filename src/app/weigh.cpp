#include "witnessmark/app/weigh.h"

#include <algorithm>
#include <deque>
#include <future>
#include <set>
#include <thread>
#include <unordered_map>

#include "app/people.h"
#include "app/weighing/grounds.h"
#include "witnessmark/app/claim_records.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/weigh/agreement.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {
namespace {

/// Claims that one thread weighs at a time, and claims kept in one transaction.
constexpr std::size_t kBatch = 500;
constexpr std::int64_t kKeptTogether = 20'000;
/// So many changed claims are weighed without reading the whole register.
constexpr std::size_t kFew = 100;

std::vector<Weighing> weighings_of(const std::vector<Claim>& claims, const RegisterIndex& evidence,
                                   const People& people) {
  std::vector<Weighing> weighings;
  weighings.reserve(claims.size());
  for (const Claim& claim : claims) {
    const Interview& interview = people.interview(claim.interview);
    weighings.push_back({claim.id, recall_of(claim.when, interview, people.narrator(claim), evidence.policy()),
                         compare(claim, interview, evidence, people.service(claim.subject))});
  }
  return weighings;
}

/// Weighs claims in batches beside one another and keeps them in the order in which they came.
class Weighers {
 public:
  Weighers(SiteFile& site, const RegisterIndex& evidence, const People& people)
      : site_(site),
        evidence_(evidence),
        people_(people),
        most_at_once_(std::max(2U, std::thread::hardware_concurrency())) {}

  Result<void> add(const Claim& claim) {
    batch_.push_back(claim);
    return batch_.size() < kBatch ? Result<void>() : start();
  }

  /// How many were weighed and kept.
  Result<std::int64_t> finish() {
    if (!batch_.empty())
      if (auto started = start(); !started) return started.error();
    while (!at_work_.empty())
      if (auto kept = keep_first(); !kept) return kept.error();
    if (writer_) writer_->finish();
    writer_.reset();
    return weighed_;
  }

 private:
  Result<void> start() {
    at_work_.push_back(std::async(std::launch::async,
                                  [this, claims = std::move(batch_)] {
                                    return weighings_of(claims, evidence_, people_);
                                  }));
    batch_.clear();
    return at_work_.size() < most_at_once_ ? Result<void>() : keep_first();
  }

  Result<void> keep_first() {
    const std::vector<Weighing> weighings = at_work_.front().get();
    at_work_.pop_front();
    for (const Weighing& weighing : weighings) {
      if (!writer_) writer_.emplace(site_);
      if (auto added = writer_->add(weighing); !added) return added;
      if (++weighed_ % kKeptTogether != 0) continue;
      writer_->finish();
      writer_.reset();
    }
    return {};
  }

  SiteFile& site_;
  const RegisterIndex& evidence_;
  const People& people_;
  std::size_t most_at_once_;
  std::vector<Claim> batch_;
  std::optional<WeighingWriter> writer_;
  std::int64_t weighed_ = 0;
  std::deque<std::future<std::vector<Weighing>>> at_work_;  ///< Last: they end before what they use does.
};

/// Of the rules in force, the date policy among them.
Result<std::string> rules_in_force(const Surroundings& surroundings) {
  const auto policy = surroundings.files.read(surroundings.shared / "date-policy.json");
  if (!policy) return policy.error();
  return rules_sha256(*policy);
}

/// Where the evidence is as it was: what bears on these claims is read, and nothing else.
Result<std::int64_t> weigh_few(SiteFile& site, const std::vector<Id>& ids, const DatePolicy& policy) {
  std::vector<Claim> claims;
  for (StoredClaim& stored : load_claims(site, {.ids = ids, .with_mentions = false}))
    claims.push_back(std::move(stored.claim));
  const AuthorityLists lists = load_lists(site);
  std::set<std::string> subjects;
  for (const Claim& claim : claims) {
    subjects.insert(claim.subject);
    if (claim.subject.empty()) continue;
    for (const auto& keys : {lists.equipment.all_within(claim.subject), lists.equipment.above(claim.subject)})
      subjects.insert(keys.begin(), keys.end());
  }
  const Register evidence = load_register_on(site, subjects);
  const RegisterIndex index(evidence, lists, policy);
  const People people(site);
  if (auto saved = save_weighings(site, weighings_of(claims, index, people)); !saved) return saved.error();
  return static_cast<std::int64_t>(claims.size());
}

}  // namespace

Result<std::int64_t> weigh(SiteFile& site, bool all, const Surroundings& surroundings) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  const auto rules = rules_in_force(surroundings);
  if (!rules) return rules.error();
  const bool may_have_changed = grounds_may_have_changed(site, *rules);
  if (!all && !may_have_changed) {
    const std::vector<Id> ids = claims_to_weigh(site);
    if (ids.empty()) return 0;
    if (ids.size() <= kFew) return weigh_few(site, ids, *policy);
  }

  const Register evidence = load_register(site);
  const AuthorityLists lists = load_lists(site);
  const RegisterIndex index(evidence, lists, *policy);
  const People people(site);
  if (all || may_have_changed) settle_grounds(site, grounds_of(index, people, *rules));
  ClaimFilter filter;
  filter.with_mentions = false;
  filter.to_weigh = !all;
  Weighers weighers(site, index, people);
  std::optional<Error> failed;
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    if (failed) return;
    if (auto added = weighers.add(stored.claim); !added) failed = added.error();
  });
  if (failed) return *failed;
  return weighers.finish();
}

Result<bool> is_weighed(const SiteFile& site, const Surroundings& surroundings) {
  const auto rules = rules_in_force(surroundings);
  if (!rules) return rules.error();
  return !grounds_may_have_changed(site, *rules) && claims_to_weigh(site).empty();
}

Result<WeighingAccount> weighing_account(const SiteFile& site, const Surroundings& surroundings) {
  WeighingAccount account;
  Withholding withholding(site, surroundings.today);
  std::unordered_map<Id, ClaimStanding> standings;
  for_each_standing(site, [&](const ClaimStanding& standing) { standings.emplace(standing.claim, standing); });
  std::map<Outcome, std::map<int, std::vector<Id>>> by_rank;
  ClaimFilter filter;
  filter.with_mentions = false;
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    const Claim& claim = stored.claim;
    if (!withholding.may_show(claim.interview, claim.quotes)) return;
    if (claim.withdrawn || claim.status == ClaimStatus::misread || claim.status == ClaimStatus::set_aside) return;
    const auto at = standings.find(claim.id);
    const ClaimStanding standing = at == standings.end() ? ClaimStanding{} : at->second;
    ++account.claims_by_outcome[standing.foremost];
    account.intention_only +=
        standing.foremost == Outcome::compatible && standing.intentions == standing.comparisons.total();
    account.led += standing.foremost == Outcome::agrees && claim.led;
    account.outside_service += standing.recall.in_service == Answer::no;
    by_rank[standing.foremost][claim.rank].push_back(claim.id);
  });
  const auto in_review_order = [&](Outcome outcome, std::vector<Id>& ids) {
    for (const auto& [rank, ranked] : by_rank[outcome]) ids.insert(ids.end(), ranked.begin(), ranked.end());
  };
  in_review_order(Outcome::conflicts, account.conflicts);
  in_review_order(Outcome::agrees, account.agreements);
  in_review_order(Outcome::silent, account.silent);
  account.withheld = withholding.account();
  return account;
}

}  // namespace witnessmark
