#pragma once
#include <memory>
#include <string>

#include "store/sqlite/database.h"

struct sqlite3_file;

namespace witnessmark {

/// Marks the one who edits a site file, with SQLite's RESERVED lock on the database file, taken on a second
/// file handle through SQLite's own file layer.
///
/// Why this lock: in write-ahead mode SQLite itself never takes RESERVED on the database file (connections
/// hold SHARED, writers lock the -shm file), so it is free for us, and readers and copies are not disturbed.
/// It is an operating-system lock, gone with the process. And because the handle is SQLite's, closing it
/// cannot drop the locks that other connections of this process hold on the same file, as closing a handle of
/// our own would (POSIX locks belong to the process and the file, not to the handle). Network drives are as
/// safe for it as they are for SQLite, which is to say not very.
class EditorLock {
 public:
  /// Nothing when somebody else edits. The database must be open in write-ahead mode. Throws SqliteError.
  static std::unique_ptr<EditorLock> take(const Database& database, const std::string& path);
  /// Must go before the connection closes, or that cannot fold in the side files.
  ~EditorLock();
  EditorLock(const EditorLock&) = delete;  // one lock, one owner
  EditorLock& operator=(const EditorLock&) = delete;

 private:
  EditorLock() = default;
  std::unique_ptr<char[]> memory_;
  const char* name_ = nullptr;
  sqlite3_file* file_ = nullptr;
};

}  // namespace witnessmark
