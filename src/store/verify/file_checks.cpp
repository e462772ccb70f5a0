#include <fmt/format.h>
#include <sqlite3.h>

#include "store/schema.h"
#include "store/verify/checks.h"

namespace witnessmark {

void check_pages(Verification& verification) {
  const Database& database = *verification.connection.database;
  SqlStatement pages(database, "PRAGMA integrity_check(100)");
  while (pages.step()) {
    if (pages.text_view(0) != "ok") verification.find("file", "", pages.text(0));
  }
  SqlStatement references(database, "PRAGMA foreign_key_check");
  while (references.step()) {
    verification.find("file", references.text(0),
                      fmt::format("row {} refers to a row of {} that is not there", references.integer(1),
                                  references.text(2)));
  }
}

namespace {

void copy_table(const Database& from, Database& to, const std::string& table, const char* marks) {
  SqlStatement select(from, "SELECT * FROM " + table);
  SqlStatement insert(to, "INSERT INTO " + table + " VALUES (" + marks + ")");
  const int columns = static_cast<int>(std::string_view(marks).size() + 1) / 2;
  while (select.step()) {
    for (int column = 0; column < columns; ++column) select.copy_to(column, insert);
    insert.run();
  }
}

}  // namespace

// FTS5 checks its index only on a connection that may write, and the one verifying may have none. So the
// index and the words are put into a database in memory and checked there; whoever edits meanwhile is not
// held up.
void check_search_index(Verification& verification) {
  const Database& database = *verification.connection.database;
  Database copy(":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_MEMORY, "");
  migrate(copy);
  copy.run("DELETE FROM talk_data; DELETE FROM talk_idx; BEGIN");
  copy_table(database, copy, "utterance_words", "?,?");
  copy_table(database, copy, "talk_data", "?,?");
  copy_table(database, copy, "talk_idx", "?,?,?");
  copy.run("COMMIT");
  try {
    copy.run("INSERT INTO talk (talk, rank) VALUES ('integrity-check', 1)");
  } catch (const SqliteError& error) {
    if (error.primary_code() != SQLITE_CORRUPT) throw;
    verification.find("search", "", "the full-text index does not hold the words of the transcripts");
  }
}

}  // namespace witnessmark
