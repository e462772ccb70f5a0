#pragma once
#include "timed.h"
#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// The outcome by what the two statements mean, before identification, circles and intention lower it.
struct Meaning {
  Outcome outcome = Outcome::cannot_tell;
  bool comparable = true;             ///< False when the two statements say nothing of one another.
  bool unless_other_episode = false;  ///< They conflict only if it did not come and go, or happen, once more.
  /// Of one stay they would conflict, or the one would follow from the other; the register shows more stays than one.
  bool of_several_stays = false;
};

Meaning hold_against(const TimedClaim& claim, const TimedEntry& entry, const RegisterIndex& evidence);
Meaning hold_against(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence);

}  // namespace witnessmark
