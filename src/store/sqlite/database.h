#pragma once
#include <stdexcept>
#include <string>

struct sqlite3;

namespace witnessmark {

/// SQLite reports that the machine or the file fails.
class SqliteError : public std::runtime_error {
 public:
  SqliteError(int code, const std::string& message) : std::runtime_error(message), code_(code) {}
  /// SQLite's extended result code.
  int code() const { return code_; }
  int primary_code() const { return code_ & 0xff; }

 private:
  int code_;
};

/// One SQLite connection, closed when it goes out of scope.
class Database {
 public:
  /// Flags are SQLite's; an empty vfs is the system's. Throws SqliteError.
  Database(const std::string& path, int flags, const std::string& vfs);
  ~Database();
  Database(const Database&) = delete;  // two owners would close it twice
  Database& operator=(const Database&) = delete;

  sqlite3* handle() const { return handle_; }

  /// Runs statements that give no rows or whose rows do not matter. Throws SqliteError.
  void run(const std::string& sql);

  /// What every connection to a file from others needs: defensive mode, an untrusted schema, no extensions,
  /// tight limits, foreign keys on.
  void harden();

 private:
  sqlite3* handle_ = nullptr;
};

/// Throws SqliteError when the code is not SQLITE_OK.
void check_sqlite(int code, sqlite3* handle, const char* doing);

}  // namespace witnessmark
