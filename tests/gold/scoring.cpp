#include "scoring.h"

#include <algorithm>
#include <fstream>
#include <functional>
#include <map>
#include <set>
#include <sstream>

#include "witnessmark/base/code_point_index.h"

namespace witnessmark::gold {
namespace {

bool is_space(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

/// The text with runs of white space made one blank, and for each of its bytes the byte it came from.
std::string collapse(const std::string& text, std::vector<std::size_t>& origin) {
  std::string made;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (is_space(text[i])) {
      if (!made.empty() && made.back() == ' ') continue;
      made += ' ';
    } else {
      made += text[i];
    }
    origin.push_back(i);
  }
  return made;
}

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::string cell;
  std::istringstream stream(line);
  while (std::getline(stream, cell, '\t')) cells.push_back(cell);
  return cells;
}

}  // namespace

std::vector<CodedClaim> read_coded(const std::string& path, const std::string& reading_text,
                                   std::vector<std::string>& missing) {
  std::vector<std::size_t> origin;
  const std::string text = collapse(reading_text, origin);
  const CodePointIndex index(reading_text);
  std::vector<CodedClaim> coded;
  std::ifstream in(path);
  std::string line;
  std::getline(in, line);
  std::size_t from = 0;
  while (std::getline(in, line)) {
    std::vector<std::string> cells = cells_of(line);
    cells.resize(10);
    CodedClaim claim;
    claim.quote_words = cells[0];
    // In order of the text where possible; a quote before the last one is looked for from the start.
    std::size_t at = text.find(cells[0], from);
    if (at == std::string::npos) at = text.find(cells[0]);
    if (cells[0].empty() || at == std::string::npos) {
      missing.push_back(cells[0]);
      continue;
    }
    from = at;
    claim.quote = index.to_code_points({{static_cast<std::int64_t>(origin[at])},
                                        {static_cast<std::int64_t>(origin[at + cells[0].size() - 1] + 1)}});
    claim.subject = cells[1];
    claim.place = cells[2];
    claim.statement = cells[3];
    claim.when = cells[4];
    claim.number = cells[5];
    claim.basis = cells[6];
    claim.firmness = cells[7];
    claim.polarity = cells[8];
    claim.note = cells[9];
    coded.push_back(claim);
  }
  return coded;
}

bool same_claim(const Claim& proposed, const CodedClaim& coded) {
  if (to_string(proposed.statement) != coded.statement) return false;
  if (proposed.quotes.front().shared_with(coded.quote) < 0.5) return false;
  if (proposed.statement == Statement::located) return true;
  if (proposed.subject.empty() || coded.subject.empty()) {
    return proposed.subject == coded.subject && proposed.place == coded.place;
  }
  return proposed.subject == coded.subject;
}

std::vector<std::pair<std::size_t, std::size_t>> pair_up(const std::vector<Claim>& proposed,
                                                         const std::vector<CodedClaim>& coded) {
  // Kuhn's algorithm for a largest matching, each claim trying its best overlaps first.
  std::vector<std::vector<std::size_t>> edges(proposed.size());
  for (std::size_t p = 0; p < proposed.size(); ++p) {
    for (std::size_t c = 0; c < coded.size(); ++c) {
      if (same_claim(proposed[p], coded[c])) edges[p].push_back(c);
    }
    std::stable_sort(edges[p].begin(), edges[p].end(), [&](std::size_t a, std::size_t b) {
      return proposed[p].quotes.front().shared_with(coded[a].quote) >
             proposed[p].quotes.front().shared_with(coded[b].quote);
    });
  }
  std::vector<std::optional<std::size_t>> owner(coded.size());
  for (std::size_t p = 0; p < proposed.size(); ++p) {
    std::vector<bool> tried(coded.size(), false);
    const std::function<bool(std::size_t)> place = [&](std::size_t one) {
      for (const std::size_t c : edges[one]) {
        if (tried[c]) continue;
        tried[c] = true;
        if (!owner[c] || place(*owner[c])) {
          owner[c] = one;
          return true;
        }
      }
      return false;
    };
    place(p);
  }
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  for (std::size_t c = 0; c < coded.size(); ++c) {
    if (owner[c]) pairs.emplace_back(*owner[c], c);
  }
  return pairs;
}

double macro_f1(const std::vector<std::pair<std::string, std::string>>& proposed_and_coded) {
  std::map<std::string, int> right, proposed, coded;
  for (const auto& [ours, theirs] : proposed_and_coded) {
    ++proposed[ours];
    ++coded[theirs];
    if (ours == theirs) ++right[ours];
  }
  if (coded.empty()) return 0;
  double sum = 0;
  for (const auto& [value, count] : coded) {
    sum += 2.0 * right[value] / (proposed[value] + count);
  }
  return sum / static_cast<double>(coded.size());
}

double macro_f1_of_commonest(const std::vector<std::pair<std::string, std::string>>& proposed_and_coded) {
  std::map<std::string, int> coded;
  for (const auto& pair : proposed_and_coded) ++coded[pair.second];
  const auto commonest = std::max_element(coded.begin(), coded.end(),
                                          [](const auto& a, const auto& b) { return a.second < b.second; });
  std::vector<std::pair<std::string, std::string>> always;
  for (const auto& pair : proposed_and_coded) always.emplace_back(commonest->first, pair.second);
  return coded.empty() ? 0 : macro_f1(always);
}

}  // namespace witnessmark::gold
