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

std::string event_sha256(const Id& session, std::int64_t counter, std::string_view actor,
                         std::string_view wall_time, const NewEvent& event, std::string_view content_sha256,
                         std::string_view follows) {
  return framed_sha256({to_string(session), std::to_string(counter), actor, wall_time, event.kind,
                        event.target_kind, event.target, event.interview, content_sha256, follows});
}

std::int64_t append_event(StoreConnection& connection, const NewEvent& event) {
  connection.require_editor();
  const Editor& editor = *connection.editor;
  const std::int64_t session = session_row(connection);
  const std::int64_t number = single(connection, "SELECT coalesce(max(event), 0) + 1 FROM journal");
  SqlStatement& last =
      connection.prepared("SELECT coalesce(max(counter), 0) + 1 FROM journal WHERE session = ?");
  last.bind(session).step();
  const std::int64_t counter = last.integer(0);
  last.reset();

  const std::vector<Head> followed = heads(connection);
  std::string follows;
  for (const Head& head : followed) follows += head.sha256;
  const std::string wall_time = editor.wall_clock ? editor.wall_clock() : std::string();
  const std::string content = framed_sha256({event.before, event.after, event.why});
  const std::string hash =
      event_sha256(connection.session, counter, editor.name, wall_time, event, content, follows);

  SqlStatement& insert = connection.prepared("INSERT INTO journal VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  insert.bind(number).bind(session).bind(counter).bind(wall_time).bind(event.kind).bind(event.target_kind);
  insert.bind(event.target).bind(event.interview).bind_blob(content).bind_blob(hash).run();
  if (!event.before.empty() || !event.after.empty() || !event.why.empty()) {
    connection.prepared("INSERT INTO journal_content VALUES (?, ?, ?, ?)")
        .bind(number)
        .bind(event.before)
        .bind(event.after)
        .bind(event.why)
        .run();
  }
  for (const Head& head : followed) {
    connection.prepared("INSERT INTO journal_follows VALUES (?, ?)").bind(number).bind(head.event).run();
  }
  connection.prepared("DELETE FROM journal_heads").run();
  connection.prepared("INSERT INTO journal_heads VALUES (?)").bind(number).run();
  return number;
}

void mark_evidence_changed(StoreConnection& connection, std::int64_t event) {
  connection.prepared("UPDATE site SET evidence_event = ?").bind(event).run();
}

}  // namespace witnessmark
