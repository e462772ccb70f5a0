#include "told_days.h"

#include <algorithm>

namespace witnessmark {
namespace {

DaySpan outer_days(const Period& period) {
  DaySpan days;
  if (period.earliest()) days.low = period.earliest()->value;
  if (period.past_latest()) days.high = period.past_latest()->value - 1;
  return days;
}

std::optional<DaySpan> inner_days(const Period& period) {
  DaySpan days;
  if (period.begin.latest) days.low = period.begin.latest->value;
  if (period.end.earliest) days.high = period.end.earliest->value - 1;
  if (days.low && days.high && *days.low > *days.high) return std::nullopt;
  return days;
}

bool has_signs(const EdtfDate& date) {
  return date.year.qualifier.any() || (date.month && date.month->qualifier.any()) ||
         (date.day && date.day->qualifier.any());
}

Edtf alone(const EdtfDate& date) {
  return Edtf{date};
}

DayExtent of_date(const EdtfDate& date, const DatePolicy& policy) {
  const Period period = to_period(alone(date), policy);
  const DaySpan outer = outer_days(period);
  if (has_signs(date)) return {outer, inner_days(period)};
  return {outer, outer};
}

DayExtent of_element(const EdtfSetElement& element, const DatePolicy& policy) {
  if (!element.is_span) return of_date(element.first ? *element.first : *element.last, policy);
  DaySpan days;
  if (element.first) days.low = of_date(*element.first, policy).possible.low;
  if (element.last) days.high = of_date(*element.last, policy).possible.high;
  return {days, days};
}

}  // namespace

std::vector<DayExtent> told_days(const std::optional<Edtf>& value, const std::optional<Period>& period,
                                 const DatePolicy& policy) {
  if (!value)
    return period ? std::vector<DayExtent>{{outer_days(*period), inner_days(*period)}}
                  : std::vector<DayExtent>{};
  if (const auto* date = std::get_if<EdtfDate>(&value->value)) return {of_date(*date, policy)};
  if (const auto* set = std::get_if<EdtfSet>(&value->value);
      set != nullptr && set->kind == EdtfSet::Kind::one_of) {
    std::vector<DayExtent> extents;
    for (const EdtfSetElement& element : set->elements) extents.push_back(of_element(element, policy));
    return extents;
  }
  const Period whole = to_period(*value, policy);
  const auto* interval = std::get_if<EdtfInterval>(&value->value);
  const bool one_sided = interval != nullptr && (!std::holds_alternative<EdtfDate>(interval->begin) ||
                                                 !std::holds_alternative<EdtfDate>(interval->end));
  const DaySpan outer = outer_days(whole);
  return {{outer, one_sided ? std::optional<DaySpan>(outer) : inner_days(whole)}};
}

Distance days_apart(const std::vector<DayExtent>& some, const std::vector<DayExtent>& others) {
  std::optional<std::int64_t> least;
  std::optional<std::int64_t> most = 0;
  for (const DayExtent& one : some) {
    for (const DayExtent& other : others) {
      const DaySpan& a = one.possible;
      const DaySpan& b = other.possible;
      std::int64_t gap = 0;
      if (a.high && b.low) gap = std::max(gap, *b.low - *a.high);
      if (b.high && a.low) gap = std::max(gap, *a.low - *b.high);
      least = least ? std::min(*least, gap) : gap;
      const bool bounded = a.low && a.high && b.low && b.high;
      if (!bounded) most = std::nullopt;
      if (most) most = std::max({*most, *b.high - *a.low, *a.high - *b.low});
    }
  }
  return {least.value_or(0), most};
}

Period named_period(const Edtf& value, const DatePolicy& policy) {
  const EdtfDate* named = nullptr;
  if (const auto* interval = std::get_if<EdtfInterval>(&value.value)) {
    const auto* begin = std::get_if<EdtfDate>(&interval->begin);
    const auto* end = std::get_if<EdtfDate>(&interval->end);
    if ((begin == nullptr) != (end == nullptr)) named = begin != nullptr ? begin : end;
  } else if (const auto* set = std::get_if<EdtfSet>(&value.value);
             set != nullptr && set->elements.size() == 1) {
    const EdtfSetElement& element = set->elements.front();
    if (element.first.has_value() != element.last.has_value())
      named = element.first ? &*element.first : &*element.last;
  }
  return to_period(named != nullptr ? alone(*named) : value, policy);
}

}  // namespace witnessmark
