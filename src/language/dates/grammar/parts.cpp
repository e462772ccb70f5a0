// What stands before a date and narrows it: early 1962, late in the year, mid-September, the end of March,
// the latter part of the decade, the first half of 2008, about 1910; and "later that month".
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
namespace {

Part part_of(Mod mod) {
  return mod == Mod::start ? Part::early
         : mod == Mod::mid ? Part::mid
         : mod == Mod::end ? Part::late
                           : Part::none;
}

/// A date may be narrowed when it has an inside: "early Tuesday" is a matter of hours and is let be.
bool can_be_narrowed(const Spec& spec) {
  if (spec.kind == Spec::Kind::relative) return spec.count.value == 1 && !spec.count.vague;
  return spec.kind == Spec::Kind::calendar || spec.kind == Spec::Kind::event;
}

}  // namespace

bool Grammar::lone_year(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (is(j, w("the")) && (is(j + 1, w("year")) || is(j + 1, w("years"))))
    j += 2;
  else if (is(j, w("year")) && !is(i - 1, w("the")))
    j += 1;
  if (j != i && !t[j].is_number() && !t[j].any(bit(Role::number) | bit(Role::year_zero)) &&
      !t[j].is_sign('\''))
    return false;
  if (!year(j, j == i ? YearStance::alone : YearStance::supported, spec)) return false;
  spec.begin = i;
  return true;
}

bool Grammar::core(std::size_t i, Spec& spec) const {
  constexpr auto kMonths = bit(Role::month) | bit(Role::month_short);
  constexpr std::size_t kToNumberedMonth = 5;  // the twenty-fifth day of the third
  constexpr std::size_t kDayToMonth = 8;       // Thursday, the twenty-third day of January
  const bool the = is(i, w("the"));
  const std::size_t at = the ? i + 1 : i;
  const Token& head = t[at];
  const bool number = head.is_number() || head.is(Role::number);
  if (t[i].is_number()) offer(&Grammar::numeric_date, i, spec);
  if ((number || head.any(kMonths | bit(Role::weekday) | bit(Role::weekday_short) | bit(Role::ordinal))) &&
      (near(at, kMonths, kDayToMonth) || (!prose() && near(at + 1, bit(Role::ordinal), kToNumberedMonth))))
    offer(&Grammar::day_and_month, i, spec);
  if (head.any(bit(Role::season) | bit(Role::seasons)) ||
      ((is(i, w("that")) || is(i, w("this"))) && t[i + 1].is(Role::season)))
    offer(&Grammar::season, i, spec);
  if (head.is(Role::phrase)) offer(&Grammar::named_day, i, spec);
  if (number || head.is_sign('\'') ||
      head.any(bit(Role::era_sign) | bit(Role::unit) | bit(Role::units) | bit(Role::year_zero)))
    offer(&Grammar::lone_year, i, spec);
  const auto& next = t[at + 1].is_sign('-') ? t[at + 2] : t[at + 1];
  const bool digits = head.is_number() && t[at + 1].kind != Token::Kind::end && !t[at + 1].space;
  const auto something = [&] {  // nineteen fifty-something
    return number && next.is(Role::number) &&
           (is(at + 2, w("something")) || is(at + 3, w("something")) || is(at + 4, w("something")));
  };
  if (digits || head.is_sign('\'') || head.is(Role::decade) || (number && next.is(Role::decade)) ||
      something()) {
    Spec found;
    if (decade(at, found) && found.end > spec.end) found.begin = i, spec = std::move(found);
  }
  const bool hundreds = number && (is(at + 1, w("hundreds")) || is(at + 1, w("s")));
  if (hundreds ||
      ((number || head.is(Role::ordinal)) && near(at + 1, bit(Role::unit) | bit(Role::units), 4))) {
    Spec found;
    if (century(at, found) && found.end > spec.end) found.begin = i, spec = std::move(found);
  }
  return spec.end != 0;
}

