// Times of the day, attached to their day when one is said: 3:00 a.m., half past four, 0800, the midwatch,
// the morning of 31 January 1965, at night.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
namespace {

std::string clock_text(int hour, int minute) {  // "T08:00"
  std::string text = "T00:00";
  text[1] = static_cast<char>('0' + hour / 10);
  text[2] = static_cast<char>('0' + hour % 10);
  text[4] = static_cast<char>('0' + minute / 10);
  text[5] = static_cast<char>('0' + minute % 10);
  return text;
}

}  // namespace

// a.m., pm, o'clock, hours, in the morning; sets the hour to the 24-hour clock.
bool Grammar::clock_tail(std::size_t i, int& hour, std::size_t& past, bool& said) const {
  past = i;
  said = false;
  int half = 0;
  if (t[i].is(Role::half_day))
    half = t[i].value(Role::half_day), past = i + 1;
  else if ((is(i, w("a")) || is(i, w("p"))) && t[i + 1].is_sign('.') && is(i + 2, w("m")) &&
           !t[i + 2].space) {
    half = is(i, w("a")) ? 1 : 2;
    past = t[i + 3].is_sign('.') && !t[i + 3].space ? i + 4 : i + 3;
  } else if (is(i, w("o'clock")) || is(i, w("oclock"))) {
    past = i + 1;
    said = true;
    int unused = hour;
    std::size_t after = past;
    bool more = false;
    if (clock_tail(past, unused, after, more) && more && after != past) hour = unused, past = after;
    return true;
  } else if ((is(i, w("in")) || (is(i, w("on")) && is(i + 3, w("of")) && !prose())) && is(i + 1, w("the")) &&
             t[i + 2].is(Role::day_part)) {  // also: on the morning of May 3
    const auto part = static_cast<DayPart>(t[i + 2].value(Role::day_part));
    half = part == DayPart::morning ? 1 : 2;
    past = i + 3;
  } else if (is(i, w("at")) && is(i + 1, w("night"))) {
    half = hour >= 6 && hour < 12 ? 2 : 1;
    past = i + 2;
  }
  if (half == 0) return true;
  said = true;
  if (half == 1 && hour == 12) hour = 0;
  if (half == 2 && hour < 12) hour += 12;
  return hour < 25;
}

// 7.15 p.m., 11.05 am: a dot between hours and minutes, with a.m. or p.m. behind them; else a number with a
// decimal point.
bool Grammar::dotted_clock(std::size_t i, Spec& spec) const {
  const auto text = t.text(t[i]);
  const auto dot = text.find('.');
  constexpr std::size_t kMinuteDigits = 2;
  if (prose() || dot == 0 || dot > 2 || text.size() != dot + 1 + kMinuteDigits || number_is_label(i))
    return false;
  const auto digit = [&](std::size_t at) { return text[at] - '0'; };
  int hour = dot == 1 ? digit(0) : digit(0) * 10 + digit(1);
  const int minute = digit(dot + 1) * 10 + digit(dot + 2);
  std::size_t past = i + 1;
  bool said = false;
  const bool half = t[past].is(Role::half_day) || is(past, w("a")) || is(past, w("p"));
  if (hour < 1 || hour > 12 || minute > 59 || !half || !clock_tail(past, hour, past, said) || !said)
    return false;
  spec.date.precision = DateValue::Precision::day;
  spec.date.time = clock_text(hour, minute);
  spec.end = past;
  return true;
}

