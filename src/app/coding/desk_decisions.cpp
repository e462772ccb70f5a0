#include "app/coding/desk_state.h"
#include "witnessmark/store/claims.h"

namespace witnessmark {

Result<void> CodingDesk::decide(const std::vector<Id>& claims, ClaimStatus status, const std::string& why) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may;
  SiteTransaction act(state.site);
  for (const Id& id : claims) {
    auto stored = find_claim(state.site, id);
    if (!stored) return Error{"", 0, 0, "a claim is no longer in the site file", "go back and look again"};
    if (stored->decided && stored->claim.status == status && why.empty()) continue;
    stored->claim.status = status;
    if (auto done = decide_claim(state.site, stored->claim, why); !done) return done;
  }
  act.commit();
  return {};
}

Result<void> CodingDesk::correct(const Claim& claim, const std::string& why) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may;
  Claim corrected = claim;
  corrected.status = ClaimStatus::said_so;
  SiteTransaction act(state.site);
  if (auto done = decide_claim(state.site, corrected, why); !done) return done;
  if (auto weighed = state.weigh(corrected); !weighed) return weighed;
  act.commit();
  return {};
}

Result<Id> CodingDesk::add(Claim claim, const std::string& why) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may.error();
  claim.status = ClaimStatus::said_so;
  SiteTransaction act(state.site);
  auto id = add_claim(state.site, claim, why);
  if (!id) return id;
  claim.id = *id;
  if (auto weighed = state.weigh(claim); !weighed) return weighed.error();
  act.commit();
  return id;
}

}  // namespace witnessmark
