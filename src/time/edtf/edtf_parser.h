#pragma once
#include <string_view>

#include "witnessmark/time/edtf.h"

namespace witnessmark {

/// parse_edtf without the recognition of the older draft.
Result<Edtf> parse_edtf_2019(std::string_view text);

}  // namespace witnessmark
