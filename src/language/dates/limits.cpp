// What "by", "before", "since" and the like make of a date: [..1962], [..1961], 1962/.. and so on.
#include "language/dates/talk.h"

#include "witnessmark/time/period.h"

namespace witnessmark::dates {
namespace {

using P = DateValue::Precision;

EdtfEnd open_end() { return EdtfOpen{}; }

/// The date one step of its own precision before or after, or the day beside the period.
std::optional<EdtfDate> beside(const Edtf& edtf, const DateValue& value, int step, const DatePolicy& policy) {
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
  if (const auto* date = std::get_if<EdtfDate>(&edtf.value)) return date->year.specified() ? std::optional(*date) : std::nullopt;
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

std::optional<Edtf> Talk::edtf_of(const Meaning& meaning, Mod limit) const {
  if (meaning.no_edtf) return std::nullopt;
  auto edtf = meaning.edtf ? meaning.edtf : to_edtf(meaning.value, meaning.approximate);
  if (!edtf || limit == Mod::none) return edtf;
  const bool inside = meaning.mod == Mod::start || meaning.mod == Mod::mid || meaning.mod == Mod::end;
  const auto& policy = discourse_.policy;
  std::optional<EdtfDate> date;
  switch (limit) {
    case Mod::before:
      date = inside ? edge_day(*edtf, true, policy) : beside(*edtf, meaning.value, -1, policy);
      return date ? one_of_span(std::nullopt, *date) : edtf;
    case Mod::after:
      date = inside ? edge_day(*edtf, false, policy) : beside(*edtf, meaning.value, 1, policy);
      return date ? one_of_span(*date, std::nullopt) : edtf;
    case Mod::on_or_before:
      date = edge_day(*edtf, true, policy);
      return date ? one_of_span(std::nullopt, *date) : edtf;
    case Mod::on_or_after:
      date = edge_day(*edtf, false, policy);
      return date ? Edtf{EdtfInterval{*date, open_end()}} : edtf;
    case Mod::until:
      date = edge_day(*edtf, true, policy);
      return date ? Edtf{EdtfInterval{open_end(), *date}} : edtf;
    default: return edtf;
  }
}

}  // namespace witnessmark::dates
