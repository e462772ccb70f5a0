// Values seen from the date under discussion or the day of speaking: that spring, the following year, later
// that month.
#include <algorithm>

#include "language/dates/talk/talk.h"
#include "witnessmark/time/period.h"

namespace witnessmark::dates {

using P = DateValue::Precision;

EdtfDate day_date(Day day) {
  const auto civil = to_civil(day);
  return std::get<EdtfDate>(edtf_day(civil.year, civil.month, civil.day).value);
}

Edtf day_interval(Day first, Day last) {
  return Edtf{EdtfInterval{day_date(first), day_date(last)}};
}

Edtf one_of_span(std::optional<EdtfDate> first, std::optional<EdtfDate> last) {
  EdtfSet set;
  EdtfSetElement element;
  element.is_span = true;
  element.first = std::move(first);
  element.last = std::move(last);
  set.elements.push_back(std::move(element));
  return Edtf{std::move(set)};
}

std::string week_timex(Day day) {  // ISO 8601 week: the week of its Thursday
  const Day thursday = day - (iso_weekday(day) - 4);
  const auto year = to_civil(thursday).year;
  const auto week = (thursday - to_day({year, 1, 1})) / 7 + 1;
  return std::to_string(year) + "-W" + (week < 10 ? "0" : "") + std::to_string(week);
}

DateValue unresolved(const Spec& spec) {
  DateValue value = spec.date;
  switch (spec.unit) {
    case Unit::year:
      if (value.precision == P::none) value.precision = P::year;
      break;
    case Unit::month:
      value.precision = P::month;
      break;
    case Unit::week:
      if (value.precision == P::none) value.precision = P::week;
      break;
    case Unit::decade:
      value.precision = P::decade;
      break;
    case Unit::century:
      value.precision = P::century;
      break;
    default:
      if (value.precision == P::none) value.precision = P::day;
      break;
  }
  return value;
}

void put_week(const DateValue& from, int step, bool prose, Meaning& meaning) {
  if (!is_day(from)) {
    meaning.moves_talk = false;
    if (prose && from.precision >= P::year) meaning.value.year = from.year, meaning.value.year_known = true;
    return;
  }
  const Day day = day_of(from) + 7 * step;
  const Day monday = day - (iso_weekday(day) - 1);
  meaning.timex = week_timex(day);
  meaning.edtf = day_interval(monday, monday + 6);
  meaning.value = DateValue::of_day(to_civil(day));
  meaning.value.precision = P::month;
  meaning.value.day = 0;
}

int month_of(const DateValue& value) {
  if (value.precision == P::season) return static_cast<int>(value.season) * 3;
  return value.precision >= P::month ? value.month : 0;
}

namespace {

/// The same expression reckoned from the day of speaking.
Spec seen_from_today(const Spec& spec) {
  Spec today;
  today.kind = spec.kind;
  today.unit = spec.unit;
  today.date = spec.date;
  today.following = spec.following;
  today.count = spec.count;
  today.named = spec.named;
  today.speech = true;
  return today;
}

std::int64_t floor_tens(std::int64_t value, std::int64_t by) {
  return (value >= 0 ? value / by : -((-value + by - 1) / by)) * by;
}

}  // namespace

namespace {

/// Years of four digits, with room beside them: further off EDTF has no months, and nobody remembers.
std::optional<DateValue> within_reach(const DateValue& value) {
  constexpr std::int64_t kMostYear = 9000;
  if (value.year < -kMostYear || value.year > kMostYear) return std::nullopt;
  return value;
}

}  // namespace

std::optional<DateValue> moved(const DateValue& from, std::int64_t count, Unit unit) {
  if (!from.year_known || from.precision == P::none) return std::nullopt;
  constexpr std::int64_t kMost = 3'000'000;
  if (count > kMost || count < -kMost) return std::nullopt;
  switch (unit) {
    case Unit::fortnight:
      count *= 2;
      [[fallthrough]];
    case Unit::week:
    case Unit::weekend:
      count *= 7;
      [[fallthrough]];
    case Unit::day:
      if (!is_day(from)) return std::nullopt;
      return within_reach(DateValue::of_day(to_civil(day_of(from) + count)));
    case Unit::month: {
      if (!has_month(from)) return std::nullopt;
      const auto civil = add_months({from.year, from.month, 1}, count);
      return within_reach(DateValue::of_month(civil.year, civil.month));
    }
    case Unit::century:
      count *= 10;
      [[fallthrough]];
    case Unit::decade:
      count *= 10;
      [[fallthrough]];
    case Unit::year: {
      if (from.precision < P::year) return std::nullopt;
      return within_reach(DateValue::of_year(from.year + count));
    }
    default:
      return std::nullopt;
  }
}

namespace {

int step_of(const Spec& spec) {
  const int count =
      static_cast<int>(std::clamp<std::int64_t>(spec.count.value, 1, 1000));  // the year before last: two
  return spec.following == Following::next ? count : spec.following == Following::previous ? -count : 0;
}

// that decade, the following century; counted away from 1 before Christ
DateValue long_unit(const DateValue& from, int step, Unit unit) {
  const bool before_christ = from.year <= 0;
  const std::int64_t width = unit == Unit::decade ? 10 : 100;
  const auto first =
      floor_tens(before_christ ? 1 - from.year : from.year, width) + (before_christ ? -step : step) * width;
  DateValue value = DateValue::of_year(before_christ ? 1 - first : first);
  value.before_christ = before_christ;
  value.precision = unit == Unit::decade ? P::decade : P::century;
  return value;
}

// that Sunday, the following Sunday, last Sunday
void put_weekday(const DateValue& from, int step, int weekday, Meaning& meaning) {
  if (!is_day(from)) {
    meaning.moves_talk = false;
    return;
  }
  const Day day = day_of(from);
  const int ahead = (weekday - iso_weekday(day) + 7) % 7;
  if (step > 0)
    meaning.value = DateValue::of_day(to_civil(day + (ahead == 0 ? 7 : ahead)));
  else if (step < 0)
    meaning.value = DateValue::of_day(to_civil(day - (ahead == 0 ? 7 : 7 - ahead)));
  else if (ahead == 0)
    meaning.value = from;
  else {
    meaning.moves_talk = false;  // the one before or the one after
    meaning.alternatives = {to_string(day - (7 - ahead)), to_string(day + ahead)};
  }
}

}  // namespace

// "I had married the year before last": seen from the day of speaking it would be another.
void Talk::add_seen_from_today(const Spec& spec, Meaning& meaning) const {
  const auto other = relative(seen_from_today(spec));
  const auto edtf = other.edtf ? other.edtf : to_edtf(other.value, false);
  if (edtf) meaning.alternatives.push_back(to_string(*edtf));
}

Meaning Talk::relative(const Spec& spec) const {
  const auto& base = spec.speech ? speech_ : reference_;
  if (!base || !base->year_known) return relative_to_nothing(spec);
  Meaning meaning;
  meaning.anchor = spec.speech ? "interview " + to_timex(*speech_) : reference_anchor();
  meaning.value = unresolved(spec);
  const auto& from = *base;
  const int step = step_of(spec);
  if (spec.unit >= Unit::year && from.precision < P::year && spec.unit == Unit::year)
    return meaning.moves_talk = false, meaning;
  if (spec.unit == Unit::year && (spec.date.precision != P::none || spec.named)) {
    put_part_of_year(spec, from, meaning);
    return meaning;
  }
  switch (spec.unit) {
    case Unit::year:
      meaning.value = DateValue::of_year(from.year + step);
      break;
    case Unit::decade:
    case Unit::century:
      meaning.value = long_unit(from, step, spec.unit);
      break;
    case Unit::month:
      if (const auto value = moved(from, step, Unit::month)) {
        meaning.value = *value;
      } else if (from.precision >= P::year) {
        meaning.value = DateValue::of_month(from.year, 0);
        meaning.moves_talk = false;
      }
      break;
    case Unit::week:
      if (spec.of_week && is_day(from)) {
        const Day day = day_of(from) + 7 * step;
        meaning.value = DateValue::of_day(to_civil(day + (spec.date.weekday - iso_weekday(day))));
      } else if (spec.date.weekday)
        put_weekday(from, step, spec.date.weekday, meaning);
      else
        put_week(from, step, setting_.prose, meaning);
      break;
    case Unit::weekend:
      meaning.moves_talk = false;
      if (step == 0 && is_day(from) && !setting_.prose && !spec.speech) {  // that weekend: of the same week
        const Day saturday = day_of(from) + (6 - iso_weekday(day_of(from)));
        meaning.timex = week_timex(saturday) + "-WE";
        meaning.edtf = day_interval(saturday, saturday + 1);
      }
      break;
    case Unit::fortnight:
      meaning.moves_talk = false;
      break;
    default:
      put_day(spec, from, meaning);
  }
  return meaning;
}

// Nothing is known to reckon from.
Meaning Talk::relative_to_nothing(const Spec& spec) const {
  Meaning meaning;
  meaning.value = unresolved(spec);
  const int step = step_of(spec);
  if (!spec.speech && year_ && spec.unit == Unit::year && spec.date.precision == P::none) {
    meaning.anchor = reference_anchor();
    meaning.value = DateValue::of_year(*year_ + step);
    return meaning;
  }
  meaning.moves_talk = false;
  if (spec.named && spec.named->kind == NamedDay::Kind::fixed && spec.named->earlier.empty()) {
    meaning.value.precision = P::day;
    meaning.value.month = spec.named->month;
    meaning.value.day = spec.named->day;
  }
  if (spec.speech || year_ || !speech_ || setting_.prose || step == 0 ||
      (step > 0 && spec.unit == Unit::year))
    return meaning;
  // Perhaps it is seen from the day of speaking.
  const auto other = relative(seen_from_today(spec));
  if (other.moves_talk)
    meaning.alternatives.push_back(other.timex.empty() ? std::string(to_timex(other.value).view())
                                                       : other.timex);
  return meaning;
}

// The following Christmas, the Easter before that, from a day: the next one or the last one there was.
void Talk::put_feast_beside(const Spec& spec, const DateValue& from, Meaning& meaning) const {
  const int step = step_of(spec);
  const Day day = day_of(from), same_year = day_in_year(*spec.named, from.year);
  auto year = from.year;
  if (step > 0)
    year += day < same_year ? step - 1 : step;
  else
    year += same_year < day ? step + 1 : step;
  named(spec, meaning, year);
}

// A part of a year: that spring, the following June, last Christmas.
void Talk::put_part_of_year(const Spec& spec, const DateValue& from, Meaning& meaning) const {
  if (spec.named && is_day(from) && step_of(spec) != 0) return put_feast_beside(spec, from, meaning);
  const int at = month_of(from), step = step_of(spec);
  const bool season = spec.date.precision == P::season;
  auto year = from.year;
  const int month = spec.named ? to_civil(day_in_year(*spec.named, year)).month
                    : season   ? static_cast<int>(spec.date.season) * 3
                               : spec.date.month;
  if (step > 0) {
    if (!at || month <= at) ++year;  // the first that begins after
    year += step - 1;
    if (spec.named && at == month)
      meaning.alternatives.push_back(to_string(day_in_year(*spec.named, year - 1)));
  } else if (step < 0) {
    if (!at || (season ? month + 2 : month) >= at) --year;  // the last that had ended
    year += step + 1;
    if (spec.named && at == month)  // before or after the feast of that month
      meaning.alternatives.push_back(to_string(day_in_year(*spec.named, year + 1)));
  } else if (spec.date.season == Season::winter && at && at <= 2) {
    --year;  // that winter, in January
  }
  if (spec.named) return named(spec, meaning, year);
  meaning.value.year = year;
  meaning.value.year_known = true;
}

// That day, the next morning, last night.
void Talk::put_day(const Spec& spec, const DateValue& from, Meaning& meaning) const {
  const auto time = spec.date.time;
  const int step = step_of(spec);
  if (is_day(from)) {
    meaning.value = DateValue::of_day(to_civil(day_of(from) + step));
  } else if (has_month(from) && !(spec.speech && step != 0)) {
    meaning.value = from;
    meaning.value.precision = P::day;
    meaning.value.day = 0;
    meaning.moves_talk = false;
    meaning.no_edtf = true;
  } else {
    meaning.moves_talk = false;
    if (setting_.prose && from.year <= 0) meaning.timex = "BCXXXX-XX-XX" + std::string(time.view());
  }
  meaning.value.time = time;
}

// later that month, earlier that year
Meaning Talk::within(const Spec& spec) const {
  Spec whole;
  whole.kind = Spec::Kind::relative;
  whole.unit = spec.unit;
  whole.following = Following::same;
  whole.date = spec.date;
  whole.speech = spec.speech;
  Meaning meaning = relative(whole);
  if (!meaning.value.year_known || spec.date.precision != P::none) return meaning;
  const auto& from = spec.speech ? speech_ : reference_;
  const bool later = spec.later == Later::after;
  if (from && spec.unit == Unit::month && is_day(*from)) {
    const Day first = to_day({from->year, from->month, 1}), day = day_of(*from);
    const Day last = first + (days_in_month(from->year, from->month) - 1);
    if (later && day < last) meaning.edtf = one_of_span(day_date(day + 1), day_date(last));
    if (!later && first < day) meaning.edtf = one_of_span(day_date(first), day_date(day - 1));
  } else if (from && spec.unit == Unit::year && has_month(*from)) {
    const auto month = [&](int number) { return std::get<EdtfDate>(edtf_month(from->year, number).value); };
    if (later)
      meaning.edtf = one_of_span(month(from->month), month(12));
    else
      meaning.edtf = one_of_span(month(1), month(from->month));
  }
  return meaning;
}

}  // namespace witnessmark::dates
