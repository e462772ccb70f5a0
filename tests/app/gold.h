#pragma once
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/base/text_position.h"
#include "witnessmark/model/claim.h"

namespace witnessmark {

/// A claim as coded by hand: one line of a file in tests/gold.
struct GoldClaim {
  std::map<std::string, std::string> cells;
  CodePointRange range;
  const std::string& at(const std::string& column) const { return cells.at(column); }
};

/// Reads a file of tests/gold and finds its quotes in the reading text. Throws when a quote is not there.
std::vector<GoldClaim> read_gold(const std::filesystem::path& path, const std::string& reading_text);

/// Claims matched one to one: same statement and subject (without subject: same place), quotes overlapping by half or more
/// (intersection over union of code points). The pairs are as many as can be.
struct Match {
  const GoldClaim* gold;
  const Claim* claim;
};
std::vector<Match> match_claims(const std::vector<GoldClaim>& gold, const std::vector<Claim>& claims);

/// Macro-averaged F1 over the classes that occur in gold, and what always answering the commonest would score.
struct ClassScore {
  double macro_f1 = 0, commonest_f1 = 0;
};
ClassScore class_score(const std::vector<std::pair<std::string, std::string>>& gold_and_found);

}  // namespace witnessmark
