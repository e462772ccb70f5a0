#include "time/edtf/edtf_date_parser.h"

#include <fmt/format.h>

#include <optional>
#include <string>

#include "time/edtf/edtf_candidates.h"
#include "witnessmark/base/ascii.h"

namespace witnessmark {
namespace {

constexpr std::int64_t kLargestYear = 1'000'000'000'000'000;

std::optional<Qualifier> qualifier_of(char c) {
  switch (c) {
    case '?':
      return Qualifier{true, false};
    case '~':
      return Qualifier{false, true};
    case '%':
      return Qualifier{true, true};
    default:
      return std::nullopt;
  }
}

void add(Qualifier& to, Qualifier more) {
  to.uncertain = to.uncertain || more.uncertain;
  to.approximate = to.approximate || more.approximate;
}

/// Recursive descent over one date. Each step returns false after noting the fault.
class DateParser {
 public:
  DateParser(std::string_view text, std::size_t column_before) : text_(text), column_before_(column_before) {}

  Result<EdtfDate> parse(TimeOfDay time_of_day) {
    if (text_.empty()) return fault("a date is missing", "write a date such as 1951, 1951-06 or 1951-06-14");
    if (!parse_year() || !parse_month() || !parse_day() || !parse_time(time_of_day)) return error_;
    if (at_ < text_.size()) return unexpected();
    if (!candidate_span(date_, default_date_policy())) {
      return fault("there is no such day in the calendar", "check the day against the length of the month",
                   0);
    }
    return date_;
  }

 private:
  char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
  bool at_digit() const { return is_digit(peek()); }

  Error fault(std::string message, std::string advice) {
    return fault(std::move(message), std::move(advice), at_);
  }
  Error fault(std::string message, std::string advice, std::size_t at) {
    error_ = Error{};
    error_.column = static_cast<std::int64_t>(column_before_ + at) + 1;
    error_.message = std::move(message);
    error_.advice = std::move(advice);
    return error_;
  }
  bool fail(std::string message, std::string advice) {
    fault(std::move(message), std::move(advice));
    return false;
  }
  bool fail(std::string message, std::string advice, std::size_t at) {
    fault(std::move(message), std::move(advice), at);
    return false;
  }

  Error unexpected() {
    const char c = peek();
    if (c == ' ' || c == '\t') return fault("a space stands inside the expression", "leave out every space");
    if (c == '?' || c == '~' || c == '%') {
      return fault("a second sign follows the first",
                   "write one of `?` uncertain, `~` approximate, `%` both");
    }
    const bool plain = c > ' ' && c < '\x7f';
    return fault(plain ? fmt::format("`{}` is out of place", c) : "a character is out of place",
                 "a date is year, year-month or year-month-day, joined by `-`");
  }

  std::optional<Qualifier> take_qualifier() {
    const auto found = qualifier_of(peek());
    if (found) ++at_;
    return found;
  }

  void qualify_up_to_here(Qualifier qualifier) {
    add(date_.year.qualifier, qualifier);
    if (date_.month) add(date_.month->qualifier, qualifier);
    if (date_.day) add(date_.day->qualifier, qualifier);
  }

  bool parse_year() {
    if (const auto left = take_qualifier()) add(date_.year.qualifier, *left);
    const bool ok = peek() == 'Y' ? parse_long_year() : parse_four_digit_year();
    if (!ok || !parse_significant_digits()) return false;
    if (const auto right = take_qualifier()) qualify_up_to_here(*right);
    return true;
  }

  bool parse_four_digit_year() {
    const std::size_t start = at_;
    const bool negative = peek() == '-';
    if (negative) ++at_;
    const std::size_t digits_from = at_;
    while (at_digit() || peek() == 'X') ++at_;
    const std::string_view digits = text_.substr(digits_from, at_ - digits_from);
    if (digits.empty()) {
      unexpected();
      if (peek() == '\0') fault("a year is missing", "a year has four digits, such as 1951", start);
      if (peek() == '+') fault("a year has no plus sign", "leave out the `+`");
      return false;
    }
    if (digits.size() < 4) {
      return fail(fmt::format("the year has {} digits instead of four", digits.size()),
                  "write four digits; a decade is 195X, a century 19XX", start);
    }
    if (digits.size() > 4) {
      return fail("the year has more than four digits",
                  "join year, month and day by `-`; a year after 9999 begins with `Y`", start);
    }
    set_component(date_.year, digits);
    if (negative) {
      if (digits == "0000") return fail("there is no year -0000", "write 0000 for 1 BCE", start);
      if (date_.year.specified())
        date_.year.value = -date_.year.value;
      else {
        date_.year.value = -date_.year.value;
        date_.year.mask = EdtfMask(fmt::format("-{}", digits));
      }
    }
    return true;
  }

