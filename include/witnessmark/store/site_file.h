#pragma once
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <string>

#include "witnessmark/base/id.h"
#include "witnessmark/base/result.h"

namespace witnessmark {

class StoreConnection;  // inside the store layer only

/// What a site file says of itself.
struct SiteInfo {
  Id id;                ///< Random; a copy keeps it, so that two copies are known to be of one site.
  std::string name;     ///< Name of the site, for people.
  std::string created;  ///< When, as text for people.
  std::string policy;   ///< Name of the date policy its periods were read under.
  bool operator==(const SiteInfo&) const = default;
};

/// Who works on a site file, and what its journal takes from outside.
struct Editor {
  std::string name;                      ///< A coder, or the program: goes into every journal event.
  RandomBytes random = system_random();  ///< For ids.
  std::function<std::string()>
      wall_clock;  ///< Text for people only: clocks never order events. May be empty.
};

struct SiteFileOptions {
  std::string vfs;        ///< Name of a registered SQLite VFS; empty for the system's.
  int busy_seconds = 10;  ///< How long to wait for another process to finish a single write.
};

/// One site's interviews, evidence, lists, claims and journal: one SQLite file. Everything else of this layer
/// takes it as its first argument.
///
/// One process edits, any number read. The mark of the editor is an operating-system lock (SQLite's RESERVED
/// lock on the file itself, held through SQLite's own file layer): it goes when the process goes, however
/// that happens, and leaves nothing behind. While it is open there are two side files (-wal, -shm); the last
/// to close folds them in and removes them. After a crash they are needed: they go with the file until it is
/// opened again.
///
/// A failing machine (full disk, unreadable sector) is a std::runtime_error; writing to a site file opened to
/// read is a std::logic_error. Not for use from several threads at once.
class SiteFile {
 public:
  /// Makes a new site file. The path may be ":memory:". Nil info.id gets a new id. An Error when the file
  /// exists or its folder does not.
  static Result<SiteFile> create(const std::filesystem::path& path, SiteInfo info, Editor editor,
                                 SiteFileOptions options = {});

  /// Opens to edit; a file of an older version is brought up to date. An Error when there is none, it is no
  /// site file, of a newer version, altered in its structure, write-protected, or being edited by somebody
  /// else.
  static Result<SiteFile> edit(const std::filesystem::path& path, Editor editor,
                               SiteFileOptions options = {});

  /// Opens to read, also while somebody edits, and also where nothing can be written. A file of an older
  /// version is an Error that says to open it once to edit.
  static Result<SiteFile> read(const std::filesystem::path& path, SiteFileOptions options = {});

  SiteFile(SiteFile&&) noexcept;
  SiteFile& operator=(SiteFile&&) noexcept;
  ~SiteFile();  ///< Closes; what was not committed is gone.

  const SiteInfo& info() const;
  const std::filesystem::path& path() const;
  bool can_edit() const;

  /// The version of the structure (SQLite's user_version) this program writes.
  static int current_version();

  /// A whole, consistent copy at `to`, made page by page while others read and edit. The copy is synced, then
  /// renamed into place. An Error when `to` exists or its folder does not.
  Result<void> copy_to(const std::filesystem::path& to) const;

  StoreConnection& connection() const { return *connection_; }

 private:
  explicit SiteFile(std::unique_ptr<StoreConnection> connection);
  std::unique_ptr<StoreConnection> connection_;
};

/// Work that is kept whole or not at all. Every saving function opens its own; one opened around several
/// makes them one. Going out of scope without commit() undoes all of it. An inner one that is undone leaves
/// the outer usable.
class SiteTransaction {
 public:
  explicit SiteTransaction(SiteFile& site);
  ~SiteTransaction();
  SiteTransaction(const SiteTransaction&) = delete;  // undoing twice
  SiteTransaction& operator=(const SiteTransaction&) = delete;

  /// The outermost returns when the work is on the disk (WAL, synchronous FULL).
  void commit();

 private:
  StoreConnection& connection_;
  std::string name_;
  bool finished_ = false;
};

}  // namespace witnessmark
