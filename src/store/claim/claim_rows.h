#pragma once
#include <cstdint>
#include <string>
#include <tuple>
#include <vector>

#include "store/connection.h"
#include "witnessmark/store/claims.h"

namespace witnessmark {

/// A claim with its row number and, where a coder has decided, what the program last proposed as JSON.
struct ClaimRow {
  std::int64_t row = 0;  ///< 0 for a new one.
  StoredClaim stored;
  std::string proposal;  ///< Empty where nobody has decided.
};

/// The conditions of a filter on the table of claims, from " WHERE" on, with the texts to bind in order.
struct ClaimCondition {
  std::string sql;
  std::vector<std::string> texts;

  void add(const std::string& condition) { sql += (sql.empty() ? " WHERE " : " AND ") + condition; }
};
ClaimCondition condition_of(const ClaimFilter& filter);

/// Rows in order of interview, position, statement and ordinal.
std::vector<ClaimRow> load_claim_rows(StoreConnection& connection, const ClaimFilter& filter);
std::vector<ClaimRow> load_claim_rows(StoreConnection& connection, std::string_view interview);

void insert_claim_row(StoreConnection& connection, const ClaimRow& row);
/// Writes a row anew, under its number. What was weighed of it goes.
void rewrite_claim_row(StoreConnection& connection, const ClaimRow& row);
void delete_claim_row(StoreConnection& connection, std::int64_t row);

/// The JSON of a claim and of the version its quotes lie in: what the journal keeps of a claim.
std::string claim_json(const Claim& claim, int version);
struct ClaimState {
  Claim claim;
  int version = 1;
};
/// Throws std::runtime_error for anything else.
ClaimState claim_from_json(std::string_view json);

/// Whether two are proposed of the same words and say the same kind of thing: one is known again as the
/// other.
inline auto proposal_key(const Claim& claim) {
  return std::tuple(claim.quotes.at(0), claim.statement, claim.ordinal);
}
inline bool same_proposal(const Claim& a, const Claim& b) {
  return proposal_key(a) == proposal_key(b);
}

/// SHA-256 of what the program now proposes for an interview: the texts of the proposals, whether decided on
/// or not, without those that are gone.
std::string proposals_sha256(const std::vector<ClaimRow>& rows);

/// Of the current reading text.
struct CurrentReading {
  std::int64_t reading = 0;
  int version = 0;  ///< 0 when there is none.
  std::int64_t code_points = 0;
};
/// The reading text of a version; empty when there is none.
std::string text_of_version(StoreConnection& connection, std::string_view interview, int version);
CurrentReading current_reading(StoreConnection& connection, std::string_view interview);

}  // namespace witnessmark
