#pragma once
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/model/claim_record.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Weighs the claims that were never weighed or whose values, or whose evidence, changed since; `all` weighs every one.
/// Returns how many were weighed.
Result<std::int64_t> weigh(SiteFile& site, bool all, const Surroundings& surroundings);

/// A claim counts under the outcome that matters most to a curator among its comparisons: conflicts, agrees, compatible,
/// cannot tell, silent, in this order. An agreement that is no independent one (circular) counts as compatible.
Outcome foremost(const std::vector<Comparison>& comparisons);

struct WeighingAccount {
  std::map<Outcome, std::int64_t> claims_by_outcome;
  std::int64_t intention_only = 0;
  std::int64_t outside_service = 0;
  std::vector<ClaimRecord> conflicts;     ///< In review order, as all three.
  std::vector<ClaimRecord> agreements;
  std::vector<ClaimRecord> silent;
  std::string withheld;                   ///< In words.
};

/// How the weighed claims stand, of what may be shown on the day. Proposals are included and say so.
Result<WeighingAccount> weighing_account(const SiteFile& site, const Surroundings& surroundings);

}  // namespace witnessmark
