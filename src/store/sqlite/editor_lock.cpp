#include "store/sqlite/editor_lock.h"

#include <sqlite3.h>

#include <cstring>

namespace witnessmark {

std::unique_ptr<EditorLock> EditorLock::take(const Database& database, const std::string& path) {
  sqlite3_vfs* vfs = nullptr;
  check_sqlite(sqlite3_file_control(database.handle(), "main", SQLITE_FCNTL_VFS_POINTER, &vfs),
               database.handle(), "editor lock");
  auto lock = std::unique_ptr<EditorLock>(new EditorLock);
  const auto size = static_cast<std::size_t>(vfs->szOsFile);
  lock->memory_ = std::make_unique<char[]>(size);
  std::memset(lock->memory_.get(), 0, size);
  lock->name_ = sqlite3_create_filename(path.c_str(), "", "", 0, nullptr);
  if (lock->name_ == nullptr) throw SqliteError(SQLITE_NOMEM, "editor lock: out of memory");
  auto* file = reinterpret_cast<sqlite3_file*>(lock->memory_.get());
  int flags = 0;
  int code = vfs->xOpen(vfs, lock->name_, file, SQLITE_OPEN_READWRITE | SQLITE_OPEN_MAIN_DB, &flags);
  if (file->pMethods != nullptr) lock->file_ = file;
  if (code != SQLITE_OK) throw SqliteError(code, std::string("editor lock: ") + sqlite3_errstr(code));

  code = file->pMethods->xLock(file, SQLITE_LOCK_SHARED);
  if (code == SQLITE_OK) code = file->pMethods->xLock(file, SQLITE_LOCK_RESERVED);
  if (code == SQLITE_OK) return lock;
  if ((code & 0xff) == SQLITE_BUSY) return nullptr;
  throw SqliteError(code, std::string("editor lock: ") + sqlite3_errstr(code));
}

EditorLock::~EditorLock() {
  if (file_ != nullptr) {
    file_->pMethods->xUnlock(file_, SQLITE_LOCK_NONE);
    file_->pMethods->xClose(file_);
  }
  if (name_ != nullptr) sqlite3_free_filename(const_cast<char*>(name_));
}

}  // namespace witnessmark