// [the] early|late|mid [-] [in] DATE
bool Grammar::part_before(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (t[j].is(Role::determiner) && (is(j, w("the")) || is(j, w("those")) || is(j, w("that")))) ++j;
  if (is(j, w("very"))) ++j;
  if (!t[j].is(Role::part)) return false;
  auto mod = static_cast<Mod>(t[j].value(Role::part));
  const auto part = part_of(mod);
  auto part_to = Part::none;
  ++j;
  const std::size_t joint = t[j].is_sign('-') ? j + 1 : j;
  if ((is(joint, w("to")) || is(joint, w("or"))) && t[joint + 1].is(Role::part)) {  // mid to late sixties
    part_to = part_of(static_cast<Mod>(t[joint + 1].value(Role::part)));
    j = joint + 2;
    mod = Mod::none;
  }
  if (t[j].is_sign('-') && !t[j].space) ++j;
  const bool in = is(j, w("in")) || is(j, w("on")) || is(j, w("of"));
  if (in) ++j;
  Spec best;
  if (t[j].kind != Token::Kind::sign || t[j].is_sign('\'')) {
    offer(&Grammar::core, j, best);
    offer(&Grammar::relative, j, best);
    if (!in || t[j - 1].hash == w("in")) {
      Spec found;
      if (year(j, YearStance::supported, found) && found.end > best.end) best = std::move(found);
    }
    offer(&Grammar::part_of_day, j, best);
  }
  if (best.end == 0 || (best.kind != Spec::Kind::clock && !can_be_narrowed(best))) return false;
  if (best.date.weekday && best.date.precision == DateValue::Precision::day && !best.date.day) return false;
  spec = std::move(best);
  spec.begin = i;
  if (spec.kind != Spec::Kind::clock) {
    spec.mod = mod;
    spec.part = part;
    spec.part_to = part_to;
  }
  return true;
}

// [the] [back] end|beginning|middle|rest of DATE
bool Grammar::noun_part(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (is(j, w("the"))) ++j;
  if (is(j, w("very"))) ++j;
  const bool back = is(j, w("back")) && is(j + 1, w("end"));
  if (back || (is(j, w("tail")) && is(j + 1, w("end")))) ++j;
  if (!t[j].is(Role::part_noun)) return false;
  const auto mod = static_cast<Mod>(t[j].value(Role::part_noun));
  const bool turn = is(j, w("turn"));
  const auto part = turn || back        ? (back ? Part::late : Part::none)
                    : mod == Mod::start ? Part::beginning
                    : mod == Mod::end   ? Part::end
                                        : part_of(mod);
  ++j;
  if (!is(j, w("of"))) return false;
  ++j;
  Spec best;
  offer(&Grammar::core, j, best);
  offer(&Grammar::relative, j, best);
  Spec found;
  if (!prose() && year(j, YearStance::supported, found) && found.end > best.end) best = std::move(found);
  offer(&Grammar::part_before, j, best);
  offer(&Grammar::event, j, best);
  if (best.end == 0 && !prose() && (is(j, w("year")) || is(j, w("month"))) &&
      !t[j].newline) {  // by end of year
    best.kind = Spec::Kind::relative;
    best.following = Following::same;
    best.unit = static_cast<Unit>(t[j].value(Role::unit));
    best.end = j + 1;
    best.rule = "the-unit";
  }
  if (best.end == 0 || !can_be_narrowed(best)) return false;
  if (turn && best.kind == Spec::Kind::relative && best.unit == Unit::century && best.rule == "the-unit") {
    best.kind = Spec::Kind::calendar;
    best.date = DateValue::of_year(1900);
    best.year_said = true;
    best.rule = "turn-of-century";
    best.mod = Mod::approx;
  } else if (best.mod == Mod::none) {
    best.mod = mod;
    best.part = part;
  }
  spec = std::move(best);
  spec.begin = i;
  return true;
}

// [the] first|second|third|last quarter of 1957; `j` is at "quarter"
bool Grammar::quarter_of(std::size_t i, std::size_t j, Spec& spec) const {
  std::int64_t number = 0;
  std::size_t past = 0;
  if (is(j - 1, w("last")) || is(j - 1, w("final")))
    number = 4;
  else if (!ordinal(j - 1, number, past) || number < 1 || number > 4)
    return false;
  Spec year_of;
  if (!is(j + 1, w("of")) || !year(j + 2, YearStance::supported, year_of)) return false;
  spec = std::move(year_of);
  spec.begin = i;
  spec.date.precision = DateValue::Precision::quarter;
  spec.date.half = static_cast<int>(number);
  return true;
}

