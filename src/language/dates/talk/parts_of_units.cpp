// Early 1962, the end of March, the first half of the fifties, the last two weeks of May. TIMEX3 keeps the
// unit and puts the part into mod; EDTF has no word for most parts, so the value is one of the months, years
// or days that the part has under the policy: [1962-09..1962-12].
#include <algorithm>

#include "language/dates/talk/talk.h"
#include "witnessmark/time/period.h"

namespace witnessmark::dates {
namespace {

using P = DateValue::Precision;

const DatePolicy::Part& part_in(const DatePolicy::Parts& parts, Part part) {
  switch (part) {
    case Part::mid:
      return parts.mid;
    case Part::late:
      return parts.late;
    case Part::beginning:
      return parts.beginning;
    case Part::end:
      return parts.end;
    default:
      return parts.early;
  }
}

/// The units from low to high that the part has; halves are halves.
DatePolicy::Part span_of(const DatePolicy::Parts& parts, Part part, int low, int high) {
  const int middle = (low + high) / 2;
  if (part == Part::first_half) return {low, middle};
  if (part == Part::second_half) return {middle + 1, high};
  return part_in(parts, part);
}

const char* word_for(Part part) {
  static constexpr const char* kWords[] = {"",          "early", "mid",        "late",
                                           "beginning", "end",   "first half", "second half"};
  return kWords[static_cast<std::size_t>(part)];
}

/// EDTF level 2, sub-year groupings: 33 to 36 quarters, 37 to 39 thirds, 40 and 41 halves of a year.
int code_of_months(int first, int last) {
  const int length = last - first + 1;
  if (length == 3 && first % 3 == 1) return 33 + first / 3;
  if (length == 4 && first % 4 == 1) return 37 + first / 4;
  if (length == 6 && first % 6 == 1) return 40 + first / 6;
  return 0;
}

EdtfDate month_date(std::int64_t year, int month) {
  return std::get<EdtfDate>(edtf_month(year, month).value);
}

EdtfDate year_date(std::int64_t year) {
  return std::get<EdtfDate>(edtf_year(year).value);
}

void make_approximate(EdtfDate& date) {
  date.year.qualifier.approximate = true;
  if (date.month) date.month->qualifier.approximate = true;
  if (date.day) date.day->qualifier.approximate = true;
}

Edtf one_of(EdtfDate first, EdtfDate last, bool about) {
  const bool single = first == last;
  if (about) make_approximate(first), make_approximate(last);
  return single ? Edtf{first} : one_of_span(std::move(first), std::move(last));
}

}  // namespace

// The last three months of 1962, the first ten days of June, the last two years of the war: counted.
void Talk::narrow_to_count(const Spec& spec, Meaning& meaning) const {
  const auto whole = to_edtf(meaning.value, false);
  if (!whole || spec.part_count > 100) return;
  const auto period = to_period(*whole, discourse_.policy);
  if (!period.earliest() || !period.past_latest()) return;
  const Day first = *period.earliest(), past = *period.past_latest();
  const bool from_start = spec.part == Part::early;
  const auto count = spec.part_count;
  Day edge = from_start ? first : past;
  const std::int64_t sign = from_start ? 1 : -1;
  switch (spec.part_unit) {
    case Unit::day:
    case Unit::week:
      edge = edge + sign * count * (spec.part_unit == Unit::week ? 7 : 1);
      break;
    case Unit::month:
    case Unit::year:
      edge = to_day(add_months(to_civil(edge), sign * count * (spec.part_unit == Unit::year ? 12 : 1)));
      break;
    default:
      return;
  }
  if (edge <= first || edge >= past) return;
  const Day begin = from_start ? first : edge, last = (from_start ? edge : past) - 1;
  const auto a = to_civil(begin), z = to_civil(last);
  if (spec.part_unit == Unit::year)
    meaning.narrowed = one_of(year_date(a.year), year_date(z.year), spec.about);
  else if (spec.part_unit == Unit::month)
    meaning.narrowed = one_of(month_date(a.year, a.month), month_date(z.year, z.month), spec.about);
  else
    meaning.narrowed = one_of(day_date(begin), day_date(last), spec.about);
}

void Talk::narrow(const Spec& spec, Meaning& meaning) const {
  const auto& value = meaning.value;
  if (spec.part == Part::none || meaning.edtf || meaning.no_edtf || !value.year_known || value.year < 1 ||
      value.year > 9000)
    return;
  const bool ends_there = spec.limit == Mod::on_or_before || spec.limit == Mod::until;
  if (spec.part == Part::end && ends_there && !spec.about && !setting_.prose) {
    // By the end of 1957: its last day, whatever months its end has otherwise.
    if (const auto whole = to_edtf(value, false))
      if (const auto past = to_period(*whole, discourse_.policy).past_latest())
        meaning.edtf = Edtf{day_date(*past - 1)};
    return;
  }
  if (spec.part_count != 0) return narrow_to_count(spec, meaning);
  const auto& policy = discourse_.policy;
  const auto span = [&](const DatePolicy::Parts& parts, int low, int high) {
    auto found = span_of(parts, spec.part, low, high);
    if (spec.part_to != Part::none)
      found.last = std::max(found.last, span_of(parts, spec.part_to, low, high).last);
    return found;
  };
  DatePolicy::Part part;
  const char* counted = "months";
  switch (value.precision) {
    case P::year: {
      part = span(policy.of_year, 1, 12);
      if (part.first == 1 && part.last == 12) return;
      meaning.narrowed =
          one_of(month_date(value.year, part.first), month_date(value.year, part.last), spec.about);
      if (const int code = spec.about ? 0 : code_of_months(part.first, part.last))
        meaning.part = month_date(value.year, code);
      break;
    }
    case P::decade:
    case P::century: {
      const bool decade = value.precision == P::decade;
      const int last = decade ? 9 : 99;
      part = span(decade ? policy.of_decade : policy.of_century, 0, last);
      if (part.first == 0 && part.last == last) return;
      counted = "years";
      meaning.narrowed =
          one_of(year_date(value.year + part.first), year_date(value.year + part.last), spec.about);
      break;
    }
    case P::season: {
      if (spec.part == Part::first_half || spec.part == Part::second_half) return;
      part = span(policy.of_season, 1, 3);
      const auto first = to_period(*to_edtf(value, false), policy).earliest();
      if (!first || (part.first == 1 && part.last == 3)) return;
      const auto a = add_months(to_civil(*first), part.first - 1),
                 z = add_months(to_civil(*first), part.last - 1);
      meaning.narrowed = one_of(month_date(a.year, a.month), month_date(z.year, z.month), spec.about);
      break;
    }
    case P::month: {
      if (!value.month) return;
      const int days = days_in_month(value.year, value.month);
      part = span(policy.of_month, 1, 30);
      part.last = std::min(spec.part == Part::second_half ? days : part.last, days);
      if (part.first > days || (part.first == 1 && part.last == days)) return;
      counted = "days";
      const Day first = to_day({value.year, value.month, part.first});
      meaning.narrowed = one_of(day_date(first), day_date(first + (part.last - part.first)), spec.about);
      break;
    }
    default:
      return;
  }
  if (spec.part == Part::first_half || spec.part == Part::second_half) return;
  if (!meaning.anchor.empty()) meaning.anchor += "; ";
  meaning.anchor += word_for(spec.part);
  if (spec.part_to != Part::none) meaning.anchor += std::string(" to ") + word_for(spec.part_to);
  meaning.anchor += std::string(": ") + counted + " " + std::to_string(part.first);
  if (part.last != part.first) meaning.anchor += " to " + std::to_string(part.last);
  meaning.anchor += ", policy " + policy.name;
}

std::optional<EdtfDate> Talk::end_of(const Meaning& meaning) const {
  if (meaning.part) return meaning.part;
  const auto single = [](const std::optional<Edtf>& edtf) {
    const auto* date = edtf ? std::get_if<EdtfDate>(&edtf->value) : nullptr;
    return date ? std::optional(*date) : std::nullopt;
  };
  if (const auto date = single(meaning.narrowed)) return date;
  if (meaning.no_edtf) return std::nullopt;
  return single(meaning.edtf ? meaning.edtf : to_edtf(meaning.value, meaning.approximate));
}

}  // namespace witnessmark::dates
