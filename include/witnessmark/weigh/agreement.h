#pragma once
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// Holds a claim against every entry on the same subject and place, or, for `located`, against the itinerary; one
/// comparison with outcome silent when there is none. The outcome is by meaning:
///   agrees       if the entry is right, the claim is right
///   conflicts    they cannot both be right (for one episode of the fixture at the place)
///   compatible   both can be right; the entry does not settle it
///   cannot tell  identification, identity of the subject, a missing date, or an entry dated or identified by the thing
///                itself leaves it open
/// An intention (an order, a drawing) can at best be compatible. What derives from the same testimony, or was shown to
/// the narrator beforehand, is marked circular: it may agree, but is no independent witness.
/// `service` is that of the person a `located` claim is about.
std::vector<Comparison> compare(const Claim& claim, const Interview& interview, const RegisterIndex& evidence,
                                const std::vector<ServicePeriod>& service = {});

/// One claim against one entry.
Comparison compare(const Claim& claim, const Interview& interview, const RegisterIndex::Item& item,
                   const RegisterIndex& evidence);

/// The sentence a curator reads: the entry and its date, the narrator's words (a long quote shortened), what
/// was read from them and its date, how the two stand, the gap, and what lowered the outcome. Made when read.
/// `quote` is the claim's main one and may be empty. `name_of` gives the name of a person's key; without it
/// the key stands.
std::string explain(const Claim& claim, std::string_view quote, const Interview& interview,
                    const Comparison& comparison, const RegisterIndex& evidence,
                    const std::function<std::string(const std::string&)>& name_of = nullptr);

}  // namespace witnessmark
