#include "witnessmark/time/edtf.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

namespace witnessmark {
namespace {

std::string sign_of(Qualifier qualifier) {
  if (qualifier.uncertain) return qualifier.approximate ? "%" : "?";
  return qualifier.approximate ? "~" : "";
}

std::string year_digits(const EdtfDate& date) {
  const EdtfComponent& year = date.year;
  const bool negative = year.value < 0;
  std::int64_t magnitude = negative ? -year.value : year.value;
  std::string text;
  if (date.long_year || magnitude > 9999) {
    text = "Y";
    if (!year.specified()) {
      text += year.mask.view();
    } else if (date.exponent) {
      for (int i = 0; i < *date.exponent; ++i) magnitude /= 10;
      text += fmt::format("{}{}E{}", negative ? "-" : "", magnitude, *date.exponent);
    } else {
      text += std::to_string(year.value);
    }
  } else {
    if (!year.specified()) {
      text = year.mask.view();
    } else {
      if (negative) text += '-';
      for (const int place : {1000, 100, 10, 1}) text += static_cast<char>('0' + magnitude / place % 10);
    }
  }
  if (date.significant_digits) text += fmt::format("S{}", *date.significant_digits);
  return text;
}

std::string two_digits(const EdtfComponent& component) {
  if (!component.specified()) return std::string(component.mask.view());
  if (component.value < 0 || component.value > 99) return fmt::format("{:02}", component.value);
  return {static_cast<char>('0' + component.value / 10), static_cast<char>('0' + component.value % 10)};
}

std::string time_text(const EdtfTime& time) {
  std::string text = fmt::format("T{:02}:{:02}:{:02}", time.hour, time.minute, time.second);
  if (!time.shift_minutes) return text;
  if (time.shift_is_z) return text + "Z";
  const int shift = std::abs(*time.shift_minutes);
  text += fmt::format("{}{:02}", *time.shift_minutes < 0 ? "-" : "+", shift / 60);
  if (time.shift_has_minutes || shift % 60 != 0) text += fmt::format(":{:02}", shift % 60);
  return text;
}

std::string end_text(const EdtfEnd& end) {
  if (const auto* date = std::get_if<EdtfDate>(&end)) return to_string(*date);
  return std::holds_alternative<EdtfOpen>(end) ? ".." : "";
}

std::string element_text(const EdtfSetElement& element) {
  const std::string first = element.first ? to_string(*element.first) : "";
  if (!element.is_span) return first;
  return first + ".." + (element.last ? to_string(*element.last) : "");
}

/// Level 1 has X only for one or two digits of a lone year, the whole month, the whole day, or both.
int unspecified_level(const EdtfDate& date) {
  const std::string_view year = date.year.mask.view();
  const bool month = date.month && !date.month->specified();
  const bool day = date.day && !date.day->specified();
  if (year.empty() && !month && !day) return 0;
  if (!year.empty()) {
    if (date.month || date.long_year) return 2;
    const auto count = std::count(year.begin(), year.end(), 'X');
    const bool rightmost = year.find('X') == year.size() - static_cast<std::size_t>(count);
    return count <= 2 && rightmost ? 1 : 2;
  }
  if (month && date.month->mask.view() != "XX") return 2;
  if (day && date.day->mask.view() != "XX") return 2;
  return date.day && month && !day ? 2 : 1;
}

int qualifier_level(const EdtfDate& date) {
  const Qualifier year = date.year.qualifier;
  const Qualifier month = date.month ? date.month->qualifier : year;
  const Qualifier day = date.day ? date.day->qualifier : year;
  if (year == month && year == day) return year.any() ? 1 : 0;
  return 2;
}

int date_level(const EdtfDate& date) {
  int level = std::max(unspecified_level(date), qualifier_level(date));
  if (date.exponent || date.significant_digits) return 2;
  if (date.is_season()) level = std::max(level, date.month->value <= 24 ? 1 : 2);
  const bool negative =
      date.year.value < 0 || (!date.year.specified() && date.year.mask.view().front() == '-');
  if (date.long_year || negative) level = std::max(level, 1);
  return level;
}

int end_level(const EdtfEnd& end) {
  const auto* date = std::get_if<EdtfDate>(&end);
  if (date == nullptr) return 1;
  return unspecified_level(*date) > 0 ? 2 : date_level(*date);
}

}  // namespace

// Canonical signs: the leading components that share the year's sign carry it once, to the right of the last
// of them; every later component carries its own on its left.
std::string to_string(const EdtfDate& date) {
  const Qualifier year = date.year.qualifier;
  const bool month_shares = date.month && date.month->qualifier == year;
  const bool day_shares = month_shares && date.day && date.day->qualifier == year;
  std::string text = year_digits(date);
  if (!month_shares) text += sign_of(year);
  if (date.month) {
    text += "-" + (month_shares ? "" : sign_of(date.month->qualifier)) + two_digits(*date.month);
    if (month_shares && !day_shares) text += sign_of(year);
  }
  if (date.day) {
    text += "-" + (day_shares ? "" : sign_of(date.day->qualifier)) + two_digits(*date.day);
    if (day_shares) text += sign_of(year);
  }
  if (date.time) text += time_text(*date.time);
  return text;
}

std::string to_string(const Edtf& value) {
  if (const auto* date = std::get_if<EdtfDate>(&value.value)) return to_string(*date);
  if (const auto* interval = std::get_if<EdtfInterval>(&value.value)) {
    return end_text(interval->begin) + "/" + end_text(interval->end);
  }
  const auto& set = std::get<EdtfSet>(value.value);
  std::string text;
  for (const EdtfSetElement& element : set.elements)
    text += (text.empty() ? "" : ",") + element_text(element);
  return set.kind == EdtfSet::Kind::one_of ? "[" + text + "]" : "{" + text + "}";
}

int edtf_level(const Edtf& value) {
  if (const auto* date = std::get_if<EdtfDate>(&value.value)) return date_level(*date);
  if (const auto* interval = std::get_if<EdtfInterval>(&value.value)) {
    return std::max(end_level(interval->begin), end_level(interval->end));
  }
  return 2;
}

Edtf edtf_year(std::int64_t year) {
  EdtfDate date;
  date.year.value = year;
  date.long_year = year > 9999 || year < -9999;
  return {date};
}

Edtf edtf_month(std::int64_t year, int month) {
  EdtfDate date;
  date.year.value = year;
  date.month.emplace().value = month;
  return {date};
}

Edtf edtf_day(std::int64_t year, int month, int day) {
  EdtfDate date;
  date.year.value = year;
  date.month.emplace().value = month;
  date.day.emplace().value = day;
  return {date};
}

}  // namespace witnessmark
