#include "store/merge/parting.h"

#include <fmt/format.h>

#include <algorithm>

#include <nlohmann/json.hpp>

#include "store/journal_writer.h"

namespace witnessmark {
namespace {

std::map<Id, std::int64_t> last_counters(StoreConnection& connection) {
  std::map<Id, std::int64_t> last;
  SqlStatement select(
      *connection.database,
      "SELECT id, (SELECT max(counter) FROM journal WHERE journal.session = sessions.session) FROM "
      "sessions");
  while (select.step()) last[select.id(0)] = select.integer(1);
  return last;
}

std::string hash_of(StoreConnection& connection, const EventId& id) {
  SqlStatement& select = connection.prepared(
      "SELECT sha256 FROM journal WHERE session = (SELECT session FROM sessions WHERE id = ?) AND counter = "
      "?");
  std::string hash;
  if (select.bind(id.session).bind(id.counter).step()) hash = select.blob(0);
  select.reset();
  return hash;
}

constexpr const char* kEventRows =
    "SELECT journal.event, sessions.id, counter, actor, wall_time, kind, target_kind, target, interview, "
    "before_json, after_json, why, blind, act, reverses, content_sha256, sha256 FROM journal JOIN sessions "
    "USING "
    "(session) LEFT JOIN journal_content USING (event) ";

EventRow row_of(const SqlStatement& select) {
  EventRow row;
  row.origin = {select.id(1), select.integer(2), select.integer(13), select.text(3), select.text(4)};
  row.event = {select.text(5),  select.text(6),  select.text(7),  select.text(8), select.text(9),
               select.text(10), select.text(11), select.text(14), select.flag(12)};
  row.content_sha256 = select.blob(15);
  row.sha256 = select.blob(16);
  row.imported = true;
  return row;
}

OwnEvent event_of(const EventRow& row) {
  OwnEvent event;
  event.number = row.number;
  event.id = {row.origin.session, row.origin.counter};
  event.actor = row.origin.actor;
  event.wall_time = row.origin.wall_time;
  event.kind = row.event.kind;
  event.target_kind = row.event.target_kind;
  event.target = row.event.target;
  event.interview = row.event.interview;
  event.before = row.event.before;
  event.after = row.event.after;
  event.why = row.event.why;
  event.blind = row.event.blind;
  const auto reverses = parse_event_id(row.event.reverses);
  event.root = reverses ? *reverses
                        : EventId{event.id.session, row.origin.act == 0 ? event.id.counter : row.origin.act};
  return event;
}

}  // namespace

std::string target_name(const OwnEvent& event) {
  std::string name = event.target_kind + '\n' + event.target;
  const std::string& record = event.after.empty() ? event.before : event.after;
  if (event.target_kind == "passage" && !record.empty())
    name += '\n' + nlohmann::json::parse(record).value("quote", "");
  return name;
}

Parting::Parting(StoreConnection& here, StoreConnection& there)
    : here_(here), there_(there), here_last_(last_counters(here)), there_last_(last_counters(there)) {}

Result<void> Parting::check_common() const {
  for (const auto& [session, last] : here_last_) {
    const auto other = there_last_.find(session);
    if (other == there_last_.end()) continue;
    const EventId id{session, std::min(last, other->second)};
    if (hash_of(here_, id) != hash_of(there_, id)) {
      return Error{
          there_.path.string(), 0, 0,
          fmt::format("event {} is not the same in both copies: one of them was altered", to_string(id)),
          "verify both, and use a copy that was not altered"};
    }
  }
  return {};
}

std::int64_t Parting::session_row(const Id& id, const std::string& actor) {
  SqlStatement& find = here_.prepared("SELECT session FROM sessions WHERE id = ?");
  std::int64_t row = find.bind(id).step() ? find.integer(0) : 0;
  find.reset();
  if (row > 0) return row;
  SqlStatement& next = here_.prepared("SELECT coalesce(max(session), 0) + 1 FROM sessions");
  next.step();
  row = next.integer(0);
  next.reset();
  here_.prepared("INSERT INTO sessions (session, id, actor) VALUES (?, ?, ?)")
      .bind(row)
      .bind(id)
      .bind(actor)
      .run();
  return row;
}

namespace {

/// Events here that one of the other copy follows.
class Followed {
 public:
  struct Row {
    std::string sha256;
    std::int64_t event = 0;
  };

  Followed(StoreConnection& here, StoreConnection& there)
      : follows_(*there.database,
                 "SELECT sessions.id, counter FROM journal_follows JOIN journal ON journal.event = "
                 "journal_follows.follows JOIN sessions USING (session) WHERE journal_follows.event = ?"),
        own_(*here.database,
             "SELECT event, sha256 FROM journal WHERE session = (SELECT session FROM sessions WHERE id = ?) "
             "AND counter = ?") {}

