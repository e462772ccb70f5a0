#pragma once
#include <cstdint>
#include <memory>
#include <string_view>

#include "language/dates/talk/value.h"

namespace witnessmark::dates {

/// A count as spoken: "two and a half", "a few".
struct Count {
  std::int64_t value = 1;
  bool vague = false;      ///< few, several, or no number: PXD.
  bool few = false;        ///< A few, several: vague, but more than one and fewer than ten.
  bool half = false;       ///< and a half.
  bool round = false;      ///< A multiple of five from ten on.
  bool couple = false;     ///< "a couple": two, more or less.
  ShortText decimal;       ///< "22.8"; else empty.
  std::int64_t upper = 0;  ///< "two or three": 3; else 0.
};

/// What the sentence says of the life a two-digit year belongs to.
enum class Life : std::uint8_t {
  untold,     ///< Nobody's.
  own,        ///< The speaker's, or a descendant's: recent years are likely.
  own_birth,  ///< "I was born in '24."
  elders,     ///< A parent's, a grandparent's, or somebody's birth: the older century is likely.
  ancestors,  ///< A grandparent's or an earlier one's, birth and death apart: either century.
  thing       ///< "the blizzard of '88": either.
};

/// A part of a unit of time: early and late 1962; the beginning, the end, the first half of it.
enum class Part : std::uint8_t { none, early, mid, late, beginning, end, first_half, second_half };

/// Spec::timex of an offset from something the lists do not know.
inline constexpr std::string_view kUnknownAnchor = "unknown-anchor";

/// What the grammar read at one place of the text, before the talk around it has given it a value.
struct Spec {
  enum class Kind : std::uint8_t {
    calendar,   ///< A date, of which some parts may be missing.
    relative,   ///< "that spring", "the next day", "last year", "the end of the month": a unit seen from the
                ///< reference.
    offset,     ///< "two years later", "a couple of weeks before Christmas", "seventy years ago".
    within,     ///< "later that month", "earlier that year".
    duration,   ///< "for two years".
    set,        ///< "every Sunday".
    reference,  ///< now, former, future.
    day_word,   ///< today, yesterday.
    era,        ///< "this period", "that time".
    age,        ///< "when I was nineteen".
    service_year,  ///< "my second year aboard".
    service_edge,  ///< "the day I reported", "when I left".
    event,         ///< "the yard period".
    clock          ///< "0800", "3:00 a.m.".
  };
  Kind kind = Kind::calendar;
  std::size_t begin = 0;  ///< Tokens.
  std::size_t end = 0;
  bool full_end = false;  ///< The last token's "'s" belongs to it.

  DateValue date;
  bool short_year = false;  ///< date.year is 0 to 99 (of a decade 0 to 90).
  bool year_said = false;   ///< A year stands in the words.
  Life life = Life::untold;
  bool going_back = false;   ///< "back in December", "in November we had sailed": before the reference.
  bool definite = false;     ///< "the Friday".
  bool day_only = false;     ///< "the seventh": month and year are missing.
  std::unique_ptr<Spec> of;  ///< "August of that year": the year's spec; "the second of that month".
  const NamedDay* named = nullptr;
  int event = -1;
  const Edtf* when = nullptr;  ///< A named time's.

  Following following = Following::none;
  Unit unit = Unit::day;
  bool of_week = false;  ///< "that week Monday": the weekday of that week.
  int nth = 0;  ///< "the first week of May", "the last Sunday in May": 1 to 5, -1 the last; of `unit`.
  bool told_back =
      false;  ///< "I had married the year before last": seen from the story, not from the day of speaking.
  bool speech = false;      ///< Seen from the day of speaking: "last year", "this year".
  bool keeps_part = false;  ///< "three years ago this month": the anchor's month or day in another year.
  bool up_to_now = false;   ///< "the last ten years".
  Later later = Later::none;
  Count count;
  Count more;                  ///< "a year and two months later": the two, of `more_unit`.
  Unit more_unit = Unit::day;  ///< Day unless `more` is said.
  bool has_more = false;
  std::unique_ptr<Spec> anchor;  ///< before Christmas.

  Mod mod = Mod::none;          ///< early, about, more than.
  Part part = Part::none;       ///< What is meant of the date: early 1962.
  Part part_to = Part::none;    ///< "mid to late fifties": late; else none.
  std::int64_t part_count = 0;  ///< "the last three months of 1962": 3; else 0.
  Unit part_unit = Unit::day;   ///< Month.
  bool about = false;           ///< "around the end of 1962".
  Mod limit = Mod::none;        ///< by, before, since, from a preposition outside the extent.
  bool first_edge = false;      ///< service_edge: joined rather than left.
  bool outermost_edge = false;  ///< service_edge: of all services the first coming or the last going is meant.
  int number = 0;               ///< Age; which year of service (-1 the last).
  bool taken_back = false;      ///< "fifty-eight, no, …".
  ShortText timex;              ///< set, reference; the second time of a clock range.
  std::string_view rule;        ///< Of static duration.

  enum class Join : std::uint8_t { none, range, between, either };
  Join join = Join::none;               ///< How first and second make one expression.
  std::unique_ptr<Spec> first,
      second;  ///< Two dates said as one; both or neither. The second may be two again.
};

/// Two specs said as one; takes both.
Spec pair_of(Spec& first, Spec&& second, Spec::Join join);
/// Two days of one month, "the tenth to the twelfth of May": the first, its words from begin to end, takes month and year
/// from the second.
Spec two_days(std::size_t begin, std::size_t end, std::int64_t day, Spec&& second, Spec::Join join);
/// "1957 to 62", "the 1950s and sixties": the second takes the first's century.
void share_century(const Spec& first, Spec& second);

/// Begins a calendar date.
inline void start_calendar(Spec& spec, std::size_t begin, DateValue::Precision precision, const char* rule) {
  spec.kind = Spec::Kind::calendar;
  spec.begin = begin;
  spec.date.precision = precision;
  spec.rule = rule;
}

}  // namespace witnessmark::dates
