#include "store/schema.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <tuple>
#include <vector>

#include "store/sqlite/sql_statement.h"
#include "witnessmark/base/embedded_schema.h"

namespace witnessmark {
namespace {

struct Migration {
  int version;
  std::string_view sql;
};

/// The files sql/NNN-….sql in order; their numbers are the versions, from 1 without a gap.
std::vector<Migration> migrations() {
  std::vector<Migration> found;
  for (const EmbeddedSchema& schema : embedded_schemas()) {
    if (!schema.path.starts_with("sql/")) continue;
    found.push_back({std::stoi(std::string(schema.path.substr(4, 3))), schema.text});
  }
  std::sort(found.begin(), found.end(),
            [](const Migration& a, const Migration& b) { return a.version < b.version; });
  for (std::size_t i = 0; i < found.size(); ++i) {
    if (found[i].version != static_cast<int>(i) + 1)
      throw std::logic_error("schemas/sql has a gap in its numbers");
  }
  return found;
}

std::int64_t pragma(const Database& database, const char* sql) {
  SqlStatement statement(database, sql);
  return statement.step() ? statement.integer(0) : 0;
}

using SchemaRow = std::tuple<std::string, std::string, std::string, std::string>;

std::vector<SchemaRow> schema_rows(const Database& database) {
  std::vector<SchemaRow> rows;
  SqlStatement select(database,
                      "SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema "
                      "WHERE name NOT GLOB 'sqlite_stat[0-9]' ORDER BY 1, 2");
  while (select.step()) rows.emplace_back(select.text(0), select.text(1), select.text(2), select.text(3));
  return rows;
}

}  // namespace

int schema_version() {
  return static_cast<int>(migrations().size());
}

std::int64_t application_id(const Database& database) {
  return pragma(database, "PRAGMA application_id");
}

int user_version(const Database& database) {
  return static_cast<int>(pragma(database, "PRAGMA user_version"));
}

void migrate(Database& database, int to_version) {
  const int from = user_version(database);
  for (const Migration& migration : migrations()) {
    if (migration.version <= from || migration.version > to_version) continue;
    const bool alone = sqlite3_get_autocommit(database.handle()) != 0;
    if (alone) database.run("BEGIN IMMEDIATE");
    try {
      database.run(std::string(migration.sql));
      database.run(fmt::format("PRAGMA user_version = {}", migration.version));
      if (alone) database.run("COMMIT");
    } catch (...) {
      if (alone && sqlite3_get_autocommit(database.handle()) == 0) database.run("ROLLBACK");
      throw;
    }
  }
}

bool schema_is_ours(const Database& database) {
  Database expected(":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_MEMORY, "");
  migrate(expected, user_version(database));
  return schema_rows(expected) == schema_rows(database);
}

}  // namespace witnessmark
