#include "store/coding/differences.h"

#include <nlohmann/json.hpp>

#include "store/coding/record_changes.h"

namespace witnessmark {
namespace {

/// Whether a row of double_decisions is about the record of an event. Events on passages name the interview
/// only.
bool about_same(const OwnEvent& event, const std::string& row_json) {
  if (event.target_kind != Table<RestrictedPassage>::kind) return true;
  const std::string& record = event.after.empty() ? event.before : event.after;
  const auto row = nlohmann::json::parse(row_json);
  for (const char* side : {"here", "there"}) {
    const std::string state = row.at(side).value("state", "");
    if (!state.empty() && !record.empty() && same_record(event.target_kind, record, state)) return true;
  }
  return false;
}

}  // namespace

void note_settled(StoreConnection& connection, const OwnEvent& settling, bool settled) {
  if (!settled) {
    connection.prepared("UPDATE double_decisions SET settled = NULL WHERE settled = ?")
        .bind(settling.number)
        .run();
    return;
  }
  std::vector<std::int64_t> rows;
  SqlStatement& select = connection.prepared(
      "SELECT event, row_json FROM double_decisions WHERE target_kind = ? AND target = ? AND event < ? AND "
      "NOT "
      "alike AND settled IS NULL");
  select.bind(settling.target_kind).bind(settling.target).bind(settling.number);
  while (select.step()) {
    if (about_same(settling, select.text(1))) rows.push_back(select.integer(0));
  }
  select.reset();
  for (const std::int64_t row : rows) {
    connection.prepared("UPDATE double_decisions SET settled = ? WHERE event = ?")
        .bind(settling.number)
        .bind(row)
        .run();
  }
}

}  // namespace witnessmark
