#include <fmt/format.h>

#include <map>
#include <set>
#include <unordered_map>
#include <vector>

#include "store/claim/claim_patch.h"
#include "store/claim/claim_rows.h"
#include "store/coding/claim_changes.h"
#include "store/coding/record_changes.h"
#include "store/record/taking_in.h"
#include "store/verify/checks.h"

// The tables are what the journal says, and here is how that is checked.
//
// Rows of spreadsheets are unwound: the rows as they are now, with every "changed" event taken back from the
// last to the first, are those once taken in; each event that took some in has the hash of them.
//
// What happened in other copies is left out: what this copy took from them is in events of its own.
//
// Claims are replayed forward. A decided claim is what was first decided on, with every later change put in;
// the journal holds all of that. An undecided one is what was proposed; the last event that proposed for its
// interview, or carried claims to a revised text, has the hash of all proposals of that interview.

namespace witnessmark {
namespace {

struct Record {
  std::string kind;
  std::string json;
  std::int64_t since = 0;
};

using RecordsByText = std::unordered_map<std::string, Record>;

std::string text_key(std::string_view kind, std::string_view json) {
  return std::string(kind) + ' ' + std::string(json);
}

template <typename R>
void read_records(StoreConnection& connection, RecordsByText& records) {
  for (const StoredRecord<R>& stored : all_records<R>(connection)) {
    std::string json = to_json(stored.record);
    records[text_key(Table<R>::kind, json)] = {Table<R>::kind, json, stored.since};
  }
}

RecordsByText current_records(StoreConnection& connection) {
  RecordsByText records;
  read_records<Person>(connection, records);
  read_records<Interview>(connection, records);
  read_records<Speaker>(connection, records);
  read_records<NarratorRelease>(connection, records);
  read_records<RestrictedPassage>(connection, records);
  read_records<ListedTerm>(connection, records);
  read_records<Source>(connection, records);
  read_records<Derivation>(connection, records);
  read_records<Entry>(connection, records);
  read_records<Stay>(connection, records);
  read_records<NamedEvent>(connection, records);
  read_records<Conclusion>(connection, records);
  read_records<Enquiry>(connection, records);
  read_records<Search>(connection, records);
  return records;
}

void unwind(Verification& verification, RecordsByText& records) {
  SqlStatement select(
      *verification.connection.database,
      "SELECT target_kind, target, before_json, after_json FROM journal JOIN journal_content USING (event) "
      "WHERE imported = 0 AND (kind = 'changed' OR target_kind = 'passage' AND kind IN ('restricted', "
      "'undone', "
      "'redone', 'taken-over', 'settled')) ORDER BY event DESC");
  while (select.step()) {
    const std::string kind = select.text(0);
    const std::string before = kind == "passage" ? plain_json(kind, select.text(2)) : select.text(2);
    const std::string after = kind == "passage" ? plain_json(kind, select.text(3)) : select.text(3);
    Record record{kind, before, 0};
    if (!after.empty()) {
      const auto found = records.find(text_key(kind, after));
      if (found == records.end()) {
        verification.find(kind, select.text(1), "it is not what the journal says it was changed to");
        continue;
      }
      record.since = found->second.since;
      records.erase(found);
    }
    if (!before.empty()) records[text_key(kind, before)] = record;
  }
}

/// The member of a JSON object as text; empty when it has none.
std::string member(std::string_view json, const char* name) {
  const auto object = nlohmann::json::parse(json);
  const auto found = object.find(name);
  return found == object.end() || !found->is_string() ? std::string() : found->get<std::string>();
}

void check_site(Verification& verification) {
  SqlStatement select(*verification.connection.database,
                      "SELECT target, after_json FROM journal LEFT JOIN journal_content USING (event) "
                      "WHERE kind = 'created' AND imported = 0 ORDER BY event LIMIT 1");
  const SiteInfo& info = verification.connection.info;
  if (!select.step() || select.text_view(0) != to_string(info.id) ||
      member(select.text_view(1), "name") != info.name ||
      member(select.text_view(1), "created") != info.created ||
      member(select.text_view(1), "policy") != info.policy) {
    verification.find("site", "",
                      "its name, date or policy is not what the journal says it was created with");
  }
}

}  // namespace

void replay_records(Verification& verification) {
  check_site(verification);
  RecordsByText records = current_records(verification.connection);
  verification.report.records = records.size();
  unwind(verification, records);
  std::map<std::int64_t, AddedRecords> by_event;
  for (const auto& [key, record] : records) by_event[record.since].add(record.kind, record.json);

  SqlStatement select(
      *verification.connection.database,
      "SELECT event, target_kind, target, after_json FROM journal JOIN journal_content USING (event) "
      "WHERE kind = 'taken-in' AND imported = 0 ORDER BY event");
  while (select.step()) {
    const auto found = by_event.find(select.integer(0));
    const std::string expected = member(select.text_view(3), "sha256");
    if (found == by_event.end() || found->second.sha256() != expected) {
      verification.find(select.text(1), select.text(2),
                        "its rows are not those the journal says were taken in");
    }
    if (found != by_event.end()) by_event.erase(found);
  }
  for (const auto& [event, rest] : by_event) {
    verification.find("journal", "",
                      fmt::format("rows say they came with event {}, which took in none", event));
  }
}

void replay_transcripts(Verification& verification) {
  struct Noted {
    std::string original, text, parts;
  };
  std::map<std::pair<std::string, std::int64_t>, Noted> noted;
  SqlStatement events(
      *verification.connection.database,
      "SELECT target, after_json FROM journal JOIN journal_content USING (event) "
      "WHERE kind IN ('transcript-read', 'transcript-revised') AND imported = 0 ORDER BY event");
  while (events.step()) {
    const auto after = nlohmann::json::parse(events.text_view(1));
    noted[{events.text(0), after.at("version").get<std::int64_t>()}] = {
        after.at("original_sha256"), after.at("text_sha256"), after.at("parts_sha256")};
  }
  SqlStatement readings(*verification.connection.database,
                        "SELECT readings.interview, version, originals.sha256, readings.sha256, parts_sha256 "
                        "FROM readings JOIN originals USING (original)");
  while (readings.step()) {
    const auto found = noted.find({readings.text(0), readings.integer(1)});
    if (found == noted.end() || found->second.original != readings.text_view(2) ||
        found->second.text != readings.text_view(3) || found->second.parts != readings.text_view(4)) {
      verification.find("transcript", readings.text(0), "it is not what the journal says was taken in");
    }
    if (found != noted.end()) noted.erase(found);
  }
  for (const auto& [version, unused] : noted) {
    verification.find("transcript", version.first, "a version the journal tells of is missing");
  }
}

namespace {

/// Claims that have events, as these leave them.
std::map<std::string, std::string> replayed_claims(Verification& verification) {
  std::map<std::string, std::string> states;
  SqlStatement select(
      *verification.connection.database,
      "SELECT target, before_json, after_json FROM journal JOIN journal_content USING (event) "
      "WHERE target_kind = 'claim' AND imported = 0 AND kind <> 'both-decided' ORDER BY event");
  while (select.step()) {
    const std::string id = select.text(0);
    const std::string before = select.text(1);
    const std::string after = select.text(2);
    switch (claim_change(before, after)) {
      case ClaimChange::added:
        states[id] = after;
        break;
      case ClaimChange::removed:
      case ClaimChange::undecided:
        states.erase(id);
        break;
      case ClaimChange::first_decided:
        states[id] = apply_patch(before, after);
        break;
      case ClaimChange::changed:
        if (const auto known = states.find(id); known != states.end())
          known->second = apply_patch(known->second, after);
        break;
    }
  }
  return states;
}

void check_decided(Verification& verification, const std::vector<ClaimRow>& rows) {
  std::map<std::string, std::string> states = replayed_claims(verification);
  for (const ClaimRow& row : rows) {
    const std::string id = to_string(row.stored.claim.id);
    const auto found = states.find(id);
    if (row.stored.decided != (found != states.end())) {
      verification.find("claim", id, "it is marked otherwise than the journal says it was decided on");
      continue;
    }
    if (!row.stored.decided) continue;
    const ClaimState state = claim_from_json(found->second);
    if (claim_json(state.claim, state.version) != claim_json(row.stored.claim, row.stored.version)) {
      verification.find("claim", id, "it is not what replaying the journal gives");
    }
    states.erase(found);
  }
  for (const auto& [id, unused] : states) {
    verification.find("claim", id, "the journal has decisions on it, and it is not there");
  }
}

void check_proposed(Verification& verification, const std::vector<ClaimRow>& rows) {
  std::map<std::string, std::vector<ClaimRow>> by_interview;
  for (const ClaimRow& row : rows) {
    if (!row.stored.by_coder && !row.stored.gone) by_interview[row.stored.claim.interview].push_back(row);
  }
  std::map<std::string, std::string> noted;
  SqlStatement select(*verification.connection.database,
                      "SELECT target, after_json FROM journal JOIN journal_content USING (event) "
                      "WHERE kind IN ('proposed', 'transcript-revised') AND imported = 0 ORDER BY event");
  while (select.step()) noted[select.text(0)] = member(select.text_view(1), "proposals_sha256");
  for (const auto& [interview, proposed] : by_interview) noted.try_emplace(interview);
  for (const auto& [interview, sha256] : noted) {
    if (proposals_sha256(by_interview[interview]) != sha256) {
      verification.find("claim", interview,
                        "what is proposed for it is not what the journal says was proposed");
    }
  }
}

}  // namespace

void replay_claims(Verification& verification) {
  const std::vector<ClaimRow> rows = load_claim_rows(verification.connection, ClaimFilter{});
  check_decided(verification, rows);
  check_proposed(verification, rows);
}

}  // namespace witnessmark
