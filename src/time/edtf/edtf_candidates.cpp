// What a date with unspecified digits can mean. A month and day that exist in every year decide nothing about
// the year; only when 29 February is the one day left must the year be a leap year. Whether a year is a leap
// year depends on its last four digits alone (10000 is a multiple of 400).
#include "time/edtf/edtf_candidates.h"

#include <algorithm>
#include <string>

namespace witnessmark {
namespace {

bool digit_fits(char mask, std::int64_t digit) {
  return mask == 'X' || mask == static_cast<char>('0' + digit);
}

std::pair<std::int64_t, std::int64_t> significant_years(std::int64_t year, int significant) {
  const std::int64_t magnitude = year < 0 ? -year : year;
  int digits = 1;
  for (std::int64_t rest = magnitude; rest >= 10; rest /= 10) ++digits;
  std::int64_t unit = 1;
  for (int i = significant; i < digits; ++i) unit *= 10;
  const std::int64_t low = magnitude / unit * unit;
  const std::int64_t high = low + unit - 1;
  return year < 0 ? std::pair{-high, -low} : std::pair{low, high};
}

/// The years a date can mean, counted from the earliest without making a list of them.
class YearSequence {
 public:
  explicit YearSequence(const EdtfDate& date) : value_(date.year.value) {
    if (date.significant_digits) {
      const auto [low, high] = significant_years(value_, *date.significant_digits);
      value_ = low;
      count_ = high - low + 1;
    } else if (!date.year.specified()) {
      mask_ = date.year.mask.view();
      for (const char c : mask_) count_ *= c == 'X' ? 10 : 1;
    }
  }

  std::int64_t count() const { return count_; }

  /// Nothing for the -0000 that a mask may allow.
  std::optional<std::int64_t> at(std::int64_t index) const {
    if (mask_.empty()) return value_ + index;
    const bool negative = mask_.front() == '-';
    std::int64_t filling = negative ? count_ - 1 - index : index;
    std::int64_t magnitude = 0;
    std::int64_t place = 1;
    for (auto digit = mask_.rbegin(); digit != mask_.rend() && *digit != '-'; ++digit, place *= 10) {
      if (*digit == 'X') {
        magnitude += filling % 10 * place;
        filling /= 10;
      } else {
        magnitude += (*digit - '0') * place;
      }
    }
    if (negative && magnitude == 0) return std::nullopt;
    return negative ? -magnitude : magnitude;
  }

