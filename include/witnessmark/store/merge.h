#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// What one side decided on a target, last.
struct Decided {
  EventId event;
  std::string who;
  std::string when;  ///< Text for people.
  std::string why;
  bool blind = false;  ///< While proposals were hidden.
  std::string state;   ///< JSON of the claim or record; empty when it left it undecided, or took it away.
  bool operator==(const Decided&) const = default;
};

/// A target on which two copies had both decided when they were brought together.
struct DoubleDecision {
  std::int64_t number = 0;  ///< In this file; names it for settle_difference().
  std::string target_kind;  ///< "claim", "note", "entry-link", "passage" …
  std::string target;       ///< A key or an id.
  std::string interview;
  Decided here;
  Decided there;
  bool alike = false;
  bool settled = false;
  /// For a person to settle.
  bool open() const { return !alike && !settled; }
  bool operator==(const DoubleDecision&) const = default;
};

/// Something of the other copy that was not taken, and why.
struct NotTaken {
  std::string what;  ///< "entry", "interview", "proposals" …
  std::string which;
  std::string why;
  bool operator==(const NotTaken&) const = default;
};

struct MergeReport {
  std::size_t events = 0;       ///< Of the other's journal that were new here.
  std::size_t taken = 0;        ///< Decisions that only the other copy had made.
  std::size_t alike = 0;        ///< Made alike in both.
  std::size_t differences = 0;  ///< Made differently: now open for a person to settle.
  std::size_t rows = 0;         ///< New or changed rows of interviews, persons, evidence and lists.
  std::size_t transcripts = 0;  ///< New, or new versions.
  std::size_t proposals = 0;    ///< Interviews whose proposals were taken.
  std::vector<NotTaken> not_taken;
  bool operator==(const MergeReport&) const = default;
};

/// Brings in what was done in another copy of the same site, as one act (which is not undone by undo()). Its
/// events come into the journal as they are, known by session and number, so that doing it twice changes
/// nothing. On each claim, note, link, check and passage: what only one copy did since they parted is taken;
/// what both did alike is noted; what differs stays as it is here and is listed. Ranges read are joined. The
/// same holds for rows of interviews, evidence and lists, except that what differs there is only reported.
/// Whichever copy is brought into which, the result is the same but for what differs. What was erased here
/// does not come back, and what was erased there is not erased here. An Error, with nothing changed, when the
/// other is of another site, is this file itself, or tells another story of the same events.
Result<MergeReport> merge_site_file(SiteFile& site, const SiteFile& other);

/// All of them, by number.
std::vector<DoubleDecision> double_decisions(const SiteFile& site);
/// Those for a person to settle.
std::vector<DoubleDecision> open_differences(const SiteFile& site);

enum class Side { here, there };

/// Settles a difference with what one side decided: an act. Other open differences on the same target are
/// settled by it too. An Error when it is not known or not open.
Result<void> settle_difference(SiteFile& site, std::int64_t number, Side side, std::string_view why);

/// Settles a difference on a claim with other values. An Error also when it is not on that claim.
Result<void> settle_difference(SiteFile& site, std::int64_t number, const Claim& values,
                               std::string_view why);

}  // namespace witnessmark
