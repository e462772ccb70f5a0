#pragma once
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// Where a passage named by its words stands in a reading text. `…` (or `...`) in the quote stands for whatever lies
/// between its first and last words; runs of white space match one another. None when it is not there; when its words can
/// mean more than one place, the first and the last of these.
std::vector<CodePointRange> find_passage(std::string_view reading_text, std::string_view quote);

}  // namespace witnessmark
