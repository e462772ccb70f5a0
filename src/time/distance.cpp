// The days between two periods a and b are max(0, b.begin - last day of a, a.begin - last day of b). The
// boundaries of a and of b move independently, so the least is reached with a as late and b as early as they
// go (or the other way round), the most with the contrary. Months and years are those completed between the
// very days that give the days.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "witnessmark/base/counted.h"
#include "witnessmark/time/relations.h"

namespace witnessmark {
namespace {

/// Limits of one period after begin < end has been used: they are those that can be reached.
struct Reach {
  std::optional<Day> first_begin, last_begin, first_last_day, last_last_day;
};

Reach reach_of(const Period& period) {
  Reach reach{period.begin.earliest, period.begin.latest, std::nullopt, std::nullopt};
  if (period.end.earliest) reach.first_last_day = *period.end.earliest - 1;
  if (period.end.latest) reach.last_last_day = *period.end.latest - 1;
  if (reach.first_begin) {
    reach.first_last_day = std::max(reach.first_last_day.value_or(*reach.first_begin), *reach.first_begin);
  }
  if (reach.last_last_day) {
    reach.last_begin = std::min(reach.last_begin.value_or(*reach.last_last_day), *reach.last_last_day);
  }
  return reach;
}

using Measure = std::int64_t (*)(Day from, Day to);

std::int64_t days_between(Day from, Day to) {
  return to - from;
}

/// Units that must be crossed at least when a lies before b; 0 when it need not.
std::int64_t least_gap(const Reach& a, const Reach& b, Measure measure) {
  if (!a.last_last_day || !b.first_begin || *b.first_begin <= *a.last_last_day) return 0;
  return measure(*a.last_last_day, *b.first_begin);
}

std::optional<std::int64_t> most_gap(const Reach& a, const Reach& b, Measure measure) {
  if (!a.first_last_day || !b.last_begin) return std::nullopt;
  if (*b.last_begin <= *a.first_last_day) return 0;
  return measure(*a.first_last_day, *b.last_begin);
}

Distance distance(const Period& a, const Period& b, Measure measure) {
  const Reach reach_a = reach_of(a);
  const Reach reach_b = reach_of(b);
  Distance result;
  result.least = std::max(least_gap(reach_a, reach_b, measure), least_gap(reach_b, reach_a, measure));
  const auto forward = most_gap(reach_a, reach_b, measure);
  const auto backward = most_gap(reach_b, reach_a, measure);
  if (forward && backward) result.most = std::max(*forward, *backward);
  return result;
}

enum class Unit { days, months, years };

/// The unit in which the dates of a period were given: the length it can have at most.
Unit grain_of(const Period& period) {
  if (!period.earliest() || !period.past_latest()) return Unit::years;
  const std::int64_t days = *period.past_latest() - *period.earliest();
  if (days < 28) return Unit::days;
  return days < 365 ? Unit::months : Unit::years;
}

}  // namespace

std::string in_unit(const Distance& distance, std::string_view unit) {
  if (!distance.most) return "at least " + counted(distance.least, unit);
  if (*distance.most == distance.least) return counted(distance.least, unit);
  return fmt::format("{} to {}", distance.least, counted(*distance.most, unit));
}

Distance distance_in_days(const Period& a, const Period& b) {
  return distance(a, b, days_between);
}
Distance distance_in_months(const Period& a, const Period& b) {
  return distance(a, b, completed_months);
}
Distance distance_in_years(const Period& a, const Period& b) {
  return distance(a, b, completed_years);
}

std::string describe_distance(const Period& a, const Period& b) {
  const Distance days = distance_in_days(a, b);
  const Unit unit = std::max(grain_of(a), grain_of(b));
  // A distance that is there must not be rounded away.
  const auto honest = [&days](const Distance& coarse) {
    const bool least_kept = coarse.least > 0 || days.least == 0;
    const bool most_kept = !coarse.most || *coarse.most > 0 || *days.most == 0;
    return least_kept && most_kept;
  };
  if (unit == Unit::years) {
    if (const Distance years = distance_in_years(a, b); honest(years)) return in_unit(years, "year");
  }
  if (unit != Unit::days) {
    if (const Distance months = distance_in_months(a, b); honest(months)) return in_unit(months, "month");
  }
  return in_unit(days, "day");
}

std::optional<YearRange> completed_years_between(const Period& from, const Period& to) {
  if (!from.earliest() || !from.past_latest() || !to.earliest() || !to.past_latest()) return std::nullopt;
  const Day first = *from.earliest();
  const Day last = *to.past_latest() - 1;
  YearRange range{completed_years(*from.past_latest() - 1, *to.earliest()), completed_years(first, last)};
  if (last >= first) range.least = std::max<std::int64_t>(range.least, 0);
  return range;
}

std::string to_string(const YearRange& range) {
  return range.least == range.most ? fmt::format("{}", range.least)
                                   : fmt::format("{} to {}", range.least, range.most);
}

}  // namespace witnessmark
