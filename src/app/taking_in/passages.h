#pragma once
#include <optional>
#include <string_view>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// Where a passage named by its words stands in a reading text. `…` (or `...`) in the quote stands for whatever lies
/// between its first and last words; runs of white space match one another. Nothing when it is not there.
std::optional<CodePointRange> find_passage(std::string_view reading_text, std::string_view quote);

}  // namespace witnessmark