bool Grammar::clock_digits(std::size_t i, Spec& spec) const {
  const auto& token = t[i];
  int hour = 0, minute = 0;
  std::size_t past = i + 1;
  bool said = false;
  if (token.is_number()) {
    if (token.grouped) return dotted_clock(i, spec);
    if (number_is_label(i)) return false;
    const bool colon = t[i + 1].is_sign(':') && !t[i + 1].space && t[i + 2].is_number() && !t[i + 2].space &&
                       t[i + 2].digits == 2;
    if (colon && token.digits <= 2 && token.number < 25 && t[i + 2].number < 60) {
      hour = static_cast<int>(token.number);
      minute = static_cast<int>(t[i + 2].number);
      past = i + 3;
      if (t[past].is_sign(':') && !t[past].space && t[past + 1].is_number()) past += 2;
      if (!clock_tail(past, hour, past, said)) return false;
      if (!said && !is(i - 1, w("at")) && !prose() && !t[i - 1].is(Role::place_in_time))
        return false;                                                                  // a time stamp
    } else if (token.digits == 4 && token.number % 100 < 60 && token.number < 2400) {  // 0800, 1430 hours
      const bool hours = is(i + 1, w("hours")) || is(i + 1, w("hrs"));
      const bool leading_zero = token.number < 1000;
      const auto before = t[i - 1].hash;
      const bool at = before == w("at") || before == w("by") || before == w("around") ||
                      before == w("about") || before == w("until");
      const auto& after = t[i + 1];
      const bool no_noun = !after.is_word() || after.newline || is(i + 1, w("sharp")) ||
                           after.any(bit(Role::after_year) | bit(Role::pronoun) | bit(Role::determiner));
      const bool no_year = (before == w("around") || before == w("about") || before == w("until")) &&
                           setting_.speech_year && token.number > *setting_.speech_year;
      const bool talked = !prose() && token.number >= 1000 && no_noun && (clock_follows_at(i) || no_year) &&
                          !is_measured(i, i + 1);
      if (!hours && !(leading_zero && at) && !talked) return false;
      hour = static_cast<int>(token.number / 100);
      minute = static_cast<int>(token.number % 100);
      past = hours ? i + 2 : i + 1;
    } else if (token.digits <= 2 && token.number >= 1 && token.number <= 12) {
      hour = static_cast<int>(token.number);
      if (!clock_tail(i + 1, hour, past, said) || !said) return false;
    } else {
      return false;
    }
  } else {
    std::int64_t number = 0;
    std::size_t after = i;
    bool half = is(i, w("half")), quarter = is(i, w("quarter"));
    if (half || quarter) {  // half past four, quarter to six
      const bool to = is(i + 1, w("to"));
      if (!is(i + 1, w("past")) && !to) return false;
      if (!cardinal(i + 2, number, after) || number < 1 || number > 12) return false;
      hour = static_cast<int>(number);
      minute = half ? 30 : 15;
      if (to) hour = hour == 1 ? 12 : hour - 1, minute = 45;
      if (!clock_tail(after, hour, past, said)) return false;
      spec.rule = "clock";
    } else {
      if (!below_hundred(i, number, after) || number < 1) return false;
      if (is(after, w("hundred")) && (is(after + 1, w("hours")) || is(i - 1, w("at"))) &&
          number < 24) {  // eight hundred hours
        hour = static_cast<int>(number);
        past = is(after + 1, w("hours")) ? after + 2 : after + 1;
        if (past == after + 1 && (t[past].is(Role::counted) || t[past].is(Role::units))) return false;
      } else {
        if (number > 12) return false;
        hour = static_cast<int>(number);
        if (!clock_tail(after, hour, past, said) || !said) return false;
      }
    }
  }
  spec.date.precision = DateValue::Precision::day;
  spec.date.time = clock_text(hour, minute);
  spec.end = past;
  return true;
}

// twenty past four, ten minutes to six
bool Grammar::minutes_past(std::size_t i, Spec& spec) const {
  std::int64_t minutes = 0, hours = 0;
  std::size_t j = i, past = i;
  if (prose() || !cardinal(i, minutes, j) || minutes < 1 || minutes > 29 || is(j, w("o'clock"))) return false;
  if (is(j, w("minutes"))) ++j;
  const bool to = is(j, w("to"));
  if ((!to && !is(j, w("past"))) || !cardinal(j + 1, hours, past) || hours < 1 || hours > 12) return false;
  int hour = static_cast<int>(hours);
  bool said = false;
  if (to) hour = hour == 1 ? 12 : hour - 1;
  if (!clock_tail(past, hour, past, said)) return false;
  if (to && !said && !is(i - 1, w("at")) && !is(j - 1, w("minutes"))) return false;  // they were ten to six
  if (counts_something(past)) return false;
  spec.date.precision = DateValue::Precision::day;
  spec.date.time = clock_text(hour, static_cast<int>(to ? 60 - minutes : minutes));
  spec.end = past;
  return true;
}

