// Days, months and seasons in all orders: September 1, 1939; the third of March 1918; 3rd March
// '18; Tuesday the 4th of May; October, 1917; 25/07/1918; the spring of sixty-two.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

bool Grammar::month_name(std::size_t i, int& month, std::size_t& past, bool beside_number) const {
  if (t[i].is(Role::month)) {
    if (!prose() && t[i + 1].capital && t[i + 1].is(Role::belonging)) return false;  // 12 May Street
    if (!beside_number && (month_is_verb(i) || name_not_date(i, i + 1))) return false;
    month = t[i].value(Role::month);
    past = i + 1;
    return true;
  }
  if (!t[i].is(Role::month_short)) return false;
  past = t[i + 1].is_sign('.') && !t[i + 1].space ? i + 2 : i + 1;
  const auto& next = t[past];
  const bool joint = next.kind == Token::Kind::sign && !next.space &&
                     (next.sign == '/' || next.sign == '-' || next.sign == ',') && t[past + 1].is_number();
  const auto& after = joint ? t[past + 1] : next;
  const bool number_follows = after.is_number() || (after.is_sign('\'') && t[past + 1].is_number()) ||
                              after.is(Role::ordinal) || (after.any(bit(Role::number)) && t[i].capital);
  if (!beside_number && !number_follows) return false;
  month = t[i].value(Role::month_short);
  return true;
}

// "the spring of thirteen", of a life that has one such year before the interview.
bool Grammar::teen_year(std::size_t i, const Spec& season, Spec& spec) const {
  constexpr std::int64_t kLeast = 10, kMost = 19;
  constexpr int kBeforeBirth = 10;  // TalkSetting::first_year
  std::int64_t value = 0;
  std::size_t past = i;
  if (prose() || !setting_.speech_year || season.date.precision != DateValue::Precision::season ||
      !is(i - 1, w("of")) || !below_hundred(i, value, past) || value < kLeast || value > kMost)
    return false;
  const auto& after = t[past];
  const bool open = !after.is_word() || after.newline || after.is(Role::after_year);
  if (!open || after.is_number() || (after.is_sign('-') && !after.space) || counts_something(past) ||
      plural_follows(past))
    return false;
  int found = 0;
  for (auto year = setting_.century - 100 + value; year <= setting_.last_year; year += 100) {
    if (year >= setting_.first_year + kBeforeBirth) ++found;
  }
  if (found != 1) return false;
  spec.begin = i;
  spec.end = past;
  spec.date = DateValue::of_year(value);
  spec.short_year = true;
  return true;
}

// "[,] it was," "[,] I think it was,": words put in between the day and its year. Behind them, or i.
std::size_t Grammar::past_aside(std::size_t i) const {
  std::size_t j = t[i].is_sign(',') ? i + 1 : i;
  if (prose() || t[j].newline) return i;
  const auto start = j;
  if (is(j, w("i")))
    for (const auto word : {w("think"), w("believe"), w("suppose"), w("guess"), w("reckon")})
      if (is(j + 1, word)) {
        j += 2;
        break;
      }
  if ((is(j, w("it")) || is(j, w("that"))) && is(j + 1, w("was"))) j += 2;
  return j != start && t[j].is_sign(',') ? j + 1 : i;
}

// "[,] [of] year" behind a month, a day or a season.
bool Grammar::year_after(std::size_t i, Spec& spec) const {
  std::size_t j = past_aside(i);
  const bool aside = j != i;
  const bool comma = aside || (t[j].is_sign(',') && !t[j].space);
  if (comma && !aside) ++j;
  const bool in_year = is(j, w("in")) && !comma && t[j + 1].is_number() && t[j + 1].digits == 4 &&
                       spec.date.precision == DateValue::Precision::day;
  if (t[j].is_sign('/') && !t[j].space && !t[j + 1].space && t[j + 1].is_number() &&
      t[j + 1].digits == 4) {  // Dec/2018
    ++j;
  } else if (in_year) {
    ++j;
  } else if (is(j, w("of")) || (is(j, w("in")) && comma)) {
    if (comma && !t[j + 1].is_number()) return false;
    ++j;
    if (is(j, w("the")) && is(j + 1, w("year"))) j += 2;
  } else if (t[j].is_sign('-') && !t[j].space) {
    ++j;
    if (!t[j].is_number() || t[j].digits != 4) return false;
  }
  if (t[j].paragraph) return false;
  Spec year_spec;
  if (!year(j, YearStance::supported, year_spec) && !teen_year(j, spec, year_spec)) return false;
  if (comma && year_spec.short_year && !t[j].is_sign('\'') && (aside || setting_.prose)) return false;
  if (comma && year_spec.short_year && t[j].is_number() && !plausible(year_spec.date.year)) return false;
  if (year_spec.short_year && j == i && !t[j].is_sign('\'') &&
      stands_as_count(j, year_spec.end, year_spec.date.year))
    return false;
  // "in March 12 of them", "May 62, 63": a day may not be taken for a year, nor a year for a count.
  spec.end = year_spec.end;
  spec.date.year = year_spec.date.year;
  spec.date.year_known = true;
  spec.short_year = year_spec.short_year;
  spec.year_said = true;
  return true;
}

