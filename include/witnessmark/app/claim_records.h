#pragma once
#include <functional>
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/app/withholding.h"
#include "witnessmark/base/result.h"
#include "witnessmark/model/claim_record.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Goes through the claims that fit the filter and may go out, each with quotes, provenance, recall and comparisons with
/// their explanations. What may not is counted in `withholding` and never visited. Withdrawn-in-one-breath, gone and lost
/// claims are visited too. An Error when the date policy cannot be read.
Result<void> for_each_record(const SiteFile& site, const ClaimFilter& filter, const Surroundings& surroundings,
                             Withholding& withholding, const std::function<void(const ClaimRecord&)>& visit);

/// The same for these claims, in the order given; what is no longer there is passed over.
Result<void> for_each_record_of(const SiteFile& site, const std::vector<Id>& claims, const Surroundings& surroundings,
                                Withholding& withholding, const std::function<void(const ClaimRecord&)>& visit);

}  // namespace witnessmark
