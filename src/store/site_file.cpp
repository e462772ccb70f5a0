#include "witnessmark/store/site_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <stdexcept>
#include <system_error>

#include "store/connection.h"
#include "store/journal_writer.h"
#include "store/record/json_text.h"
#include "store/schema.h"
#include "witnessmark/base/fold.h"

// Making a file: everything, from the application id to the first event, is one transaction under a rollback
// journal, and only then does the file change to write-ahead mode. A crash before that leaves an empty file,
// which create() takes as none.
//
// Opening one: harden, ask whether it is ours (application id, version, structure), and only then write
// anything.

namespace witnessmark {
namespace {

namespace fs = std::filesystem;

/// What is there to do while somebody else edits.
constexpr const char* kUntilClosed =
    "wait until they have closed it; what only reads it, and copy, work meanwhile";

Error fault(const fs::path& path, std::string message, std::string advice) {
  return {path.string(), 0, 0, std::move(message), std::move(advice)};
}

bool in_memory(const fs::path& path) {
  return path == ":memory:";
}

/// Absolute, so that SQLite does not take a name such as "file:x?y" for a URI.
std::string sqlite_name(const fs::path& path) {
  return in_memory(path) ? path.string() : fs::absolute(path).string();
}

Result<void> check_editor(const Editor& editor) {
  if (trim(editor.name).empty() || !is_valid_utf8(editor.name)) {
    return Error{"", 0, 0, "the name of the one who edits is empty or not UTF-8", "give a name"};
  }
  return {};
}

Result<void> check_is_file(const fs::path& path) {
  std::error_code code;
  const auto status = fs::status(path, code);
  if (!fs::exists(status))
    return fault(path, "there is no such site file", "check the name, or create one first");
  if (fs::is_directory(status)) return fault(path, "is a folder, not a site file", "name a file in it");
  return {};
}

std::unique_ptr<StoreConnection> connect(const fs::path& path, const std::string& name, int flags,
                                         const SiteFileOptions& options) {
  auto connection = std::make_unique<StoreConnection>();
  connection->path = path;
  connection->vfs = options.vfs;
  connection->database = std::make_unique<Database>(name, flags, options.vfs);
  connection->database->harden();
  sqlite3_busy_timeout(connection->database->handle(), options.busy_seconds * 1000);
  return connection;
}

Error not_a_site_file(const fs::path& path) {
  return fault(path, "is not a site file", "name a file made by create");
}

/// Whether the file is a site file of a version and structure we know.
Result<void> check_is_ours(const StoreConnection& connection) {
  const Database& database = *connection.database;
  const int version = user_version(database);
  if (application_id(database) != kApplicationId || version < 1) return not_a_site_file(connection.path);
  if (version > schema_version()) {
    return fault(
        connection.path,
        fmt::format("is of version {}, and this program knows versions up to {}", version, schema_version()),
        "open it with a newer program");
  }
  if (!schema_is_ours(database)) {
    return fault(connection.path, "its tables are not those of a site file",
                 "use a copy that was not altered");
  }
  return {};
}

/// SQLite's faults that mean the user named a wrong or unreachable file; others go on as exceptions.
Error opening_error(const fs::path& path, const SqliteError& error) {
  switch (error.primary_code()) {
    case SQLITE_NOTADB:
      return not_a_site_file(path);
    case SQLITE_CORRUPT:
      return fault(path, "is damaged: " + std::string(error.what()), "use a copy");
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_READONLY:
      return fault(path, "cannot be opened", "check your rights to the file and its folder");
    case SQLITE_BUSY:
      return fault(path, "another program holds it", "try again when that has ended");
    default:
      throw error;
  }
}

SiteInfo read_info(const Database& database) {
  SqlStatement select(database, "SELECT id, name, created, policy FROM site");
  if (!select.step()) throw SqliteError(SQLITE_CORRUPT, "site file: it does not say whose site it is");
  return {select.id(0), select.text(1), select.text(2), select.text(3)};
}

void write_first_contents(StoreConnection& connection) {
  Database& database = *connection.database;
  database.run("BEGIN IMMEDIATE");
  database.run(fmt::format("PRAGMA application_id = {}", kApplicationId));
  migrate(database);
  SqlStatement insert(database, "INSERT INTO site (only_row, id, name, created, policy, evidence_event) VALUES (1, ?, ?, ?, ?, 0)");
  const SiteInfo& info = connection.info;
  insert.bind(info.id).bind(info.name).bind(info.created).bind(info.policy).run();
  std::string after = "{\"name\":";
  append_json(after, std::string_view(info.name));
  after += ",\"created\":";
  append_json(after, std::string_view(info.created));
  after += ",\"policy\":";
  append_json(after, std::string_view(info.policy));
  append_event(
      connection,
      {.kind = "created", .target_kind = "site", .target = to_string(info.id), .after = after + "}"});
  database.run("COMMIT");
}

void use_write_ahead_log(Database& database) {
  database.run("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;");
}

/// "file:/a%20b?immutable=1" (SQLite, "Uniform Resource Identifiers").
std::string immutable_uri(const fs::path& path) {
  std::string uri = "file:";
  for (const char c : fs::absolute(path).string()) {
    const auto byte = static_cast<unsigned char>(c);
    const bool plain = std::isalnum(byte) != 0 || c == '/' || c == '-' || c == '_' || c == '.';
    uri += plain ? std::string(1, c) : fmt::format("%{:02X}", byte);
  }
  return uri + "?immutable=1";
}

}  // namespace

SiteFile::SiteFile(std::unique_ptr<StoreConnection> connection) : connection_(std::move(connection)) {}
SiteFile::SiteFile(SiteFile&&) noexcept = default;
SiteFile& SiteFile::operator=(SiteFile&&) noexcept = default;
SiteFile::~SiteFile() = default;

const SiteInfo& SiteFile::info() const {
  return connection_->info;
}
const std::filesystem::path& SiteFile::path() const {
  return connection_->path;
}
bool SiteFile::can_edit() const {
  return connection_->editor.has_value();
}
int SiteFile::current_version() {
  return schema_version();
}

Result<SiteFile> SiteFile::create(const fs::path& path, SiteInfo info, Editor editor,
                                  SiteFileOptions options) {
  if (auto checked = check_editor(editor); !checked) return checked.error();
  if (!is_valid_utf8(info.name))
    return Error{"", 0, 0, "the name of the site is not UTF-8", "give it in UTF-8"};
  if (!in_memory(path)) {
    std::error_code code;
    const auto size = fs::file_size(path, code);
    if (code == std::errc::filename_too_long)
      return fault(path, "has a name longer than the disk takes", "give a shorter one");
    std::error_code asking;
    if (fs::exists(path, asking) && (code || size > 0)) {
      return fault(path, "exists already", "give another name: nothing is ever written over");
    }
    const fs::path folder = fs::absolute(path).parent_path();
    if (!fs::is_directory(folder, code))
      return fault(path, "its folder does not exist", "make the folder first");
  }
  try {
    auto connection = connect(path, sqlite_name(path), SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, options);
    if (info.id.is_nil()) info.id = make_id(editor.random);
    connection->info = std::move(info);
    connection->session = make_id(editor.random);
    connection->editor = std::move(editor);
    connection->database->run("PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA;");
    if (user_version(*connection->database) != 0) return fault(path, "exists already", "give another name");
    write_first_contents(*connection);
    if (!in_memory(path)) {
      use_write_ahead_log(*connection->database);
      connection->lock = EditorLock::take(*connection->database, sqlite_name(path));
      if (!connection->lock) return fault(path, "somebody else edits it already", kUntilClosed);
    }
    return SiteFile(std::move(connection));
  } catch (const SqliteError& error) {
    return opening_error(path, error);
  }
}

Result<SiteFile> SiteFile::edit(const fs::path& path, Editor editor, SiteFileOptions options) {
  if (auto checked = check_editor(editor); !checked) return checked.error();
  if (auto checked = check_is_file(path); !checked) return checked.error();
  try {
    auto connection = connect(path, sqlite_name(path), SQLITE_OPEN_READWRITE, options);
    Database& database = *connection->database;
    if (auto checked = check_is_ours(*connection); !checked) return checked.error();
    if (sqlite3_db_readonly(database.handle(), "main") != 0) {
      return fault(path, "is write-protected", "make it writable, or work on a copy");
    }
    use_write_ahead_log(database);
    connection->lock = EditorLock::take(database, sqlite_name(path));
    if (!connection->lock) {
      return fault(path, "somebody else is editing it", kUntilClosed);
    }
    migrate(database);
    connection->info = read_info(database);
    connection->session = make_id(editor.random);
    connection->editor = std::move(editor);
    return SiteFile(std::move(connection));
  } catch (const SqliteError& error) {
    return opening_error(path, error);
  }
}

namespace {

/// Opens to read; what it is about is checked, so that faults of reading show here.
Result<std::unique_ptr<StoreConnection>> open_to_read(const fs::path& path, const std::string& name,
                                                      int flags, const SiteFileOptions& options) {
  auto connection = connect(path, name, flags, options);
  Database& database = *connection->database;
  if (auto checked = check_is_ours(*connection); !checked) return checked.error();
  if (user_version(database) < schema_version()) {
    return fault(path, "is of an older version", "open it once to edit, which brings it up to date");
  }
  database.run("PRAGMA query_only = ON");
  connection->info = read_info(database);
  return connection;
}

}  // namespace

Result<SiteFile> SiteFile::read(const fs::path& path, SiteFileOptions options) {
  if (auto checked = check_is_file(path); !checked) return checked.error();
  // Readers too must be able to fold in the side files, if they are the last to close: hence READWRITE.
  // SQLite falls back to reading by itself where it may not write.
  try {
    auto opened = open_to_read(path, sqlite_name(path), SQLITE_OPEN_READWRITE, options);
    if (!opened) return opened.error();
    return SiteFile(std::move(opened).value());
  } catch (const SqliteError& error) {
    const int code = error.primary_code();
    if (code != SQLITE_CANTOPEN && code != SQLITE_READONLY) return opening_error(path, error);
  }
  // Where not even side files can be made (a disc, an archive folder) nobody else can be writing either.
  std::error_code code;
  if (fs::file_size(path.string() + "-wal", code) > 0 && !code) {
    return fault(path, "was left open by a crash and cannot be repaired here",
                 "copy it with its -wal file to where you may write, and open it there");
  }
  try {
    auto opened = open_to_read(path, immutable_uri(path), SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, options);
    if (!opened) return opened.error();
    return SiteFile(std::move(opened).value());
  } catch (const SqliteError& error) {
    return opening_error(path, error);
  }
}

namespace {

void sync_path(const fs::path& path, int flags) {
  const int number = ::open(path.c_str(), flags | O_CLOEXEC);
  if (number < 0) return;  // some file systems do not open folders
  ::fsync(number);
  ::close(number);
}

void back_up(const Database& from, const fs::path& to, const std::string& vfs) {
  Database copy(sqlite_name(to), SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, vfs);
  sqlite3_backup* backup = sqlite3_backup_init(copy.handle(), "main", from.handle(), "main");
  if (backup == nullptr) check_sqlite(sqlite3_errcode(copy.handle()), copy.handle(), "copy");
  // All pages in one step: it reads one state throughout, whatever is written meanwhile.
  const int stepped = sqlite3_backup_step(backup, -1);
  const int finished = sqlite3_backup_finish(backup);
  check_sqlite(stepped == SQLITE_DONE ? finished : stepped, copy.handle(), "copy");
}

}  // namespace

Result<void> SiteFile::copy_to(const fs::path& to) const {
  if (connection_->depth > 0) throw std::logic_error("copying in the middle of a transaction");
  std::error_code code;
  if (fs::exists(to, code))
    return fault(to, "exists already", "give another name: nothing is ever written over");
  const fs::path folder = fs::absolute(to).parent_path();
  if (!fs::is_directory(folder, code)) return fault(to, "its folder does not exist", "make the folder first");

  const fs::path temporary = folder / fmt::format(".copying-{}-{}", ::getpid(), to.filename().string());
  try {
    back_up(*connection_->database, temporary, "");
  } catch (const SqliteError&) {
    fs::remove(temporary, code);
    throw;
  }
  sync_path(temporary, O_RDONLY);
  // A link, unlike a renaming, never takes the place of a file that came up meanwhile.
  if (::link(temporary.c_str(), to.c_str()) == 0) {
    fs::remove(temporary, code);
  } else if (errno == EEXIST) {
    fs::remove(temporary, code);
    return fault(to, "exists already", "give another name: nothing is ever written over");
  } else {
    fs::rename(temporary, to, code);
    if (code) {
      const std::string reason = code.message();
      fs::remove(temporary, code);
      return fault(to, "cannot be written: " + reason, "check your rights to the folder");
    }
  }
  sync_path(folder, O_RDONLY | O_DIRECTORY);
  return {};
}

}  // namespace witnessmark
