#include <fmt/format.h>

#include "time/month_names.h"
#include "witnessmark/time/period.h"

namespace witnessmark {
namespace {

/// Historians count years before 1 as BCE: astronomical 0 is 1 BCE.
std::string year_text(std::int64_t year) {
  return year > 0 ? fmt::format("{}", year) : fmt::format("{} BCE", 1 - year);
}

std::string month_text(const CivilDate& date) {
  return kMonthNames[static_cast<std::size_t>(date.month - 1)];
}

std::string day_text(Day day) {
  const CivilDate date = to_civil(day);
  return fmt::format("{} {} {}", date.day, month_text(date), year_text(date.year));
}

bool begins_month(const CivilDate& date) {
  return date.day == 1;
}
bool begins_year(const CivilDate& date) {
  return date.day == 1 && date.month == 1;
}

/// The days [first, past) in as few words as say it exactly.
std::string range_text(Day first, Day past) {
  const CivilDate a = to_civil(first);
  const CivilDate z = to_civil(past - 1);
  const CivilDate after = to_civil(past);
  if (begins_year(a) && begins_year(after)) {
    return a.year == z.year ? year_text(a.year)
                            : fmt::format("{} to {}", year_text(a.year), year_text(z.year));
  }
  if (begins_month(a) && begins_month(after)) {
    if (a.year == z.year && a.month == z.month) return fmt::format("{} {}", month_text(a), year_text(a.year));
    if (a.year == z.year) return fmt::format("{} to {} {}", month_text(a), month_text(z), year_text(z.year));
    return fmt::format("{} {} to {} {}", month_text(a), year_text(a.year), month_text(z), year_text(z.year));
  }
  if (a == z) return day_text(first);
  if (a.year != z.year) return fmt::format("{} to {}", day_text(first), day_text(past - 1));
  if (a.month != z.month) return fmt::format("{} {} to {}", a.day, month_text(a), day_text(past - 1));
  return fmt::format("{} to {}", a.day, day_text(past - 1));
}

/// "1962", "from 3 May to 9 May 1962" as the time of one boundary, whose days are [first, last].
std::string when_text(const std::optional<Day>& first, const std::optional<Day>& last) {
  if (first && last) return range_text(*first, *last + 1);
  if (first) return fmt::format("{} or later", day_text(*first));
  return fmt::format("{} or earlier", day_text(*last));
}

std::string limits_in_words(const std::optional<Day>& first, const std::optional<Day>& last) {
  if (!first && !last) return "that nothing limits";
  if (!first) return fmt::format("up to {}", day_text(*last));
  if (!last) return fmt::format("from {} on", day_text(*first));
  const std::string range = range_text(*first, *last + 1);
  if (range.find(" to ") != std::string::npos) return "from " + range;
  return (first == last ? "on " : "in ") + range;
}

std::string nothing_text(const Boundary& boundary) {
  return boundary.kind == Boundary::Kind::unknown ? "unknown" : "open";
}

bool has_limit(const Boundary& boundary) {
  return boundary.earliest || boundary.latest;
}

std::optional<Day> day_before(const std::optional<Day>& day) {
  return day ? std::optional(*day - 1) : std::nullopt;
}

}  // namespace

std::string describe(const Period& period) {
  const Boundary& begin = period.begin;
  const Boundary& end = period.end;
  const auto first_last = day_before(end.earliest);
  const auto last_last = day_before(end.latest);
  if (!has_limit(begin) && !has_limit(end)) {
    return fmt::format("beginning {}, end {}", nothing_text(begin), nothing_text(end));
  }
  if (!has_limit(end))
    return fmt::format("from {}, end {}", when_text(begin.earliest, begin.latest), nothing_text(end));
  if (!has_limit(begin))
    return fmt::format("until {}, beginning {}", when_text(first_last, last_last), nothing_text(begin));
  if (begin.earliest && end.latest && begin.earliest == begin.latest && end.earliest == end.latest) {
    return range_text(*begin.earliest, *end.latest);
  }
  // No day surely belongs to it: then its limits alone are worth saying.
  const bool has_core = begin.latest && end.earliest && *begin.latest < *end.earliest;
  if (!has_core) return "some time " + limits_in_words(begin.earliest, last_last);
  return fmt::format("beginning {}, ending {}", when_text(begin.earliest, begin.latest),
                     when_text(first_last, last_last));
}

std::string describe(const Edtf& value, const Period& period) {
  const std::string doubt = doubt_words(value);
  if (doubt.empty()) return describe(period);
  const bool one_date = std::holds_alternative<EdtfDate>(value.value);
  return fmt::format("{}{} {}", describe(period), one_date ? "," : ";", doubt);
}

}  // namespace witnessmark
