#pragma once
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/terminal/view.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

struct TimelineRow {
  std::string label;
  std::optional<Period> period;
  Role role = Role::plain;
};

/// Periods on one scale, in characters: `=` days that surely belong, `-` days that may, `<` and `>` what goes
/// on beyond the scale, `|` where less than a column is left; years beneath. Rows without a period say so.
/// Nothing when no row is dated.
std::vector<Block> timeline(const std::vector<TimelineRow>& rows, int columns);

}  // namespace witnessmark
