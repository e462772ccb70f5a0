// From an expression to the period it denotes. A date is first read to its earliest and latest candidate (the
// same when all digits are known); as a whole period these give begin and end directly, as one end of an
// interval they give the days on which it can begin or end. Signs then widen: outer limits move outward,
// inner limits inward, by the same width.
#include <algorithm>
#include <array>
#include <utility>

#include "time/edtf/edtf_candidates.h"
#include "witnessmark/time/period.h"

namespace witnessmark {
namespace {

Day shifted(Day day, const Margin& margin, int direction) {
  if (margin == Margin{}) return day;
  const std::int64_t months = margin.years * 12 + margin.months;
  return to_day(add_months(to_civil(day), direction * months)) + direction * margin.days;
}

/// A run of neighbouring components under one sign counts once, by its finest component: `2004-06-11~` is a
/// day that may be some days off, `2004~-06-11` a day whose year may be off. Uncertain and approximate signs
/// over the same components are one sign `%`.
struct SignRun {
  std::size_t first = 0;
  std::size_t last = 0;  ///< 0 year, 1 month, 2 day.
  auto operator<=>(const SignRun&) const = default;
};

std::vector<SignRun> runs_of(const std::vector<bool>& signed_components) {
  std::vector<SignRun> runs;
  for (std::size_t i = 0; i < signed_components.size(); ++i) {
    if (!signed_components[i]) continue;
    if (!runs.empty() && runs.back().last + 1 == i)
      runs.back().last = i;
    else
      runs.push_back({i, i});
  }
  return runs;
}

const Margin& margin_of(const DatePolicy::Widths& widths, const SignRun& run) {
  if (run.last == 2) return widths.day;
  return run.last == 1 ? widths.month : widths.year;
}

void add(Margin& total, const Margin& more) {
  total.days += more.days;
  total.months += more.months;
  total.years += more.years;
}

Margin margin_of(const EdtfDate& date, const DatePolicy& policy) {
  const bool any = date.year.qualifier.any() || (date.month && date.month->qualifier.any()) ||
                   (date.day && date.day->qualifier.any());
  if (!any) return {};
  std::vector<bool> uncertain{date.year.qualifier.uncertain};
  std::vector<bool> approximate{date.year.qualifier.approximate};
  for (const auto* component : {&date.month, &date.day}) {
    if (!*component) break;
    uncertain.push_back((*component)->qualifier.uncertain);
    approximate.push_back((*component)->qualifier.approximate);
  }
  const auto uncertain_runs = runs_of(uncertain);
  const auto approximate_runs = runs_of(approximate);
  const auto among = [](const std::vector<SignRun>& runs, const SignRun& run) {
    return std::find(runs.begin(), runs.end(), run) != runs.end();
  };
  Margin total;
  for (const SignRun& run : uncertain_runs) {
    add(total, margin_of(among(approximate_runs, run) ? policy.both : policy.uncertain, run));
  }
  for (const SignRun& run : approximate_runs) {
    if (!among(uncertain_runs, run)) add(total, margin_of(policy.approximate, run));
  }
  return total;
}

/// Holds the four limits to begin < end.
Period tightened(Period period) {
  Boundary& begin = period.begin;
  Boundary& end = period.end;
  if (begin.earliest && end.earliest) end.earliest = std::max(*end.earliest, *begin.earliest + 1);
  if (begin.latest && end.latest) begin.latest = std::min(*begin.latest, *end.latest - 1);
  return period;
}

Period widened(const DayRange& earliest, const DayRange& latest, const Margin& margin) {
  Period period;
  period.begin.earliest = shifted(earliest.first, margin, -1);
  period.begin.latest = shifted(latest.first, margin, 1);
  period.end.earliest = shifted(earliest.past, margin, -1);
  period.end.latest = shifted(latest.past, margin, 1);
  return tightened(period);
}

/// A date that was put together wrongly by a caller counts from its first day on.
CandidateSpan span_of(const EdtfDate& date, const DatePolicy& policy) {
  if (const auto span = candidate_span(date, policy)) return *span;
  const Day first = to_day({date.year.value, date.month ? static_cast<int>(date.month->value) : 1,
                            date.day ? static_cast<int>(date.day->value) : 1});
  return {{first, first + 1}, {first, first + 1}};
}

Period date_period(const EdtfDate& date, const DatePolicy& policy) {
  const CandidateSpan span = span_of(date, policy);
  return widened(span.earliest, span.latest, margin_of(date, policy));
}

/// The first and the last day the date can touch, widened by its signs.
DayRange touched(const EdtfDate& date, const DatePolicy& policy) {
  const CandidateSpan span = span_of(date, policy);
  const Margin margin = margin_of(date, policy);
  return {shifted(span.earliest.first, margin, -1), shifted(span.latest.past, margin, 1)};
}

Boundary open_or_unknown(const EdtfEnd& end) {
  Boundary boundary;
  boundary.kind = std::holds_alternative<EdtfOpen>(end) ? Boundary::Kind::open : Boundary::Kind::unknown;
  return boundary;
}

Period from_ends(const std::optional<DayRange>& begin, const std::optional<DayRange>& end) {
  Period period;
  if (begin) {
    period.begin.earliest = begin->first;
    period.begin.latest = begin->past - 1;
  }
  if (end) {
    period.end.earliest = end->first + 1;
    period.end.latest = end->past;
  }
  return period;
}

/// The season over New Year may be meant by either of its years: read the one that begins the interval as the
/// earlier.
std::optional<DayRange> season_before(const EdtfDate& date, const DatePolicy& policy) {
  if (!date.is_season() || !date.year.specified()) return std::nullopt;
  DatePolicy other = policy;
  other.winter_begins_year_before = true;
  return touched(date, other);
}

Period interval_period(const EdtfInterval& interval, const DatePolicy& policy) {
  const auto* first = std::get_if<EdtfDate>(&interval.begin);
  const auto* last = std::get_if<EdtfDate>(&interval.end);
  std::optional<DayRange> begin = first ? std::optional(touched(*first, policy)) : std::nullopt;
  const std::optional<DayRange> end = last ? std::optional(touched(*last, policy)) : std::nullopt;
  if (begin && end && begin->first >= end->past) {
    if (const auto earlier = season_before(*first, policy); earlier && earlier->first < end->past)
      begin = earlier;
  }
  if (begin && end && begin->first >= end->past) {
    // Impossible under this policy's seasons: all that can be said is that it lies within both.
    return some_time_within(
        exact_period(std::min(begin->first, end->first), std::max(begin->past, end->past)));
  }
  Period period = from_ends(begin, end);
  if (!begin) period.begin = open_or_unknown(interval.begin);
  if (!end) period.end = open_or_unknown(interval.end);
  return tightened(period);
}

Period span_as_whole(const EdtfSetElement& element, const DatePolicy& policy) {
  Period period;
  period.begin.kind = period.end.kind = Boundary::Kind::open;
  if (element.first) period.begin = date_period(*element.first, policy).begin;
  if (element.last) period.end = date_period(*element.last, policy).end;
  return tightened(period);
}

std::optional<Day> smaller(const std::optional<Day>& a, const std::optional<Day>& b) {
  return a && b ? std::optional(std::min(*a, *b)) : std::nullopt;
}
std::optional<Day> larger(const std::optional<Day>& a, const std::optional<Day>& b) {
  return a && b ? std::optional(std::max(*a, *b)) : std::nullopt;
}

Period hull(const Period& a, const Period& b) {
  Period both;
  both.begin.earliest = smaller(a.begin.earliest, b.begin.earliest);
  both.begin.latest = larger(a.begin.latest, b.begin.latest);
  both.end.earliest = smaller(a.end.earliest, b.end.earliest);
  both.end.latest = larger(a.end.latest, b.end.latest);
  return both;
}

/// One of the dates from first to last, either of which may be missing. A sign on one of the two is its
/// alone.
Period span_as_choice(const EdtfSetElement& element, const DatePolicy& policy) {
  if (element.first && element.last) {
    return hull(date_period(*element.first, policy), date_period(*element.last, policy));
  }
  Period period;
  if (element.first) {
    const Period first = date_period(*element.first, policy);
    period.begin.earliest = first.begin.earliest;
    period.end.earliest = first.end.earliest;
  } else {
    const Period last = date_period(*element.last, policy);
    period.begin.latest = last.begin.latest;
    period.end.latest = last.end.latest;
  }
  return period;
}

/// From where the first begins to where the last ends. A side that is open in one stays open.
Period join(const Period& a, const Period& b) {
  Period whole;
  if (a.begin.kind == Boundary::Kind::open || b.begin.kind == Boundary::Kind::open) {
    whole.begin.kind = Boundary::Kind::open;
  } else {
    whole.begin.earliest = smaller(a.begin.earliest, b.begin.earliest);
    whole.begin.latest = smaller(a.begin.latest, b.begin.latest);
  }
  if (a.end.kind == Boundary::Kind::open || b.end.kind == Boundary::Kind::open) {
    whole.end.kind = Boundary::Kind::open;
  } else {
    whole.end.earliest = larger(a.end.earliest, b.end.earliest);
    whole.end.latest = larger(a.end.latest, b.end.latest);
  }
  return whole;
}

Period set_period(const EdtfSet& set, const DatePolicy& policy) {
  const bool one_of = set.kind == EdtfSet::Kind::one_of;
  std::optional<Period> total;
  for (const EdtfSetElement& element : set.elements) {
    Period period;
    if (!element.is_span)
      period = date_period(*element.first, policy);
    else
      period = one_of ? span_as_choice(element, policy) : span_as_whole(element, policy);
    total = !total ? period : one_of ? hull(*total, period) : join(*total, period);
  }
  return total ? *total : Period{};
}

EdtfDate unsigned_date(EdtfDate date) {
  date.year.qualifier = {};
  if (date.month) date.month->qualifier = {};
  if (date.day) date.day->qualifier = {};
  return date;
}

/// Appends the candidates of one date; false when there would be more than limit.
bool append(const EdtfDate& date, const DatePolicy& policy, std::size_t limit, std::vector<Period>& found) {
  const auto ranges = candidate_ranges(date, policy, limit - found.size());
  if (!ranges) return false;
  const Margin margin = margin_of(date, policy);
  for (const DayRange& range : *ranges) found.push_back(widened(range, range, margin));
  return true;
}

bool append(const EdtfSetElement& element, const DatePolicy& policy, std::size_t limit,
            std::vector<Period>& found) {
  if (!element.is_span) return append(*element.first, policy, limit, found);
  if (!element.first || !element.last) return false;
  if (!append(*element.first, policy, limit, found) || !append(*element.last, policy, limit, found))
    return false;
  const Day last = span_of(*element.last, policy).latest.first;
  for (EdtfDate date = next_unit(unsigned_date(*element.first));; date = next_unit(date)) {
    if (span_of(date, policy).latest.first >= last) return true;
    if (!append(date, policy, limit, found)) return false;
  }
}

}  // namespace

Period to_period(const Edtf& value, const DatePolicy& policy) {
  if (const auto* date = std::get_if<EdtfDate>(&value.value)) return date_period(*date, policy);
  if (const auto* interval = std::get_if<EdtfInterval>(&value.value))
    return interval_period(*interval, policy);
  return set_period(std::get<EdtfSet>(value.value), policy);
}

std::optional<std::vector<Period>> candidates(const Edtf& value, const DatePolicy& policy,
                                              std::size_t limit) {
  std::vector<Period> found;
  if (const auto* date = std::get_if<EdtfDate>(&value.value)) {
    if (!append(*date, policy, limit, found)) return std::nullopt;
  } else if (const auto* set = std::get_if<EdtfSet>(&value.value);
             set && set->kind == EdtfSet::Kind::one_of) {
    for (const EdtfSetElement& element : set->elements) {
      if (!append(element, policy, limit, found)) return std::nullopt;
    }
  } else {
    if (limit == 0) return std::nullopt;
    found.push_back(to_period(value, policy));
  }
  const auto order = [](const Period& a, const Period& b) {
    return std::pair(a.begin.earliest, a.end.latest) < std::pair(b.begin.earliest, b.end.latest);
  };
  std::sort(found.begin(), found.end(), order);
  found.erase(std::unique(found.begin(), found.end()), found.end());
  return found;
}

}  // namespace witnessmark
