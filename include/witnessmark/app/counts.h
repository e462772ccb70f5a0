#pragma once
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/counts.h"

namespace witnessmark {

/// A comparison in words; the statements in `comparison` name the claims and entries to go to.
struct ShownCount {
  CountComparison comparison;
  std::string total_words;               ///< "Acetylene cylinders (Gas store), 31 March 1959: 24".
  std::string reported_by;
  struct Position {
    std::string words;                   ///< "Port cylinder rack: 10".
    std::vector<std::string> stated_by;
  };
  std::vector<Position> positions;       ///< As comparison.positions.
  std::vector<std::string> nothing_said; ///< Names of places.
};

struct CountsAccount {
  std::vector<ShownCount> reviewed;      ///< From reviewed claims and the register alone.
  std::vector<ShownCount> preview;       ///< Those in which a proposal nobody has reviewed has part.
  std::int64_t reviewed_claims = 0;      ///< None: `reviewed` is what the register says alone.
  std::string withheld;
};

/// Totals against the sum of their positions, of what may be shown on the day and from nothing else.
Result<CountsAccount> counts_account(const SiteFile& site, const Surroundings& surroundings);

}  // namespace witnessmark
