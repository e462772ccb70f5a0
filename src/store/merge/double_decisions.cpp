#include "store/merge/double_decisions.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "store/coding/record_changes.h"
#include "store/journal_writer.h"

namespace witnessmark {
namespace {

nlohmann::ordered_json json_of(const Decided& decided) {
  return {{"event", to_string(decided.event)},
          {"who", decided.who},
          {"when", decided.when},
          {"why", decided.why},
          {"blind", decided.blind},
          {"state", decided.state}};
}

Decided decided_from(const nlohmann::json& json) {
  return {parse_event_id(json.at("event").get<std::string>()).value_or(EventId{}),
          json.at("who"),
          json.at("when"),
          json.at("why"),
          json.at("blind"),
          json.at("state")};
}

bool is_about(const DoubleDecision& decision, const std::string& state) {
  if (decision.target_kind != Table<RestrictedPassage>::kind || state.empty()) return true;
  for (const std::string* side : {&decision.here.state, &decision.there.state}) {
    if (!side->empty() && same_record(decision.target_kind, *side, state)) return true;
  }
  return false;
}

bool same_pair(const DoubleDecision& one, const DoubleDecision& other) {
  return (one.here.event == other.here.event && one.there.event == other.there.event) ||
         (one.here.event == other.there.event && one.there.event == other.here.event);
}

bool same_persons(const DoubleDecision& one, const DoubleDecision& other) {
  return std::minmax(one.here.who, one.there.who) == std::minmax(other.here.who, other.there.who);
}

void settle(StoreConnection& connection, std::int64_t number, std::int64_t by) {
  connection.prepared("UPDATE double_decisions SET settled = ? WHERE event = ?").bind(by).bind(number).run();
}

std::int64_t last_event(StoreConnection& connection) {
  SqlStatement& select = connection.prepared("SELECT max(event) FROM journal");
  select.step();
  const std::int64_t last = select.integer(0);
  select.reset();
  return last;
}

}  // namespace

std::vector<DoubleDecision> load_double_decisions(StoreConnection& connection, bool only_open) {
  std::vector<DoubleDecision> decisions;
  SqlStatement select(
      *connection.database,
      std::string("SELECT event, target_kind, target, interview, alike, row_json, settled FROM "
                  "double_decisions ") +
          (only_open ? "WHERE NOT alike AND settled IS NULL " : "") + "ORDER BY event");
  while (select.step()) {
    const auto row = nlohmann::json::parse(select.text_view(5));
    decisions.push_back({select.integer(0), select.text(1), select.text(2), select.text(3),
                         decided_from(row.at("here")), decided_from(row.at("there")), select.flag(4),
                         !select.is_null(6)});
  }
  return decisions;
}

std::vector<DoubleDecision> open_on(StoreConnection& connection, std::string_view target_kind,
                                    std::string_view target, const std::string& state) {
  auto decisions = load_double_decisions(connection, true);
  std::erase_if(decisions, [&](const DoubleDecision& decision) {
    return decision.target_kind != target_kind || decision.target != target || !is_about(decision, state);
  });
  return decisions;
}

bool is_open(StoreConnection& connection, std::string_view target_kind, std::string_view target) {
  return !open_on(connection, target_kind, target, "").empty();
}

bool note_double_decision(StoreConnection& connection, const DoubleDecision& decision) {
  std::vector<std::int64_t> former;
  for (const DoubleDecision& noted : load_double_decisions(connection, false)) {
    if (noted.target_kind != decision.target_kind || noted.target != decision.target) continue;
    if (same_pair(noted, decision)) return false;
    const std::string& state = decision.here.state.empty() ? decision.there.state : decision.here.state;
    if (noted.open() && same_persons(noted, decision) && is_about(noted, state))
      former.push_back(noted.number);
  }
  const nlohmann::ordered_json row{{"here", json_of(decision.here)}, {"there", json_of(decision.there)}};
  const std::string json = row.dump();
  const std::int64_t event = append_event(connection, {.kind = "both-decided",
                                                       .target_kind = decision.target_kind,
                                                       .target = decision.target,
                                                       .interview = decision.interview,
                                                       .after = json});
  SqlStatement& insert = connection.prepared("INSERT INTO double_decisions VALUES (?, ?, ?, ?, ?, ?, NULL)");
  insert.bind(event).bind(decision.target_kind).bind(decision.target).bind(decision.interview);
  insert.bind(decision.alike).bind(json).run();
  for (const std::int64_t number : former) settle(connection, number, event);
  return true;
}

void settle_all_open(StoreConnection& connection, std::string_view target_kind, std::string_view target,
                     const std::string& state) {
  const std::int64_t by = last_event(connection);
  for (const DoubleDecision& decision : open_on(connection, target_kind, target, state))
    settle(connection, decision.number, by);
}

bool is_alike(std::string_view target_kind, const std::string& here, const std::string& there) {
  if (target_kind == Table<EntryLink>::kind && !here.empty() && !there.empty())
    return record_of<EntryLink>(here).verdict == record_of<EntryLink>(there).verdict;
  return here == there;
}

}  // namespace witnessmark
