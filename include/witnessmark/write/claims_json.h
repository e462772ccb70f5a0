#pragma once
#include <string>

#include "witnessmark/model/claim_record.h"

namespace witnessmark {

/// One claim as one JSON object without line breaks, as schemas/export/claim.schema.json describes it.
std::string claim_json(const ClaimRecord& record);

}  // namespace witnessmark
