#include "store/coding/acts.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <set>

#include "store/coding/record_changes.h"

// Acts stand in the journal in the order in which they were done, and are never moved: to undo one adds an
// act that names it, to redo it adds another. So what to undo next is the coder's latest act about which the
// last word is not "undone"; and what to redo next is found among what was undone after the coder's latest
// new act.

namespace witnessmark {
namespace {

constexpr std::array<std::string_view, 12> kUndoable = {"decided", "added",     "related",    "noted",
                                                        "linked",  "ruled-out", "unlinked",   "checked",
                                                        "read",    "unread",    "restricted", "settled"};

constexpr const char* kOwnEvents =
    "SELECT event, sessions.id, counter, actor, wall_time, kind, target_kind, target, interview, "
    "before_json, "
    "after_json, why, blind, act, reverses FROM journal JOIN sessions USING (session) LEFT JOIN "
    "journal_content USING (event) WHERE imported = 0 AND ";

OwnEvent event_of(const SqlStatement& row) {
  OwnEvent event;
  event.number = row.integer(0);
  event.id = {row.id(1), row.integer(2)};
  event.actor = row.text(3);
  event.wall_time = row.text(4);
  event.kind = row.text(5);
  event.target_kind = row.text(6);
  event.target = row.text(7);
  event.interview = row.text(8);
  event.before = row.text(9);
  event.after = row.text(10);
  event.why = row.text(11);
  event.blind = row.flag(12);
  const auto reverses = parse_event_id(row.text_view(14));
  event.root = reverses
                   ? *reverses
                   : EventId{event.id.session, row.integer(13) == 0 ? event.id.counter : row.integer(13)};
  return event;
}

/// First events of acts, latest first, of the sessions of one name.
template <typename Visit>
void visit_acts_backwards(StoreConnection& connection, std::string_view actor, Visit visit) {
  SqlStatement sessions(*connection.database,
                        "SELECT session, id FROM sessions WHERE actor = ? ORDER BY session DESC");
  sessions.bind(actor);
  // What is about an interview erased for good is nobody's to undo.
  SqlStatement events(*connection.database,
                      "SELECT counter, kind, reverses FROM journal WHERE session = ? AND act = 0 AND "
                      "imported = 0 AND interview NOT "
                      "IN (SELECT key FROM erasures WHERE kind = 'interview') ORDER BY counter DESC");
  while (sessions.step()) {
    events.reset();
    events.bind(sessions.integer(0));
    while (events.step()) {
      const EventId id{sessions.id(1), events.integer(0)};
      if (!visit(id, events.text_view(1), parse_event_id(events.text_view(2)))) return;
    }
  }
}

std::string what_was_done(std::string_view kind) {
  static const std::map<std::string_view, std::string> kWords = {{"decided", "decision"},
                                                                 {"added", "claim added"},
                                                                 {"related", "claims related"},
                                                                 {"noted", "note"},
                                                                 {"linked", "link to an entry"},
                                                                 {"ruled-out", "entry ruled out"},
                                                                 {"unlinked", "link taken off"},
                                                                 {"checked", "check against the recording"},
                                                                 {"read", "passage read"},
                                                                 {"unread", "passage not read"},
                                                                 {"restricted", "passage restricted"},
                                                                 {"settled", "difference settled"}};
  const auto found = kWords.find(kind);
  return found == kWords.end() ? std::string(kind) : found->second;
}

/// "decision on 3 claims of aske-1", "claim split in aske-1".
std::string words_for(const std::vector<OwnEvent>& events) {
  std::set<std::string> claims;
  bool added = false;
  bool related = false;
  for (const OwnEvent& event : events) {
    if (event.target_kind == "claim") claims.insert(event.target);
    added = added || event.kind == "added";
    related = related || event.kind == "related";
  }
  std::string words = what_was_done(events[0].kind);
  if (related && added) {
    words = "claim split";
  } else if (related && claims.size() > 1) {
    words = "claims merged";
  } else if (claims.size() > 1) {
    words += fmt::format(" on {} claims", claims.size());
  } else if (events.size() > 1 && claims.empty()) {
    words += fmt::format(", {} times", events.size());
  }
  return events[0].interview.empty() ? words : words + " in " + events[0].interview;
}

}  // namespace

bool is_coders(std::string_view kind) {
  return std::find(kUndoable.begin(), kUndoable.end(), kind) != kUndoable.end();
}

std::vector<OwnEvent> events_of_act(StoreConnection& connection, const EventId& first) {
  static const std::string sql =
      std::string(kOwnEvents) +
      "session = (SELECT session FROM sessions WHERE id = ?1) AND (counter = ?2 OR "
      "act = ?2) AND counter >= ?2 ORDER BY counter";
  std::vector<OwnEvent> events;
  SqlStatement select(*connection.database, sql);
  select.bind(first.session).bind(first.counter);
  while (select.step()) {
    OwnEvent event = event_of(select);
    if (event.id.counter != first.counter + static_cast<std::int64_t>(events.size())) break;
    events.push_back(std::move(event));
  }
  return events;
}

std::optional<EventId> act_to_undo(StoreConnection& connection, std::string_view actor) {
  std::optional<EventId> found;
  std::map<EventId, bool> undone;  // what was said last of each act, which is met first
  visit_acts_backwards(connection, actor,
                       [&](const EventId& id, std::string_view kind, const auto& reverses) {
                         if (reverses) undone.emplace(*reverses, kind == "undone");
                         const auto known = undone.find(id);
                         if (reverses || !is_coders(kind) || (known != undone.end() && known->second))
                           return true;
                         found = id;
                         return false;
                       });
  return found;
}

std::optional<EventId> act_to_redo(StoreConnection& connection, std::string_view actor) {
  std::optional<EventId> found;
  std::size_t redone = 0;
  visit_acts_backwards(connection, actor, [&](const EventId&, std::string_view kind, const auto& reverses) {
    if (!reverses) return !is_coders(kind);
    if (kind == "redone") {
      ++redone;
    } else if (redone > 0) {
      --redone;
    } else {
      found = *reverses;
      return false;
    }
    return true;
  });
  return found;
}

EventId last_toggle(StoreConnection& connection, const EventId& root) {
  SqlStatement& select = connection.prepared(
      "SELECT id, counter FROM journal JOIN sessions USING (session) WHERE reverses = ? AND reverses <> '' "
      "AND "
      "imported = 0 AND act = 0 ORDER BY event DESC LIMIT 1");
  const std::string name = to_string(root);
  EventId last = root;
  if (select.bind(name).step()) last = {select.id(0), select.integer(1)};
  select.reset();
  return last;
}

bool was_undone(StoreConnection& connection, const EventId& root, std::int64_t after_event) {
  SqlStatement& select = connection.prepared(
      "SELECT kind FROM journal WHERE reverses = ? AND reverses <> '' AND imported = 0 AND event <= ? ORDER "
      "BY "
      "event DESC LIMIT 1");
  const std::string name = to_string(root);
  const bool toggled = select.bind(name).bind(after_event).step();
  const bool undone = toggled && select.text_view(0) == "undone";
  select.reset();
  if (toggled) return undone;
  SqlStatement& first = connection.prepared(
      "SELECT event FROM journal WHERE session = (SELECT session FROM sessions WHERE id = ?) AND counter = "
      "?");
  const bool done = first.bind(root.session).bind(root.counter).step() && first.integer(0) <= after_event;
  first.reset();
  return !done;
}

bool is_undone(StoreConnection& connection, const EventId& root) {
  return was_undone(connection, root, std::numeric_limits<std::int64_t>::max());
}

std::vector<OwnEvent> later_events(StoreConnection& connection, const OwnEvent& event) {
  static const std::string sql =
      std::string(kOwnEvents) + "target_kind = ? AND target = ? AND event > ? ORDER BY event";
  std::vector<OwnEvent> later;
  SqlStatement select(*connection.database, sql);
  select.bind(event.target_kind).bind(event.target).bind(event.number);
  const std::string& record = event.after.empty() ? event.before : event.after;
  while (select.step()) {
    OwnEvent next = event_of(select);
    // Events on passages name the interview only: their words may have to be erased.
    if (next.target_kind == Table<RestrictedPassage>::kind && !record.empty() &&
        !same_record(next.target_kind, record, next.after.empty() ? next.before : next.after))
      continue;
    later.push_back(std::move(next));
  }
  return later;
}

CoderAct describe_act(const std::vector<OwnEvent>& events) {
  CoderAct act;
  act.id = events[0].id;
  act.actor = events[0].actor;
  act.wall_time = events[0].wall_time;
  act.why = events[0].why;
  for (const OwnEvent& event : events)
    act.targets.push_back({event.kind, event.target_kind, event.target, event.interview});
  act.words = words_for(events);
  return act;
}

}  // namespace witnessmark