// at six thirty, at fifteen thirty-seven, at oh six thirty: hours and minutes as two numbers
bool Grammar::hours_and_minutes(std::size_t i, Spec& spec) const {
  if (prose() || !clock_follows_at(i) || is_measured(i, i)) return false;
  std::int64_t hours = 0, minutes = 0;
  std::size_t j = i, past = i;
  const bool zero = t[i].is(Role::year_zero);
  if (zero) {
    if (!t[i + 1].is(Role::number)) return false;
    hours = t[i + 1].value(Role::number);
    j = i + 2;
    if (hours > 9) return false;
  } else if (!t[i].is(Role::number) || t[i].value(Role::number) > 20) {
    return false;
  } else {
    hours = t[i].value(Role::number);
    j = i + 1;
    if (hours == 20 && t[j].is(Role::number) && t[j].value(Role::number) < 4)
      hours += t[j].value(Role::number), ++j;
  }
  if (t[j].is_sign('-') && !t[j].space && !t[j + 1].space) ++j;
  if (t[j].is(Role::year_zero) && t[j + 1].is(Role::number) && t[j + 1].value(Role::number) < 10)
    minutes = t[j + 1].value(Role::number), past = j + 2;
  else if (!below_hundred(j, minutes, past) || minutes < 10 || minutes > 59)
    return false;
  int hour = static_cast<int>(hours);
  bool said = false;
  if (is(past, w("hours"))) ++past;
  if (!clock_tail(past, hour, past, said) || hour > 23) return false;
  const auto& after = t[past];
  if (counts_something(past) || after.any(bit(Role::number) | bit(Role::multiplier) | bit(Role::unit)))
    return false;
  if (!said && after.is_word() && !after.newline &&
      !after.any(bit(Role::after_year) | bit(Role::pronoun) | bit(Role::determiner)))
    return false;
  spec.date.precision = DateValue::Precision::day;
  spec.date.time = clock_text(hour, static_cast<int>(minutes));
  spec.end = past;
  return true;
}

// at seven we turned to: no "o'clock", no part of the day
bool Grammar::hour_alone(std::size_t i, Spec& spec) const {
  std::int64_t hour = 0;
  std::size_t past = i;
  if (prose() || !is(i - 1, w("at")) || (t[i].is_number() && (t[i].digits > 2 || t[i].grouped)) ||
      !cardinal(i, hour, past) || hour < 1 || hour > 12)
    return false;
  if (!is(past, w("we")) && !is(past, w("they")) && !is(past, w("the"))) return false;
  spec.date.precision = DateValue::Precision::day;
  spec.date.time = clock_text(static_cast<int>(hour), 0);
  spec.rule = "hour";
  spec.end = past;
  return true;
}

bool Grammar::may_be_clock(std::size_t i) const {
  if (t[i].is_number()) return t[i].digits != 2 || !t[i + 1].is_sign('.');
  if (clock_follows_at(i)) return true;
  constexpr std::size_t kReach = 3;
  for (std::size_t j = i + 1; j <= i + kReach; ++j) {
    if (!t[j].is_word()) continue;
    if (t[j].is(Role::half_day)) return true;
    for (const auto word : {w("o'clock"), w("oclock"), w("past"), w("to"), w("hundred"), w("minutes"),
                            w("hours"), w("in"), w("on"), w("at"), w("a"), w("p")})
      if (t[j].hash == word) return true;
  }
  return false;
}

