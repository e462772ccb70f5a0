#pragma once
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>

#include "store/sqlite/database.h"
#include "store/sqlite/editor_lock.h"
#include "store/sqlite/sql_statement.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// What a SiteFile holds: the connection, who edits, and prepared statements.
class StoreConnection {
 public:
  std::filesystem::path path;
  std::string vfs;
  std::unique_ptr<Database> database;
  std::unique_ptr<EditorLock> lock;
  std::optional<Editor> editor;  ///< Nothing when open to read.
  Id session;                    ///< Names this session in the journal.
  SiteInfo info;
  int depth = 0;         ///< Of transactions.
  std::int64_t act = 0;  ///< Number of the first event of the outermost transaction; 0 before it.

  StoreConnection() = default;
  ~StoreConnection();
  StoreConnection(const StoreConnection&) = delete;  // one connection, one owner
  StoreConnection& operator=(const StoreConnection&) = delete;

  /// A statement kept for the next time, ready to bind. Only where no caller's code runs between its steps:
  /// the same text is the same statement.
  SqlStatement& prepared(const char* sql);

  /// Closes the kept statements: the file cannot be written anew while one is open.
  void forget_prepared() { statements_.clear(); }

  /// Throws std::logic_error when open to read.
  void require_editor() const;
  Id new_id() const { return make_id(editor->random); }

 private:
  std::unordered_map<std::string, std::unique_ptr<SqlStatement>> statements_;
};

}  // namespace witnessmark
