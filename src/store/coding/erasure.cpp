#include "witnessmark/store/erasure.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <stdexcept>

#include "store/journal_writer.h"
#include "store/transcript/transcript_parts.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/interviews.h"

// Rows are deleted with SQLite's secure_delete on, which overwrites what they held. The index keeps deleted
// words in its segments until these are merged, so it is merged into one. Former pages are then still in the
// write-ahead log and may be in the slack of others: the whole file is written anew and the log emptied.

namespace witnessmark {
namespace {

std::size_t count(const StoreConnection& connection, const char* sql, std::string_view interview) {
  SqlStatement select(*connection.database, sql);
  select.bind(interview).step();
  return static_cast<std::size_t>(select.integer(0));
}

void delete_transcripts(StoreConnection& connection, std::string_view interview) {
  std::vector<std::int64_t> readings;
  SqlStatement select(*connection.database,
                      "SELECT reading FROM readings WHERE interview = ? ORDER BY version");
  select.bind(interview);
  while (select.step()) readings.push_back(select.integer(0));
  for (const std::int64_t reading : readings) delete_parts(connection, reading);
}

/// Tables with rows of an interview, in an order that leaves no row referring to one that is gone.
constexpr const char* kTables[] = {"double_decisions", "claim_origins", "passages_read", "quote_checks",
                                   "entry_links",      "notes",         "claims",        "passages",
                                   "releases",         "speakers",      "readings",      "originals",
                                   "interview_people"};

void delete_rows(StoreConnection& connection, std::string_view interview) {
  delete_transcripts(connection, interview);
  for (const char* table : kTables) {
    SqlStatement remove(*connection.database, fmt::format("DELETE FROM {} WHERE interview = ?", table));
    remove.bind(interview).run();
  }
  SqlStatement remove(*connection.database, "DELETE FROM interviews WHERE key = ?");
  remove.bind(interview).run();
  SqlStatement content(
      *connection.database,
      "DELETE FROM journal_content WHERE event IN (SELECT event FROM journal WHERE interview = ?)");
  content.bind(interview).run();
  SqlStatement stood(*connection.database, "DELETE FROM workplaces WHERE instr(json, ?) > 0");
  stood.bind(interview).run();
  connection.database->run("INSERT INTO talk (talk) VALUES ('optimize')");
}

/// VACUUM attaches a database of its own, which is otherwise not allowed.
void write_anew(Database& database) {
  sqlite3_limit(database.handle(), SQLITE_LIMIT_ATTACHED, 1);
  try {
    database.run("VACUUM");
  } catch (...) {
    sqlite3_limit(database.handle(), SQLITE_LIMIT_ATTACHED, 0);
    throw;
  }
  sqlite3_limit(database.handle(), SQLITE_LIMIT_ATTACHED, 0);
}

/// False when somebody who reads still needs it.
bool empty_side_file(const Database& database) {
  SqlStatement checkpoint(database, "PRAGMA wal_checkpoint(TRUNCATE)");
  return !checkpoint.step() || checkpoint.integer(0) == 0;
}

}  // namespace

Result<ErasureAccount> account_of_erasure(const SiteFile& site, std::string_view interview) {
  const StoreConnection& connection = site.connection();
  for (const ErasedInterview& erased : erased_interviews(site)) {
    if (erased.interview == interview)
      return Error{"", 0, 0, fmt::format("interview \"{}\" was erased on {}", interview, erased.when), ""};
  }
  if (!find_interview(site, interview))
    return Error{"", 0, 0, fmt::format("there is no interview \"{}\"", interview), "check its key"};
  ErasureAccount account;
  account.originals = count(connection, "SELECT count(*) FROM originals WHERE interview = ?", interview);
  account.reading_texts = count(connection, "SELECT count(*) FROM readings WHERE interview = ?", interview);
  account.claims = count(connection, "SELECT count(*) FROM claims WHERE interview = ?", interview);
  account.notes = count(connection, "SELECT count(*) FROM notes WHERE interview = ?", interview);
  account.events = count(connection, "SELECT count(*) FROM journal WHERE interview = ?", interview);
  return account;
}

Result<ErasureAccount> erase_interview(SiteFile& site, std::string_view interview, std::string_view why) {
  StoreConnection& connection = site.connection();
  connection.require_editor();
  if (connection.depth > 0) throw std::logic_error("erasing in the middle of a transaction");
  auto account = account_of_erasure(site, interview);
  if (!account) return account;
  if (!is_valid_utf8(why)) return Error{"", 0, 0, "the reason is not UTF-8", "type it again"};
  {
    SiteTransaction transaction(site);
    const std::int64_t event = append_event(connection, {.kind = "erased",
                                                         .target_kind = "interview",
                                                         .target = std::string(interview),
                                                         .why = std::string(why)});
    const std::string when = connection.editor->wall_clock ? connection.editor->wall_clock() : "";
    connection.prepared("INSERT INTO erasures (kind, key, erased, event) VALUES ('interview', ?, ?, ?)")
        .bind(interview)
        .bind(when)
        .bind(event)
        .run();
    delete_rows(connection, interview);
    mark_evidence_changed(connection, event);
    transaction.commit();
  }
  connection.forget_prepared();
  write_anew(*connection.database);
  account->in_side_file = !empty_side_file(*connection.database);
  return account;
}

}  // namespace witnessmark
