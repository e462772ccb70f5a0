#include "language/dates/words/named_days.h"

#include <array>
#include <charconv>
#include <vector>

namespace witnessmark::dates {
namespace {

std::int64_t floor_mod(std::int64_t a, std::int64_t b) {
  return ((a % b) + b) % b;
}
std::int64_t floor_div(std::int64_t a, std::int64_t b) {
  return (a - floor_mod(a, b)) / b;
}

constexpr std::array<std::string_view, 7> kWeekdays{"monday", "tuesday",  "wednesday", "thursday",
                                                    "friday", "saturday", "sunday"};

int weekday_number(std::string_view name) {
  for (std::size_t i = 0; i < kWeekdays.size(); ++i)
    if (kWeekdays[i] == name) return static_cast<int>(i) + 1;
  return 0;
}

std::vector<std::string_view> split_spaces(std::string_view text) {
  std::vector<std::string_view> parts;
  std::size_t begin = 0;
  while (begin < text.size()) {
    const auto space = text.find(' ', begin);
    const auto end = space == std::string_view::npos ? text.size() : space;
    if (end > begin) parts.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return parts;
}

bool read_int(std::string_view text, int& out) {
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), out);
  return fault == std::errc{} && end == text.data() + text.size() && !text.empty();
}

bool read_month_day(std::string_view text, int& month, int& day) {
  return text.size() == 5 && text[2] == '-' && read_int(text.substr(0, 2), month) &&
         read_int(text.substr(3, 2), day) && month >= 1 && month <= 12 && day >= 1 &&
         day <= days_in_month(2000, month);
}

Error unknown_rule(std::string_view rule) {
  return {"", 0, 0, "the rule \"" + std::string(rule) + "\" is not one of the known forms",
          "write MM-DD, easter+N, orthodox+N, 'N WEEKDAY of MM', 'last WEEKDAY of MM', 'WEEKDAY on or after "
          "MM-DD' or YYYY-MM-DD; rules of former years before it as 'RULE until YYYY; '"};
}

bool parse_from_easter(std::string_view rule, std::string_view word, NamedDay& named) {
  if (rule.substr(0, word.size()) != word) return false;
  auto rest = rule.substr(word.size());
  named.offset = 0;
  if (rest.empty()) return true;
  if (rest[0] != '+' && rest[0] != '-') return false;
  int days = 0;
  if (!read_int(rest.substr(1), days) || days > 300) return false;
  named.offset = rest[0] == '-' ? -days : days;
  return true;
}

bool parse_weekday_rule(std::string_view rule, NamedDay& named) {
  const auto parts = split_spaces(rule);
  if (parts.size() == 4 && parts[2] == "of") {  // "2 sunday of 11", "last monday of 5"
    named.kind = NamedDay::Kind::nth_weekday;
    named.weekday = weekday_number(parts[1]);
    if (parts[0] == "last")
      named.offset = -1;
    else if (!read_int(parts[0], named.offset) || named.offset < 1 || named.offset > 4)
      return false;
    return named.weekday != 0 && read_int(parts[3], named.month) && named.month >= 1 && named.month <= 12;
  }
  if (parts.size() == 5 && parts[1] == "on" && parts[2] == "or") {  // "sunday on or after 11-27"
    named.kind = NamedDay::Kind::weekday_from;
    named.weekday = weekday_number(parts[0]);
    if (parts[3] != "after" && parts[3] != "before") return false;
    named.offset = parts[3] == "after" ? 1 : -1;
    return named.weekday != 0 && read_month_day(parts[4], named.month, named.day);
  }
  return false;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

/// The rule in force that year.
const NamedDay& in_force(const NamedDay& named, std::int64_t year) {
  for (const auto& rule : named.earlier)
    if (year <= rule.until) return rule;
  return named;
}

Result<NamedDay> parse_one_rule(std::string_view rule) {
  NamedDay named;
  named.kind = NamedDay::Kind::easter;
  if (parse_from_easter(rule, "easter", named)) return named;
  named.kind = NamedDay::Kind::orthodox_easter;
  if (parse_from_easter(rule, "orthodox", named)) return named;
  const auto part = rule.find('T');
  if (part != std::string_view::npos) {
    named.part = std::string(rule.substr(part));
    rule = rule.substr(0, part);
  }
  named.kind = NamedDay::Kind::fixed;
  if (read_month_day(rule, named.month, named.day)) return named;
  named.kind = NamedDay::Kind::once;
  int year = 0;
  if (rule.size() == 10 && rule[4] == '-' && read_int(rule.substr(0, 4), year) &&
      read_month_day(rule.substr(5), named.month, named.day) &&
      named.day <= days_in_month(year, named.month)) {
    named.year = year;
    return named;
  }
  if (parse_weekday_rule(rule, named)) return named;
  return unknown_rule(rule);
}

/// RULE [or RULE]
Result<NamedDay> parse_rules_of_one_time(std::string_view text) {
  constexpr std::string_view kOr = " or ";
  const auto at = text.find(kOr);
  const auto word = at == std::string_view::npos ? at : at + kOr.size();
  const bool within_rule = word != std::string_view::npos &&
                           (text.substr(word, 6) == "after " || text.substr(word, 7) == "before ");
  if (at == std::string_view::npos || within_rule) return parse_one_rule(text);
  auto named = parse_one_rule(text.substr(0, at));
  if (!named) return named;
  auto other = parse_rules_of_one_time(text.substr(at + kOr.size()));
  if (!other) return other;
  auto more = std::move(other.value().also);
  other.value().also.clear();
  named.value().also.push_back(std::move(other).value());
  for (auto& rule : more) named.value().also.push_back(std::move(rule));
  return named;
}

/// RULE until YYYY
Result<NamedDay> parse_former_rule(std::string_view text) {
  constexpr std::string_view kUntil = " until ";
  const auto at = text.rfind(kUntil);
  int year = 0;
  if (at == std::string_view::npos || !read_int(text.substr(at + kUntil.size()), year))
    return Error{"", 0, 0, "the rule \"" + std::string(text) + "\" does not say until when it held",
                 "write the last year behind it: 05-30 until 1970; last monday of 5"};
  auto named = parse_rules_of_one_time(text.substr(0, at));
  if (named) named.value().until = year;
  return named;
}

}  // namespace

Result<NamedDay> parse_named_day(std::string_view rule) {
  std::vector<NamedDay> earlier;
  for (auto sign = rule.find(';'); sign != std::string_view::npos; sign = rule.find(';')) {
    auto former = parse_former_rule(trimmed(rule.substr(0, sign)));
    if (!former) return former;
    earlier.push_back(std::move(former).value());
    rule = trimmed(rule.substr(sign + 1));
  }
  auto named = parse_rules_of_one_time(rule);
  if (named) named.value().earlier = std::move(earlier);
  return named;
}

std::vector<Day> other_days_in_year(const NamedDay& named, std::int64_t year) {
  std::vector<Day> days;
  for (const auto& rule : in_force(named, year).also) days.push_back(day_in_year(rule, year));
  return days;
}

Day day_in_year(const NamedDay& all_years, std::int64_t year) {
  const auto& named = in_force(all_years, year);
  switch (named.kind) {
    case NamedDay::Kind::fixed:
      return to_day({year, named.month, std::min(named.day, days_in_month(year, named.month))});
    case NamedDay::Kind::once:
      return to_day({named.year, named.month, named.day});
    case NamedDay::Kind::easter:
      return to_day(gregorian_easter(year)) + named.offset;
    case NamedDay::Kind::orthodox_easter:
      return to_day(orthodox_easter(year)) + named.offset;
    case NamedDay::Kind::nth_weekday: {
      if (named.offset < 0) {
        const Day last = to_day({year, named.month, days_in_month(year, named.month)});
        return last - (iso_weekday(last) - named.weekday + 7) % 7;
      }
      const Day first = to_day({year, named.month, 1});
      return first + (named.weekday - iso_weekday(first) + 7) % 7 + 7 * (named.offset - 1);
    }
    case NamedDay::Kind::weekday_from: {
      const Day from = to_day({year, named.month, named.day});
      if (named.offset > 0) return from + (named.weekday - iso_weekday(from) + 7) % 7;
      return from - (iso_weekday(from) - named.weekday + 7) % 7;
    }
  }
  return {};
}

CivilDate gregorian_easter(std::int64_t year) {
  const auto a = floor_mod(year, 19), b = floor_div(year, 100), c = floor_mod(year, 100);
  const auto d = floor_div(b, 4), e = floor_mod(b, 4), f = floor_div(b + 8, 25), g = floor_div(b - f + 1, 3);
  const auto h = floor_mod(19 * a + b - d - g + 15, 30), i = c / 4, k = c % 4;
  const auto l = floor_mod(32 + 2 * e + 2 * i - h - k, 7), m = (a + 11 * h + 22 * l) / 451;
  const auto n = h + l - 7 * m + 114;
  return {year, static_cast<int>(n / 31), static_cast<int>(n % 31 + 1)};
}

CivilDate orthodox_easter(std::int64_t year) {
  const auto a = floor_mod(year, 4), b = floor_mod(year, 7), c = floor_mod(year, 19);
  const auto d = floor_mod(19 * c + 15, 30), e = floor_mod(2 * a + 4 * b - d + 34, 7);
  const auto n = d + e + 114;
  // Julian to Gregorian: the days by which the calendars differ in that century (from March on).
  const auto shift = floor_div(year, 100) - floor_div(year, 400) - 2;
  return to_civil(to_day({year, static_cast<int>(n / 31), static_cast<int>(n % 31 + 1)}) + shift);
}

}  // namespace witnessmark::dates
