#pragma once
#include "witnessmark/weigh/fixture_statement.h"

namespace witnessmark {

/// The days of a statement by its kind, reading, denial and period, and the value its period was read from: a
/// change falls on one of the days; a denied one on none of those that surely belong to its time.
std::vector<DaySpan> days_meant(const FixtureStatement& statement, const std::optional<Edtf>& value,
                                const DatePolicy& policy);

}  // namespace witnessmark
