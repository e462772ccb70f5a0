#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/store/claims.h"

namespace witnessmark {

// What a coder does to several claims in one go. Each is one act: undone and redone as a whole.

/// Makes two claims of one: the original gets the values of `original`, as decide_claim gives them, and
/// `part` is added, as add_claim does, marked as split from it. Returns the id of the new claim.
Result<Id> split_claim(SiteFile& site, const Claim& original, const Claim& part, std::string_view why,
                       ProposalView proposals = ProposalView::shown);

/// Makes one claim of two: `kept` has the values decided on, and `absorbed` is set aside and says into which
/// it went. An Error when they are the same, of different interviews, or not known.
Result<void> merge_claims(SiteFile& site, const Claim& kept, const Id& absorbed, std::string_view why,
                          ProposalView proposals = ProposalView::shown);

/// decide_claim on each: all or none. An Error when a claim occurs twice.
Result<void> decide_many(SiteFile& site, const std::vector<Claim>& after, std::string_view why,
                         ProposalView proposals = ProposalView::shown);

enum class ClaimRelation { absorbed_into, split_from };

/// Where a claim came from or went.
struct ClaimOrigin {
  Id claim;
  ClaimRelation relation = ClaimRelation::split_from;
  Id other;
  std::string interview;
  bool operator==(const ClaimOrigin&) const = default;
};
/// Those in which the claim is either side.
std::vector<ClaimOrigin> origins_of_claim(const SiteFile& site, const Id& claim);

}  // namespace witnessmark
