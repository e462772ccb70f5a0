#pragma once
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "store/record/fields.h"
#include "store/record/words.h"

// Records as JSON text, always the same text for the same record: fields in the order of fields.h, without
// spaces, and without empty texts, lists, optionals, dates and false. The journal keeps this text and hashes
// of it.

namespace witnessmark {

void append_json(std::string& out, std::string_view text);
void append_json(std::string& out, std::int64_t number);
void append_json(std::string& out, const Id& id);
void append_json(std::string& out, const Edtf& value);
void append_json(std::string& out, const Dated& dated);
void append_json(std::string& out, const Period& period);
void append_json(std::string& out, const Quantity& quantity);
void append_json(std::string& out, const CodePointRange& range);

/// Throw std::runtime_error (or nlohmann's, which is one) when the JSON is not what append_json makes.
void read_json(const nlohmann::json& json, std::string& text);
void read_json(const nlohmann::json& json, Id& id);
void read_json(const nlohmann::json& json, Edtf& value);
void read_json(const nlohmann::json& json, Dated& dated);
void read_json(const nlohmann::json& json, Period& period);
void read_json(const nlohmann::json& json, Quantity& quantity);
void read_json(const nlohmann::json& json, CodePointRange& range);

template <typename R>
void append_record(std::string& out, const R& record);
template <typename R>
void read_record(const nlohmann::json& json, R& record);

/// Visitor that appends the fields of an object, with its braces.
class JsonFields {
 public:
  explicit JsonFields(std::string& out) : out_(out) { out_ += '{'; }
  void close() { out_ += '}'; }

  template <typename T>
  void operator()(std::string_view name, const T& field) {
    if (!is_missing(field)) {
      begin(name);
      write(field);
    }
  }
  template <typename T>
  void child(std::string_view name, const T& field) {
    (*this)(name, field);
  }

 private:
  template <typename T>
  static bool is_missing(const T& field) {
    if constexpr (std::same_as<T, bool>) {
      return !field;
    } else if constexpr (std::same_as<T, Dated>) {
      return field == Dated{};
    } else if constexpr (requires { field.has_value(); }) {
      return !field.has_value();
    } else if constexpr (requires { field.empty(); } && !std::same_as<T, CodePointRange>) {
      return field.empty();
    } else {
      return false;
    }
  }
  template <typename T>
  void write(const T& field) {
    if constexpr (std::is_enum_v<T>) {
      append_json(out_, word_for(field));
    } else if constexpr (std::same_as<T, bool>) {
      out_ += field ? "true" : "false";
    } else if constexpr (std::integral<T>) {
      append_json(out_, static_cast<std::int64_t>(field));
    } else if constexpr (std::same_as<T, CodePoint> || std::same_as<T, Millisecond>) {
      append_json(out_, field.value);
    } else if constexpr (requires { append_json(out_, field); }) {
      append_json(out_, field);
    } else if constexpr (requires { field.has_value(); }) {
      write(*field);
    } else if constexpr (requires { fields(*this, field); }) {
      append_record(out_, field);
    } else {
      char separator = '[';
      for (const auto& element : field) {
        out_ += separator;
        write(element);
        separator = ',';
      }
      if (separator == '[') out_ += '[';
      out_ += ']';
    }
  }
  void begin(std::string_view name) {
    if (out_.back() != '{') out_ += ',';
    out_ += '"';
    out_ += name;
    out_ += "\":";
  }

  std::string& out_;
};

/// Visitor that reads fields from an object; what is missing keeps its default.
class JsonReader {
 public:
  explicit JsonReader(const nlohmann::json& object) : object_(object) {}

  template <typename T>
  void operator()(const char* name, T& field) {
    const auto found = object_.find(name);
    if (found != object_.end()) read(*found, field);
  }
  template <typename T>
  void child(const char* name, T& field) {
    (*this)(name, field);
  }

  template <typename T>
  static void read(const nlohmann::json& json, T& field) {
    if constexpr (std::is_enum_v<T>) {
      field = value_for<T>(json.get<std::string>());
    } else if constexpr (std::integral<T>) {
      field = json.get<T>();
    } else if constexpr (std::same_as<T, CodePoint> || std::same_as<T, Millisecond>) {
      field.value = json.get<std::int64_t>();
    } else if constexpr (requires { read_json(json, field); }) {
      read_json(json, field);
    } else if constexpr (requires { field.has_value(); }) {
      read(json, field.emplace());
    } else if constexpr (requires { field.emplace_back(); }) {
      field.clear();
      for (const auto& element : json) read(element, field.emplace_back());
    } else {
      read_record(json, field);
    }
  }

 private:
  const nlohmann::json& object_;
};

template <typename R>
void append_record(std::string& out, const R& record) {
  JsonFields visitor(out);
  fields(visitor, record);
  visitor.close();
}

template <typename R>
void read_record(const nlohmann::json& json, R& record) {
  JsonReader reader(json);
  fields(reader, record);
}

template <typename R>
std::string to_json(const R& record) {
  std::string out;
  append_record(out, record);
  return out;
}

/// A list of texts or records, "[]" when empty.
template <typename T>
std::string list_to_json(const std::vector<T>& list) {
  std::string out;
  char separator = '[';
  for (const T& element : list) {
    out += separator;
    if constexpr (std::same_as<T, std::string>) {
      append_json(out, std::string_view(element));
    } else if constexpr (std::same_as<T, CodePointRange>) {
      append_json(out, element);
    } else {
      append_record(out, element);
    }
    separator = ',';
  }
  if (separator == '[') out += '[';
  return out + "]";
}

template <typename T>
std::vector<T> list_from_json(std::string_view text) {
  std::vector<T> list;
  JsonReader::read(nlohmann::json::parse(text), list);
  return list;
}

/// Names of the top-level members that differ between two objects, sorted.
std::vector<std::string> differing_fields(const std::string& before, const std::string& after);

}  // namespace witnessmark
