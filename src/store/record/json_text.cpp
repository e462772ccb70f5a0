#include "store/record/json_text.h"

#include <fmt/format.h>

#include <stdexcept>

namespace witnessmark {
namespace {

[[noreturn]] void damaged(const char* what) {
  throw std::runtime_error(std::string("site file: not ") + what);
}

void append_boundary(std::string& out, const Boundary& boundary) {
  const auto side = [](const std::optional<Day>& day) {
    return day ? std::to_string(day->value) : std::string("null");
  };
  out +=
      fmt::format("[\"{}\",{},{}]", word_for(boundary.kind), side(boundary.earliest), side(boundary.latest));
}

Boundary read_boundary(const nlohmann::json& json) {
  if (!json.is_array() || json.size() != 3) damaged("a boundary");
  Boundary boundary;
  boundary.kind = value_for<Boundary::Kind>(json[0].get<std::string>());
  if (!json[1].is_null()) boundary.earliest = Day{json[1].get<std::int64_t>()};
  if (!json[2].is_null()) boundary.latest = Day{json[2].get<std::int64_t>()};
  return boundary;
}

}  // namespace

void append_json(std::string& out, std::string_view text) {
  out += '"';
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (static_cast<unsigned char>(c) < 0x20) {
      out += fmt::format("\\u{:04x}", static_cast<unsigned char>(c));
    } else {
      out += c;
    }
  }
  out += '"';
}

void append_json(std::string& out, std::int64_t number) {
  fmt::format_to(std::back_inserter(out), "{}", number);
}

void append_json(std::string& out, const Id& id) {
  append_json(out, std::string_view(to_string(id)));
}

void append_json(std::string& out, const Edtf& value) {
  append_json(out, std::string_view(to_string(value)));
}

void append_json(std::string& out, const Dated& dated) {
  JsonFields visitor(out);
  visitor("written", dated.written);
  visitor("edtf", dated.value);
  if (dated.calendar != Calendar::gregorian) visitor("calendar", dated.calendar);
  visitor.close();
}

void append_json(std::string& out, const Period& period) {
  out += '[';
  append_boundary(out, period.begin);
  out += ',';
  append_boundary(out, period.end);
  out += ']';
}

void append_json(std::string& out, const Quantity& quantity) {
  JsonFields visitor(out);
  visitor("least", quantity.least);
  visitor("most", quantity.most);
  visitor("written", quantity.written);
  visitor.close();
}

void append_json(std::string& out, const CodePointRange& range) {
  out += fmt::format("[{},{}]", range.begin.value, range.end.value);
}

void read_json(const nlohmann::json& json, std::string& text) {
  text = json.get<std::string>();
}

void read_json(const nlohmann::json& json, Id& id) {
  const auto read = parse_id(json.get<std::string>());
  if (!read) damaged("an id");
  id = *read;
}

void read_json(const nlohmann::json& json, Edtf& value) {
  auto read = parse_edtf(json.get<std::string>());
  if (!read) damaged("an EDTF date");
  value = std::move(read).value();
}

void read_json(const nlohmann::json& json, Dated& dated) {
  JsonReader reader(json);
  reader("written", dated.written);
  reader("edtf", dated.value);
  reader("calendar", dated.calendar);
}

void read_json(const nlohmann::json& json, Period& period) {
  if (!json.is_array() || json.size() != 2) damaged("a period");
  period = {read_boundary(json[0]), read_boundary(json[1])};
}

void read_json(const nlohmann::json& json, Quantity& quantity) {
  JsonReader reader(json);
  reader("least", quantity.least);
  reader("most", quantity.most);
  reader("written", quantity.written);
}

void read_json(const nlohmann::json& json, CodePointRange& range) {
  if (!json.is_array() || json.size() != 2) damaged("a range");
  range = {CodePoint{json[0].get<std::int64_t>()}, CodePoint{json[1].get<std::int64_t>()}};
}

std::vector<std::string> differing_fields(const std::string& before, const std::string& after) {
  const auto old_object = nlohmann::json::parse(before);
  const auto new_object = nlohmann::json::parse(after);
  std::vector<std::string> names;
  for (const auto& [name, value] : old_object.items()) {
    if (!new_object.contains(name) || new_object[name] != value) names.push_back(name);
  }
  for (const auto& [name, value] : new_object.items()) {
    if (!old_object.contains(name)) names.push_back(name);
  }
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace witnessmark