bool Grammar::clock(std::size_t i, Spec& spec) const {
  spec.kind = Spec::Kind::clock;
  spec.begin = i;
  spec.rule = "clock";
  std::size_t j = i;
  if (t[j].is_number() && t[j].digits == 4) {
    if (clock_span(i, spec)) return true;
    spec.timex.clear();
    spec.of.reset();
    spec.rule = "clock";
  }
  if (t[j].is(Role::clock_word)) {
    if (is(i - 1, w("high"))) return false;
    const int minutes = t[j].value(Role::clock_word);
    spec.date.precision = DateValue::Precision::day;
    spec.date.time = clock_text(minutes / 60, minutes % 60);
    spec.end = j + 1;
  } else if ((is(j, w("oh")) || is(j, w("o"))) && t[j + 1].is(Role::number) &&
             is(j + 2, w("hundred"))) {  // oh eight hundred
    const int hour = t[j + 1].value(Role::number);
    if (hour > 9) return false;
    spec.date.precision = DateValue::Precision::day;
    spec.date.time = clock_text(hour, 0);
    spec.end = is(j + 3, w("hours")) ? j + 4 : j + 3;
  } else if (!minutes_past(i, spec) && !hours_and_minutes(i, spec) && !clock_digits(i, spec) &&
             !hour_alone(i, spec)) {
    return false;
  }
  if (spec.rule == "hour") return true;
  clock_day(spec.end, spec);
  put_half_of_day(spec);
  return true;
}

// "At ten o'clock that night", "half past three the next afternoon": the part of the day says which half of
// it the hour is of.
void Grammar::put_half_of_day(Spec& spec) {
  if (!spec.of || spec.of->kind != Spec::Kind::relative || !spec.timex.empty()) return;
  const auto part = spec.of->date.time.view();
  const auto time = std::string(spec.date.time.view());
  int hour = (time[1] - '0') * 10 + (time[2] - '0');
  const int minute = (time[4] - '0') * 10 + (time[5] - '0');
  const bool night = part == day_part_time(DayPart::night), evening = part == day_part_time(DayPart::evening),
             afternoon = part == day_part_time(DayPart::afternoon);
  constexpr int kNoon = 12, kFirstOfEvening = 4, kFirstOfNight = 6;
  const bool later = (night && hour >= kFirstOfNight) || (evening && hour >= kFirstOfEvening) || afternoon;
  if (!later || hour > kNoon || hour == 0) return;
  if (hour != kNoon)
    hour += kNoon;
  else if (!afternoon && minute == 0)
    hour = 2 * kNoon;  // twelve o'clock that night: midnight
  spec.date.time = clock_text(hour, minute);
}

// on 4 October, of that day, the next morning, on Easter Sunday 1951
void Grammar::clock_day(std::size_t i, Spec& spec) const {
  const bool on = is(i, w("on")) || is(i, w("of"));
  const std::size_t k = on || t[i].is_sign(',') ? i + 1 : i;
  Spec day;
  offer(&Grammar::day_and_month, k, day);
  offer(&Grammar::said_relative, k, day);
  if (on && !prose()) offer(&Grammar::named_day, k, day);
  const bool is_day = (day.kind == Spec::Kind::calendar && day.date.precision == DateValue::Precision::day) ||
                      (day.kind == Spec::Kind::relative && day.unit == Unit::day);
  if (day.end == 0 || !is_day) return;
  spec.end = day.end;
  spec.of = std::make_unique<Spec>(std::move(day));
}

namespace {

/// 0000 to 2400 as four digits.
bool is_hours(const Token& token) {
  return token.is_number() && token.digits == 4 && !token.grouped && token.number <= 2400 &&
         token.number % 100 < 60;
}

}  // namespace

// "at 1945", "at about 1930": years do not stand behind "at".
bool Grammar::clock_follows_at(std::size_t i) const {
  return is(i - 1, w("at")) || (t[i - 1].is(Role::approx) && is(i - 2, w("at")));
}