// "In the spring we had forty, in the summer sixty, and that autumn …": behind a bare season or month a round
// number is a count where the sentence has counted before, or a thing stands behind it.
bool Grammar::stands_as_count(std::size_t i, std::size_t past, std::int64_t value) const {
  if (prose()) return false;
  if (plural_follows(past)) return true;
  if (value % 10 != 0) return false;
  constexpr std::size_t kReach = 8;
  for (std::size_t back = 2; back <= kReach && back <= i; ++back) {
    const auto& token = t[i - back];
    if (token.kind == Token::Kind::sign && (token.sign == '.' || token.sign == '?' || token.sign == '!'))
      break;
    if (token.is(Role::number) && t[i - back + 1].is_sign(',')) return true;
  }
  return false;
}

// "of that year", "of the same year", "last year".
bool Grammar::said_year(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (is(j, w("of")) || is(j, w("in")))
    ++j;
  else if (!is(j, w("last")) && !is(j, w("next")) && !is(j, w("this")) && !is(j, w("that")))
    return false;
  auto of = std::make_unique<Spec>();
  const bool beside = is(j + 1, w("year")) && !prose() && unit_beside(j, *of);  // of the year before
  if (!beside && (!relative(j, *of) || of->kind != Spec::Kind::relative || of->unit != Unit::year ||
                  of->count.vague || of->mod != Mod::none))
    return false;
  spec.end = of->end;
  spec.of = std::move(of);
  return true;
}

// 4, 4th, fourth, four: 1 to 31
bool Grammar::day_number(std::size_t i, std::int64_t& day, std::size_t& past) const {
  if (ordinal(i, day, past)) return day >= 1 && day <= 31;
  if (!t[i].is_number()) return below_hundred(i, day, past) && day <= 31;
  day = t[i].number;
  past = i + 1;
  return !t[i].grouped && t[i].digits <= 2 && day >= 1 && day <= 31 && (t[past].space || !t[past].is_word());
}

// [the] 4th [day] [of] October [1956]
bool Grammar::day_first(std::size_t i, std::size_t at, Spec& spec) const {
  const std::size_t k = is(at, w("the")) ? at + 1 : at;
  std::size_t past = k;
  std::int64_t day = 0;
  if (number_is_label(k) || !day_number(k, day, past)) return false;
  const bool ordinal_day = past == k + 2 || t[k].is(Role::ordinal);
  std::size_t m = past;
  if (is(m, w("day")) && is(m + 1, w("of"))) ++m;
  const bool of = is(m, w("of"));
  const bool joint = t[m].is_sign('-') || t[m].is_sign('/');
  if (of || (joint && !t[m + 1].space)) ++m;
  int month = 0;
  std::int64_t numbered = 0;
  std::size_t past_month = 0;
  if (!prose() && ordinal_day && of && is(m, w("the")) && ordinal(m + 1, numbered, past_month) &&
      numbered <= 12 && numbered > 0) {
    start_calendar(spec, i, DateValue::Precision::day, "day-month");  // the twelfth of the fourth, fifty-six
    spec.date.month = static_cast<int>(numbered);
    spec.date.day = static_cast<int>(day);
    spec.end = past_month;
    return year_after(past_month, spec);
  }
  if (!t[k].is_number() && !ordinal_day && !of) return false;
  if (!of && k != at && !ordinal_day) return false;
  if (!month_name(m, month, past, true)) return false;
  start_calendar(spec, i, DateValue::Precision::day, "day-month");
  spec.date.month = month;
  spec.date.day = static_cast<int>(day);
  spec.end = past;
  if (!year_after(past, spec)) said_year(past, spec);
  return true;
}

