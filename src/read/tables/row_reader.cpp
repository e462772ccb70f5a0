#include "read/tables/row_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <unordered_set>

#include "read/tables/date_in_words.h"
#include "read/tables/mangled_date.h"
#include "witnessmark/base/did_you_mean.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::string_view kSheetFaults[] = {"#REF!",   "#N/A",  "#NAME?", "#VALUE!",
                                             "#DIV/0!", "#NUM!", "#NULL!"};

std::vector<std::string_view> split_cell(std::string_view text) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t end = text.find('|');
    const std::string_view part = trim(text.substr(0, end));
    if (!part.empty()) parts.push_back(part);
    if (end == text.npos) return parts;
    text.remove_prefix(end + 1);
  }
}

/// "physical trace", "Physical_Trace" and "physical-trace" are one choice.
std::string choice_name(std::string_view text) {
  std::string name = fold(text);
  std::replace_if(
      name.begin(), name.end(), [](char c) { return c == ' ' || c == '_'; }, '-');
  return name;
}

bool is_whole_number(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == text.npos;
}

/// A long cell cut for a message.
std::string shown(std::string_view text) {
  constexpr std::size_t kMost = 60;
  std::string out(text.substr(0, kMost));
  if (text.size() > kMost) {
    while (!out.empty() && (static_cast<unsigned char>(out.back()) & 0xC0) == 0x80) out.pop_back();
    if (!out.empty() && static_cast<unsigned char>(out.back()) >= 0xC0) out.pop_back();
    out += "…";
  }
  std::replace(out.begin(), out.end(), '\n', ' ');
  return out;
}

}  // namespace

RowReader::RowReader(const Table& table, const TableRow& row, std::vector<Diagnostic>& diagnostics)
    : table_(table), row_(row), diagnostics_(diagnostics) {}

std::string RowReader::place(std::string_view column) const {
  const int at = table_.sheet_columns[table_.column(column)];
  if (row_.sheet_row == 0) return fmt::format("element {}", column);
  if (at < 0) return fmt::format("column {}", column);
  return fmt::format("cell {} ({})", sheet_cell(at, row_.sheet_row), column);
}

Error RowReader::error_at(std::string_view column, std::string_view text, std::string_view message,
                          std::string advice) const {
  const TableCell& found = cell(column);
  return {table_.source, found.line, found.column,
          fmt::format("\"{}\" in {} {}", shown(text), place(column), message), std::move(advice)};
}

Error RowReader::at(std::string_view column) const {
  const TableCell& found = cell(column);
  return {table_.source, found.line, found.column,
          fmt::format("\"{}\" in {}", shown(found.text), place(column)), ""};
}

void RowReader::fail_text(std::string_view column, std::string_view text, std::string_view message,
                          std::string advice) {
  ok_ = false;
  diagnostics_.push_back({Diagnostic::Severity::error, error_at(column, text, message, std::move(advice))});
}

void RowReader::fail(std::string_view column, std::string message, std::string advice) {
  ok_ = false;
  const TableCell& found = cell(column);
  diagnostics_.push_back(
      {Diagnostic::Severity::error,
       {table_.source, found.line, found.column, place(column) + " " + message, std::move(advice)}});
}

void RowReader::warn(std::string_view column, std::string message, std::string advice) {
  const TableCell& found = cell(column);
  diagnostics_.push_back(
      {Diagnostic::Severity::warning,
       {table_.source, found.line, found.column, place(column) + " " + message, std::move(advice)}});
}

std::string_view RowReader::checked(std::string_view column) {
  const std::size_t at = table_.column(column);
  const std::string_view text = row_.cells[at].text;
  if (text.empty() && table_.columns[at].required)
    fail(column, "is empty", "it must hold: " + table_.columns[at].meaning);
  if (text.starts_with('#') &&
      std::find(std::begin(kSheetFaults), std::end(kSheetFaults), text) != std::end(kSheetFaults)) {
    fail_text(column, text, "is a fault the spreadsheet shows, not a value",
              "mend the formula, or type the value");
    return {};
  }
  return text;
}

std::string RowReader::text(std::string_view column) {
  return std::string(checked(column));
}

bool RowReader::is_key(std::string_view column, std::string_view text) {
  const bool control =
      std::any_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; });
  if (!control && text.size() <= 200 && text.find('|') == text.npos) return true;
  fail_text(column, text, "is no key", "a key is a short text on one line, without |");
  return false;
}

std::string RowReader::key(std::string_view column) {
  const std::string_view text = checked(column);
  return is_key(column, text) ? std::string(text) : "";
}

