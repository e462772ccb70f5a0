#include <map>
#include <utility>

#include "store/coding/record_changes.h"
#include "store/verify/checks.h"

// What coders wrote beside the claims is replayed forward: each event has the whole record before and after.
// What stands in the end must be in the tables, and nothing else. Each must be about a claim, a version and a
// place that are there.

namespace witnessmark {
namespace {

using Targets = std::map<std::pair<std::string, std::string>, std::string>;

Targets replayed(Verification& verification) {
  Targets states;
  SqlStatement select(
      *verification.connection.database,
      "SELECT target_kind, target, before_json, after_json FROM journal JOIN journal_content USING (event) "
      "WHERE "
      "imported = 0 AND kind <> 'both-decided' AND target_kind IN ('note', 'entry-link', 'quote-check', "
      "'passages-read', 'claim-origin') ORDER BY event");
  while (select.step()) {
    const std::pair target(select.text(0), select.text(1));
    std::string& state = states[target];
    if (state != select.text_view(2))
      verification.find(target.first, target.second,
                        "an event about it does not begin where the one before ended");
    state = select.text(3);
  }
  std::erase_if(states, [](const auto& state) { return state.second.empty(); });
  return states;
}

template <typename R>
void compare(Verification& verification, Targets& states) {
  for (const StoredRecord<R>& stored : all_records<R>(verification.connection)) {
    ++verification.report.records;
    const std::string target = Table<R>::target(stored.record);
    const auto found = states.find({Table<R>::kind, target});
    if (found == states.end() || found->second != to_json(stored.record)) {
      verification.find(Table<R>::kind, target, "it is not what replaying the journal gives");
    }
    if (found != states.end()) states.erase(found);
  }
}

void check_claims_are_there(Verification& verification) {
  for (const char* sql :
       {"SELECT 'note', lower(hex(id)) FROM notes WHERE claim <> zeroblob(16) AND claim NOT IN (SELECT id "
        "FROM "
        "claims)",
        "SELECT 'entry-link', entry FROM entry_links WHERE claim NOT IN (SELECT id FROM claims)",
        "SELECT 'quote-check', coder FROM quote_checks WHERE claim NOT IN (SELECT id FROM claims)",
        "SELECT 'claim-origin', lower(hex(claim)) FROM claim_origins WHERE claim NOT IN (SELECT id FROM "
        "claims) "
        "OR other NOT IN (SELECT id FROM claims)"}) {
    SqlStatement select(*verification.connection.database, sql);
    while (select.step())
      verification.find(select.text(0), select.text(1), "it is about a claim that is not there");
  }
}

void check_places(Verification& verification) {
  for (const char* sql :
       {"SELECT 'note', lower(hex(id)) FROM notes WHERE version > 0 AND NOT EXISTS (SELECT 1 FROM readings "
        "WHERE "
        "readings.interview = notes.interview AND readings.version = notes.version AND first >= 0 AND first "
        "< "
        "past AND past <= code_points)",
        "SELECT 'passages-read', interview FROM passages_read, json_each(ranges) WHERE NOT EXISTS (SELECT 1 "
        "FROM "
        "readings WHERE readings.interview = passages_read.interview AND readings.version = "
        "passages_read.version AND json_extract(value, '$[0]') >= 0 AND json_extract(value, '$[1]') <= "
        "code_points)"}) {
    SqlStatement select(*verification.connection.database, sql);
    while (select.step())
      verification.find(select.text(0), select.text(1), "its place is outside the reading text");
  }
}

void check_double_decisions(Verification& verification) {
  SqlStatement select(
      *verification.connection.database,
      "SELECT double_decisions.target FROM double_decisions LEFT JOIN journal USING (event) LEFT JOIN "
      "journal_content USING (event) WHERE journal.kind IS NOT 'both-decided' OR imported <> 0 OR "
      "journal.target_kind <> double_decisions.target_kind OR journal.target <> double_decisions.target OR "
      "after_json IS NOT row_json UNION ALL SELECT target FROM journal WHERE kind = 'both-decided' AND "
      "imported "
      "= 0 AND event IN (SELECT event FROM journal_content) AND event NOT IN (SELECT event FROM "
      "double_decisions) UNION ALL SELECT target FROM double_decisions WHERE settled IS NOT NULL AND settled "
      "NOT "
      "IN (SELECT event FROM journal WHERE kind IN ('settled', 'taken-over', 'both-decided') AND imported = "
      "0)");
  while (select.step())
    verification.find("difference", select.text(0), "it is not what the journal says two copies decided");
}

}  // namespace

void replay_coding(Verification& verification) {
  Targets states = replayed(verification);
  for_each_coding_table([&]<typename R>(R*) { compare<R>(verification, states); });
  for (const auto& [target, unused] : states)
    verification.find(target.first, target.second, "the journal has it, and it is not there");
  check_claims_are_there(verification);
  check_places(verification);
  check_double_decisions(verification);
}

}  // namespace witnessmark
