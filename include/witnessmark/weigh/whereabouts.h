#pragma once
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// Holds a `located` claim against the itinerary of the site (claim subject empty) or of a person (subject a person's
/// key). A stay elsewhere that surely covers all of the claim's time contradicts it for that time. A ship's log does not
/// place a person: a stay of the site bears a person out, as compatible, only where it was at that place and the person
/// surely in service all that time; to one who surely was not it says nothing; else it cannot be told. `service` is that of
/// the person the claim is about. Empty when no stay speaks to it.
std::vector<Comparison> compare_whereabouts(const Claim& claim, const RegisterIndex& evidence,
                                            const std::vector<ServicePeriod>& service = {});

}  // namespace witnessmark
