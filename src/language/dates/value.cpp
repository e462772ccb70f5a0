#include "language/dates/value.h"

#include <cstdio>

namespace witnessmark::dates {
namespace {

std::string padded(std::int64_t number, int width) {
  char buffer[32];
  std::snprintf(buffer, sizeof buffer, "%0*lld", width, static_cast<long long>(number));
  return buffer;
}

std::string year_timex(const DateValue& value) {
  if (!value.year_known) return "XXXX";
  if (value.year <= 0) return "BC" + padded(1 - value.year, 4);
  return padded(value.year, 4);
}

std::string long_timex(const DateValue& value) {
  const bool century = value.precision == DateValue::Precision::century;
  if (!value.year_known) return century ? "XXXX" : "XXXX";
  const std::int64_t counted = value.before_christ ? 1 - value.year : value.year;
  return (value.before_christ ? "BC" : "") + (century ? padded(counted / 100, 2) + "XX" : padded(counted / 10, 3) + "X");
}

}  // namespace

DateValue DateValue::of_year(std::int64_t year) {
  DateValue value;
  value.precision = Precision::year;
  value.year_known = true;
  value.year = year;
  return value;
}

DateValue DateValue::of_month(std::int64_t year, int month) {
  DateValue value = of_year(year);
  value.precision = Precision::month;
  value.month = month;
  return value;
}

DateValue DateValue::of_day(const CivilDate& date) {
  DateValue value = of_month(date.year, date.month);
  value.precision = Precision::day;
  value.day = date.day;
  return value;
}

DateValue DateValue::of_season(std::int64_t year, Season season) {
  DateValue value = of_year(year);
  value.precision = Precision::season;
  value.season = season;
  return value;
}

std::string to_timex(const DateValue& value) {
  using P = DateValue::Precision;
  switch (value.precision) {
    case P::none: return value.time.empty() ? "" : "XXXX-XX-XX" + value.time;
    case P::century: case P::decade: return long_timex(value);
    case P::year: return year_timex(value);
    case P::half: return year_timex(value) + "-H" + std::to_string(value.half);
    case P::quarter: return year_timex(value) + "-Q" + std::to_string(value.half);
    case P::season: return year_timex(value) + "-" + std::string(season_code(value.season));
    case P::month: return year_timex(value) + "-" + (value.month ? padded(value.month, 2) : "XX");
    case P::week: return year_timex(value) + "-WXX";
    case P::day: break;
  }
  if (value.weekday && !value.day) return "XXXX-WXX-" + std::to_string(value.weekday) + value.time;
  return year_timex(value) + "-" + (value.month ? padded(value.month, 2) : "XX") + "-" +
         (value.day ? padded(value.day, 2) : "XX") + value.time;
}

std::optional<Edtf> to_edtf(const DateValue& value, bool approximate) {
  using P = DateValue::Precision;
  if (!value.year_known) return std::nullopt;
  EdtfDate date;
  date.year.value = value.year;
  const auto part = [](int number) {
    EdtfComponent component;
    component.value = number;
    return component;
  };
  switch (value.precision) {
    case P::none: case P::week: return std::nullopt;
    case P::century: case P::decade: {
      if (value.before_christ || value.year < 0 || value.year > 9999) return std::nullopt;
      const auto width = value.precision == P::century ? 100 : 10;
      const auto shown = padded(value.year / width, value.precision == P::century ? 2 : 3);
      date.year.value = value.year / width * width;
      date.year.mask = shown + (value.precision == P::century ? "XX" : "X");
      break;
    }
    case P::year: break;
    case P::half: date.month = part(39 + value.half); break;
    case P::quarter: date.month = part(32 + value.half); break;
    case P::season: date.month = part(20 + static_cast<int>(value.season)); break;
    case P::month:
      if (!value.month) return std::nullopt;
      date.month = part(value.month);
      break;
    case P::day:
      if (!value.month) return std::nullopt;
      date.month = part(value.month);
      if (value.day) date.day = part(value.day);   // A day of a known month: the month is what can be said.
      break;
  }
  if (approximate) {
    date.year.qualifier.approximate = true;
    if (date.month) date.month->qualifier.approximate = true;
    if (date.day) date.day->qualifier.approximate = true;
  }
  date.long_year = value.year > 9999 || value.year < -9999;
  return Edtf{date};
}

std::optional<DateValue> from_edtf(const Edtf& edtf) {
  const EdtfDate* date = std::get_if<EdtfDate>(&edtf.value);
  if (const auto* interval = std::get_if<EdtfInterval>(&edtf.value)) {
    date = std::get_if<EdtfDate>(&interval->begin);
    if (!date) date = std::get_if<EdtfDate>(&interval->end);
  } else if (const auto* set = std::get_if<EdtfSet>(&edtf.value); set && !set->elements.empty()) {
    const auto& element = set->elements.front();
    if (element.first) date = &*element.first;
    else if (element.last) date = &*element.last;
  }
  if (!date || date->long_year || date->significant_digits) return std::nullopt;
  DateValue value = DateValue::of_year(date->year.value);
  if (!date->year.specified()) {
    const auto first_x = date->year.mask.find('X');
    if (first_x == 3) value.precision = DateValue::Precision::decade;
    else if (first_x == 2) value.precision = DateValue::Precision::century;
    else return std::nullopt;
    return value;
  }
  if (!date->month || !date->month->specified()) return value;
  const int month = static_cast<int>(date->month->value);
  if (month <= 12) value.precision = DateValue::Precision::month, value.month = month;
  else if (month <= 32) value.precision = DateValue::Precision::season, value.season = static_cast<Season>((month - 21) % 4 + 1);
  else return value;
  if (date->day && date->day->specified() && month <= 12) {
    value.precision = DateValue::Precision::day;
    value.day = static_cast<int>(date->day->value);
  }
  return value;
}

Day first_day(const DateValue& value) {
  using P = DateValue::Precision;
  int month = 1;
  if (value.precision == P::season) month = static_cast<int>(value.season) * 3;
  else if (value.precision == P::half) month = value.half * 6 - 5;
  else if (value.precision == P::quarter) month = value.half * 3 - 2;
  else if (value.month) month = value.month;
  return to_day({value.year, month, value.day ? value.day : 1});
}

std::string duration_timex(std::int64_t count, bool vague, bool half, Unit unit) {
  static constexpr const char* kLetters[] = {"S", "M", "H", "D", "W", "D", "W", "M", "Y", "DE", "CE"};
  if (unit == Unit::fortnight) count *= 2;
  if (unit == Unit::weekend) count *= 2;
  std::string number = vague ? "X" : std::to_string(count);
  if (half && !vague) number = count ? number + ".5" : ".5";
  return (unit <= Unit::hour ? "PT" : "P") + number + kLetters[static_cast<int>(unit)];
}

}  // namespace witnessmark::dates
