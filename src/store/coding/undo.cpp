#include "witnessmark/store/undo.h"

#include <fmt/format.h>

#include <stdexcept>

#include "store/coding/acts.h"
#include "store/coding/claim_changes.h"
#include "store/coding/differences.h"
#include "store/coding/record_changes.h"

// To undo an act, each of its events is turned round, the last one first. To redo it, the events that undid
// it are turned round in the same way; so every step says what it takes away and what it puts back, and the
// next one needs only that.

namespace witnessmark {
namespace {

/// What changed the target since, if anything did: acts that stand as they stood then count as nothing.
std::optional<OwnEvent> changed_since(StoreConnection& connection, const OwnEvent& event) {
  for (const OwnEvent& later : later_events(connection, event)) {
    if (later.root == event.root || later.kind == "carried" || later.kind == "both-decided") continue;
    if (was_undone(connection, later.root, event.number) == is_undone(connection, later.root)) continue;
    return later;
  }
  return std::nullopt;
}

Error refused(const OwnEvent& event, const OwnEvent& by) {
  const std::string how = by.kind == "taken-over" ? " brought in another copy’s decision on it"
                                                  : fmt::format(" changed it since ({})", by.kind);
  return {event.interview, 0, 0, fmt::format("{} {}: {}{}", event.target_kind, event.target, by.actor, how),
          "decide on it anew"};
}

Result<void> turn_claim_round(StoreConnection& connection, const OwnEvent& event, NewEvent reversal) {
  const Id id = parse_id(event.target).value_or(Id{});
  switch (claim_change(event.before, event.after)) {
    case ClaimChange::added:
    case ClaimChange::first_decided:
      return take_decision_back(connection, id, std::move(reversal));
    case ClaimChange::removed:
      return put_decided(connection, id, event.before, true, "", std::move(reversal));
    case ClaimChange::undecided:
      return put_decided(connection, id, event.before, false, decided_on(connection, id),
                         std::move(reversal));
    case ClaimChange::changed:
      break;
  }
  return put_members(connection, id, event.after, event.before, std::move(reversal));
}

/// The event of the act as it was first done that is about the same record: a row put back comes from it.
std::int64_t first_number(StoreConnection& connection, const OwnEvent& event) {
  std::int64_t number = event.number;
  for (const OwnEvent& each : events_of_act(connection, event.root)) {
    if (each.target_kind == event.target_kind && each.target == event.target) number = each.number;
  }
  return number;
}

Result<void> turn_record_round(StoreConnection& connection, const OwnEvent& event, NewEvent reversal) {
  const std::string& like = event.after.empty() ? event.before : event.after;
  if (!like.empty() &&
      stored_json(connection, event.target_kind, like) != plain_json(event.target_kind, event.after)) {
    return Error{event.interview, 0, 0, fmt::format("{} is not as it was left", event.target_kind),
                 "change it by hand"};
  }
  if (!event.before.empty() && !claims_are_there(connection, event.before)) {
    return Error{event.interview, 0, 0,
                 fmt::format("the claim that the {} was about is gone", event.target_kind), "write it anew"};
  }
  reversal.before = event.after;
  reversal.after = event.before;
  append_event(connection, reversal);
  if (!like.empty())
    write_record(connection, event.target_kind, event.after, event.before, first_number(connection, event));
  return {};
}

bool is_erased(StoreConnection& connection, const std::string& interview) {
  SqlStatement& select = connection.prepared("SELECT 1 FROM erasures WHERE kind = 'interview' AND key = ?");
  const bool erased = select.bind(interview).step();
  select.reset();
  return erased;
}

/// Turns round the act that was done last about `root`, as an act of its own.
Result<std::optional<CoderAct>> turn_round(SiteFile& site, const EventId& root, const char* kind) {
  StoreConnection& connection = site.connection();
  const std::vector<OwnEvent> events = events_of_act(connection, last_toggle(connection, root));
  for (std::size_t i = events.size(); i-- > 0;) {
    const OwnEvent& event = events[i];
    if (is_erased(connection, event.interview)) continue;
    if (const auto by = changed_since(connection, event)) return refused(event, *by);
    NewEvent reversal{.kind = kind,
                      .target_kind = event.target_kind,
                      .target = event.target,
                      .interview = event.interview,
                      .reverses = to_string(root)};
    reversal.blind = event.blind;
    auto done = event.target_kind == "claim" ? turn_claim_round(connection, event, std::move(reversal))
                                             : turn_record_round(connection, event, std::move(reversal));
    if (!done) return done.error();
  }
  std::vector<OwnEvent> done = events_of_act(connection, root);
  for (const OwnEvent& event : done) {
    if (event.kind == "settled") note_settled(connection, event, std::string_view(kind) == "redone");
  }
  return std::optional(describe_act(done));
}

Result<std::optional<CoderAct>> turn_next_round(SiteFile& site, const char* kind,
                                                std::optional<EventId> (*next)(StoreConnection&,
                                                                               std::string_view)) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  const auto root = next(connection, connection.editor->name);
  if (!root) return std::optional<CoderAct>();
  if (connection.act != 0) throw std::logic_error("undoing in the middle of another act");
  auto done = turn_round(site, *root, kind);
  if (done) transaction.commit();
  return done;
}

std::optional<CoderAct> describe(const SiteFile& site, const std::optional<EventId>& root) {
  if (!root) return std::nullopt;
  return describe_act(events_of_act(site.connection(), *root));
}

}  // namespace

Result<std::optional<CoderAct>> undo(SiteFile& site) {
  return turn_next_round(site, "undone", act_to_undo);
}
Result<std::optional<CoderAct>> redo(SiteFile& site) {
  return turn_next_round(site, "redone", act_to_redo);
}

std::optional<CoderAct> next_undo(const SiteFile& site) {
  if (!site.can_edit()) return std::nullopt;
  return describe(site, act_to_undo(site.connection(), site.connection().editor->name));
}
std::optional<CoderAct> next_redo(const SiteFile& site) {
  if (!site.can_edit()) return std::nullopt;
  return describe(site, act_to_redo(site.connection(), site.connection().editor->name));
}

}  // namespace witnessmark
