#pragma once
#include <string>
#include <string_view>

#include "store/claim/claim_rows.h"
#include "store/journal_writer.h"
#include "witnessmark/base/result.h"

// What events say of a claim, by their content. A claim that nobody has decided on is what the program
// proposes; the journal has nothing of its own to say of it.

namespace witnessmark {

enum class ClaimChange {
  added,          ///< Before empty, after the whole claim: a coder's own.
  removed,        ///< Before the whole claim, after empty: a coder's own is taken back.
  first_decided,  ///< Before the whole proposal, after what differs.
  undecided,      ///< Before the whole claim, after kUndecided: it is again what the program proposes.
  changed         ///< Both hold only what differs.
};

/// What an event says came after, when it leaves the claim to the program's proposal.
inline constexpr std::string_view kUndecided = "null";

ClaimChange claim_change(std::string_view before, std::string_view after);

/// The row of a claim; nothing when there is none.
std::optional<ClaimRow> find_claim_row(StoreConnection& connection, const Id& id);

/// What the program last proposed, whatever a coder made of it.
ClaimState proposal_of(const ClaimRow& row);

/// The proposal a coder decided on when the claim became decided.
std::string decided_on(StoreConnection& connection, const Id& id);

/// Whether a coder added it, though it may be taken back by now.
bool was_added(StoreConnection& connection, const Id& id);

/// Whether notes, links, checks or origins are about it, so that its row must stay.
bool is_written_about(StoreConnection& connection, const Id& id);

/// A claim's JSON with its quotes found again in the current reading text, when they lie in a former one; as
/// it is where they cannot be found.
std::string carried_to_current(StoreConnection& connection, const std::string& json);

/// Puts a claim in a state that a coder decided on, given as its whole JSON, and appends the event that says
/// so: kind, why, what it reverses and the like are taken from `event`. Makes the row when there is none: a
/// coder's own when `by_coder`, else a proposal that is gone.
Result<void> put_decided(StoreConnection& connection, const Id& id, const std::string& decided, bool by_coder,
                         const std::string& proposal, NewEvent event);

/// Leaves a claim to the proposal, or takes a coder's own away. An Error when something is written about
/// that.
Result<void> take_decision_back(StoreConnection& connection, const Id& id, NewEvent event);

/// Appends an event that says a claim stays as it is.
Result<void> append_unchanged(StoreConnection& connection, NewEvent event);

/// Whether the claims that a record's JSON names are there.
bool claims_are_there(StoreConnection& connection, const std::string& json);

/// Takes the members of a patch back out of a claim: `from` as it must be now, `to` as it is then.
Result<void> put_members(StoreConnection& connection, const Id& id, const std::string& from,
                         const std::string& to, NewEvent event);

}  // namespace witnessmark
