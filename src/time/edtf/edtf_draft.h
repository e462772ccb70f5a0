#pragma once
#include <optional>
#include <string_view>

#include "witnessmark/base/error.h"

namespace witnessmark {

/// For a text that is not EDTF: the Error that names the syntax of the 2012 draft in it, with what to write
/// today; nothing when there is none.
std::optional<Error> recognise_draft_syntax(std::string_view text);

}  // namespace witnessmark
