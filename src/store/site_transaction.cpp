#include <fmt/format.h>
#include <sqlite3.h>

#include "store/connection.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

SiteTransaction::SiteTransaction(SiteFile& site) : connection_(site.connection()) {
  connection_.require_editor();
  if (connection_.depth > 0) name_ = fmt::format("level_{}", connection_.depth);
  if (name_.empty()) connection_.act = 0;
  connection_.database->run(name_.empty() ? "BEGIN IMMEDIATE" : "SAVEPOINT " + name_);
  ++connection_.depth;
}

SiteTransaction::~SiteTransaction() {
  if (finished_) return;
  finished_ = true;  // before undoing: whatever that meets, it is not tried again
  --connection_.depth;
  // SQLite may have undone everything already (a full disk does that).
  if (sqlite3_get_autocommit(connection_.database->handle()) != 0) return;
  try {
    connection_.database->run(name_.empty() ? "ROLLBACK" : "ROLLBACK TO " + name_ + "; RELEASE " + name_);
  } catch (const SqliteError&) {
    // A destructor may not throw. What could not be undone here is undone by closing, or by the next to open.
  }
}

void SiteTransaction::commit() {
  connection_.database->run(name_.empty() ? "COMMIT" : "RELEASE " + name_);
  finished_ = true;
  --connection_.depth;
}

}  // namespace witnessmark
