#pragma once
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "store/journal_writer.h"
#include "store/record/tables.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/changes.h"

// Taking in rows: told apart into new, changed and unchanged first; then, with the events that say so,
// written.

namespace witnessmark {

/// That a row (a person, key "k") names another (an interview, "i") which is neither in the file nor taken
/// in.
Error unknown_reference(std::string_view what, std::string_view key, std::string_view of,
                        std::string_view named);

template <typename R>
struct ChangedRecord {
  R after;
  std::string before_json;
  std::string after_json;
};

template <typename R>
struct SortedRows {
  std::vector<R> added;
  std::vector<ChangedRecord<R>> changed;
  std::size_t unchanged = 0;

  RowCounts counts() const { return {added.size(), changed.size(), unchanged}; }
};

/// Rows keep the id they have; new ones get one. `keep` may bring over what the input does not have.
template <typename R, typename Keep>
Result<SortedRows<R>> sort_rows(StoreConnection& connection, const std::vector<R>& rows, Keep keep) {
  SortedRows<R> sorted;
  std::set<std::string> seen;
  for (R row : rows) {
    std::string key;
    for (const std::string_view part : Table<R>::key(row)) key += std::string(part) + '\n';
    if (!seen.insert(key).second) {
      return Error{"", 0, 0, std::string(Table<R>::kind) + " \"" + Table<R>::target(row) + "\" occurs twice",
                   "keep one of the rows"};
    }
    const std::optional<R> before = find_record(connection, row);
    if (before) keep(*before, row);
    if (!before) {
      if constexpr (requires { row.id; }) {
        if (row.id.is_nil()) row.id = connection.new_id();
      } else if constexpr (requires { row.term.id; }) {
        if (row.term.id.is_nil()) row.term.id = connection.new_id();
      }
      sorted.added.push_back(std::move(row));
      continue;
    }
    if constexpr (requires { row.id; }) {
      row.id = before->id;
    } else if constexpr (requires { row.term.id; }) {
      row.term.id = before->term.id;
    }
    std::string before_json = to_json(*before);
    std::string after_json = to_json(row);
    if (before_json == after_json) {
      ++sorted.unchanged;
    } else {
      sorted.changed.push_back({std::move(row), std::move(before_json), std::move(after_json)});
    }
  }
  return sorted;
}

template <typename R>
Result<SortedRows<R>> sort_rows(StoreConnection& connection, const std::vector<R>& rows) {
  return sort_rows(connection, rows, [](const R&, R&) {});
}

/// Records an event brings in, and what the event says of them: how many of each kind, and the SHA-256 of
/// their JSON texts.
class AddedRecords {
 public:
  void add(std::string_view kind, std::string json) { texts_.emplace_back(kind, std::move(json)); }
  template <typename R>
  void add_all(const std::vector<R>& records) {
    for (const R& record : records) add(Table<R>::kind, to_json(record));
  }
  bool empty() const { return texts_.empty(); }
  /// The same for the same records in any order.
  std::string sha256() const;
  /// {"persons":2,"sha256":"…"}.
  std::string summary() const;

 private:
  std::vector<std::pair<std::string, std::string>> texts_;
};

template <typename R>
void insert_all(StoreConnection& connection, const std::vector<R>& rows, std::int64_t since) {
  for (const R& row : rows) insert_record(connection, row, since);
}

/// Writes changed rows, an event for each, and notes them. Returns the last event, 0 when there was none.
template <typename R>
std::int64_t update_all(StoreConnection& connection, const std::vector<ChangedRecord<R>>& rows,
                        std::vector<ChangedRow>& noted) {
  std::int64_t event = 0;
  for (const ChangedRecord<R>& row : rows) {
    event = append_event(connection, {.kind = "changed",
                                      .target_kind = Table<R>::kind,
                                      .target = Table<R>::target(row.after),
                                      .interview = Table<R>::interview(row.after),
                                      .before = row.before_json,
                                      .after = row.after_json});
    update_record(connection, row.after);
    noted.push_back(
        {Table<R>::kind, Table<R>::target(row.after), differing_fields(row.before_json, row.after_json)});
  }
  return event;
}

}  // namespace witnessmark
