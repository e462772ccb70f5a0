#include "terminal/timeline.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "witnessmark/base/display_width.h"

namespace witnessmark {
namespace {

/// Days [first, past) shown in `columns`.
struct Scale {
  Day first, past;
  int columns = 1;
  bool in_months = false;

  std::int64_t days() const { return past - first; }
  Day edge(int column) const { return first + days() * column / columns; }
  /// The one that has the day in it.
  std::size_t column_of(Day day) const {
    return static_cast<std::size_t>(((day - first + 1) * columns - 1) / days());
  }
};

constexpr std::int64_t kDaysInMonths = 366;  // a scale of no more days shows months
constexpr std::int64_t kFewestMonths = 3;    // with one at either side of a month or two

/// Months from January of year 0.
std::int64_t month_of(const CivilDate& day) {
  return std::int64_t{day.year} * 12 + day.month - 1;
}

Day first_of_month(std::int64_t month) {
  const std::int64_t within = ((month % 12) + 12) % 12;
  return to_day({(month - within) / 12, static_cast<int>(within) + 1, 1});
}

std::optional<Scale> scale_of(const std::vector<TimelineRow>& rows, int columns) {
  std::optional<Day> low, high;
  const auto include = [&](const std::optional<Day>& day) {
    if (!day) return;
    low = low ? std::min(*low, *day) : *day;
    high = high ? std::max(*high, *day) : *day;
  };
  for (const TimelineRow& row : rows) {
    if (!row.period) continue;
    for (const Boundary* side : {&row.period->begin, &row.period->end}) {
      include(side->earliest);
      include(side->latest);
    }
  }
  if (!low || columns < 8) return std::nullopt;
  // Whole years, or within one year whole months, so that the marks beneath stand for the first of them.
  const CivilDate from = to_civil(*low), to = to_civil(*high);
  if (*high - *low <= kDaysInMonths) {
    std::int64_t begin = month_of(from), past = month_of(to) + (to.day == 1 && *high > *low ? 0 : 1);
    if (past - begin < kFewestMonths) --begin, ++past;
    return Scale{first_of_month(begin), first_of_month(past), columns, true};
  }
  const Day first = to_day({from.year, 1, 1});
  const bool whole = to.month == 1 && to.day == 1 && *high > first;
  return Scale{first, to_day({to.year + (whole ? 0 : 1), 1, 1}), columns};
}

std::string bar(const Period& period, const Scale& scale) {
  std::string text;
  bool any = false;
  for (int column = 0; column < scale.columns; ++column) {
    const Day from = scale.edge(column);
    const Day to = std::max(scale.edge(column + 1), from + 1);
    char sign = ' ';
    if (period.surely_covers(from, to)) {
      sign = '=';
    } else if (period.possibly_touches(from, to)) {
      sign = '-';
    }
    any = any || sign != ' ';
    text += sign;
  }
  // Within one column nothing is covered whole: a day or a month is a stroke.
  const auto first = text.find_first_not_of(' ');
  if (any && text.find_last_not_of(' ') == first) text[first] = '|';
  if (!period.earliest() && !text.empty()) text.front() = '<';
  if (!period.past_latest() && !text.empty()) text.back() = '>';
  return text;
}

/// Writes a mark at its day, where there is room for all of it and a blank before it.
void write_mark(std::string& text, const Scale& scale, Day day, const std::string& mark) {
  const std::size_t column = scale.column_of(day);
  if (column + mark.size() > text.size() || (column > 0 && text[column - 1] != ' ')) return;
  text.replace(column, mark.size(), mark);
}

/// Months at steps wide enough for their marks, as EDTF has them: "1951-09".
std::string months(const Scale& scale) {
  constexpr int kWide = 9;
  const std::int64_t first = month_of(to_civil(scale.first)), past = month_of(to_civil(scale.past));
  std::int64_t step = 12;
  for (const std::int64_t wide : {1, 2, 3, 6}) {
    if (wide * scale.columns / (past - first) < kWide) continue;
    step = wide;
    break;
  }
  std::string text(static_cast<std::size_t>(scale.columns), ' ');
  for (std::int64_t month = first; month < past; ++month) {
    if (month % step != 0 && past - first > step) continue;
    const CivilDate at = to_civil(first_of_month(month));
    write_mark(text, scale, first_of_month(month), fmt::format("{:04}-{:02}", at.year, at.month));
  }
  return text;
}

/// Years at steps wide enough for their numbers.
std::string years(const Scale& scale) {
  const std::int64_t first = to_civil(scale.first).year;
  const std::int64_t past = to_civil(scale.past).year;
  std::string text(static_cast<std::size_t>(scale.columns), ' ');
  constexpr std::int64_t kSteps[] = {1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000};
  std::int64_t step = 1000;
  for (const std::int64_t wide : kSteps) {
    if (wide * scale.columns / std::max<std::int64_t>(1, past - first) >= 6) {
      step = wide;
      break;
    }
  }
  const std::int64_t start = first + ((step - first % step) % step);
  for (std::int64_t year = start; year < past; year += step) {
    write_mark(text, scale, to_day({year, 1, 1}), std::to_string(year));
  }
  return text;
}

}  // namespace

std::vector<Block> timeline(const std::vector<TimelineRow>& rows, int columns) {
  int label = 0;
  for (const TimelineRow& row : rows) label = std::max(label, display_width(row.label));
  label = std::min(label, columns / 3);
  const auto scale = scale_of(rows, columns - label - 1);
  std::vector<Block> blocks;
  if (!scale) return blocks;
  for (const TimelineRow& row : rows) {
    const std::string name = pad_columns(row.label, label) + " ";
    const std::string drawn = row.period ? bar(*row.period, *scale) : "(no date)";
    blocks.push_back({{{name, Role::label}, {drawn, row.role}}, 0, false});
  }
  blocks.push_back({{{std::string(static_cast<std::size_t>(label + 1), ' ') +
                          (scale->in_months ? months(*scale) : years(*scale)),
                      Role::faint}},
                    0,
                    false});
  return blocks;
}

}  // namespace witnessmark