std::vector<std::string> RowReader::keys(std::string_view column) {
  std::vector<std::string> found;
  std::unordered_set<std::string_view> seen;
  for (const std::string_view part : split_cell(checked(column))) {
    if (seen.insert(part).second && is_key(column, part)) found.emplace_back(part);
  }
  return found;
}

std::vector<std::string> RowReader::texts(std::string_view column) {
  const auto parts = split_cell(checked(column));
  return {parts.begin(), parts.end()};
}

std::optional<Edtf> RowReader::edtf(std::string_view column, std::string_view text) {
  auto value = parse_edtf(text);
  if (value) return *std::move(value);
  if (const auto mangled = mangled_date(text)) {
    fail_text(column, text, mangled->what, mangled->advice);
    return std::nullopt;
  }
  if (const auto date = date_in_words(text)) {
    fail_text(column, text, "is a date, but not in EDTF", "write " + *date);
    return std::nullopt;
  }
  const Error& error = value.error();
  std::string message = "is no EDTF date: " + error.message;
  if (error.column > 0) message += fmt::format(", at its character {}", error.column);
  fail_text(column, text, message, error.advice);
  return std::nullopt;
}

Dated RowReader::dated(std::string_view column) {
  Dated dated;
  dated.written = checked(column);
  if (!dated.written.empty()) dated.value = edtf(column, dated.written);
  return dated;
}

std::vector<FormerName> RowReader::former_names(std::string_view column) {
  std::vector<FormerName> names;
  for (const std::string_view part : split_cell(checked(column))) {
    FormerName former;
    former.name = part;
    const std::size_t open = part.rfind('[');
    if (open != part.npos && part.ends_with(']')) {
      former.name = trim(part.substr(0, open));
      former.when.written = trim(part.substr(open + 1, part.size() - open - 2));
      if (!former.when.written.empty()) former.when.value = edtf(column, former.when.written);
    } else if (open != part.npos) {
      fail_text(column, part, "opens a square bracket and does not close it",
                "write Crew's Mess [1938/1951]");
    }
    if (former.name.empty())
      fail_text(column, part, "has years but no name", "write Crew's Mess [1938/1951]");
    names.push_back(std::move(former));
  }
  return names;
}

std::optional<std::int64_t> RowReader::number(std::string_view column) {
  const std::string_view text = checked(column);
  if (text.empty()) return std::nullopt;
  std::int64_t value = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (is_whole_number(text) && fault == std::errc{} && end == text.data() + text.size() &&
      value <= 1'000'000'000)
    return value;
  fail_text(column, text, "is no whole number", "write digits only, such as 12");
  return std::nullopt;
}

std::optional<Millisecond> RowReader::duration(std::string_view column) {
  const std::string_view text = checked(column);
  if (text.empty()) return std::nullopt;
  std::vector<std::int64_t> parts;
  bool good = true;
  for (std::string_view rest = text; good;) {
    const std::size_t end = rest.find(':');
    const std::string_view part = rest.substr(0, end);
    std::int64_t value = 0;
    good = is_whole_number(part) && part.size() <= (parts.empty() ? 4u : 2u) &&
           (parts.empty() || part.size() == 2);
    if (good) std::from_chars(part.data(), part.data() + part.size(), value);
    parts.push_back(value);
    if (end == rest.npos) break;
    rest.remove_prefix(end + 1);
  }
  good = good && (parts.size() == 2 || parts.size() == 3) && parts.back() < 60 &&
         (parts.size() == 2 || parts[1] < 60);
  if (!good) {
    fail_text(column, text, "is no length of a recording",
              "write h:mm:ss or m:ss, such as 0:36:40; format the column as text before typing");
    return std::nullopt;
  }
  if (parts.size() == 2) parts.insert(parts.begin(), 0);
  return Millisecond{((parts[0] * 60 + parts[1]) * 60 + parts[2]) * 1000};
}

std::string RowReader::choice(std::string_view column) {
  const std::string_view text = checked(column);
  if (text.empty()) return "";
  const std::vector<std::string>& values = table_.columns[table_.column(column)].values;
  const std::string name = choice_name(text);
  const auto found = std::find(values.begin(), values.end(), name);
  if (found != values.end()) return *found;
  const auto near = near_matches(name, values, 1);
  fail_text(column, text, "is not one of " + one_of_words(values), did_you_mean(near));
  return "";
}

std::string RowReader::with_extra(std::string text) const {
  if (!row_.extra.empty()) text += (text.empty() ? "" : "; ") + row_.extra;
  return text;
}

}  // namespace witnessmark