// Behind a month: [the] 4th [, 1956]. spec has the month.
bool Grammar::day_after_month(std::size_t d, Spec& spec) const {
  std::int64_t day = 0;
  std::size_t after = 0;
  if (t[d].is_sign(',') && !t[d].space && ordinal(d + 1, day, after)) ++d;  // October, 1st
  const auto& next = t[d + 1];
  if (is(d, w("the")) && (next.is_number() || next.any(bit(Role::ordinal) | bit(Role::number)))) ++d;
  const bool joint = t[d].is_sign('/') || t[d].is_sign('-');
  if (joint && !t[d].space && next.is_number() && next.digits <= 2) ++d;
  // "October nineteen sixty-two" is a month of a year; a day would be "the nineteenth", or be set off by a
  // comma: "October nineteen, nineteen sixty-two".
  const auto whole_year_at = [&](std::size_t at) {
    Spec said;
    return t[at].is_word() && !t[at].is(Role::ordinal) && year(at, YearStance::supported, said) &&
           !said.short_year;
  };
  if (t[d].is_sign('\'') || t[d].paragraph || (whole_year_at(d) && !whole_year_at(d + 1))) return false;
  if (!day_number(d, day, after) || t[after].is_sign(':')) return false;
  const bool dash = t[after].is_sign('-') && !t[after].space, of = is(after, w("of"));
  if (counts_something(after) && !dash && !of) return false;
  if (of && !t[after + 1].is(Role::determiner) && !t[after + 1].is_number() && !t[after + 1].is(Role::number))
    return false;
  if (dash && t[after + 1].is_word() && !t[after + 1].space &&
      !t[after + 1].any(bit(Role::month) | bit(Role::month_short)))
    return false;
  spec.date.precision = DateValue::Precision::day;
  spec.rule = "month-day";
  spec.date.day = static_cast<int>(day);
  spec.end = after;
  if (!year_after(after, spec)) said_year(after, spec);
  return true;
}

bool Grammar::day_and_month(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (t[j].any(bit(Role::weekday) |
               bit(Role::weekday_short))) {  // It adds nothing that the day does not say.
    ++j;
    if (t[j].is_sign('.') && !t[j].space) ++j;
    if (t[j].is_sign(',') && !t[j].space) ++j;
  }
  if (day_first(i, j, spec)) return true;
  int month = 0;
  std::size_t past = j;
  if (!month_name(j, month, past, false)) return false;
  start_calendar(spec, i, DateValue::Precision::month, "month");
  spec.date.month = month;
  spec.end = past;
  if (day_after_month(past, spec)) return true;
  if (j != i) return false;  // a weekday before a bare month
  if (!year_after(past, spec)) said_year(past, spec);
  return true;
}