// "from 1800 to 1900": full hours or centuries cannot be told apart; with "between" they are years.
bool Grammar::hours_or_years(std::size_t i) const {
  const auto full = [&](std::size_t at) { return is_hours(t[at]) && t[at].number % 100 == 0; };
  const auto joint = [&](std::size_t at) { return t[at].is(Role::range_word) || t[at].is_sign('-'); };
  if (prose() || !full(i)) return false;
  return (joint(i + 1) && full(i + 2)) || (joint(i - 1) && full(i - 2));
}

// the 1200 to 1600 watch, from 0800 to 1200, 1600 to 1800 on June 4: two times of one day
bool Grammar::clock_span(std::size_t i, Spec& spec) const {
  if (prose() || !is_hours(t[i]) || number_is_label(i)) return false;
  std::size_t j = i + 1;
  bool told = is(j, w("hours")) || is(j, w("hrs"));
  if (told) ++j;
  if (!t[j].is(Role::range_word) && !t[j].is_sign('-')) return false;
  ++j;
  const auto& from = t[i];
  const auto& to = t[j];
  if (!is_hours(to) || from.number == to.number) return false;
  std::size_t past = j + 1;
  if (is(past, w("hours")) || is(past, w("hrs"))) told = true, ++past;
  const std::size_t noun = t[past].is(Role::watch) ? past + 1 : past;
  if (t[noun].is(Role::watch_noun)) told = true, past = noun + 1;
  const std::int64_t first_year = setting_.century - 200,
                     last_year = setting_.century + 130;  // Talk's reach.
  const auto may_be_year = [&](std::int64_t number) {
    return number >= first_year && number <= setting_.speech_year.value_or(last_year);
  };
  told |= !may_be_year(from.number) || !may_be_year(to.number) || from.number > to.number;
  spec.date.precision = DateValue::Precision::day;
  spec.date.time = clock_text(static_cast<int>(from.number) / 100, static_cast<int>(from.number) % 100);
  spec.timex = clock_text(static_cast<int>(to.number) / 100, static_cast<int>(to.number) % 100);
  spec.rule = "clock-range";
  spec.end = past;
  clock_day(past, spec);
  return told || spec.of;
}

// the night of the fourth to the fifth of May, of May 4-5, of May 31 to June 1: it began on the first of the
// two
void Grammar::night_between(std::size_t i, Spec& day) const {
  Spec pair;
  if (day_span(i, pair) && pair.join != Spec::Join::either && pair.first &&
      pair.second->date.day == pair.first->date.day + 1) {
    const auto end = pair.end;
    day = std::move(*pair.first);
    day.end = end;
    return;
  }
  Spec first, second;
  if (!day_and_month(i, first) || first.date.precision != DateValue::Precision::day || !first.date.month)
    return;
  const auto& joint = t[first.end];
  if (!joint.is(Role::range_word) && !joint.is_sign('-') && !joint.is_sign('/') && !is(first.end, w("and")))
    return;
  const auto at = first.end + 1;
  const bool next_day = second_day(first, at, second) && second.date.day == first.date.day + 1;
  if (!next_day) {
    second = {};
    const int month = first.date.month % 12 + 1;
    if (!day_and_month(at, second) || second.date.day != 1 || second.date.month != month ||
        first.date.day < 28)
      return;
    if (second.year_said && !first.year_said) {
      first.date.year = second.date.year - (month == 1 ? 1 : 0);
      first.date.year_known = first.year_said = true;
      first.short_year = second.short_year;
    }
  }
  first.end = second.end;
  day = std::move(first);
}

