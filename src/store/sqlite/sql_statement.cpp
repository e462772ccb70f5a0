#include "store/sqlite/sql_statement.h"

#include <sqlite3.h>

#include <algorithm>

namespace witnessmark {

SqlStatement::SqlStatement(const Database& database, std::string_view sql) : handle_(database.handle()) {
  const int code =
      sqlite3_prepare_v3(handle_, sql.data(), static_cast<int>(sql.size()), 0, &statement_, nullptr);
  check_sqlite(code, handle_, "site file");
}

SqlStatement::~SqlStatement() {
  sqlite3_finalize(statement_);  // its code repeats that of the last step
}

void SqlStatement::check_bind(int code) {
  check_sqlite(code, handle_, "site file");
}

SqlStatement& SqlStatement::bind(std::string_view text) {
  // A null pointer would bind NULL instead of the empty text.
  const char* data = text.data() == nullptr ? "" : text.data();
  check_bind(sqlite3_bind_text64(statement_, ++bound_, data, text.size(), SQLITE_STATIC, SQLITE_UTF8));
  return *this;
}

SqlStatement& SqlStatement::bind(std::int64_t number) {
  check_bind(sqlite3_bind_int64(statement_, ++bound_, number));
  return *this;
}

SqlStatement& SqlStatement::bind(const Id& id) {
  check_bind(sqlite3_bind_blob(statement_, ++bound_, id.bytes.data(), static_cast<int>(id.bytes.size()),
                               SQLITE_TRANSIENT));
  return *this;
}

SqlStatement& SqlStatement::bind(const std::optional<std::int64_t>& number) {
  return number ? bind(*number) : bind_null();
}

SqlStatement& SqlStatement::bind_blob(std::string_view bytes) {
  const char* data = bytes.data() == nullptr ? "" : bytes.data();
  check_bind(sqlite3_bind_blob64(statement_, ++bound_, data, bytes.size(), SQLITE_STATIC));
  return *this;
}

void SqlStatement::copy_to(int column, SqlStatement& other) const {
  other.check_bind(
      sqlite3_bind_value(other.statement_, ++other.bound_, sqlite3_column_value(statement_, column)));
}

SqlStatement& SqlStatement::bind_null() {
  check_bind(sqlite3_bind_null(statement_, ++bound_));
  return *this;
}

bool SqlStatement::step() {
  const int code = sqlite3_step(statement_);
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) return false;
  const SqliteError error(sqlite3_extended_errcode(handle_),
                          std::string("site file: ") + sqlite3_errmsg(handle_));
  reset();
  throw error;
}

void SqlStatement::run() {
  while (step()) {
  }
  reset();
}

void SqlStatement::reset() {
  sqlite3_reset(statement_);
  bound_ = 0;
}

bool SqlStatement::is_null(int column) const {
  return sqlite3_column_type(statement_, column) == SQLITE_NULL;
}

std::int64_t SqlStatement::integer(int column) const {
  return sqlite3_column_int64(statement_, column);
}

std::optional<std::int64_t> SqlStatement::maybe_integer(int column) const {
  if (is_null(column)) return std::nullopt;
  return integer(column);
}

std::string_view SqlStatement::text_view(int column) const {
  const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
  if (text == nullptr) return {};
  return {text, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

std::string SqlStatement::blob(int column) const {
  const auto* bytes = static_cast<const char*>(sqlite3_column_blob(statement_, column));
  if (bytes == nullptr) return {};
  return {bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

Id SqlStatement::id(int column) const {
  Id id;
  const std::string bytes = blob(column);
  if (bytes.size() == id.bytes.size()) std::copy(bytes.begin(), bytes.end(), id.bytes.begin());
  return id;
}

}  // namespace witnessmark
