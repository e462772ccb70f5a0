#pragma once
#include <string>
#include <string_view>

#include "store/coding/coding_tables.h"
#include "store/journal_writer.h"

// Changing the records that coders write. Each change is one event with the whole record before and after.

namespace witnessmark {

/// The record's JSON as it stands; empty when it is not there.
template <typename R>
std::string stored_json(StoreConnection& connection, const R& like) {
  const std::optional<R> found = find_record(connection, like);
  return found ? to_json(*found) : std::string();
}

/// Puts a record in the place of what is there under its key, with the event that says so. False, and nothing
/// written, when it stands so already.
template <typename R>
bool put_record(StoreConnection& connection, const R& record, NewEvent event) {
  event.before = stored_json(connection, record);
  event.after = to_json(record);
  if (event.before == event.after) return false;
  event.target_kind = Table<R>::kind;
  event.target = Table<R>::target(record);
  event.interview = Table<R>::interview(record);
  const bool known = !event.before.empty();
  const std::int64_t number = append_event(connection, event);
  known ? update_record(connection, record) : insert_record(connection, record, number);
  return true;
}

/// Takes a record away, with the event that says so. False when it is not there.
template <typename R>
bool remove_record(StoreConnection& connection, const R& record, NewEvent event) {
  event.before = stored_json(connection, record);
  if (event.before.empty()) return false;
  event.target_kind = Table<R>::kind;
  event.target = Table<R>::target(record);
  event.interview = Table<R>::interview(record);
  append_event(connection, event);
  delete_record(connection, record);
  return true;
}

/// Whether events on that kind of target hold whole records that coders may write.
bool is_coding_record(std::string_view target_kind);

/// A record's JSON without what an event adds to it: a passage's place in the text.
std::string plain_json(std::string_view target_kind, const std::string& json);

/// The record under the key that a record's JSON has, as it stands; empty when it is not there.
std::string stored_json(StoreConnection& connection, std::string_view target_kind, const std::string& like);

/// What events name a record by.
std::string record_target(std::string_view target_kind, const std::string& json);

/// Whether two records' JSON have one key.
bool same_record(std::string_view target_kind, const std::string& one, const std::string& other);

/// Writes `after` in the place of `before`; each may be empty. `since` is the event a new row comes from.
void write_record(StoreConnection& connection, std::string_view target_kind, const std::string& before,
                  const std::string& after, std::int64_t since);

}  // namespace witnessmark
