#pragma once
#include <string>

#include "store/connection.h"
#include "witnessmark/model/access.h"

namespace witnessmark {

/// The JSON of a passage with its place in a version of the reading text, as events of coders have it; version 0 for
/// one whose words have no place.
std::string passage_json(const RestrictedPassage& passage, int version);

/// Where a passage's words stand, written into its row.
void write_place(StoreConnection& connection, const RestrictedPassage& passage, std::int64_t reading);

/// Writes the place that the JSON has into the passage's row, when it is one in the current reading text, or that it has
/// none. JSON that says nothing of a place changes none.
void restore_place(StoreConnection& connection, const std::string& json);

}  // namespace witnessmark
