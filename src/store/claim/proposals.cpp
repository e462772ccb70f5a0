#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "store/claim/claim_rows.h"
#include "store/coding/claim_changes.h"
#include "store/journal_writer.h"
#include "store/record/json_text.h"
#include "witnessmark/store/claims.h"

// Proposing again. What the program proposed before and what it proposes now are matched by the span of the
// main quote, the statement and the ordinal. Where a coder has decided, the row's values are the coder's;
// what was proposed there is kept as JSON in the row, and that is what is matched and replaced.

namespace witnessmark {
namespace {

using Key = decltype(proposal_key(Claim{}));

Error claim_error(std::string_view interview, const Claim& claim, std::string_view what) {
  return {std::string(interview), 0, 0, fmt::format("claim \"{}\": {}", claim.reason, what),
          "propose from the current reading text"};
}

bool outside(const CodePointRange& range, std::int64_t size) {
  return range.begin.value < 0 || range.end.value > size || range.empty();
}

Result<void> check_proposals(std::string_view interview, const std::vector<Claim>& claims,
                             std::int64_t size) {
  std::map<Key, int> seen;
  for (const Claim& claim : claims) {
    if (claim.interview != interview) return claim_error(interview, claim, "it belongs to another interview");
    if (claim.quotes.empty()) return claim_error(interview, claim, "it has no quote");
    for (const CodePointRange& quote : claim.quotes) {
      if (outside(quote, size))
        return claim_error(interview, claim, "its quote lies outside the reading text");
    }
    for (const Mention& mention : claim.mentions) {
      if (outside(mention.range, size))
        return claim_error(interview, claim, "a mention lies outside the reading text");
    }
    if (++seen[proposal_key(claim)] > 1) {
      return claim_error(interview, claim, "another has the same quote, statement and ordinal");
    }
  }
  return {};
}

class Replacement {
 public:
  Replacement(StoreConnection& connection, std::vector<ClaimRow>& rows, int version)
      : connection_(connection), rows_(rows), version_(version) {
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      if (rows_[i].stored.by_coder) continue;
      const ClaimState proposal = proposal_of(rows_[i]);
      // Anchored in a former version, it cannot be what is proposed from this one.
      if (proposal.version != version_) continue;
      const auto [at, is_new] = former_.emplace(proposal_key(proposal.claim), i);
      if (!is_new && rows_[i].stored.decided) at->second = i;  // what a coder decided goes before what is new
    }
    matched_.resize(rows_.size());
  }

  void take(Claim claim) {
    const auto found = former_.find(proposal_key(claim));
    claim.status = ClaimStatus::proposed;
    if (found == former_.end()) {
      add(std::move(claim));
    } else {
      matched_[found->second] = true;
      claim.id = rows_[found->second].stored.claim.id;
      match(rows_[found->second], std::move(claim));
    }
  }

  /// After the last: what was proposed before and is no longer.
  void remove_the_rest() {
    for (std::size_t i = 0; i < matched_.size(); ++i) {
      ClaimRow& row = rows_[i];
      if (matched_[i] || row.stored.by_coder || row.stored.gone) continue;
      ++changes_.gone;
      if (!row.stored.decided && !is_written_about(connection_, row.stored.claim.id)) {
        delete_claim_row(connection_, row.row);
        row.row = 0;
        continue;
      }
      ++changes_.gone_kept;
      row.stored.gone = true;
      connection_.prepared("UPDATE claims SET gone = 1 WHERE claim = ?").bind(row.row).run();
    }
    std::erase_if(rows_, [](const ClaimRow& row) { return row.row == 0; });
    rows_.insert(rows_.end(), added_.begin(), added_.end());
  }

  const ProposalChanges& changes() const { return changes_; }

 private:
  void add(Claim claim) {
    if (claim.id.is_nil()) claim.id = connection_.new_id();
    ClaimRow row;
    row.stored.claim = std::move(claim);
    row.stored.version = version_;
    insert_claim_row(connection_, row);
    row.row = -1;  // it has a number, which nobody here needs
    added_.push_back(std::move(row));
    ++changes_.added;
  }

  void match(ClaimRow& row, Claim claim) {
    if (!row.stored.decided) {
      if (row.stored.claim == claim && !row.stored.gone) {
        ++changes_.unchanged;
        return;
      }
      row.stored.claim = std::move(claim);
      row.stored.gone = false;
      rewrite_claim_row(connection_, row);
      ++changes_.changed;
      return;
    }
    std::string json = claim_json(claim, version_);
    if (json == row.proposal && !row.stored.gone) {
      ++changes_.unchanged;
      return;
    }
    row.stored.gone = false;
    row.stored.proposed_otherwise = json != decided_on(connection_, claim.id);
    row.proposal = std::move(json);
    connection_.prepared("UPDATE claims SET gone = 0, proposed_otherwise = ?, proposal = ? WHERE claim = ?")
        .bind(row.stored.proposed_otherwise)
        .bind(row.proposal)
        .bind(row.row)
        .run();
    ++changes_.changed;
  }

  StoreConnection& connection_;
  std::vector<ClaimRow>& rows_;
  int version_;
  std::map<Key, std::size_t> former_;
  std::vector<bool> matched_;
  std::vector<ClaimRow> added_;
  ProposalChanges changes_;
};

std::string summary(const ProposalChanges& changes, int version, const std::string& sha256) {
  return fmt::format(
      R"({{"version":{},"added":{},"gone":{},"gone_kept":{},"changed":{},"unchanged":{},"proposals_sha256":"{}"}})",
      version, changes.added, changes.gone, changes.gone_kept, changes.changed, changes.unchanged, sha256);
}

}  // namespace

ProposalChanges& ProposalChanges::operator+=(const ProposalChanges& other) {
  added += other.added;
  gone += other.gone;
  gone_kept += other.gone_kept;
  changed += other.changed;
  unchanged += other.unchanged;
  return *this;
}

Result<ProposalChanges> replace_proposals(SiteFile& site, std::string_view interview,
                                          const std::vector<Claim>& claims) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  const CurrentReading current = current_reading(connection, interview);
  if (current.version == 0) {
    return Error{std::string(interview), 0, 0, "the interview has no transcript",
                 "take in its transcript first"};
  }
  if (auto checked = check_proposals(interview, claims, current.code_points); !checked)
    return checked.error();

  std::vector<ClaimRow> rows = load_claim_rows(connection, interview);
  Replacement replacement(connection, rows, current.version);
  for (const Claim& claim : claims) replacement.take(claim);
  replacement.remove_the_rest();
  const ProposalChanges changes = replacement.changes();
  if (changes.any()) {
    append_event(connection, {.kind = "proposed",
                              .target_kind = "interview",
                              .target = std::string(interview),
                              .interview = std::string(interview),
                              .after = summary(changes, current.version, proposals_sha256(rows))});
  }
  transaction.commit();
  return changes;
}

}  // namespace witnessmark
