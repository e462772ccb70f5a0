#include "gold.h"

#include <algorithm>
#include <functional>
#include <sstream>
#include <stdexcept>

#include "app/passages.h"
#include "witnessmark/base/file_system.h"

namespace witnessmark {
namespace {

std::vector<std::string> split(const std::string& line) {
  std::vector<std::string> cells(1);
  for (const char c : line) {
    if (c == '\t') cells.emplace_back();
    else if (c != '\r') cells.back() += c;
  }
  return cells;
}

double overlap_share(CodePointRange a, CodePointRange b) {
  const auto shared = std::min(a.end.value, b.end.value) - std::max(a.begin.value, b.begin.value);
  if (shared <= 0) return 0;
  return static_cast<double>(shared) / static_cast<double>(a.length() + b.length() - shared);
}

double best_share(const GoldClaim& gold, const Claim& claim) {
  double best = 0;
  CodePointRange whole = claim.quotes.front();
  for (const CodePointRange& quote : claim.quotes) {
    best = std::max(best, overlap_share(gold.range, quote));
    whole = {std::min(whole.begin, quote.begin), std::max(whole.end, quote.end)};
  }
  return std::max(best, overlap_share(gold.range, whole));
}

bool may_match(const GoldClaim& gold, const Claim& claim) {
  if (to_string(claim.statement) != gold.at("statement")) return false;
  const bool located = claim.statement == Statement::located;
  if (!located && claim.subject != gold.at("subject")) return false;
  if (!located && gold.at("subject").empty() && claim.place != gold.at("place")) return false;
  return best_share(gold, claim) >= 0.5;
}

}  // namespace

std::vector<GoldClaim> read_gold(const std::filesystem::path& path, const std::string& reading_text) {
  std::istringstream file(SystemFileReader().read(path).value());
  std::vector<GoldClaim> gold;
  std::string line;
  std::getline(file, line);
  const auto columns = split(line);
  while (std::getline(file, line)) {
    if (line.empty()) continue;
    const auto cells = split(line);
    GoldClaim claim;
    for (std::size_t i = 0; i < columns.size(); ++i) claim.cells[columns[i]] = i < cells.size() ? cells[i] : "";
    const auto range = find_passage(reading_text, claim.at("quote"));
    if (!range) throw std::runtime_error(path.string() + ": not in the transcript: " + claim.at("quote"));
    claim.range = *range;
    gold.push_back(std::move(claim));
  }
  return gold;
}

std::vector<Match> match_claims(const std::vector<GoldClaim>& gold, const std::vector<Claim>& claims) {
  std::vector<int> claim_of(gold.size(), -1), gold_of(claims.size(), -1);
  std::vector<char> seen;
  const std::function<bool(std::size_t)> augment = [&](std::size_t g) {
    for (std::size_t c = 0; c < claims.size(); ++c) {
      if (seen[c] || !may_match(gold[g], claims[c])) continue;
      seen[c] = 1;
      if (gold_of[c] >= 0 && !augment(static_cast<std::size_t>(gold_of[c]))) continue;
      gold_of[c] = static_cast<int>(g);
      claim_of[g] = static_cast<int>(c);
      return true;
    }
    return false;
  };
  for (std::size_t g = 0; g < gold.size(); ++g) {
    seen.assign(claims.size(), 0);
    augment(g);
  }
  std::vector<Match> matches;
  for (std::size_t g = 0; g < gold.size(); ++g) {
    if (claim_of[g] >= 0) matches.push_back({&gold[g], &claims[static_cast<std::size_t>(claim_of[g])]});
  }
  return matches;
}

ClassScore class_score(const std::vector<std::pair<std::string, std::string>>& gold_and_found) {
  std::map<std::string, int> gold_count, found_count, right;
  for (const auto& [gold, found] : gold_and_found) {
    ++gold_count[gold];
    ++found_count[found];
    right[gold] += gold == found;
  }
  ClassScore score;
  std::string commonest;
  for (const auto& [name, count] : gold_count) {
    if (commonest.empty() || count > gold_count[commonest]) commonest = name;
    score.macro_f1 += 2.0 * right[name] / (count + found_count[name]);
  }
  if (gold_count.empty()) return score;
  const double classes = static_cast<double>(gold_count.size());
  score.macro_f1 /= classes;
  score.commonest_f1 =
      2.0 * gold_count[commonest] / (gold_count[commonest] + static_cast<double>(gold_and_found.size())) / classes;
  return score;
}

}  // namespace witnessmark
