#pragma once
#include <cstdint>
#include <functional>
#include <set>
#include <string>
#include <string_view>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/write/claims_csv.h"

namespace witnessmark {

enum class ExportFormat { csv, jsonl };

struct ExportRequest {
  ExportFormat format = ExportFormat::csv;
  FormulaGuard guard = FormulaGuard::guarded;   ///< For CSV.
  bool reviewed_only = false;
};

struct ExportAccount {
  std::int64_t claims = 0;
  std::int64_t proposals = 0;    ///< Of these, not yet decided by a coder.
  std::int64_t names_withheld = 0;   ///< Places in their quotes where a name was taken out.
  std::set<std::string> interviews;  ///< Keys of those any of them is from.
  std::string withheld;
};

/// Hands claims on with their provenance, a piece at a time.
Result<ExportAccount> export_claims(const SiteFile& site, const ExportRequest& request,
                                    const std::function<void(std::string_view)>& write, const Surroundings& surroundings);

}  // namespace witnessmark