 private:
  std::int64_t value_;
  std::int64_t count_ = 1;
  std::string mask_;
};

/// The first or last year; when leap_only, the first or last leap year. The last four digits run through all
/// they can be within 10000 years of the sequence.
std::optional<std::int64_t> edge_year(const EdtfDate& date, bool latest, bool leap_only) {
  constexpr std::int64_t kEnough = 10000;
  const YearSequence years(date);
  for (std::int64_t i = 0; i < std::min(years.count(), kEnough); ++i) {
    const auto year = years.at(latest ? years.count() - 1 - i : i);
    if (year && (!leap_only || is_leap_year(*year))) return year;
  }
  return std::nullopt;
}

DayRange month_range(std::int64_t year, int month) {
  const Day first = to_day({year, month, 1});
  return {first, first + days_in_month(year, month)};
}

DayRange year_range(std::int64_t year) {
  return {to_day({year, 1, 1}), to_day({year + 1, 1, 1})};
}

/// All meanings within one year, in order.
std::vector<DayRange> ranges_in_year(const EdtfDate& date, std::int64_t year, const DatePolicy& policy) {
  if (!date.month) return {year_range(year)};
  if (date.is_season()) return {season_range(year, static_cast<int>(date.month->value), policy)};
  std::vector<DayRange> ranges;
  for (int month = 1; month <= 12; ++month) {
    if (!two_digits_fit(*date.month, month)) continue;
    if (!date.day) {
      ranges.push_back(month_range(year, month));
      continue;
    }
    for (int day = 1; day <= days_in_month(year, month); ++day) {
      if (!two_digits_fit(*date.day, day)) continue;
      const Day found = to_day({year, month, day});
      ranges.push_back({found, found + 1});
    }
  }
  return ranges;
}

std::optional<std::vector<DayRange>> ranges_of_edge_year(const EdtfDate& date, bool latest,
                                                         const DatePolicy& policy) {
  for (const bool leap_only : {false, true}) {
    const auto year = edge_year(date, latest, leap_only);
    if (!year) continue;
    auto ranges = ranges_in_year(date, *year, policy);
    if (!ranges.empty()) return ranges;
  }
  return std::nullopt;
}

}  // namespace

bool two_digits_fit(const EdtfComponent& component, int number) {
  if (component.specified()) return component.value == number;
  return digit_fits(component.mask.view()[0], number / 10) &&
         digit_fits(component.mask.view()[1], number % 10);
}

std::pair<int, int> season_family(int code) {
  if (code >= 40) return {40, 41};
  if (code >= 37) return {37, 39};
  const int first = 21 + (code - 21) / 4 * 4;
  return {first, first + 3};
}

DayRange season_range(std::int64_t year, int code, const DatePolicy& policy) {
  const auto [family_first, family_last] = season_family(code);
  int month = 1;
  int length = 12 / (family_last - family_first + 1);
  if (code <= 32) {
    const bool southern =
        (code >= 29) || (code <= 24 && policy.hemisphere == DatePolicy::Hemisphere::southern);
    const int season = code - family_first;
    month = policy.season_begins[static_cast<std::size_t>(southern ? (season + 2) % 4 : season)];
    length = 3;
    // The season that runs over the end of the year is named after one of its two years.
    if (month + length > 13 && policy.winter_begins_year_before) --year;
  } else {
    month = (code - family_first) * length + 1;
  }
  const CivilDate first{year, month, 1};
  return {to_day(first), to_day(add_months(first, length))};
}

namespace {

/// The days of a date of which every digit is known, if there are such days.
std::optional<DayRange> plain_range(const EdtfDate& date, const DatePolicy& policy) {
  const std::int64_t year = date.year.value;
  if (!date.year.specified() || date.significant_digits) return std::nullopt;
  if (!date.month) return year_range(year);
  if (date.is_season()) return season_range(year, static_cast<int>(date.month->value), policy);
  if (!date.month->specified() || date.month->value < 1 || date.month->value > 12) return std::nullopt;
  const int month = static_cast<int>(date.month->value);
  if (!date.day) return month_range(year, month);
  if (!date.day->specified() || date.day->value < 1 || date.day->value > days_in_month(year, month)) return std::nullopt;
  const Day day = to_day({year, month, static_cast<int>(date.day->value)});
  return DayRange{day, day + 1};
}

}  // namespace

std::optional<CandidateSpan> candidate_span(const EdtfDate& date, const DatePolicy& policy) {
  if (const auto plain = plain_range(date, policy)) return CandidateSpan{*plain, *plain};
  const auto first = ranges_of_edge_year(date, false, policy);
  const auto last = ranges_of_edge_year(date, true, policy);
  if (!first || !last) return std::nullopt;
  return CandidateSpan{first->front(), last->back()};
}

std::optional<std::vector<DayRange>> candidate_ranges(const EdtfDate& date, const DatePolicy& policy,
                                                      std::size_t limit) {
  std::vector<DayRange> found;
  const YearSequence years(date);
  for (std::int64_t i = 0; i < years.count(); ++i) {
    const auto year = years.at(i);
    if (!year) continue;
    for (const DayRange& range : ranges_in_year(date, *year, policy)) {
      if (found.size() == limit) return std::nullopt;
      found.push_back(range);
    }
  }
  return found;
}

EdtfDate next_unit(const EdtfDate& date) {
  EdtfDate next = date;
  if (date.day) {
    const Day day =
        to_day({date.year.value, static_cast<int>(date.month->value), static_cast<int>(date.day->value)});
    const CivilDate civil = to_civil(day + 1);
    next.year.value = civil.year;
    next.month->value = civil.month;
    next.day->value = civil.day;
  } else if (date.month) {
    const int code = static_cast<int>(date.month->value);
    const auto [first, last] = date.is_season() ? season_family(code) : std::pair{1, 12};
    next.month->value = code == last ? first : code + 1;
    if (code == last) ++next.year.value;
  } else {
    ++next.year.value;
  }
  return next;
}

}  // namespace witnessmark
