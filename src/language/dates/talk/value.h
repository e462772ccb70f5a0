#pragma once
#include <cstdint>
#include <optional>
#include <string>

#include "language/dates/words/short_text.h"
#include "language/dates/words/words.h"
#include "witnessmark/time/day.h"
#include "witnessmark/time/edtf.h"

namespace witnessmark::dates {

/// A calendar value as talk gives it: any part may be unknown.
struct DateValue {
  enum class Precision : std::uint8_t {
    none,
    century,
    decade,
    year,
    half,
    quarter,
    season,
    month,
    week,
    day
  };
  Precision precision = Precision::none;
  bool year_known = false;
  std::int64_t year =
      0;  ///< Astronomical; of a decade or century its first (counted away from 1 before Christ).
  bool before_christ = false;  ///< Of a decade or century.
  int month = 0;  ///< 0 unknown; with precision day and month known, day 0 is unknown: 1962-09-XX.
  int day = 0;
  Season season = Season::none;
  int half = 0;     ///< 1, 2; of quarter 1 to 4.
  int weekday = 0;  ///< Only when nothing else is known: XXXX-WXX-5.
  ShortText time;   ///< "TMO", "T08:00"; may be empty.

  static DateValue of_year(std::int64_t year);
  static DateValue of_month(std::int64_t year, int month);
  static DateValue of_day(const CivilDate& date);
  static DateValue of_season(std::int64_t year, Season season);
};

/// A whole date; its day.
inline bool is_day(const DateValue& value) {
  return value.precision == DateValue::Precision::day && value.year_known && value.month && value.day;
}
inline Day day_of(const DateValue& value) {
  return to_day({value.year, value.month, value.day});
}
/// A date of which the month is known.
inline bool has_month(const DateValue& value) {
  using P = DateValue::Precision;
  return value.year_known && value.month && (value.precision == P::day || value.precision == P::month);
}

/// TIMEX3 value; X for what is not known.
ShortText to_timex(const DateValue& value);

/// EDTF; nothing unless the year is known and no finer part is missing. A time of day is left out.
std::optional<Edtf> to_edtf(const DateValue& value, bool approximate);
/// The same, into a place.
void put_edtf(const DateValue& value, bool approximate, std::optional<Edtf>& out);

/// The value an EDTF date stands for; of an interval or set its first date. Nothing when it has none.
std::optional<DateValue> from_edtf(const Edtf& edtf);

/// First day of the value; the year must be known.
Day first_day(const DateValue& value);

/// "P2Y", "PXD", "PT3H", "P2D" for a fortnight "P2W".
ShortText duration_timex(std::int64_t count, bool vague, bool half, Unit unit);

}  // namespace witnessmark::dates
