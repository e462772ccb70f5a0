#pragma once
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"

namespace witnessmark {

/// A weighed claim as a table of recall sees it: its outcome is the one it counts under.
struct RecallCase {
  Recall recall;
  Basis basis = Basis::unstated;
  Outcome outcome = Outcome::silent;
};

/// How many of how many came out how. The denominator of every number is `claims`.
struct OutcomeRow {
  std::string name;
  std::int64_t claims = 0;
  std::map<Outcome, std::int64_t> by_outcome;
};

/// Outcomes by how long after it was told (ten years a row; a distance that is not known to lie in one row has a row of its
/// own), by how the narrator knows, and by whether the narrator was there. Rows without claims are left out.
struct RecallTable {
  std::vector<OutcomeRow> by_distance, by_basis, by_presence;
  OutcomeRow all;
};
RecallTable tabulate_recall(const std::vector<RecallCase>& cases);

/// What such a table cannot show, in plain sentences, to stand under it wherever it stands.
extern const char* const kRecallTableCaution;

}  // namespace witnessmark
