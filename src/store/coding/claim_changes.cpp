#include "store/coding/claim_changes.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "store/claim/claim_patch.h"
#include "store/record/words.h"
#include "store/transcript/carry.h"

namespace witnessmark {
namespace {

/// Whole claims begin with their id, which never differs and so is in no patch.
bool is_whole(std::string_view json) {
  return json.starts_with(R"({"id":)");
}

Error no_claim(const Id& id) {
  return {"", 0, 0, fmt::format("there is no claim {}", to_string(id)),
          "it may have gone when claims were proposed again"};
}

int current_version(StoreConnection& connection, const std::string& interview) {
  return current_reading(connection, interview).version;
}

/// Writes only the status where nothing else differs, so that what was weighed stays.
void write_row(StoreConnection& connection, const ClaimRow& row, const Claim& former) {
  Claim only_status = former;
  only_status.status = row.stored.claim.status;
  if (row.row == 0 || only_status != row.stored.claim) {
    if (row.row == 0) return insert_claim_row(connection, row);
    return rewrite_claim_row(connection, row);
  }
  connection
      .prepared(
          "UPDATE claims SET status = ?, decided = ?, proposal = nullif(?, ''), proposed_otherwise = ?, "
          "reading_version = ?, lost = ?, gone = ? WHERE claim = ?")
      .bind(word_for(row.stored.claim.status))
      .bind(row.stored.decided)
      .bind(row.proposal)
      .bind(row.stored.proposed_otherwise)
      .bind(row.stored.version)
      .bind(row.stored.lost)
      .bind(row.stored.gone)
      .bind(row.row)
      .run();
}

void set_state(StoreConnection& connection, ClaimRow& row, const std::string& json) {
  const ClaimState state = claim_from_json(json);
  row.stored.claim = state.claim;
  row.stored.version = state.version;
  row.stored.lost = state.version != current_version(connection, state.claim.interview);
}

}  // namespace

ClaimChange claim_change(std::string_view before, std::string_view after) {
  if (before.empty()) return ClaimChange::added;
  if (after.empty()) return ClaimChange::removed;
  if (after == kUndecided) return ClaimChange::undecided;
  return is_whole(before) ? ClaimChange::first_decided : ClaimChange::changed;
}

std::optional<ClaimRow> find_claim_row(StoreConnection& connection, const Id& id) {
  ClaimFilter filter;
  filter.ids = {id};
  std::vector<ClaimRow> rows = load_claim_rows(connection, filter);
  if (rows.empty()) return std::nullopt;
  return std::move(rows[0]);
}

ClaimState proposal_of(const ClaimRow& row) {
  if (!row.proposal.empty()) return claim_from_json(row.proposal);
  return {row.stored.claim, row.stored.version};
}

std::string decided_on(StoreConnection& connection, const Id& id) {
  SqlStatement& select = connection.prepared(
      "SELECT before_json FROM journal JOIN journal_content USING (event) "
      "WHERE target_kind = 'claim' AND target = ? AND imported = 0 AND before_json GLOB '{\"id\":*' "
      "AND after_json GLOB '{*' ORDER BY event DESC LIMIT 1");
  const std::string target = to_string(id);
  std::string before;
  if (select.bind(target).step()) before = select.text(0);
  select.reset();
  return before;
}

bool was_added(StoreConnection& connection, const Id& id) {
  SqlStatement& select = connection.prepared(
      "SELECT 1 FROM journal WHERE target_kind = 'claim' AND target = ? AND kind = 'added'");
  const std::string target = to_string(id);
  const bool added = select.bind(target).step();
  select.reset();
  return added;
}

bool is_written_about(StoreConnection& connection, const Id& id) {
  SqlStatement& select = connection.prepared(
      "SELECT EXISTS (SELECT 1 FROM notes WHERE claim = ?1) OR EXISTS (SELECT 1 FROM entry_links WHERE claim "
      "= ?1) OR EXISTS (SELECT 1 FROM quote_checks WHERE claim = ?1) OR EXISTS (SELECT 1 FROM claim_origins "
      "WHERE claim = ?1 OR other = ?1)");
  select.bind(id).step();
  const bool written = select.flag(0);
  select.reset();
  return written;
}

std::string carried_to_current(StoreConnection& connection, const std::string& json) {
  ClaimState claim = claim_from_json(json);
  const CurrentReading current = current_reading(connection, claim.claim.interview);
  if (claim.version >= current.version) return json;
  const std::string before = text_of_version(connection, claim.claim.interview, claim.version);
  const std::string after = text_of_version(connection, claim.claim.interview, current.version);
  AnchorCarrier carrier(before, after);
  if (!carry_claim(claim.claim, carrier)) return json;
  return claim_json(claim.claim, current.version);
}

Result<void> put_decided(StoreConnection& connection, const Id& id, const std::string& decided, bool by_coder,
                         const std::string& proposal, NewEvent event) {
  const std::string state = carried_to_current(connection, decided);
  auto found = find_claim_row(connection, id);
  ClaimRow row = found ? *found : ClaimRow{};
  const Claim former = row.stored.claim;
  if (found && row.stored.decided) {
    const std::string now = claim_json(former, row.stored.version);
    const ClaimPatch patch = patch_between(now, state);
    event.before = patch.before;
    event.after = patch.after;
  } else if (by_coder) {
    event.after = state;
  } else {
    event.before = proposal.empty() && found ? claim_json(former, row.stored.version) : proposal;
    event.after = patch_between(event.before, state).after;
  }
  append_event(connection, event);
  if (!found) {
    row.stored.by_coder = by_coder;
    row.stored.gone = !by_coder;
    if (!by_coder) row.proposal = event.before;
  } else if (!row.stored.decided) {
    row.proposal = claim_json(former, row.stored.version);
  }
  row.stored.decided = true;
  set_state(connection, row, state);
  if (!row.stored.by_coder)
    row.stored.proposed_otherwise = !row.stored.gone && row.proposal != decided_on(connection, id);
  write_row(connection, row, former);
  return {};
}

Result<void> take_decision_back(StoreConnection& connection, const Id& id, NewEvent event) {
  auto row = find_claim_row(connection, id);
  if (!row || !row->stored.decided) return no_claim(id);
  if (row->stored.by_coder && is_written_about(connection, id)) {
    return Error{row->stored.claim.interview, 0, 0,
                 fmt::format("claim {} has notes, links or checks by now", to_string(id)),
                 "take these off first"};
  }
  event.before = claim_json(row->stored.claim, row->stored.version);
  event.after = row->stored.by_coder ? std::string() : std::string(kUndecided);
  append_event(connection, event);
  if (row->stored.by_coder || (row->stored.gone && !is_written_about(connection, id))) {
    delete_claim_row(connection, row->row);
    return {};
  }
  const Claim former = row->stored.claim;
  const std::string proposal = row->proposal;
  set_state(connection, *row, proposal);
  row->proposal.clear();
  row->stored.decided = false;
  row->stored.proposed_otherwise = false;
  write_row(connection, *row, former);
  return {};
}

Result<void> append_unchanged(StoreConnection& connection, NewEvent event) {
  event.before = "{}";
  event.after = "{}";
  append_event(connection, event);
  return {};
}

bool claims_are_there(StoreConnection& connection, const std::string& json) {
  const auto object = nlohmann::json::parse(json);
  for (const char* member : {"claim", "other"}) {
    const auto id = object.contains(member) ? parse_id(object[member].get<std::string>()) : std::nullopt;
    if (id && !id->is_nil() && !find_claim_row(connection, *id)) return false;
  }
  return true;
}

Result<void> put_members(StoreConnection& connection, const Id& id, const std::string& from,
                         const std::string& to, NewEvent event) {
  auto row = find_claim_row(connection, id);
  if (!row && from == to) {
    event.before = from;
    event.after = to;
    append_event(connection, event);
    return {};
  }
  if (!row) return no_claim(id);
  const std::string now = claim_json(row->stored.claim, row->stored.version);
  const auto object = nlohmann::json::parse(now);
  const auto expected = nlohmann::json::parse(from);
  for (const auto& [name, value] : expected.items()) {
    const auto member = object.find(name);
    if (member == object.end() ? value.is_null() : *member == value) continue;
    return Error{row->stored.claim.interview, 0, 0, fmt::format("the claim has another “{}” by now", name),
                 "decide on it anew"};
  }
  event.before = from;
  event.after = to;
  append_event(connection, event);
  const Claim former = row->stored.claim;
  set_state(connection, *row, apply_patch(now, to));
  write_row(connection, *row, former);
  return {};
}

}  // namespace witnessmark
