#pragma once
#include <array>
#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "store/connection.h"
#include "store/record/columns.h"

// The tables that spreadsheets fill: for each kind of record its table, what makes a row the same row, and
// what its events in the journal are about.

namespace witnessmark {

/// A term with the list it belongs to.
struct ListedTerm {
  std::string list;
  Term term;
};

template <typename V, Either<ListedTerm> R>
void fields(V& visit, R& r) {
  visit("list", r.list);
  fields(visit, r.term);
}

template <typename R>
struct Table;

template <>
struct Table<Person> {
  static constexpr const char* name = "persons";
  static constexpr const char* kind = "person";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const Person& r) { return {r.key}; }
  static std::string target(const Person& r) { return r.key; }
  static std::string interview(const Person&) { return {}; }
};

template <>
struct Table<Interview> {
  static constexpr const char* name = "interviews";
  static constexpr const char* kind = "interview";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const Interview& r) { return {r.key}; }
  static std::string target(const Interview& r) { return r.key; }
  static std::string interview(const Interview& r) { return r.key; }
};

/// Speakers, releases and passages: their events are about the interview, since a label or a quote may itself
/// have to be erased one day.
template <>
struct Table<Speaker> {
  static constexpr const char* name = "speakers";
  static constexpr const char* kind = "speaker";
  static constexpr std::array key_columns{"interview", "label"};
  static std::array<std::string_view, 2> key(const Speaker& r) { return {r.interview, r.label}; }
  static std::string target(const Speaker& r) { return r.interview; }
  static std::string interview(const Speaker& r) { return r.interview; }
};

template <>
struct Table<NarratorRelease> {
  static constexpr const char* name = "releases";
  static constexpr const char* kind = "release";
  static constexpr std::array key_columns{"interview", "person"};
  static std::array<std::string_view, 2> key(const NarratorRelease& r) { return {r.interview, r.person}; }
  static std::string target(const NarratorRelease& r) { return r.interview; }
  static std::string interview(const NarratorRelease& r) { return r.interview; }
};

template <>
struct Table<RestrictedPassage> {
  static constexpr const char* name = "passages";
  static constexpr const char* kind = "passage";
  static constexpr std::array key_columns{"interview", "quote"};
  static std::array<std::string_view, 2> key(const RestrictedPassage& r) { return {r.interview, r.quote}; }
  static std::string target(const RestrictedPassage& r) { return r.interview; }
  static std::string interview(const RestrictedPassage& r) { return r.interview; }
};

template <>
struct Table<ListedTerm> {
  static constexpr const char* name = "terms";
  static constexpr const char* kind = "term";
  static constexpr std::array key_columns{"list", "key"};
  static std::array<std::string_view, 2> key(const ListedTerm& r) { return {r.list, r.term.key}; }
  static std::string target(const ListedTerm& r) { return r.list + "/" + r.term.key; }
  static std::string interview(const ListedTerm&) { return {}; }
};

template <>
struct Table<Source> {
  static constexpr const char* name = "sources";
  static constexpr const char* kind = "source";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const Source& r) { return {r.key}; }
  static std::string target(const Source& r) { return r.key; }
  static std::string interview(const Source&) { return {}; }
};

template <>
struct Table<Derivation> {
  static constexpr const char* name = "derivations";
  static constexpr const char* kind = "derivation";
  static constexpr std::array key_columns{"source", "derives_from"};
  static std::array<std::string_view, 2> key(const Derivation& r) { return {r.source, r.derives_from}; }
  static std::string target(const Derivation& r) { return r.source; }
  static std::string interview(const Derivation&) { return {}; }
};

template <>
struct Table<Entry> {
  static constexpr const char* name = "entries";
  static constexpr const char* kind = "entry";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const Entry& r) { return {r.key}; }
  static std::string target(const Entry& r) { return r.key; }
  static std::string interview(const Entry&) { return {}; }
};

template <>
struct Table<Stay> {
  static constexpr const char* name = "stays";
  static constexpr const char* kind = "stay";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const Stay& r) { return {r.key}; }
  static std::string target(const Stay& r) { return r.key; }
  static std::string interview(const Stay&) { return {}; }
};

template <>
struct Table<NamedEvent> {
  static constexpr const char* name = "named_events";
  static constexpr const char* kind = "named-event";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const NamedEvent& r) { return {r.key}; }
  static std::string target(const NamedEvent& r) { return r.key; }
  static std::string interview(const NamedEvent&) { return {}; }
};

template <>
struct Table<Conclusion> {
  static constexpr const char* name = "conclusions";
  static constexpr const char* kind = "conclusion";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const Conclusion& r) { return {r.key}; }
  static std::string target(const Conclusion& r) { return r.key; }
  static std::string interview(const Conclusion&) { return {}; }
};

template <>
struct Table<Enquiry> {
  static constexpr const char* name = "enquiries";
  static constexpr const char* kind = "enquiry";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const Enquiry& r) { return {r.key}; }
  static std::string target(const Enquiry& r) { return r.key; }
  static std::string interview(const Enquiry&) { return {}; }
};

