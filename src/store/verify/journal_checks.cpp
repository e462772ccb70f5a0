#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <vector>

#include "store/journal_writer.h"
#include "store/verify/checks.h"
#include "witnessmark/store/journal.h"

namespace witnessmark {
namespace {

std::vector<std::int64_t> follows_of(StoreConnection& connection, std::int64_t event) {
  std::vector<std::int64_t> events;
  SqlStatement& select = connection.prepared("SELECT follows FROM journal_follows WHERE event = ?");
  select.bind(event);
  while (select.step()) events.push_back(select.integer(0));
  select.reset();
  return events;
}

/// Erased content is missing on purpose.
bool content_as_noted(const SqlStatement& row, const std::string& noted) {
  if (row.is_null(9)) {
    const bool had_none = noted == framed_sha256({"", "", ""});
    return had_none || row.flag(12);
  }
  return framed_sha256({row.text_view(9), row.text_view(10), row.text_view(11)}) == noted;
}

/// What undoes or redoes names the first event of an act of the same person.
bool names_own_act(StoreConnection& connection, std::string_view reverses, std::string_view actor) {
  const auto named = parse_event_id(reverses);
  if (!named) return false;
  SqlStatement& select = connection.prepared(
      "SELECT actor FROM journal JOIN sessions USING (session) WHERE id = ? AND counter = ? AND act = 0");
  const bool own = select.bind(named->session).bind(named->counter).step() && select.text_view(0) == actor;
  select.reset();
  return own;
}

}  // namespace

void check_journal_chain(Verification& verification) {
  StoreConnection& connection = verification.connection;
  SqlStatement select(
      *connection.database,
      "SELECT event, sessions.id, counter, actor, wall_time, kind, target_kind, target, interview, "
      "before_json, "
      "after_json, why, EXISTS (SELECT 1 FROM erasures WHERE (erasures.kind = 'interview' AND erasures.key = "
      "journal.interview) OR (erasures.kind = journal.target_kind AND erasures.key = journal.target)) OR "
      "EXISTS (SELECT 1 FROM journal AS e WHERE "
      "e.target_kind = 'interview' AND e.target = journal.interview AND e.kind = 'erased'), "
      "content_sha256, sha256, act, reverses, blind FROM journal LEFT JOIN sessions USING (session) LEFT "
      "JOIN journal_content "
      "USING (event) "
      "ORDER BY event");
  std::map<std::int64_t, std::string> hashes;
  std::set<std::int64_t> heads;
  std::map<Id, std::int64_t> counters;
  std::map<Id, std::int64_t> acts;
  while (select.step()) {
    ++verification.report.events;
    const std::int64_t event = select.integer(0);
    const Id session = select.id(1);
    const std::int64_t counter = select.integer(2);
    const std::string where = fmt::format("{}:{}", to_string(session), counter);
    if (counter != ++counters[session])
      verification.find("journal", where, "events before it in its session are missing");
    counters[session] = counter;
    std::int64_t& act = acts[session];
    if (select.integer(15) == 0) act = counter;
    if (select.integer(15) != 0 && select.integer(15) != act)
      verification.find("journal", where, "it names another first event of its act than the one before it");
    if (!select.text_view(16).empty() &&
        !names_own_act(connection, select.text_view(16), select.text_view(3)))
      verification.find("journal", where, "what it undoes or redoes is no act of the same person");

    std::vector<std::string> followed;
    for (const std::int64_t each : follows_of(connection, event)) {
      followed.push_back(hashes[each]);
      heads.erase(each);
    }
    if (followed.empty() && hashes.size() > 0) verification.find("journal", where, "it follows no event");
    heads.insert(event);
    std::sort(followed.begin(), followed.end());
    std::string joined;
    for (const std::string& hash : followed) joined += hash;

    const std::string content = select.blob(13);
    if (!content_as_noted(select, content)) {
      verification.find("journal", where, "its content is not what its hash says");
    }
    const NewEvent about{select.text(5),  select.text(6), select.text(7), select.text(8), "", "", "",
                         select.text(16), select.flag(17)};
    const EventOrigin origin{session, counter, select.integer(15), select.text(3), select.text(4)};
    hashes[event] = select.blob(14);
    if (event_sha256(origin, about, content, joined) != hashes[event]) {
      verification.find("journal", where, "it, or an event it follows, is not what its hash says");
    }
  }
  if (hashes.empty()) verification.find("journal", "", "it is empty");
  std::set<std::int64_t> noted;
  SqlStatement noted_heads(*connection.database, "SELECT event FROM journal_heads");
  while (noted_heads.step()) noted.insert(noted_heads.integer(0));
  if (noted != heads) verification.find("journal", "", "its last events are not those noted");
}

}  // namespace witnessmark
