#pragma once
#include <string>

#include "store/connection.h"
#include "witnessmark/model/access.h"

namespace witnessmark {

/// The JSON of a passage with its place in a version of the reading text, as events of coders have it.
std::string passage_json(const RestrictedPassage& passage, int version);

/// Where a passage's words stand, written into its row.
void write_place(StoreConnection& connection, const RestrictedPassage& passage, std::int64_t reading);

/// Writes the place that the JSON has into the passage's row, when it is one in the current reading text.
void restore_place(StoreConnection& connection, const std::string& json);

}  // namespace witnessmark