// [the] first|latter|last … half|part|days of DATE
bool Grammar::portion_part(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (is(j, w("the"))) ++j;
  if (!t[j].is(Role::portion_place) && !t[j].is(Role::part)) return false;
  auto mod = static_cast<Mod>(t[j].is(Role::portion_place) ? t[j].value(Role::portion_place)
                                                           : t[j].value(Role::part));
  const auto place = j;
  const bool first = is(j, w("first")), last = is(j, w("second")) || is(j, w("latter")) || is(j, w("last"));
  const bool ordinal_place =
      first || is(j, w("last")) || is(j, w("final")) || is(j, w("closing")) || is(j, w("opening"));
  ++j;
  std::int64_t number = 0;
  std::size_t past = j;
  if (below_hundred(j, number, past))
    j = past;
  else if (t[j].is_number() && t[j].digits <= 2 && !t[j].grouped)
    number = t[j].number, ++j;
  else if (is(j, w("few")))
    ++j;
  else if (is(j, w("couple")))
    j = is(j + 1, w("of")) ? j + 2 : j + 1;
  const bool half = is(j, w("half")), unit = t[j].is(Role::units);
  if (!prose() && is(j, w("quarter")) && quarter_of(i, j, spec)) return true;
  const auto portion_unit = unit ? static_cast<Unit>(t[j].value(Role::units)) : Unit::day;
  if (!t[j].is(Role::portion)) return false;
  if (is(i + 1, w("second")) && !half) mod = Mod::none;
  ++j;
  if (!is(j, w("of"))) return false;
  ++j;
  Spec best;
  offer(&Grammar::core, j, best);
  offer(&Grammar::relative, j, best);
  Spec found;
  if (!prose() && year(j, YearStance::supported, found) && found.end > best.end) best = std::move(found);
  if (best.end == 0 || !can_be_narrowed(best)) return false;
  const bool whole_year =
      (best.kind == Spec::Kind::calendar && best.date.precision == DateValue::Precision::year);
  if (half && whole_year && (first || last)) {
    best.date.precision = DateValue::Precision::half;
    best.date.half = first ? 1 : 2;
  } else {
    best.mod = mod;
    if (unit && number > 0) {
      best.part = ordinal_place ? part_of(mod) : Part::none;
      best.part_count = number;
      best.part_unit = portion_unit;
    } else if (half) {
      best.part = first ? Part::first_half : last ? Part::second_half : Part::none;
    } else if (unit && ordinal_place) {
      best.part = mod == Mod::start ? Part::beginning : mod == Mod::end ? Part::end : Part::none;
    } else if (is(place, w("latter")) || (first && mod != Mod::none)) {
      best.part = first ? Part::first_half : Part::second_half;  // of two, as a rule
    } else {
      best.part = part_of(mod);
    }
  }
  spec = std::move(best);
  spec.begin = i;
  return true;
}