// the morning of DATE, early morning hours of DATE, Sunday morning, at night, DAY night
bool Grammar::part_of_day(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (t[j].is(Role::weekday) && t[j + 1].is(Role::day_part)) {
    spec.kind = Spec::Kind::calendar;
    spec.begin = i;
    spec.end = i + 2;
    spec.rule = "weekday";
    spec.date.precision = DateValue::Precision::day;
    spec.date.weekday = t[j].value(Role::weekday);
    spec.date.time = day_part_time(static_cast<DayPart>(t[j + 1].value(Role::day_part)));
    return true;
  }
  const bool the = is(j, w("the"));
  if (the) ++j;
  if (t[j].is(Role::part)) ++j;
  if (!t[j].is(Role::day_part)) return false;
  if (t[j + 1].is(Role::watch_noun)) return false;
  spec.kind = Spec::Kind::clock;
  spec.begin = i;
  spec.rule = "part-of-day";
  spec.date.precision = DateValue::Precision::day;
  spec.date.time = day_part_time(static_cast<DayPart>(t[j].value(Role::day_part)));
  std::size_t k = j + 1;
  if (is(k, w("hours"))) ++k;
  spec.end = k;
  if (is(k, w("of")) || is(k, w("on"))) {
    Spec day;
    offer(&Grammar::day_and_month, k + 1, day);
    offer(&Grammar::said_relative, k + 1, day);
    offer(&Grammar::named_day, k + 1, day);
    if (!prose()) night_between(k + 1, day);
    if (day.end == 0 && is(k, w("of"))) offer(&Grammar::day_of_month, k + 1, day);
    if (day.end != 0) {
      spec.end = day.end;
      spec.of = std::make_unique<Spec>(std::move(day));
      return true;
    }
    if (the) {
      Spec named;
      if (event(k + 1, named)) {
        spec.end = named.end;
        spec.of = std::make_unique<Spec>(std::move(named));
        return true;
      }
    }
  }
  Spec day;  // the evening before, night of …; "morning, 4 October"
  if (j != i) return false;
  // bare: at night is a habit, "night attack" in prose
  const bool at_night = is(i - 1, w("at")) && is(i, w("night"));
  if (prose() && t[i].capital && i != 0 && !t[i].newline && t[i - 1].kind != Token::Kind::sign)
    return false;  // Operation Red Dawn
  const bool compound = t[k].is_sign('-') && !t[k].space && !t[k + 1].space;
  if (at_night || (prose() && (compound || !t[i - 1].is(Role::determiner)) && !t[i - 1].is(Role::every) &&
                   !t[i - 1].is(Role::following) && k == j + 1)) {
    spec.kind = Spec::Kind::set;
    spec.timex = "XXXX-XX-XX";
    spec.timex += spec.date.time;
    spec.rule = "set";
    return true;
  }
  return false;
}

// the midwatch, the first dog watch, the morning watch
bool Grammar::watch(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (is(j, w("the"))) ++j;
  spec.kind = Spec::Kind::clock;
  spec.begin = i;
  spec.rule = "watch";
  spec.date.precision = DateValue::Precision::day;
  if ((is(j, w("first")) || is(j, w("second")) || is(j, w("last"))) && is(j + 1, w("dog"))) ++j;
  if (!t[j].is(Role::watch)) return false;
  const auto part = static_cast<DayPart>(t[j].value(Role::watch));
  const bool alone = is(j, w("midwatch"));
  std::size_t k = j + 1;
  if (t[k].is_sign('-') && !t[k].space) ++k;
  if (alone)
    spec.end = j + 1;
  else if (t[k].is(Role::watch_noun))
    spec.end = k + 1;
  else
    return false;
  spec.date.time = day_part_time(part);
  Spec day;
  std::size_t m = spec.end;
  if (is(m, w("of")) || is(m, w("on"))) ++m;
  offer(&Grammar::day_and_month, m, day);
  offer(&Grammar::said_relative, m, day);
  if (!prose()) offer(&Grammar::named_day, m, day);
  if (day.end != 0 && m != spec.end) {
    spec.end = day.end;
    spec.of = std::make_unique<Spec>(std::move(day));
  }
  return true;
}

}  // namespace witnessmark::dates