  bool parse_long_year() {
    const std::size_t start = at_++;
    const bool negative = peek() == '-';
    if (negative) ++at_;
    const std::size_t digits_from = at_;
    while (at_digit() || peek() == 'X') ++at_;
    const std::string digits(text_.substr(digits_from, at_ - digits_from));
    if (digits.empty() || digits.front() == '0' || digits.front() == 'X') {
      return fail("after `Y` comes a number without leading zero", "write a year such as Y17000 or Y-17E3",
                  start);
    }
    const bool masked = digits.find('X') != std::string::npos;
    std::int64_t value = 0;
    if (!read_number(digits, kLargestYear, value)) return too_large(start);
    if (peek() == 'E') {
      if (masked)
        return fail("a year with unspecified digits takes no power of ten", "write the year in full");
      if (!parse_exponent(value, start)) return false;
    }
    if (value < 10000) {
      return fail("`Y` is only for years of more than four digits",
                  "write the year with four digits, without `Y`", start);
    }
    date_.long_year = true;
    date_.year.value = negative ? -value : value;
    if (masked) date_.year.mask = EdtfMask((negative ? "-" : "") + digits);
    return true;
  }

  bool parse_exponent(std::int64_t& value, std::size_t start) {
    ++at_;
    int exponent = 0;
    if (!parse_positive("the power of ten", exponent)) return false;
    for (int i = 0; i < exponent; ++i) {
      value *= 10;
      if (value > kLargestYear) return too_large(start);
    }
    date_.exponent = exponent;
    return true;
  }

  bool too_large(std::size_t start) {
    return fail("the year is too large to compute with", "years go to 1E15 before and after the year 0",
                start);
  }

  bool parse_significant_digits() {
    if (peek() != 'S') return true;
    const std::size_t start = at_++;
    int significant = 0;
    if (!parse_positive("the number of significant digits", significant)) return false;
    if (!date_.year.specified()) {
      return fail("a year has either unspecified or significant digits", "leave out `S` or the `X`", start);
    }
    const std::int64_t magnitude = date_.year.value < 0 ? -date_.year.value : date_.year.value;
    const auto digits = static_cast<int>(std::to_string(magnitude).size());
    if (significant > digits) {
      return fail(fmt::format("the year has only {} significant digits", digits),
                  "write a smaller number after `S`", start);
    }
    date_.significant_digits = significant;
    return true;
  }

  /// A positive integer without leading zero.
  bool parse_positive(std::string_view what, int& value) {
    const std::size_t start = at_;
    while (at_digit()) ++at_;
    std::int64_t number = 0;
    const std::string digits(text_.substr(start, at_ - start));
    if (digits.empty() || digits.front() == '0' || !read_number(digits, 999, number)) {
      return fail(fmt::format("{} is not a positive number", what), "write a number such as 3", start);
    }
    value = static_cast<int>(number);
    return true;
  }

  /// X counts as 0. False when the number is over the limit.
  static bool read_number(std::string_view digits, std::int64_t limit, std::int64_t& value) {
    value = 0;
    for (const char c : digits) {
      value = value * 10 + (c == 'X' ? 0 : c - '0');
      if (value > limit) return false;
    }
    return true;
  }

  static void set_component(EdtfComponent& component, std::string_view digits) {
    read_number(digits, kLargestYear, component.value);
    if (digits.find('X') != std::string_view::npos) component.mask = EdtfMask(digits);
  }

  bool may_continue() {
    if (peek() != '-') return false;
    return !date_.long_year && !date_.significant_digits;
  }

  /// "-", an optional sign, two digits or X, an optional sign.
  bool parse_two_digits(std::optional<EdtfComponent>& component, std::string_view what) {
    ++at_;
    component.emplace();
    if (const auto left = take_qualifier()) add(component->qualifier, *left);
    const std::size_t start = at_;
    while (at_digit() || peek() == 'X') ++at_;
    if (at_ - start != 2) {
      const bool nothing = at_ == start;
      if (nothing && peek() != '\0' && peek() != '-') {
        unexpected();
        return false;
      }
      return fail(fmt::format("the {} must have two digits", what),
                  "write 01 to 12 for months, 01 to 31 for days", start);
    }
    set_component(*component, text_.substr(start, 2));
    if (!check_range(*component, what, start)) return false;
    if (const auto right = take_qualifier()) qualify_up_to_here(*right);
    return true;
  }

  bool check_range(const EdtfComponent& component, std::string_view what, std::size_t start) {
    const bool month = what == "month";
    const int last = month ? 12 : 31;
    for (int number = 1; number <= last; ++number) {
      if (two_digits_fit(component, number)) return true;
    }
    const bool season = month && component.specified() && component.value >= 21 && component.value <= 41;
    if (season) return true;
    if (month) {
      return fail(fmt::format("there is no month {}", text_.substr(start, 2)),
                  "months are 01 to 12, seasons and parts of a year 21 to 41", start);
    }
    return fail(fmt::format("there is no day {}", text_.substr(start, 2)), "days are 01 to 31", start);
  }