// the first week of May, the last Sunday in October 1957, the last day of the month: talk only; histories
// take these weeks as lengths.
bool Grammar::nth_of(std::size_t i, Spec& spec) const {
  if (prose()) return false;
  std::size_t j = is(i, w("the")) ? i + 1 : i, past = j;
  std::int64_t number = 0;
  if (is(j, w("last")) || is(j, w("final")))
    number = -1, past = j + 1;
  else if (!ordinal(j, number, past) || number > 5)
    return false;
  const auto& head = t[past];
  const bool weekday = head.is(Role::weekday), week = is(past, w("week")),
             day = is(past, w("day")) && (number == 1 || number == -1);
  if (!weekday && !week && !day) return false;
  if (!is(past + 1, w("of")) && !is(past + 1, w("in"))) return false;
  Spec month;
  offer(&Grammar::core, past + 2, month);
  offer(&Grammar::relative, past + 2, month);
  const bool of_month =
      month.kind == Spec::Kind::calendar
          ? month.date.precision == DateValue::Precision::month
          : month.kind == Spec::Kind::relative && (month.unit == Unit::month || month.date.month);
  const bool of_year =
      !weekday && month.kind == Spec::Kind::calendar && month.date.precision == DateValue::Precision::year;
  if (month.end == 0 || (!of_month && !of_year)) return false;
  spec.kind = Spec::Kind::calendar;
  spec.begin = i;
  spec.end = month.end;
  spec.rule = "nth-of";
  spec.nth = static_cast<int>(number);
  spec.unit = week ? Unit::week : Unit::day;
  spec.date.weekday = weekday ? head.value(Role::weekday) : 0;
  spec.date.precision = DateValue::Precision::day;
  spec.of = std::make_unique<Spec>(std::move(month));
  return true;
}

// about 1910, ca. 466 BC, around Christmas
bool Grammar::approximate(std::size_t i, Spec& spec) const {
  if (!t[i].is(Role::approx) || static_cast<Mod>(t[i].value(Role::approx)) != Mod::approx || is(i, w("some")))
    return false;
  std::size_t j = i + 1;
  if (is(i, w("around")) && is(j, w("about"))) ++j;
  if (t[j].is_sign('.') && !t[j].space) ++j;
  const bool short_form = is(i, w("c")) || is(i, w("ca")) || is(i, w("circa"));
  if (is(i, w("c")) && (j == i + 1 || !t[j].is_number())) return false;
  Spec best;
  offer(&Grammar::core, j, best);
  if (short_form) {
    Spec found;
    if (year(j, YearStance::supported, found) && found.end > best.end) best = std::move(found);
  }
  if (!short_form) {
    offer(&Grammar::noun_part, j, best);
    offer(&Grammar::part_before, j, best);
  }
  if (best.end == 0 || best.kind != Spec::Kind::calendar) return false;
  spec = std::move(best);
  spec.begin = i;
  spec.about = true;
  if (spec.mod == Mod::none) spec.mod = Mod::approx;
  return true;
}

bool Grammar::parted(std::size_t i, Spec& spec) const {
  std::size_t at = t[i].is(Role::determiner) ? i + 1 : i;
  if (is(at, w("very"))) ++at;
  const auto& head = t[at];
  if (head.is(Role::part)) offer(&Grammar::part_before, i, spec);
  if ((head.is(Role::part_noun) || is(at, w("back"))) && (is(at + 1, w("of")) || is(at + 1, w("end"))))
    offer(&Grammar::noun_part, i, spec);
  if (head.any(bit(Role::portion_place) | bit(Role::part)) &&
      (near(at + 1, bit(Role::portion), 5) || is(at + 1, w("quarter"))))
    offer(&Grammar::portion_part, i, spec);
  if (t[i].is(Role::approx)) offer(&Grammar::approximate, i, spec);
  if ((head.any(bit(Role::ordinal) | bit(Role::portion_place)) || head.is_number()) &&
      near(at + 1, bit(Role::weekday) | bit(Role::unit), 3))
    offer(&Grammar::nth_of, i, spec);
  return spec.end != 0;
}

// later|earlier [on] [in] that|the same|the UNIT
bool Grammar::within(std::size_t i, Spec& spec) const {
  if (!is(i, w("later")) && !is(i, w("earlier"))) return false;
  std::size_t j = i + 1;
  if (is(j, w("on")) && !is(j + 1, w("the"))) ++j;
  if (is(j, w("in")) || is(j, w("on"))) ++j;
  Spec inner;
  if (!relative(j, inner) || inner.kind != Spec::Kind::relative || inner.following == Following::next ||
      inner.following == Following::previous || inner.count.vague || inner.count.value != 1)
    return false;
  spec = std::move(inner);
  spec.kind = Spec::Kind::within;
  spec.begin = i;
  spec.later = is(i, w("later")) ? Later::after : Later::before;
  spec.rule = "within";
  return true;
}

}  // namespace witnessmark::dates