template <>
struct Table<Search> {
  static constexpr const char* name = "searches";
  static constexpr const char* kind = "search";
  static constexpr std::array key_columns{"key"};
  static std::array<std::string_view, 1> key(const Search& r) { return {r.key}; }
  static std::string target(const Search& r) { return r.key; }
  static std::string interview(const Search&) { return {}; }
};

/// Parts of a record that stand in tables of their own.
template <typename R>
void load_children(StoreConnection&, R&) {}
template <typename R>
void save_children(StoreConnection&, const R&) {}
void load_children(StoreConnection& connection, Person& person);
void save_children(StoreConnection& connection, const Person& person);
void load_children(StoreConnection& connection, Interview& interview);
void save_children(StoreConnection& connection, const Interview& interview);

/// A row and the event that brought it in.
template <typename R>
struct StoredRecord {
  R record;
  std::int64_t since = 0;
};

/// "a = ? AND b = ?".
template <typename R>
std::string key_condition() {
  std::string condition;
  for (const char* column : Table<R>::key_columns) {
    condition += (condition.empty() ? "" : " AND ") + std::string(column) + " = ?";
  }
  return condition;
}

template <typename R>
void bind_key(SqlStatement& statement, const R& record) {
  std::apply([&statement](const auto&... part) { (statement.bind(part), ...); }, Table<R>::key(record));
}

/// Rows that spreadsheets bring say which event they came with; what coders write has events of its own.
template <typename R>
constexpr bool has_since() {
  return !requires {
    Table<R>::written_by_coders;
  };
}

template <typename R>
std::optional<R> find_record(StoreConnection& connection, const R& like) {
  static const std::string sql =
      "SELECT " + column_list<R>() + " FROM " + Table<R>::name + " WHERE " + key_condition<R>();
  SqlStatement& select = connection.prepared(sql.c_str());
  bind_key(select, like);
  std::optional<R> found;
  if (select.step()) {
    ReadColumns reader(select);
    fields(reader, found.emplace());
  }
  select.reset();
  if (found) load_children(connection, *found);
  return found;
}

/// All rows, sorted by code points of the key, or by another order.
template <typename R>
std::vector<StoredRecord<R>> all_records(StoreConnection& connection, std::string order = {}) {
  if (order.empty()) {
    for (const char* column : Table<R>::key_columns)
      order += (order.empty() ? "" : ", ") + std::string(column);
  }
  std::vector<StoredRecord<R>> records;
  SqlStatement select(*connection.database, "SELECT " + column_list<R>() + (has_since<R>() ? ", since" : "") +
                                                " FROM " + Table<R>::name + " ORDER BY " + order);
  while (select.step()) {
    StoredRecord<R>& stored = records.emplace_back();
    ReadColumns reader(select);
    fields(reader, stored.record);
    if constexpr (has_since<R>()) stored.since = select.integer(reader.next());
  }
  for (StoredRecord<R>& stored : records) load_children(connection, stored.record);
  return records;
}

template <typename R>
std::vector<R> all_values(StoreConnection& connection, std::string order = {}) {
  std::vector<R> values;
  for (StoredRecord<R>& stored : all_records<R>(connection, std::move(order))) {
    values.push_back(std::move(stored.record));
  }
  return values;
}

/// The rows with this value in a column, in no order.
template <typename R>
std::vector<R> values_with(StoreConnection& connection, const char* column, std::string_view value) {
  std::vector<R> values;
  SqlStatement select(*connection.database,
                      "SELECT " + column_list<R>() + " FROM " + Table<R>::name + " WHERE " + column + " = ?");
  select.bind(value);
  while (select.step()) {
    ReadColumns reader(select);
    fields(reader, values.emplace_back());
  }
  for (R& record : values) load_children(connection, record);
  return values;
}

template <typename R>
void insert_record(StoreConnection& connection, const R& record, std::int64_t since) {
  static const std::string sql = [] {
    std::string marks = has_since<R>() ? "?" : "";
    for (std::size_t i = 0; i < columns_of<R>().size(); ++i) marks += marks.empty() ? "?" : ", ?";
    return std::string("INSERT INTO ") + Table<R>::name + " (" + column_list<R>() +
           (has_since<R>() ? ", since" : "") + ") VALUES (" + marks + ")";
  }();
  SqlStatement& insert = connection.prepared(sql.c_str());
  BindColumns binder(insert);
  fields(binder, record);
  if constexpr (has_since<R>()) insert.bind(since);
  insert.run();
  save_children(connection, record);
}

template <typename R>
void delete_record(StoreConnection& connection, const R& like) {
  static const std::string sql =
      std::string("DELETE FROM ") + Table<R>::name + " WHERE " + key_condition<R>();
  SqlStatement& remove = connection.prepared(sql.c_str());
  bind_key(remove, like);
  remove.run();
}

template <typename R>
void update_record(StoreConnection& connection, const R& record) {
  static const std::string sql = [] {
    std::string set;
    for (const std::string& column : columns_of<R>()) set += (set.empty() ? "" : ", ") + column + " = ?";
    return std::string("UPDATE ") + Table<R>::name + " SET " + set + " WHERE " + key_condition<R>();
  }();
  SqlStatement& update = connection.prepared(sql.c_str());
  BindColumns binder(update);
  fields(binder, record);
  bind_key(update, record);
  update.run();
  save_children(connection, record);
}

}  // namespace witnessmark
