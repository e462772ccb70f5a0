#include "witnessmark/app/coder_agreement_report.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <tuple>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {
namespace {

using Json = nlohmann::json;

Json object_of(const std::string& state) {
  Json object = Json::parse(state, nullptr, false);
  return object.is_object() ? object : Json::object();
}

/// Number of the status a decision gave; 0 when it left the claim undecided.
std::size_t status_of(const Decided& decided) {
  const auto status = parse_claim_status(object_of(decided.state).value("status", "proposed"));
  return static_cast<std::size_t>(status.value_or(ClaimStatus::proposed));
}

constexpr std::size_t kStatuses = 4;
using Table = std::array<std::array<std::int64_t, kStatuses>, kStatuses>;

CoderPair pair_of(const std::string& first, const std::string& second, bool blind, const Table& table) {
  CoderPair pair{first, second, blind, 0, 0, {}, {}};
  std::vector<std::vector<std::int64_t>> rows;
  std::vector<std::vector<std::optional<double>>> values(2);
  for (std::size_t i = 0; i < kStatuses; ++i) {
    rows.emplace_back(table[i].begin(), table[i].end());
    pair.same_status += table[i][i];
    for (std::size_t j = 0; j < kStatuses; ++j) {
      pair.claims += table[i][j];
      values[0].insert(values[0].end(), static_cast<std::size_t>(table[i][j]), static_cast<double>(i));
      values[1].insert(values[1].end(), static_cast<std::size_t>(table[i][j]), static_cast<double>(j));
    }
  }
  pair.status = cohen_kappa(rows);
  pair.alpha = krippendorff_alpha(values, Scale::nominal);
  return pair;
}

}  // namespace

std::vector<CoderPair> coder_agreement(const SiteFile& site) {
  std::map<std::tuple<std::string, std::string, bool>, Table> tables;
  for (const DoubleDecision& decision : double_decisions(site)) {
    if (decision.target_kind != "claim") continue;
    const Decided *first = &decision.here, *second = &decision.there;
    if (second->who < first->who) std::swap(first, second);
    Table& table = tables[{first->who, second->who, first->blind && second->blind}];
    ++table[status_of(*first)][status_of(*second)];
  }
  std::vector<CoderPair> pairs;
  for (const auto& [key, table] : tables) {
    const auto& [first, second, blind] = key;
    pairs.push_back(pair_of(first, second, blind, table));
  }
  return pairs;
}

namespace {

/// What one coder did in one interview.
struct Share {
  std::set<Id> said;
  bool blind = true;
};
using Shares = std::map<std::string, std::map<std::string, Share>>;  // by interview, by coder

/// Claims each coder last held to be said, whoever decided on them since.
Shares shares_of(const SiteFile& site) {
  Shares shares;
  for_each_event(site, [&](const JournalEvent& event) {
    const bool acts = event.kind == "decided" || event.kind == "added" || event.kind == "undone" || event.kind == "redone";
    const auto id = event.target_kind == "claim" ? parse_id(event.target) : std::nullopt;
    if (!acts || !id || event.interview.empty()) return;
    Share& share = shares[event.interview][event.actor];
    share.blind = share.blind && event.blind;
    const Json after = object_of(event.after);
    const auto status = after.contains("status") ? parse_claim_status(after.value("status", "")) : std::nullopt;
    if (status == ClaimStatus::said_so)
      share.said.insert(*id);
    else if (status || after.empty())
      share.said.erase(*id);
  });
  return shares;
}

/// The sentences a claim's quotes lie in.
void add_stretches(const SiteFile& site, const Id& claim, const std::vector<Sentence>& sentences,
                   std::vector<Stretch>& stretches) {
  const auto stored = find_claim(site, claim);
  if (!stored) return;
  for (const CodePointRange& quote : stored->claim.quotes) {
    std::optional<std::int64_t> first, last;
    for (std::size_t i = 0; i < sentences.size(); ++i) {
      if (!sentences[i].range.overlaps(quote)) continue;
      if (!first) first = static_cast<std::int64_t>(i);
      last = static_cast<std::int64_t>(i);
    }
    if (first) stretches.emplace_back(*first, *last + 1);
  }
}

}  // namespace

std::vector<SpanPair> span_agreement(const SiteFile& site) {
  std::map<std::tuple<std::string, std::string, bool>, SpanPair> pairs;
  for (const auto& [interview, coders] : shares_of(site)) {
    if (coders.size() < 2) continue;
    const auto transcript = load_transcript(site, interview);
    if (!transcript || transcript->sentences.empty()) continue;
    const auto length = static_cast<std::int64_t>(transcript->sentences.size());
    std::map<std::string, std::vector<bool>> boundaries;
    for (const auto& [coder, share] : coders) {
      std::vector<Stretch> stretches;
      for (const Id& claim : share.said) add_stretches(site, claim, transcript->sentences, stretches);
      if (!stretches.empty()) boundaries.emplace(coder, boundaries_of(stretches, length));
    }
    for (auto one = boundaries.begin(); one != boundaries.end(); ++one)
      for (auto other = std::next(one); other != boundaries.end(); ++other) {
        const Share &a = coders.at(one->first), &b = coders.at(other->first);
        const bool blind = a.blind && b.blind;
        SpanPair& pair = pairs[{one->first, other->first, blind}];
        pair.first = one->first, pair.second = other->first, pair.blind = blind;
        ++pair.interviews;
        pair.first_claims += static_cast<std::int64_t>(a.said.size());
        pair.second_claims += static_cast<std::int64_t>(b.said.size());
        const std::int64_t width = std::min(customary_width(one->second), customary_width(other->second));
        const BoundaryDifference found = window_difference(one->second, other->second, width);
        pair.difference.windows += found.windows;
        pair.difference.misses += found.misses;
      }
  }
  std::vector<SpanPair> found;
  for (auto& [key, pair] : pairs) found.push_back(std::move(pair));
  return found;
}

}  // namespace witnessmark
