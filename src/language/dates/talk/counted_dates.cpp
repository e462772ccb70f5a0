// Counted steps from a date: two and a half years later, six weeks after some day of August 1950, three years
// ago this month.
#include <algorithm>

#include "language/dates/talk/talk.h"
#include "witnessmark/time/period.h"

namespace witnessmark::dates {

using P = DateValue::Precision;

// three years ago this month, this Christmas, today
void Talk::put_part_in_year(const Spec& spec, const DateValue& base, Meaning& meaning) const {
  const auto year = base.year + (spec.later == Later::after ? 1 : -1) * spec.count.value;
  if (spec.anchor->named) return named(*spec.anchor, meaning, year);
  meaning.value = base;
  meaning.value.year = year;
  if (base.day && base.month) meaning.value.day = std::min(base.day, days_in_month(year, base.month));
}

// two and a half years later
void Talk::put_half_years(const Spec& spec, const DateValue& base, Meaning& meaning) const {
  const bool forward = spec.later == Later::after;
  const std::int64_t sign = forward ? 1 : -1;
  const std::int64_t years = spec.unit == Unit::decade ? 10 : spec.unit == Unit::century ? 100 : 1;
  const auto months = (spec.count.value * 12 + 6) * years;
  const auto round =
      years > 1 ? moved(base, sign * (months / 12), Unit::year) : std::nullopt;  // half a century
  if (round) {
    meaning.value = *round;
    meaning.approximate = true;
    meaning.mod = Mod::approx;
  } else if (const auto value = moved(base, sign * months, Unit::month)) {
    meaning.value = *value;
    meaning.approximate = true;
  } else if (const auto year = moved(base, sign * (months / 12), Unit::year)) {
    const auto a = std::get<EdtfDate>(edtf_year(year->year).value);
    const auto b = std::get<EdtfDate>(edtf_year(year->year + sign).value);
    meaning.edtf = forward ? one_of_span(a, b) : one_of_span(b, a);
    meaning.moves_talk = false;
  }
}

// A few years later: two to nine (common practice, no source). TIMEX3 has no value for it but FUTURE_REF;
// EDTF has.
void Talk::put_few(const Spec& spec, const DateValue& base, Meaning& meaning) const {
  constexpr std::int64_t kFewest = 2, kMost = 9;
  if (spec.unit < Unit::day || spec.unit > Unit::year) return;
  const std::int64_t sign = spec.later == Later::after ? 1 : -1;
  const auto a = moved(base, sign * kFewest, spec.unit), b = moved(base, sign * kMost, spec.unit);
  if (!a || !b) return;
  auto first = to_edtf(*a, false), last = to_edtf(*b, false);
  if (!first || !last) return;
  if (sign < 0) std::swap(first, last);
  meaning.edtf = one_of_span(std::get<EdtfDate>(first->value), std::get<EdtfDate>(last->value));
}

// A year and a day after a day; a year and two months after a month. From anything vaguer it is not to be
// had.
void Talk::put_compound(const Spec& spec, const DateValue& base, Meaning& meaning) const {
  const std::int64_t sign = spec.later == Later::after ? 1 : -1;
  std::int64_t months = 0, days = 0;
  const auto add = [&](std::int64_t count, Unit unit) {
    constexpr std::int64_t kMost = 1000;  // Of any unit: nobody remembers more.
    if (count > kMost) return false;
    if (unit == Unit::year || unit == Unit::month)
      return months += unit == Unit::year ? 12 * count : count, true;
    if (unit > Unit::month || unit == Unit::weekend || unit < Unit::day) return false;
    return days += count * (unit == Unit::day ? 1 : unit == Unit::week ? 7 : 14), true;
  };
  meaning.moves_talk = false;
  if (!add(spec.count.value, spec.unit) || !add(spec.more.value, spec.more_unit)) return;
  if (is_day(base)) {
    const Day day = to_day(add_months({base.year, base.month, base.day}, sign * months)) + sign * days;
    meaning.value = DateValue::of_day(to_civil(day));
  } else if (days == 0 && has_month(base)) {
    const auto civil = add_months({base.year, base.month, 1}, sign * months);
    meaning.value = DateValue::of_month(civil.year, civil.month);
  } else {
    meaning.value = {};
    meaning.value.precision = spec.more_unit == Unit::month ? P::month : P::day;
    return;
  }
  meaning.moves_talk = true;
}

// two or three years later
void Talk::put_between(const Spec& spec, const DateValue& base, Meaning& meaning) const {
  const bool forward = spec.later == Later::after;
  const std::int64_t sign = forward ? 1 : -1;
  const auto a = moved(base, sign * spec.count.value, spec.unit),
             b = moved(base, sign * spec.count.upper, spec.unit);
  meaning.moves_talk = false;
  if (!a || !b) return;
  auto first = to_edtf(*a, false), second = to_edtf(*b, false);
  if (!first || !second) return;
  if (!forward) std::swap(first, second);
  meaning.edtf = one_of_span(std::get<EdtfDate>(first->value), std::get<EdtfDate>(second->value));
  if (setting_.prose) meaning.timex = to_timex(*a).view();
}

// Six weeks after some day of August 1950: one of the months that can be; no finer than that. A few days say
// less than the month and are let be.
bool Talk::put_months_of(const DateValue& base, std::int64_t count, const Spec& spec,
                         Meaning& meaning) const {
  if (!base.year_known || base.precision < P::year) return false;
  const bool in_month = has_month(base), season = base.precision == P::season;
  if (spec.unit == Unit::month) {
    if (in_month) return false;
  } else if (spec.unit != Unit::week && spec.unit != Unit::fortnight && spec.unit != Unit::day) {
    return false;
  }
  const auto edtf = to_edtf(base, false);
  if (!edtf || (!in_month && !season && base.precision != P::year)) return false;
  const auto period = to_period(*edtf, discourse_.policy);
  if (!period.earliest() || !period.past_latest()) return false;
  const auto shift = [&](Day day) {
    if (spec.unit == Unit::month) {
      const auto civil = to_civil(day);
      const auto month = add_months({civil.year, civil.month, 1}, count);
      return to_day({month.year, month.month, std::min(civil.day, days_in_month(month.year, month.month))});
    }
    return day + count * (spec.unit == Unit::day ? 1 : spec.unit == Unit::week ? 7 : 14);
  };
  const auto month_at = [](Day day) {
    const auto civil = to_civil(day);
    return std::get<EdtfDate>(edtf_month(civil.year, civil.month).value);
  };
  const Day first = shift(*period.earliest()), last = shift(*period.past_latest() - 1);
  meaning.edtf = one_of_span(month_at(first), month_at(last));
  meaning.timex = to_string(*meaning.edtf);
  return true;
}

void Talk::put_counted(const Spec& spec, const DateValue& base, Meaning& meaning) const {
  const std::int64_t sign = spec.later == Later::after ? 1 : -1;
  const auto value = moved(base, sign * spec.count.value, spec.unit);
  if (!value) {  // ten days after an undated day of a known month or year
    meaning.moves_talk = false;
    if (!setting_.prose && put_months_of(base, sign * spec.count.value, spec, meaning)) return;
    meaning.no_edtf = base.precision >= P::year && spec.unit <= Unit::month;
    if (setting_.prose && has_month(base) && spec.unit == Unit::day && spec.count.value <= 3) {
      meaning.value.year = base.year;
      meaning.value.year_known = true;
      meaning.value.month = base.month;
    }
    if (setting_.prose && base.year <= 0 && spec.unit <= Unit::week) meaning.timex = "BCXXXX-XX-XX";
    return;
  }
  meaning.value = *value;
  if (!spec.date.time.empty()) meaning.value.time = spec.date.time;
  if (spec.unit >= Unit::decade) {
    if (setting_.prose && meaning.value.year > 0) {
      meaning.value.precision = P::decade;
      meaning.value.year = meaning.value.year / 10 * 10;
    } else {
      meaning.approximate = true;
    }
  }
  const bool rough = spec.count.round && spec.unit == Unit::year && spec.speech && spec.count.value % 10 == 0;
  if (rough || spec.mod == Mod::approx || spec.count.couple)
    meaning.mod = Mod::approx, meaning.approximate = true;
}

}  // namespace witnessmark::dates