  bool parse_month() { return !may_continue() || parse_two_digits(date_.month, "month"); }

  bool parse_day() {
    if (!date_.month || peek() != '-') return true;
    if (date_.is_season()) return fail("a season has no day", "write a month from 01 to 12 before the day");
    return parse_two_digits(date_.day, "day");
  }

  bool parse_time(TimeOfDay time_of_day) {
    if (peek() != 'T') return true;
    if (time_of_day == TimeOfDay::refused) {
      return fail("intervals and sets hold dates without time of day", "leave out the time");
    }
    if (!date_.day) return fail("a time of day needs a whole date", "write year, month and day before `T`");
    const bool plain = date_.year.specified() && date_.month->specified() && date_.day->specified() &&
                       !date_.year.qualifier.any() && !date_.month->qualifier.any() &&
                       !date_.day->qualifier.any();
    if (!plain) {
      return fail("a date with a time of day has no signs and no unspecified digits",
                  "leave out the time or the signs");
    }
    ++at_;
    EdtfTime time;
    if (!parse_clock(time) || !parse_shift(time)) return false;
    if (time.second == 60 && !may_be_leap_second(time)) {
      return fail("there is no second 60 at that time", "a leap second is 23:59:60 UTC");
    }
    date_.time = time;
    return true;
  }

  bool take_two(int& value, int largest, std::string_view what) {
    const std::size_t start = at_;
    if (!is_digit(peek()) || !is_digit(peek(1)) || is_digit(peek(2))) {
      return fail(fmt::format("the {} must have two digits", what), "a time is hh:mm:ss, such as 23:20:30");
    }
    value = (peek() - '0') * 10 + (peek(1) - '0');
    at_ += 2;
    if (value <= largest) return true;
    return fail(fmt::format("there is no {} {:02}", what, value), fmt::format("write 00 to {}", largest),
                start);
  }

  bool take_colon() {
    if (peek() != ':') return fail("`:` is missing in the time", "a time is hh:mm:ss, such as 23:20:30");
    ++at_;
    return true;
  }

  bool parse_clock(EdtfTime& time) {
    const std::size_t start = at_;
    if (!take_two(time.hour, 24, "hour") || !take_colon() || !take_two(time.minute, 59, "minute") ||
        !take_colon() || !take_two(time.second, 60, "second")) {
      return false;
    }
    if (time.hour == 24 && (time.minute != 0 || time.second != 0)) {
      return fail("there is no hour 24", "write 00 to 23, or 24:00:00 for the end of the day", start);
    }
    if (peek() == '.' || peek() == ',') {
      return fail("EDTF has no fractions of a second", "leave out what follows the seconds");
    }
    return true;
  }

  bool parse_shift(EdtfTime& time) {
    const char sign = peek();
    if (sign == 'Z') {
      ++at_;
      time.shift_minutes = 0;
      time.shift_is_z = true;
      return true;
    }
    if (sign != '+' && sign != '-') {
      if (sign == 'z') return fail("`z` must be a capital letter", "write `Z`");
      return true;
    }
    const std::size_t start = at_++;
    int hours = 0;
    int minutes = 0;
    if (is_digit(peek(2))) {
      return fail("the time shift lacks its `:`", "write it as +hh:mm", start);
    }
    if (!take_two(hours, 23, "hour")) return false;
    if (peek() == ':') {
      ++at_;
      if (!take_two(minutes, 59, "minute")) return false;
      time.shift_has_minutes = true;
    }
    if (sign == '-' && hours == 0 && minutes == 0) {
      return fail("a time shift of zero has no minus sign", "write `Z` or `+00:00`", start);
    }
    const int shift = hours * 60 + minutes;
    time.shift_minutes = sign == '-' ? -shift : shift;
    return true;
  }

  static bool may_be_leap_second(const EdtfTime& time) {
    constexpr int kMinutesOfDay = 24 * 60;
    const int utc = time.hour * 60 + time.minute - time.shift_minutes.value_or(0);
    return (utc + 2 * kMinutesOfDay) % kMinutesOfDay == kMinutesOfDay - 1;
  }

  std::string_view text_;
  std::size_t column_before_;
  std::size_t at_ = 0;
  EdtfDate date_;
  Error error_;
};

}  // namespace

Result<EdtfDate> parse_edtf_date(std::string_view text, std::size_t column_before, TimeOfDay time_of_day) {
  return DateParser(text, column_before).parse(time_of_day);
}

}  // namespace witnessmark
