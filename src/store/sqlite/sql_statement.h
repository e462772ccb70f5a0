#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "store/sqlite/database.h"
#include "witnessmark/base/id.h"

struct sqlite3_stmt;

namespace witnessmark {

/// One prepared statement. Parameters are bound in order, columns read in order from 0. Every fault is a
/// SqliteError.
class SqlStatement {
 public:
  SqlStatement(const Database& database, std::string_view sql);
  ~SqlStatement();
  SqlStatement(const SqlStatement&) = delete;  // two owners would finalize it twice
  SqlStatement& operator=(const SqlStatement&) = delete;

  /// Binds the next parameter. Texts and blobs must stay alive until the statement has run.
  SqlStatement& bind(std::string_view text);
  SqlStatement& bind(const char* text) { return bind(std::string_view(text)); }
  SqlStatement& bind(std::int64_t number);
  SqlStatement& bind(int number) { return bind(static_cast<std::int64_t>(number)); }
  SqlStatement& bind(std::size_t number) { return bind(static_cast<std::int64_t>(number)); }
  SqlStatement& bind(bool flag) { return bind(static_cast<std::int64_t>(flag)); }
  SqlStatement& bind(const Id& id);
  SqlStatement& bind(const std::optional<std::int64_t>& number);
  SqlStatement& bind_blob(std::string_view bytes);
  SqlStatement& bind_null();

  /// The next row; false when there is none.
  bool step();
  /// For statements without rows: runs and makes ready for the next parameters.
  void run();
  /// Makes ready for the next parameters.
  void reset();

  bool is_null(int column) const;
  std::int64_t integer(int column) const;
  bool flag(int column) const { return integer(column) != 0; }
  std::optional<std::int64_t> maybe_integer(int column) const;
  /// Valid until the next step or reset.
  std::string_view text_view(int column) const;
  std::string text(int column) const { return std::string(text_view(column)); }
  std::string blob(int column) const;
  /// Binds the column, as it is, to the next parameter of another.
  void copy_to(int column, SqlStatement& other) const;
  /// Nil when the column is no blob of 16 bytes.
  Id id(int column) const;

 private:
  void check_bind(int code);

  sqlite3* handle_;
  sqlite3_stmt* statement_ = nullptr;
  int bound_ = 0;
};

}  // namespace witnessmark