bool Grammar::numeric_date(std::size_t i, Spec& spec) const {
  const bool second_end =
      t[i - 1].is_sign('-') && t[i - 2].is_number() && t[i - 3].is_sign('/');  // 5/1-5/7/2020
  if (!t[i].is_number() || t[i].grouped || (!second_end && number_is_label(i))) return false;
  const auto& joint = t[i + 1];
  if (joint.kind != Token::Kind::sign || joint.space ||
      (joint.sign != '-' && joint.sign != '/' && joint.sign != '.'))
    return false;
  const auto& second = t[i + 2];
  if (!second.is_number() || second.space || second.grouped) return false;
  const bool three = t[i + 3].is_sign(joint.sign) && !t[i + 3].space && t[i + 4].is_number() &&
                     !t[i + 4].space && !t[i + 4].grouped;
  const auto& third = t[i + 4];
  std::size_t past = three ? i + 5 : i + 3;
  const bool range = joint.sign == '/' && t[past].is_sign('-') && t[past + 1].is_number() &&
                     t[past + 2].is_sign('/') && !t[past + 2].space;
  if (!range && t[past].is_word() && !t[past].space && !is(past, w("t"))) return false;
  if (!range && ((t[past].is_sign('-') || t[past].is_sign('/')) && !t[past].space &&
                 (t[past + 1].is_word() || t[past + 1].is_number()) && !t[past + 1].space))
    return false;
  start_calendar(spec, i, DateValue::Precision::day, "numeric");
  spec.end = past;
  const auto month_day = [&](std::int64_t month, std::int64_t day) {
    if (month < 1 || month > 12 || day < 1 || day > 31) return false;
    spec.date.month = static_cast<int>(month);
    spec.date.day = static_cast<int>(day);
    return true;
  };
  if (three && t[i].digits == 4) {  // 1962-10-04
    spec.date.year = t[i].number;
    spec.date.year_known = spec.year_said = true;
    return t[i].number >= 1000 && month_day(second.number, third.number);
  }
  if (!three) {
    if (t[i].digits == 4 && joint.sign == '-' && second.digits == 2 && second.number >= 1 &&
        second.number <= 12 && t[i].number >= 1000 && t[i].number <= 2199 &&
        second.number <= t[i].number % 100) {  // 1962-10, but 1906-07 is a span
      spec.date.precision = DateValue::Precision::month;
      spec.date.month = static_cast<int>(second.number);
      spec.date.year = t[i].number;
      spec.date.year_known = spec.year_said = true;
      return true;
    }
    if (joint.sign == '/' && second.digits == 4 && t[i].number >= 1 && t[i].number <= 12 &&
        second.number >= 1000 && second.number <= 2199) {
      spec.date.precision = DateValue::Precision::month;  // 10/1962
      spec.date.month = static_cast<int>(t[i].number);
      spec.date.year = second.number;
      spec.date.year_known = spec.year_said = true;
      return true;
    }
    if (joint.sign != '/' || t[i].digits > 2 || second.digits > 2) return false;
    if (!t[i - 1].is(Role::place_in_time) && !t[i - 1].is(Role::weekday) && !second_end && !range)
      return false;  // one half, 9/10
  } else {
    if (third.digits != 4 && third.digits != 2) return false;
    spec.date.year = third.number;
    spec.short_year = third.digits == 2;
    spec.date.year_known = spec.year_said = true;
    if (third.digits == 4 && (third.number < 1000 || third.number > 2199)) return false;
  }
  if (t[i].digits > 2 || second.digits > 2) return false;
  const auto a = t[i].number, b = second.number;
  if (a > 12) return month_day(b, a);
  if (b > 12 || a == b) return month_day(a, b);
  if (!month_day(a, b)) return false;
  spec.rule = "numeric-either-order";  // 4/10/1962: 4 October or April 10
  return true;
}

bool Grammar::lone_weekday(std::size_t i, Spec& spec) const {
  if (!t[i].is(Role::weekday) || (t[i].possessive && !prose()) || name_not_date(i, i + 1)) return false;
  start_calendar(spec, i, DateValue::Precision::day, "weekday");
  spec.date.weekday = t[i].value(Role::weekday);
  spec.end = i + 1;
  spec.definite = is(i - 1, w("the"));
  if (is(i + 1, w("of"))) {  // Tuesday of that week
    auto of = std::make_unique<Spec>();
    if (relative(i + 2, *of) && of->kind == Spec::Kind::relative && of->unit == Unit::week &&
        !of->date.weekday) {
      spec.end = of->end;
      spec.of = std::move(of);
    }
  }
  return true;
}

// "on the seventh", "the 4th": only after on, by, until, from, since and with nothing behind it that it could
// number.
bool Grammar::day_of_month(std::size_t i, Spec& spec) const {
  const bool weekday = t[i].is(Role::weekday);  // Wednesday the thirty-first
  std::size_t j = weekday ? i + 1 : i, past = 0;
  if (!is(j, w("the"))) return false;
  ++j;
  std::int64_t day = 0;
  if (!ordinal(j, day, past) || day < 1 || day > 31) return false;
  start_calendar(spec, i, DateValue::Precision::day, "day-of-month");
  spec.date.day = static_cast<int>(day);
  spec.day_only = true;
  std::size_t of_at = is(past, w("day")) && is(past + 1, w("of")) ? past + 1 : past;
  if (is(of_at, w("of"))) {  // the seventh of that month, the fifteenth day of last month
    auto of = std::make_unique<Spec>();
    if (!relative(of_at + 1, *of) || of->unit != Unit::month || of->kind != Spec::Kind::relative)
      return false;
    spec.end = of->end;
    spec.of = std::move(of);
    return true;
  }
  const auto before = t[i - 1].hash;
  const bool part_of_day = before == w("of") && t[i - 2].is(Role::day_part);  // the night of the twenty-third
  if (!weekday && !part_of_day && before != w("on") && before != w("until") && before != w("since") &&
      before != w("by") && before != w("and") && before != w("to"))
    return false;
  if ((before == w("and") || before == w("to") || before == w("by")) && !t[j].is_number() && !weekday)
    return false;
  const auto& after = t[past];
  if (after.is_word() && !after.newline && !after.is(Role::after_year)) return false;
  if (after.is_sign('-')) return false;
  spec.end = past;
  return true;
}

