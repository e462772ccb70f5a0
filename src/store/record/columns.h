#pragma once
#include <string>
#include <vector>

#include "store/record/json_text.h"
#include "store/sqlite/sql_statement.h"

// Records as rows. A date is three columns, a period six, a quantity three, a list of texts one of JSON.

namespace witnessmark {

/// Visitor that names the columns.
class ColumnNames {
 public:
  template <typename T>
  void operator()(const std::string& name, const T&) {
    if constexpr (std::same_as<T, Dated>) {
      names.insert(names.end(), {name + "_written", name, name + "_calendar"});
    } else if constexpr (std::same_as<T, std::optional<Period>>) {
      for (const char* side : {"_begin", "_end"}) {
        for (const char* part : {"_kind", "_earliest", "_latest"}) names.push_back(name + side + part);
      }
    } else if constexpr (std::same_as<T, std::optional<Quantity>>) {
      names.insert(names.end(), {name + "_least", name + "_most", name + "_written"});
    } else {
      names.push_back(name);
    }
  }
  template <typename T>
  void child(const std::string&, const T&) {}

  std::vector<std::string> names;
};

template <typename R>
std::vector<std::string> columns_of() {
  ColumnNames visitor;
  const R record{};
  fields(visitor, record);
  return visitor.names;
}

/// "a, b, c".
template <typename R>
std::string column_list() {
  std::string list;
  for (const std::string& name : columns_of<R>()) list += (list.empty() ? "" : ", ") + name;
  return list;
}

/// Visitor that binds a record to the next parameters. Texts it makes live as long as it does.
class BindColumns {
 public:
  explicit BindColumns(SqlStatement& statement) : statement_(statement) { made_.reserve(16); }

  template <typename T>
  void operator()(const char*, const T& field) {
    if constexpr (std::is_enum_v<T>) {
      statement_.bind(word_for(field));
    } else if constexpr (std::integral<T>) {
      statement_.bind(static_cast<std::int64_t>(field));
    } else if constexpr (std::same_as<T, std::string> || std::same_as<T, Id> ||
                         std::same_as<T, std::optional<std::int64_t>>) {
      statement_.bind(field);
    } else if constexpr (std::same_as<T, std::optional<Millisecond>>) {
      field ? statement_.bind(field->value) : statement_.bind_null();
    } else if constexpr (std::same_as<T, CodePoint>) {
      statement_.bind(field.value);
    } else {
      bind(field);
    }
  }
  template <typename T>
  void child(const char*, const T&) {}

 private:
  void bind(const Dated& dated);
  void bind(const std::optional<Edtf>& value);
  void bind(const std::optional<Period>& period);
  void bind(const std::optional<Quantity>& quantity);
  void bind(const Boundary& boundary);
  template <typename T>
  void bind(const std::vector<T>& list) {
    bind_made(list_to_json(list));
  }
  void bind_made(std::string text);

  SqlStatement& statement_;
  std::vector<std::string> made_;
};

/// Visitor that reads a record from the next columns.
class ReadColumns {
 public:
  explicit ReadColumns(const SqlStatement& row, int first = 0) : row_(row), at_(first) {}

  /// Column after the last one read.
  int next() const { return at_; }

  template <typename T>
  void operator()(const char*, T& field) {
    if constexpr (std::is_enum_v<T>) {
      field = value_for<T>(row_.text_view(at_++));
    } else if constexpr (std::same_as<T, bool>) {
      field = row_.flag(at_++);
    } else if constexpr (std::integral<T>) {
      field = static_cast<T>(row_.integer(at_++));
    } else {
      read(field);
    }
  }
  template <typename T>
  void child(const char*, T&) {}

 private:
  void read(std::string& text) { text = row_.text(at_++); }
  void read(Id& id) { id = row_.id(at_++); }
  void read(CodePoint& position) { position.value = row_.integer(at_++); }
  void read(std::optional<std::int64_t>& number) { number = row_.maybe_integer(at_++); }
  void read(std::optional<Millisecond>& time);
  void read(std::optional<Edtf>& value);
  void read(Dated& dated);
  void read(std::optional<Period>& period);
  void read(std::optional<Quantity>& quantity);
  Boundary read_boundary();
  template <typename T>
  void read(std::vector<T>& list) {
    const std::string_view text = row_.text_view(at_++);
    if (text == "[]") {
      list.clear();
    } else {
      list = list_from_json<T>(text);
    }
  }

  const SqlStatement& row_;
  int at_;
};

}  // namespace witnessmark
