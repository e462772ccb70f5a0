#pragma once
#include "store/sqlite/sql_statement.h"
#include "witnessmark/store/weighings.h"

namespace witnessmark {

/// The columns of a standing, of claims joined with weighings.
extern const char* const kStandingColumns;
constexpr int kStandingColumnCount = 16;

/// From kStandingColumns, which come first.
ClaimStanding standing_from(const SqlStatement& row);

}  // namespace witnessmark
