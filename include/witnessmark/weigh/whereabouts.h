#pragma once
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// Holds a `located` claim against the itinerary of the site (claim subject empty) or of a person (subject a person's
/// key). A stay elsewhere that surely covers all of the claim's time contradicts it for that time; a ship's log does not
/// place a person, so stays of the site are only compatible or cannot tell for a person. Empty when no stay speaks to it.
std::vector<Comparison> compare_whereabouts(const Claim& claim, const RegisterIndex& evidence);

}  // namespace witnessmark
