#include "witnessmark/store/journal.h"

#include <algorithm>
#include <charconv>

#include "store/connection.h"
#include "store/record/tables.h"
#include "witnessmark/store/conclusions.h"

namespace witnessmark {
namespace {

constexpr const char* kJournalEvents =
    "SELECT event, sessions.id, counter, actor, wall_time, kind, target_kind, target, interview, "
    "before_json, after_json, why, journal_content.event IS NULL AND (EXISTS (SELECT 1 FROM erasures "
    "WHERE (erasures.kind = 'interview' AND erasures.key = journal.interview) "
    "OR (erasures.kind = journal.target_kind AND erasures.key = journal.target)) OR EXISTS (SELECT 1 FROM "
    "journal AS e WHERE "
    "e.target_kind = 'interview' AND e.target = journal.interview AND e.kind = 'erased')), "
    "act, reverses, blind, imported "
    "FROM journal JOIN sessions USING (session) LEFT JOIN journal_content USING (event) ";

JournalEvent event_of(const SqlStatement& row, SqlStatement& follows) {
  JournalEvent event;
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
  event.erased = row.flag(12);
  event.act = {event.id.session, row.integer(13) == 0 ? event.id.counter : row.integer(13)};
  event.reverses = parse_event_id(row.text_view(14));
  event.blind = row.flag(15);
  event.imported = row.flag(16);
  follows.reset();
  follows.bind(row.integer(0));
  while (follows.step()) event.follows.push_back({follows.id(0), follows.integer(1)});
  std::sort(event.follows.begin(), event.follows.end());
  return event;
}

constexpr const char* kFollows =
    "SELECT id, counter FROM journal_follows JOIN journal ON journal.event = journal_follows.follows "
    "JOIN sessions USING (session) WHERE journal_follows.event = ?";

}  // namespace

std::string to_string(const EventId& id) {
  return to_string(id.session) + ":" + std::to_string(id.counter);
}

std::optional<EventId> parse_event_id(std::string_view text) {
  if (text.size() < 34 || text[32] != ':') return std::nullopt;
  const auto session = parse_id(text.substr(0, 32));
  std::int64_t counter = 0;
  const auto read = std::from_chars(text.data() + 33, text.data() + text.size(), counter);
  if (!session || read.ec != std::errc() || read.ptr != text.data() + text.size() || counter < 1)
    return std::nullopt;
  return EventId{*session, counter};
}

void for_each_event(const SiteFile& site, const std::function<void(const JournalEvent&)>& visit) {
  const Database& database = *site.connection().database;
  SqlStatement select(database, std::string(kJournalEvents) + "ORDER BY event");
  SqlStatement follows(database, kFollows);
  while (select.step()) visit(event_of(select, follows));
}

std::vector<JournalEvent> events_on(const SiteFile& site, std::string_view target_kind,
                                    std::string_view target) {
  const Database& database = *site.connection().database;
  std::vector<JournalEvent> events;
  SqlStatement select(database,
                      std::string(kJournalEvents) + "WHERE target_kind = ? AND target = ? ORDER BY event");
  SqlStatement follows(database, kFollows);
  select.bind(target_kind).bind(target);
  while (select.step()) events.push_back(event_of(select, follows));
  return events;
}

std::map<std::string, std::vector<JournalEvent>> changed_since_concluded(const SiteFile& site) {
  const Database& database = *site.connection().database;
  SqlStatement select(
      database,
      std::string(kJournalEvents) +
          "WHERE event > ?1 AND target = ?2 AND imported = 0 AND target_kind IN ('entry', 'stay', 'source', "
          "'interview', 'claim') AND kind IN ('changed', 'decided', 'undone', 'redone', 'taken-over', "
          "'settled', 'transcript-revised', 'erased') ORDER BY event");
  SqlStatement follows(database, kFollows);
  SqlStatement last(database,
                    "SELECT coalesce(max(event), 0) FROM journal WHERE imported = 0 AND target_kind = "
                    "'conclusion' AND target = ? AND kind = 'changed'");
  std::map<std::string, std::vector<JournalEvent>> changes;
  for (const StoredRecord<Conclusion>& stored : all_records<Conclusion>(site.connection())) {
    last.reset();
    last.bind(stored.record.key).step();
    const std::int64_t since = std::max(stored.since, last.integer(0));
    for (const std::string& key : stored.record.evidence) {
      select.reset();
      select.bind(since).bind(key);
      while (select.step()) changes[stored.record.key].push_back(event_of(select, follows));
    }
  }
  return changes;
}

std::int64_t count_events(const SiteFile& site) {
  SqlStatement select(*site.connection().database, "SELECT count(*) FROM journal");
  select.step();
  return select.integer(0);
}

std::vector<EventId> journal_heads(const SiteFile& site) {
  std::vector<EventId> found;
  SqlStatement select(
      *site.connection().database,
      "SELECT id, counter FROM journal_heads JOIN journal USING (event) JOIN sessions USING (session)");
  while (select.step()) found.push_back({select.id(0), select.integer(1)});
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace witnessmark
