#include <algorithm>

#include "store/claim/claim_rows.h"
#include "store/coding/claim_changes.h"
#include "store/merge/merging.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {
namespace {

std::vector<std::string> interviews_there(const Merging& merging) {
  std::vector<std::string> keys;
  SqlStatement select(*merging.there.database, "SELECT DISTINCT interview FROM readings ORDER BY interview");
  while (select.step()) {
    if (!merging.is_erased_here(select.text(0))) keys.push_back(select.text(0));
  }
  return keys;
}

std::vector<std::string> text_hashes(const SiteFile& site, const std::string& interview) {
  std::vector<std::string> hashes;
  for (const ReadingVersion& version : reading_versions(site, interview))
    hashes.push_back(version.text_sha256);
  return hashes;
}

Result<void> take_version(Merging& merging, const std::string& interview, int version) {
  const auto stored = load_transcript(merging.other, interview, version);
  const auto original = load_original(merging.other, interview, version);
  const auto saved = save_transcript(merging.site, {interview, stored->version.original_name, *original,
                                                    stored->transcript, stored->sentences});
  if (!saved) return saved.error();
  ++merging.report.transcripts;
  return {};
}

/// What is proposed, without ids: two copies that propose the same give it other ids.
std::vector<std::string> proposals_without_ids(const std::vector<ClaimRow>& rows) {
  std::vector<std::string> texts;
  for (const ClaimRow& row : rows) {
    if (row.stored.by_coder || row.stored.gone) continue;
    ClaimState proposal = proposal_of(row);
    proposal.claim.id = {};
    texts.push_back(claim_json(proposal.claim, proposal.version));
  }
  std::sort(texts.begin(), texts.end());
  return texts;
}

bool is_proposing(std::string_view kind) {
  return kind == "proposed";
}

bool proposed_here_since(const Merging& merging, const std::string& interview) {
  const auto events = merging.parting.unknown_there("interview", interview);
  return std::any_of(events.begin(), events.end(),
                     [](const OwnEvent& event) { return is_proposing(event.kind); });
}

Result<void> merge_proposals_of(Merging& merging, const std::string& interview) {
  if (merging.brought_on("interview", interview, is_proposing).empty()) return {};
  const auto theirs = load_claim_rows(merging.there, interview);
  const auto ours = load_claim_rows(merging.here, interview);
  const auto proposed = proposals_without_ids(theirs);
  if (proposed == proposals_without_ids(ours)) return {};
  if (text_hashes(merging.site, interview) != text_hashes(merging.other, interview))
    return {};  // said of the text
  if (proposed_here_since(merging, interview)) {
    merging.skip("proposals", interview,
                 "claims were proposed in both copies, and otherwise: propose again here");
    return {};
  }
  std::vector<Claim> claims;
  for (const ClaimRow& row : theirs) {
    if (!row.stored.by_coder && !row.stored.gone &&
        proposal_of(row).version == reading_versions(merging.other, interview).back().version)
      claims.push_back(proposal_of(row).claim);
  }
  const auto replaced = replace_proposals(merging.site, interview, claims);
  if (!replaced) return replaced.error();
  ++merging.report.proposals;
  return {};
}

}  // namespace

bool same_reading(const Merging& merging, const std::string& interview, int version) {
  const auto hash = [&](StoreConnection& connection) {
    SqlStatement& select =
        connection.prepared("SELECT sha256 FROM readings WHERE interview = ? AND version = ?");
    std::string text;
    if (select.bind(interview).bind(version).step()) text = select.text(0);
    select.reset();
    return text;
  };
  const std::string here = hash(merging.here);
  return !here.empty() && here == hash(merging.there);
}

Result<void> merge_transcripts(Merging& merging) {
  for (const std::string& interview : interviews_there(merging)) {
    const auto ours = text_hashes(merging.site, interview);
    const auto theirs = text_hashes(merging.other, interview);
    const auto [own, other] = std::mismatch(ours.begin(), ours.end(), theirs.begin(), theirs.end());
    if (own != ours.end()) {
      if (other != theirs.end())
        merging.skip("transcript", interview,
                     "it was revised in both copies, and otherwise: take in the right one");
      continue;
    }
    for (std::size_t n = ours.size(); n < theirs.size(); ++n) {
      if (auto taken = take_version(merging, interview, static_cast<int>(n) + 1); !taken) return taken;
    }
  }
  return {};
}

Result<void> merge_proposals(Merging& merging) {
  for (const std::string& interview : interviews_there(merging)) {
    if (auto merged = merge_proposals_of(merging, interview); !merged) return merged;
  }
  return {};
}

Result<void> place_merged_passages(Merging& merging) {
  const InterviewFile theirs = load_interviews(merging.other);
  std::map<std::string, std::vector<RestrictedPassage>> found;
  for (const RestrictedPassage& passage : load_interviews(merging.site).passages) {
    if (!passage.range.empty()) continue;
    for (const RestrictedPassage& other : theirs.passages) {
      const CurrentReading current = current_reading(merging.here, passage.interview);
      if (other.interview != passage.interview || other.quote != passage.quote || other.range.empty() ||
          current.version != current_reading(merging.there, passage.interview).version ||
          !same_reading(merging, passage.interview, current.version))
        continue;
      found[passage.interview].push_back(other);
    }
  }
  for (const auto& [interview, passages] : found) {
    if (auto placed = place_passages(merging.site, interview, passages); !placed) return placed;
  }
  return {};
}

}  // namespace witnessmark
