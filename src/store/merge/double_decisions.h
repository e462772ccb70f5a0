#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "store/connection.h"
#include "witnessmark/store/merge.h"

namespace witnessmark {

/// All of them, or those that are open, by number.
std::vector<DoubleDecision> load_double_decisions(StoreConnection& connection, bool only_open);

/// Open ones on a target, of which one side is that state when the target alone does not tell.
std::vector<DoubleDecision> open_on(StoreConnection& connection, std::string_view target_kind,
                                    std::string_view target, const std::string& state);
bool is_open(StoreConnection& connection, std::string_view target_kind, std::string_view target);

/// Notes one, with its event. False when the same two decisions are noted already. A former open one of the
/// same two persons on the same target is settled by it.
bool note_double_decision(StoreConnection& connection, const DoubleDecision& decision);

/// Marks open ones on a target as settled by the last event here.
void settle_all_open(StoreConnection& connection, std::string_view target_kind, std::string_view target,
                     const std::string& state);

/// Whether two states say the same: of a link only the verdict counts.
bool is_alike(std::string_view target_kind, const std::string& here, const std::string& there);

}  // namespace witnessmark
