#pragma once
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Weighs the claims that were never weighed, whose values changed since, or what they rest on: the entries on their thing,
/// the place of it in the lists, their interview, the narrator, the date policy. `all` weighs every one. Returns how many
/// were weighed. Works on as many threads as there are processors; what comes out is the same with any number of them.
Result<std::int64_t> weigh(SiteFile& site, bool all, const Surroundings& surroundings);

/// Whether weigh() would find nothing to weigh: what is kept can be shown from a file that is only read.
Result<bool> is_weighed(const SiteFile& site, const Surroundings& surroundings);

struct WeighingAccount {
  std::map<Outcome, std::int64_t> claims_by_outcome;
  std::int64_t intention_only = 0;
  std::int64_t led = 0;                   ///< Of those that agree: what the interviewer supplied.
  std::int64_t outside_service = 0;
  std::vector<Id> conflicts;              ///< In review order, as all three; for_each_record_of() makes records of them.
  std::vector<Id> agreements;
  std::vector<Id> silent;
  std::string withheld;                   ///< In words.
};

/// How the weighed claims stand, of what may be shown on the day. Proposals are included and say so.
Result<WeighingAccount> weighing_account(const SiteFile& site, const Surroundings& surroundings);

}  // namespace witnessmark
