#include "terminal/timeline.h"

#include <algorithm>
#include <cstdint>

#include "witnessmark/base/display_width.h"

namespace witnessmark {
namespace {

/// Days [first, past) shown in `columns`.
struct Scale {
  Day first, past;
  int columns = 1;

  std::int64_t days() const { return past - first; }
  Day edge(int column) const { return first + days() * column / columns; }
};

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
  // Whole years, so that the marks beneath stand for 1 January.
  const Day first = to_day({to_civil(*low).year, 1, 1});
  const auto last = to_civil(*high);
  const bool whole = last.month == 1 && last.day == 1 && *high > first;
  const Day past = to_day({last.year + (whole ? 0 : 1), 1, 1});
  return Scale{first, past, columns};
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
    const auto column = static_cast<std::size_t>(
        ((to_day({year, 1, 1}) - scale.first) * scale.columns + scale.days() / 2) / scale.days());
    const std::string number = std::to_string(year);
    if (column + number.size() <= text.size()) text.replace(column, number.size(), number);
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
  blocks.push_back(
      {{{std::string(static_cast<std::size_t>(label + 1), ' ') + years(*scale), Role::faint}}, 0, false});
  return blocks;
}

}  // namespace witnessmark
