#pragma once
#include <cstdint>

#include "store/sqlite/database.h"
#include "witnessmark/base/result.h"

namespace witnessmark {

/// 'wmsf', in the header of every site file.
constexpr std::int64_t kApplicationId = 0x776d7366;

/// The version this program writes: the number of the last file in schemas/sql.
int schema_version();

std::int64_t application_id(const Database& database);
int user_version(const Database& database);

/// Runs schemas/sql/NNN-….sql for each version after the file's, each in a transaction of its own, with its
/// number. Inside a transaction they join it.
void migrate(Database& database, int to_version = schema_version());

/// Whether the tables, indexes and triggers are exactly those of the file's version. A file with others is
/// not ours to trust: a trigger or view of somebody else's would run whenever we write or read.
bool schema_is_ours(const Database& database);

}  // namespace witnessmark
