// What "by", "before", "since" and the like make of a date: [..1962], [..1961], 1962/.. and so on.
#include "language/dates/talk/talk.h"

#include "witnessmark/time/period.h"

namespace witnessmark::dates {
namespace {

using P = DateValue::Precision;

EdtfEnd open_end() {
  return EdtfOpen{};
}

/// The date one step of its own precision before or after, or the day beside the period.
std::optional<EdtfDate> beside(const Edtf& edtf, const DateValue& value, int step, const DatePolicy& policy) {
  if (std::holds_alternative<EdtfDate>(edtf.value) && value.year_known && !value.before_christ &&
      (value.precision == P::decade || value.precision == P::century)) {
    const std::int64_t width = value.precision == P::decade ? 10 : 100;
    return std::get<EdtfDate>(edtf_year(step < 0 ? value.year - 1 : value.year + width).value);
  }
  if (std::holds_alternative<EdtfDate>(edtf.value) && value.precision == P::year && value.year_known)
    return std::get<EdtfDate>(edtf_year(value.year + step).value);
  if (std::holds_alternative<EdtfDate>(edtf.value) && value.precision == P::month && value.month) {
    const auto civil = add_months({value.year, value.month, 1}, step);
    return std::get<EdtfDate>(edtf_month(civil.year, civil.month).value);
  }
  const auto period = to_period(edtf, policy);
  if (step < 0) {
    if (const auto first = period.begin.earliest) return day_date(*first - 1);
  } else if (const auto past = period.end.latest) {
    return day_date(*past);
  }
  return std::nullopt;
}

/// First or last date of a value, for an inclusive limit.
std::optional<EdtfDate> edge(const Edtf& edtf, bool last) {
  if (const auto* set = std::get_if<EdtfSet>(&edtf.value)) {  // late 1962
    if (set->elements.size() != 1 || !set->elements[0].is_span) return std::nullopt;
    return last ? set->elements[0].last : set->elements[0].first;
  }
  if (const auto* date = std::get_if<EdtfDate>(&edtf.value)) {
    if (date->year.specified()) return *date;
    const auto x = date->year.mask.view().find('X');
    if (date->year.mask.view().size() != 4 || x < 2 || date->month || date->year.qualifier.any())
      return std::nullopt;
    return std::get<EdtfDate>(edtf_year(date->year.value + (last ? (x == 3 ? 9 : 99) : 0)).value);
  }
  if (const auto* interval = std::get_if<EdtfInterval>(&edtf.value))
    if (const auto* date = std::get_if<EdtfDate>(last ? &interval->end : &interval->begin)) return *date;
  return std::nullopt;
}

std::optional<EdtfDate> edge_day(const Edtf& edtf, bool last, const DatePolicy& policy) {
  if (auto date = edge(edtf, last)) return date;
  const auto period = to_period(edtf, policy);
  if (last && period.end.latest) return day_date(*period.end.latest - 1);
  if (!last && period.begin.earliest) return day_date(*period.begin.earliest);
  return std::nullopt;
}

}  // namespace

void Talk::put_edtf_of(Meaning& meaning, Mod limit, std::optional<Edtf>& out) const {
  out.reset();
  if (meaning.no_edtf) return;
  if (meaning.narrowed)
    out = meaning.narrowed;
  else if (meaning.edtf)
    out = std::move(meaning.edtf);
  else
    put_edtf(meaning.value, meaning.approximate, out);
  if (out && limit != Mod::none)
    if (auto narrowed = limited(*out, meaning, limit)) out = std::move(narrowed);
}

// Plain years, months and days make up nearly all of talk; their periods need no policy.
Period Talk::period_of(const Meaning& meaning, Mod limit, const Edtf& edtf) const {
  const auto* date = std::get_if<EdtfDate>(&edtf.value);
  const auto& value = meaning.value;
  const bool plain = date && limit == Mod::none && !meaning.approximate && value.year_known &&
                     date->year.value == value.year && date->year.specified() &&
                     !date->year.qualifier.any() && !date->long_year &&
                     date->month.has_value() == (value.month != 0) &&
                     date->day.has_value() == (value.day != 0);
  if (plain && value.precision == P::year && !date->month)
    return exact_period(to_day({value.year, 1, 1}), to_day({value.year + 1, 1, 1}));
  if (plain && value.precision == P::month && date->month->value == value.month) {
    const Day first = to_day({value.year, value.month, 1});
    return exact_period(first, first + days_in_month(value.year, value.month));
  }
  if (plain && value.precision == P::day && date->day && date->day->value == value.day &&
      date->month->value == value.month) {
    const Day day = to_day({value.year, value.month, value.day});
    return exact_period(day, day + 1);
  }
  return to_period(edtf, discourse_.policy);
}

std::optional<Edtf> Talk::limited(const Edtf& edtf, const Meaning& meaning, Mod limit) const {
  const bool inside = meaning.mod == Mod::start || meaning.mod == Mod::mid || meaning.mod == Mod::end;
  const auto& policy = discourse_.policy;
  std::optional<EdtfDate> date;
  switch (limit) {
    case Mod::before:
      date = meaning.happening ? edge_day(edtf, false, policy)
             : inside          ? edge_day(edtf, true, policy)
                               : beside(edtf, meaning.value, -1, policy);
      return date ? one_of_span(std::nullopt, *date) : std::optional<Edtf>();
    case Mod::after:
      date = meaning.happening ? edge_day(edtf, true, policy)
             : inside          ? edge_day(edtf, false, policy)
                               : beside(edtf, meaning.value, 1, policy);
      return date ? one_of_span(*date, std::nullopt) : std::optional<Edtf>();
    case Mod::on_or_before:  // "By the war it was gone": by its beginning.
      date = edge_day(edtf, !meaning.years_long, policy);
      return date ? one_of_span(std::nullopt, *date) : std::optional<Edtf>();
    case Mod::on_or_after:  // A state began then: some time in that year or part of it.
      date = meaning.edtf ? std::nullopt : end_of(meaning);
      // "Since the war": from its end on.
      if (!date) date = edge_day(edtf, meaning.happening, policy);
      return date ? Edtf{EdtfInterval{*date, open_end()}} : std::optional<Edtf>();
    case Mod::not_before:
      date = edge_day(edtf, false, policy);
      return date ? one_of_span(*date, std::nullopt) : std::optional<Edtf>();
    case Mod::until:
      date = meaning.edtf ? std::nullopt : end_of(meaning);
      // "Until the war": up to its beginning.
      if (!date) date = edge_day(edtf, !meaning.years_long, policy);
      return date ? Edtf{EdtfInterval{open_end(), *date}} : std::optional<Edtf>();
    default:
      return std::nullopt;
  }
}

}  // namespace witnessmark::dates
