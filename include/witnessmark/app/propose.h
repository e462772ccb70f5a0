#pragma once
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/claims.h"

namespace witnessmark {

struct ProposedInterview {
  std::string interview;
  std::size_t claims = 0;
  ProposalChanges changes;
};

struct ProposalAccount {
  std::vector<ProposedInterview> interviews;
  std::map<Statement, std::int64_t> by_statement;
  ProposalChanges changes;
  std::vector<std::string> without_transcript;
};

/// Reads every transcript (or those of the interviews named) and proposes claims. What a coder has decided stays. An
/// Error when language data cannot be read or an interview named is not in the site file; nothing is written then.
Result<ProposalAccount> propose(SiteFile& site, const std::vector<std::string>& interviews,
                                const Surroundings& surroundings);

}  // namespace witnessmark
