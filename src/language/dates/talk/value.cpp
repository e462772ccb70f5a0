#include "language/dates/talk/value.h"

namespace witnessmark::dates {
namespace {

using P = DateValue::Precision;

void append_year(ShortText& text, const DateValue& value) {
  if (!value.year_known) {
    text += "XXXX";
  } else if (value.year <= 0) {
    text += "BC";
    text.append_number(1 - value.year, 4);
  } else {
    text.append_number(value.year, 4);
  }
}

void append_two(ShortText& text, int number) {
  if (number == 0)
    text += "XX";
  else
    text.append_number(number, 2);
}

ShortText long_timex(const DateValue& value) {
  if (!value.year_known) return "XXXX";
  const bool century = value.precision == DateValue::Precision::century;
  const std::int64_t counted = value.before_christ ? 1 - value.year : value.year;
  ShortText text = value.before_christ ? "BC" : "";
  text.append_number(counted / (century ? 100 : 10), century ? 2 : 3);
  text += century ? "XX" : "X";
  return text;
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

ShortText to_timex(const DateValue& value) {
  ShortText text;
  if (value.precision == P::none) {
    if (!value.time.empty()) text = "XXXX-XX-XX", text += value.time;
    return text;
  }
  if (value.precision == P::century || value.precision == P::decade) return long_timex(value);
  if (value.precision == P::day && value.weekday && !value.day) {
    text = "XXXX-WXX-";
    text.append_number(value.weekday, 1);
    text += value.time;
    return text;
  }
  append_year(text, value);
  if (value.precision == P::year) return text;
  text += '-';
  switch (value.precision) {
    case P::half:
      text += 'H', text.append_number(value.half, 1);
      break;
    case P::quarter:
      text += 'Q', text.append_number(value.half, 1);
      break;
    case P::season:
      text += season_code(value.season);
      break;
    case P::month:
      append_two(text, value.month);
      break;
    case P::week:
      text += "WXX";
      break;
    default:
      append_two(text, value.month);
      text += '-';
      append_two(text, value.day);
      text += value.time;
  }
  return text;
}

void put_edtf(const DateValue& value, bool approximate, std::optional<Edtf>& out) {
  out.reset();
  if (!value.year_known || value.precision == P::none || value.precision == P::week) return;
  if (value.precision >= P::month && !value.month) return;
  const bool long_unit = value.precision == P::century || value.precision == P::decade;
  if (long_unit && (value.before_christ || value.year < 0 || value.year > 9999)) return;
  auto& date = std::get<EdtfDate>(out.emplace().value);
  date.year.value = value.year;
  const auto part = [](int number) {
    EdtfComponent component;
    component.value = number;
    return component;
  };
  switch (value.precision) {
    case P::none:
    case P::week:
    case P::year:
      break;
    case P::century:
    case P::decade: {
      const auto width = value.precision == P::century ? 100 : 10;
      ShortText shown;
      shown.append_number(value.year / width, value.precision == P::century ? 2 : 3);
      shown += value.precision == P::century ? "XX" : "X";
      date.year.value = value.year / width * width;
      date.year.mask = EdtfMask(shown.view());
      break;
    }
    case P::half:
      date.month = part(39 + value.half);
      break;
    case P::quarter:
      date.month = part(32 + value.half);
      break;
    case P::season:
      date.month = part(20 + static_cast<int>(value.season));
      break;
    case P::month:
      date.month = part(value.month);
      break;
    case P::day:
      date.month = part(value.month);
      if (value.day) date.day = part(value.day);  // A day of a known month: the month is what can be said.
      break;
  }
  if (approximate) {
    date.year.qualifier.approximate = true;
    if (date.month) date.month->qualifier.approximate = true;
    if (date.day) date.day->qualifier.approximate = true;
  }
  date.long_year = value.year > 9999 || value.year < -9999;
}

std::optional<Edtf> to_edtf(const DateValue& value, bool approximate) {
  std::optional<Edtf> edtf;
  put_edtf(value, approximate, edtf);
  return edtf;
}

std::optional<DateValue> from_edtf(const Edtf& edtf) {
  const EdtfDate* date = std::get_if<EdtfDate>(&edtf.value);
  if (const auto* interval = std::get_if<EdtfInterval>(&edtf.value)) {
    date = std::get_if<EdtfDate>(&interval->begin);
    if (!date) date = std::get_if<EdtfDate>(&interval->end);
  } else if (const auto* set = std::get_if<EdtfSet>(&edtf.value); set && !set->elements.empty()) {
    const auto& element = set->elements.front();
    if (element.first)
      date = &*element.first;
    else if (element.last)
      date = &*element.last;
  }
  if (!date || date->long_year || date->significant_digits) return std::nullopt;
  DateValue value = DateValue::of_year(date->year.value);
  if (!date->year.specified()) {
    const auto first_x = date->year.mask.view().find('X');
    if (first_x == 3)
      value.precision = DateValue::Precision::decade;
    else if (first_x == 2)
      value.precision = DateValue::Precision::century;
    else
      return std::nullopt;
    return value;
  }
  if (!date->month || !date->month->specified()) return value;
  const int month = static_cast<int>(date->month->value);
  if (month <= 12)
    value.precision = DateValue::Precision::month, value.month = month;
  else if (month <= 32)
    value.precision = DateValue::Precision::season, value.season = static_cast<Season>((month - 21) % 4 + 1);
  else
    return value;
  if (date->day && date->day->specified() && month <= 12) {
    value.precision = DateValue::Precision::day;
    value.day = static_cast<int>(date->day->value);
  }
  return value;
}

Day first_day(const DateValue& value) {
  int month = 1;
  if (value.precision == P::season)
    month = static_cast<int>(value.season) * 3;
  else if (value.precision == P::half)
    month = value.half * 6 - 5;
  else if (value.precision == P::quarter)
    month = value.half * 3 - 2;
  else if (value.month)
    month = value.month;
  return to_day({value.year, month, value.day ? value.day : 1});
}

ShortText duration_timex(std::int64_t count, bool vague, bool half, Unit unit) {
  static constexpr const char* kLetters[] = {"S", "M", "H", "D", "W", "D", "W", "M", "Y", "DE", "CE"};
  if ((unit == Unit::fortnight || unit == Unit::weekend) && count < 1'000'000) count *= 2;
  ShortText text = unit <= Unit::hour ? "PT" : "P";
  if (vague) {
    text += 'X';
  } else {
    if (!half || count) text.append_number(count, 1);
    if (half) text += ".5";
  }
  text += kLetters[static_cast<int>(unit)];
  return text;
}

}  // namespace witnessmark::dates
