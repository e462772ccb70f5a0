#pragma once
#include <string>
#include <string_view>

#include "witnessmark/model/claim_record.h"

namespace witnessmark {

/// How cells that a spreadsheet would run as a formula are written.
enum class FormulaGuard {
  guarded,  ///< A single quote before a leading = + - @ tab or carriage return (OWASP ASVS 1.2.10). Alters data.
  raw       ///< As it is.
};

/// The header line of the claims table; its columns are described in schemas/export/claims.csv.
std::string claims_csv_header();

/// One claim as one line (RFC 4180, CRLF).
std::string claim_csv_row(const ClaimRecord& record, FormulaGuard guard);

}  // namespace witnessmark
