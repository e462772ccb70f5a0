#include "store/journal_writer.h"

#include <algorithm>
#include <vector>

#include "witnessmark/base/sha256.h"

// Each event carries two hashes: one of its content (before, after, why), and one over that hash, its own
// data and the hashes of the events it follows. So an event altered, removed or slipped in shows in every
// event after it, while content that was erased on purpose leaves the chain whole.

namespace witnessmark {
namespace {

int digit_value(char digit) {
  return digit <= '9' ? digit - '0' : digit - 'a' + 10;
}

std::int64_t single(StoreConnection& connection, const char* sql) {
  SqlStatement& statement = connection.prepared(sql);
  const std::int64_t number = statement.step() ? statement.integer(0) : 0;
  statement.reset();
  return number;
}

/// This session's row, made with its first event: reading and looking leave no trace.
std::int64_t session_row(StoreConnection& connection) {
  SqlStatement& find = connection.prepared("SELECT session FROM sessions WHERE id = ?");
  find.bind(connection.session);
  if (find.step()) {
    const std::int64_t row = find.integer(0);
    find.reset();
    return row;
  }
  find.reset();
  const std::int64_t row = single(connection, "SELECT coalesce(max(session), 0) + 1 FROM sessions");
  connection.prepared("INSERT INTO sessions (session, id, actor) VALUES (?, ?, ?)")
      .bind(row)
      .bind(connection.session)
      .bind(connection.editor->name)
      .run();
  return row;
}

struct Head {
  std::int64_t event;
  std::string sha256;
};

std::vector<Head> heads(StoreConnection& connection) {
  std::vector<Head> found;
  SqlStatement& select =
      connection.prepared("SELECT event, sha256 FROM journal_heads JOIN journal USING (event)");
  while (select.step()) found.push_back({select.integer(0), select.blob(1)});
  select.reset();
  std::sort(found.begin(), found.end(), [](const Head& a, const Head& b) { return a.sha256 < b.sha256; });
  return found;
}

}  // namespace

std::string framed_sha256(std::initializer_list<std::string_view> parts) {
  std::string framed;
  for (const std::string_view part : parts) {
    framed += std::to_string(part.size());
    framed += ':';
    framed += part;
  }
  const std::string hexadecimal = sha256_hex(framed);
  std::string bytes;
  for (std::size_t i = 0; i + 1 < hexadecimal.size(); i += 2) {
    bytes += static_cast<char>(digit_value(hexadecimal[i]) * 16 + digit_value(hexadecimal[i + 1]));
  }
  return bytes;
}

std::string event_sha256(const EventOrigin& origin, const NewEvent& event, std::string_view content_sha256,
                         std::string_view follows) {
  const std::string session = to_string(origin.session);
  const std::string counter = std::to_string(origin.counter);
  if (origin.act == 0 && event.reverses.empty() && !event.blind) {
    return framed_sha256({session, counter, origin.actor, origin.wall_time, event.kind, event.target_kind,
                          event.target, event.interview, content_sha256, follows});
  }
  return framed_sha256({session, counter, origin.actor, origin.wall_time, event.kind, event.target_kind,
                        event.target, event.interview, content_sha256, follows, std::to_string(origin.act),
                        event.reverses, event.blind ? "blind" : ""});
}

void insert_event_row(StoreConnection& connection, const EventRow& row) {
  SqlStatement& insert = connection.prepared(
      "INSERT INTO journal (event, session, counter, wall_time, kind, target_kind, target, interview, "
      "content_sha256, sha256, act, reverses, blind, imported) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
      "?, "
      "?)");
  insert.bind(row.number).bind(row.session).bind(row.origin.counter).bind(row.origin.wall_time);
  const NewEvent& event = row.event;
  insert.bind(event.kind).bind(event.target_kind).bind(event.target).bind(event.interview);
  insert.bind_blob(row.content_sha256).bind_blob(row.sha256).bind(row.origin.act).bind(event.reverses);
  insert.bind(event.blind).bind(row.imported).run();
  if (!event.before.empty() || !event.after.empty() || !event.why.empty()) {
    connection.prepared("INSERT INTO journal_content VALUES (?, ?, ?, ?)")
        .bind(row.number)
        .bind(event.before)
        .bind(event.after)
        .bind(event.why)
        .run();
  }
}

std::int64_t append_event(StoreConnection& connection, const NewEvent& event) {
  connection.require_editor();
  const Editor& editor = *connection.editor;
  EventRow row;
  row.session = session_row(connection);
  row.number = single(connection, "SELECT coalesce(max(event), 0) + 1 FROM journal");
  SqlStatement& last =
      connection.prepared("SELECT coalesce(max(counter), 0) + 1 FROM journal WHERE session = ?");
  last.bind(row.session).step();
  row.origin = {connection.session, last.integer(0), 0, editor.name, ""};
  last.reset();
  if (editor.wall_clock) row.origin.wall_time = editor.wall_clock();
  // What an inner transaction undid is not the first event any more.
  if (connection.act == 0 || connection.act >= row.origin.counter) {
    connection.act = row.origin.counter;
  } else {
    row.origin.act = connection.act;
  }

  const std::vector<Head> followed = heads(connection);
  std::string follows;
  for (const Head& head : followed) follows += head.sha256;
  row.event = event;
  row.content_sha256 = framed_sha256({event.before, event.after, event.why});
  row.sha256 = event_sha256(row.origin, event, row.content_sha256, follows);
  insert_event_row(connection, row);
  for (const Head& head : followed) {
    connection.prepared("INSERT INTO journal_follows VALUES (?, ?)").bind(row.number).bind(head.event).run();
  }
  connection.prepared("DELETE FROM journal_heads").run();
  connection.prepared("INSERT INTO journal_heads VALUES (?)").bind(row.number).run();
  return row.number;
}

void mark_evidence_changed(StoreConnection& connection, std::int64_t event) {
  connection.prepared("UPDATE site SET evidence_event = ?").bind(event).run();
}

}  // namespace witnessmark
