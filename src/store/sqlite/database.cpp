#include "store/sqlite/database.h"

#include <sqlite3.h>

#include <string_view>

#include "witnessmark/base/id.h"

namespace witnessmark {
namespace {

/// id_of('0123…'): the 16 bytes an id is kept as; NULL for anything else.
void id_of(sqlite3_context* context, int, sqlite3_value** arguments) {
  const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(arguments[0]));
  const auto id = parse_id(text == nullptr ? std::string_view() : std::string_view(text));
  if (!id) return sqlite3_result_null(context);
  sqlite3_result_blob(context, id->bytes.data(), static_cast<int>(id->bytes.size()), SQLITE_TRANSIENT);
}

}  // namespace

void check_sqlite(int code, sqlite3* handle, const char* doing) {
  if (code == SQLITE_OK) return;
  const bool known = handle != nullptr && sqlite3_errcode(handle) == code;
  const int extended = known ? sqlite3_extended_errcode(handle) : code;
  const char* message = known ? sqlite3_errmsg(handle) : sqlite3_errstr(code);
  throw SqliteError(extended, std::string(doing) + ": " + message);
}

Database::Database(const std::string& path, int flags, const std::string& vfs) {
  const int code =
      sqlite3_open_v2(path.c_str(), &handle_, flags | SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_NOMUTEX,
                      vfs.empty() ? nullptr : vfs.c_str());
  if (code == SQLITE_OK) return;
  const std::string message = handle_ != nullptr ? sqlite3_errmsg(handle_) : sqlite3_errstr(code);
  sqlite3_close_v2(handle_);
  throw SqliteError(code, path + ": " + message);
}

Database::~Database() {
  sqlite3_close_v2(handle_);
}

void Database::run(const std::string& sql) {
  check_sqlite(sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, nullptr), handle_, "site file");
}

void Database::harden() {
  const auto configure = [this](int option, int value) {
    check_sqlite(sqlite3_db_config(handle_, option, value, nullptr), handle_, "site file");
  };
  configure(SQLITE_DBCONFIG_DEFENSIVE, 1);
  configure(SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0);
  configure(SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0);
  configure(SQLITE_DBCONFIG_DQS_DDL, 0);
  configure(SQLITE_DBCONFIG_DQS_DML, 0);
  configure(SQLITE_DBCONFIG_ENABLE_FKEY, 1);
  configure(SQLITE_DBCONFIG_ENABLE_VIEW, 0);

  const int function_flags = SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_DIRECTONLY;
  check_sqlite(sqlite3_create_function(handle_, "id_of", 1, function_flags, nullptr, id_of, nullptr, nullptr),
               handle_, "site file");
  sqlite3_limit(handle_, SQLITE_LIMIT_ATTACHED, 0);
  sqlite3_limit(handle_, SQLITE_LIMIT_LENGTH, 300 << 20);
  sqlite3_limit(handle_, SQLITE_LIMIT_SQL_LENGTH, 1 << 20);
  sqlite3_limit(handle_, SQLITE_LIMIT_COLUMN, 200);
  sqlite3_limit(handle_, SQLITE_LIMIT_EXPR_DEPTH, 100);
  sqlite3_limit(handle_, SQLITE_LIMIT_COMPOUND_SELECT, 10);
  sqlite3_limit(handle_, SQLITE_LIMIT_VDBE_OP, 100000);
  sqlite3_limit(handle_, SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 1000);
  sqlite3_limit(handle_, SQLITE_LIMIT_TRIGGER_DEPTH, 10);

  // REPLACE fires delete triggers only then; a damaged page is found when it is read, not when it is used.
  run("PRAGMA recursive_triggers = ON; PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0; "
      "PRAGMA temp_store = MEMORY; PRAGMA cache_size = -65536; PRAGMA secure_delete = ON;");
}

}  // namespace witnessmark