// fall and winter of 1955, spring to summer 1957
bool Grammar::seasons_paired(std::size_t j) const {
  if (prose() || (!is(j + 1, w("and")) && !is(j + 1, w("or")) && !is(j + 1, w("to")) &&
                  !is(j + 1, w("through")) && !is(j + 1, w("into"))))
    return false;
  const std::size_t k = is(j + 2, w("the")) ? j + 3 : j + 2;
  Spec after;
  return t[k].is(Role::season) && (is(k + 1, w("of")) ? year(k + 2, YearStance::supported, after)
                                                      : year(k + 1, YearStance::supported, after));
}

// "A sack on his shoulders summer and winter", "in summer and winter": all the year round, where neither has
// an article nor a year. "In spring or summer" behind a preposition leaves open which.
bool Grammar::all_year_round(std::size_t i) const {
  const auto pair_at = [&](std::size_t first) {
    return t[first].is(Role::season) && (is(first + 1, w("and")) || is(first + 1, w("or"))) &&
           t[first + 2].is(Role::season) && t[first].value(Role::season) != t[first + 2].value(Role::season);
  };
  const std::size_t first = pair_at(i) ? i : i - 2;
  if (prose() || (first != i && (i < 2 || !pair_at(first))) || seasons_paired(first)) return false;
  const auto& before = t[first - 1];
  if (before.any(bit(Role::determiner) | bit(Role::following) | bit(Role::part) | bit(Role::part_noun) |
                 bit(Role::every)) ||
      is(first - 1, w("all")) || (is(first + 1, w("or")) && before.is(Role::place_in_time)))
    return false;
  Spec year_of;
  return !said_year(first + 3, year_of);
}

bool Grammar::season(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  const bool pointed = !prose() && (is(j, w("that")) || is(j, w("this")));  // that fall of 1950
  if (is(j, w("the")) || pointed) ++j;
  if (!prose() && t[j].is(Role::seasons) && is(j + 1, w("of"))) {  // the summers of 1955 and 1956
    start_calendar(spec, i, DateValue::Precision::season, "season");
    spec.date.season = static_cast<Season>(t[j].value(Role::seasons));
    spec.end = j + 1;
    return year_after(j + 1, spec);
  }
  if (!t[j].is(Role::season)) return false;
  if (j == i && all_year_round(i)) return false;
  const bool paired = seasons_paired(j);
  if (!paired && (season_is_thing(j) || (j == i && name_not_date(j, j + 1)))) return false;
  start_calendar(spec, i, DateValue::Precision::season, "season");
  spec.date.season = static_cast<Season>(t[j].value(Role::season));
  spec.end = j + 1;
  if (year_after(j + 1, spec)) {
    if (spec.date.season == Season::winter && !prose()) whole_winter(spec);
    return true;
  }
  if (pointed) return false;
  if (paired || said_year(j + 1, spec)) return true;
  if (setting_.prose) {
    // "the summer offensive": the article is the offensive's.
    const auto& after = t[j + 1];
    return j == i || !(after.is_word() && !after.newline && !after.word && !ends_with(j + 1, "ed"));
  }
  // Talk: a bare season has to stand where a time stands.
  const auto before = t[i - 1].hash;
  const bool told = t[i - 1].is(Role::part) || t[i - 1].is(Role::part_noun) || before == w("in") ||
                    before == w("by") || before == w("since") || before == w("until") ||
                    before == w("till") || before == w("during") || before == w("throughout") ||
                    before == w("of") || before == w("and") || before == w("or") || before == w("over") ||
                    before == w("through") || before == w("all") || before == w("before") ||
                    before == w("after") || before == w("from") || before == w("to");
  return told;
}

}  // namespace witnessmark::dates
