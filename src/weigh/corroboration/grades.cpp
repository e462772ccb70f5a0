#include "witnessmark/weigh/grades.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <stdexcept>

#include "witnessmark/base/csv.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::array<std::string_view, 7> kNumbers = {
    "groups_for",      "kinds_for",           "groups_against", "kinds_against",
    "second_hand_for", "second_hand_against", "intentions_for"};

std::array<std::int64_t, 7> numbers_of(const Tally& tally) {
  return {tally.groups_for,      tally.kinds_for,           tally.groups_against, tally.kinds_against,
          tally.second_hand_for, tally.second_hand_against, tally.intentions_for};
}

bool fits(const GradeRule& rule, const Tally& tally) {
  const auto numbers = numbers_of(tally);
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const GradeRule::Limits& limits = rule.limits[i];
    if (numbers[i] < limits.least || (limits.most && numbers[i] > *limits.most)) return false;
  }
  return true;
}

bool fits_everything(const GradeRule& rule) {
  for (const GradeRule::Limits& limits : rule.limits)
    if (limits != GradeRule::Limits{}) return false;
  return true;
}

std::optional<std::int64_t> number(std::string_view text) {
  std::int64_t value = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc{} || end != text.data() + text.size() || value < 0) return std::nullopt;
  return value;
}

std::optional<GradeRule::Limits> limits_in(std::string_view text) {
  if (text.empty()) return GradeRule::Limits{};
  if (text.back() == '+') {
    const auto least = number(text.substr(0, text.size() - 1));
    return least ? std::optional(GradeRule::Limits{*least, std::nullopt}) : std::nullopt;
  }
  if (const auto dots = text.find(".."); dots != std::string_view::npos) {
    const auto least = number(text.substr(0, dots));
    const auto most = number(text.substr(dots + 2));
    if (!least || !most || *least > *most) return std::nullopt;
    return GradeRule::Limits{*least, *most};
  }
  const auto just = number(text);
  return just ? std::optional(GradeRule::Limits{*just, *just}) : std::nullopt;
}

/// Which column holds what; -1 for grade, -2 for meaning, else the place among the numbers.
Result<std::vector<int>> columns_in(const CsvFile& file) {
  std::vector<int> columns;
  std::vector<std::string_view> missing = {"grade", "meaning"};
  missing.insert(missing.end(), kNumbers.begin(), kNumbers.end());
  for (const CsvCell& cell : file.rows.front().cells) {
    const std::string name(trim(cell.text));
    const auto at = std::find(missing.begin(), missing.end(), name);
    if (at == missing.end())
      return Error{file.source, cell.line, cell.column,
                   fmt::format("\"{}\" is no column of a grade table, or stands there twice", name),
                   "see shared/README.md for the columns"};
    missing.erase(at);
    const auto place = std::find(kNumbers.begin(), kNumbers.end(), name);
    columns.push_back(place != kNumbers.end() ? static_cast<int>(place - kNumbers.begin())
                      : name == "grade"       ? -1
                                              : -2);
  }
  if (!missing.empty())
    return Error{file.source, 1, 1, fmt::format("the column {} is missing", missing.front()),
                 "add it; its cells may be empty"};
  return columns;
}

Result<GradeRule> rule_in(const CsvFile& file, const CsvRow& row, const std::vector<int>& columns) {
  GradeRule rule;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const CsvCell& cell = row.cells[i];
    const std::string text(trim(cell.text));
    if (i >= columns.size()) {
      if (text.empty()) continue;
      return Error{file.source, cell.line, cell.column, "a cell beyond the last column", "remove it"};
    }
    if (columns[i] == -1) {
      rule.grade = text;
    } else if (columns[i] == -2) {
      rule.meaning = text;
    } else {
      const auto limits = limits_in(text);
      if (!limits)
        return Error{file.source, cell.line, cell.column,
                     fmt::format("\"{}\" is no number of groups or kinds", text),
                     "write 2 for just so many, 2+ for at least, 0..1 for a range, or leave it empty"};
      rule.limits[static_cast<std::size_t>(columns[i])] = *limits;
    }
  }
  if (rule.grade.empty()) return Error{file.source, row.line, 1, "a rule without grade", "name the grade"};
  return rule;
}

}  // namespace

std::string dump(const Tally& tally) {
  const auto side = [](std::int64_t groups, std::int64_t kinds, std::int64_t second_hand) {
    std::string text = fmt::format("{} of {}", groups, kinds);
    if (second_hand > 0) text += fmt::format(" +{} second hand", second_hand);
    return text;
  };
  std::string text = "for " + side(tally.groups_for, tally.kinds_for, tally.second_hand_for);
  if (tally.intentions_for > 0) text += fmt::format(" +{} intended", tally.intentions_for);
  return text + ", against " + side(tally.groups_against, tally.kinds_against, tally.second_hand_against);
}

const GradeRule& GradeTable::grade(const Tally& tally) const {
  for (const GradeRule& rule : rules_)
    if (fits(rule, tally)) return rule;
  throw std::logic_error("a grade table whose last rule does not fit everything");
}

Result<GradeTable> parse_grade_table(std::string_view text, std::string_view source) {
  const auto file = parse_csv(text, source);
  if (!file) return file.error();
  const auto columns = columns_in(*file);
  if (!columns) return columns.error();
  std::vector<GradeRule> rules;
  for (std::size_t i = 1; i < file->rows.size(); ++i) {
    auto rule = rule_in(*file, file->rows[i], *columns);
    if (!rule) return rule.error();
    rules.push_back(std::move(*rule));
  }
  if (rules.empty() || !fits_everything(rules.back()))
    return Error{std::string(source), file->rows.back().line, 1, "the last rule does not fit everything",
                 "end with a grade without conditions, such as \"unknown\""};
  return GradeTable(std::move(rules));
}

}  // namespace witnessmark
