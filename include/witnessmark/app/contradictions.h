#pragma once
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/statement_line.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/contradictions.h"

namespace witnessmark {

/// Statements that cannot all be true, with the names to show.
struct ShownDispute {
  Dispute dispute;
  std::string subject_name, place_name;
  std::string
      sentence;  ///< "These three cannot all be true of one stay of Arc searchlight (Wheelhouse top)".
  Resolution resolution;
};

struct ContradictionAccount {
  std::int64_t reviewed_sets = 0;   ///< Irreducible sets of entries and reviewed claims.
  std::int64_t preview_sets = 0;    ///< Sets that hold a claim nobody has reviewed: a preview.
  std::int64_t reviewed_total = 0;  ///< Disputes they make up.
  std::int64_t reviewed_claims = 0;  ///< None: `reviewed` is what the register says alone.
  std::int64_t preview_total = 0;
  /// Smallest sets first; at most so many of each as were asked for.
  std::vector<ShownDispute> reviewed, preview;
  std::vector<SearchLimit> limits;  ///< Of the fixtures asked for.
  StatementLines statements;        ///< Every statement of the disputes given.
  std::string withheld;
};

/// What cannot all be true among what may be shown (see bounds_account for what is left out, and for `name`).
Result<ContradictionAccount> contradiction_account(const SiteFile& site, std::string_view name,
                                                   std::size_t most, const Surroundings& surroundings);

}  // namespace witnessmark
