#pragma once
#include <string>
#include <unordered_map>
#include <vector>

#include "read/tables/references.h"
#include "read/tables/table.h"
#include "read/tables/terms.h"
#include "witnessmark/read/register_files.h"

namespace witnessmark {

/// The five tables of a register, from CSV or XML.
struct RegisterTables {
  Table sources, derives, entries, itinerary, events;
};

/// Makes a register of the tables, with all checks that need more than one cell. Adds to what `reading`
/// holds.
RegisterReading read_register_tables(const RegisterTables& tables, const AuthorityLists* lists,
                                     RegisterReading reading);

}  // namespace witnessmark