  std::vector<Row> by(std::int64_t event_there) {
    std::vector<Row> rows;
    follows_.reset();
    follows_.bind(event_there);
    while (follows_.step()) {
      own_.reset();
      own_.bind(follows_.id(0)).bind(follows_.integer(1));
      if (own_.step()) rows.push_back({own_.blob(1), own_.integer(0)});
      own_.reset();
    }
    std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.sha256 < b.sha256; });
    return rows;
  }

 private:
  SqlStatement follows_;
  SqlStatement own_;
};

/// Content may be missing where it was erased; what is there must be what its hash says.
bool is_as_hashed(const EventRow& row, bool has_content, const std::vector<Followed::Row>& followed) {
  std::string follows;
  for (const Followed::Row& each : followed) follows += each.sha256;
  const NewEvent& event = row.event;
  return (!has_content || framed_sha256({event.before, event.after, event.why}) == row.content_sha256) &&
         event_sha256(row.origin, event, row.content_sha256, follows) == row.sha256;
}

}  // namespace

Result<std::vector<OwnEvent>> Parting::bring_in() {
  std::vector<OwnEvent> events;
  SqlStatement select(*there_.database, std::string(kEventRows) + "ORDER BY journal.event");
  SqlStatement erased(
      *here_.database,
      "SELECT 1 FROM erasures WHERE (kind = 'interview' AND key = ?) OR (kind = ? AND key = ?)");
  SqlStatement next(*here_.database, "SELECT coalesce(max(event), 0) + 1 FROM journal");
  Followed followed_by(here_, there_);
  while (select.step()) {
    if (here_knew({select.id(1), select.integer(2)})) continue;
    EventRow row = row_of(select);
    const auto followed = followed_by.by(select.integer(0));
    if (!is_as_hashed(row, !select.is_null(9), followed)) {
      return Error{there_.path.string(), 0, 0,
                   fmt::format("event {} is not what its hash says: this copy was altered",
                               to_string(EventId{row.origin.session, row.origin.counter})),
                   "verify it, and use a copy that was not altered"};
    }
    row.session = session_row(row.origin.session, row.origin.actor);
    next.reset();
    next.step();
    row.number = next.integer(0);
    next.reset();
    erased.reset();
    erased.bind(row.event.interview).bind(row.event.target_kind).bind(row.event.target);
    if (erased.step()) row.event.before = row.event.after = row.event.why = "";
    erased.reset();
    insert_event_row(here_, row);
    for (const Followed::Row& each : followed) {
      here_.prepared("INSERT INTO journal_follows VALUES (?, ?)").bind(row.number).bind(each.event).run();
      here_.prepared("DELETE FROM journal_heads WHERE event = ?").bind(each.event).run();
    }
    here_.prepared("INSERT INTO journal_heads VALUES (?)").bind(row.number).run();
    events.push_back(event_of(row));
  }
  return events;
}

std::vector<OwnEvent> Parting::unknown_there(std::string_view target_kind, std::string_view target) const {
  std::vector<OwnEvent> events;
  static const std::string sql =
      std::string(kEventRows) + "WHERE target_kind = ? AND target = ? ORDER BY journal.event";
  SqlStatement& select = here_.prepared(sql.c_str());
  select.bind(target_kind).bind(target);
  while (select.step()) {
    if (there_knows({select.id(1), select.integer(2)})) continue;
    EventRow row = row_of(select);
    row.number = select.integer(0);
    events.push_back(event_of(row));
  }
  select.reset();
  return events;
}

std::vector<OwnEvent> still_in_force(const std::vector<OwnEvent>& events) {
  struct Course {
    bool done = false;  ///< Here among these events, not before.
    bool undone_last = false;
    int toggles = 0;
  };
  std::map<EventId, Course> courses;
  for (const OwnEvent& event : events) {
    Course& course = courses[event.root];
    if (event.kind == "undone" || event.kind == "redone") {
      ++course.toggles;
      course.undone_last = event.kind == "undone";
    } else {
      course.done = true;
    }
  }
  std::vector<OwnEvent> left;
  for (const OwnEvent& event : events) {
    const Course& course = courses[event.root];
    const bool came_to_nothing =
        course.done ? course.undone_last : course.toggles % 2 == 0 && course.toggles > 0;
    if (!came_to_nothing) left.push_back(event);
  }
  return left;
}

}  // namespace witnessmark
