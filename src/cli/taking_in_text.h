#pragma once
#include <string_view>
#include <vector>

#include "command.h"
#include "witnessmark/store/changes.h"

namespace witnessmark {

/// "persons: 3 new, 0 changed, 0 as before"; nothing when there was none.
void print_counts(Command& command, std::string_view what, const RowCounts& counts);

/// "  changed person lind: name, notes", a line each.
void print_changed(Command& command, const std::vector<ChangedRow>& changed);

}  // namespace witnessmark
