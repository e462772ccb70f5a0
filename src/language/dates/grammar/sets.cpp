// What happens again and again: every Sunday, each winter, every two weeks, daily, on Sundays, per day.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
namespace {

/// Every UNIT; every other UNIT.
ShortText every_unit(Unit unit, bool other) {
  if (other) return duration_timex(2, false, false, unit);
  switch (unit) {
    case Unit::hour:
      return "XXXX-XX-XXTXX";
    case Unit::day:
      return "XXXX-XX-XX";
    case Unit::week:
      return "XXXX-WXX";
    case Unit::weekend:
      return "XXXX-WXX-WE";
    case Unit::fortnight:
      return "P2W";
    case Unit::month:
      return "XXXX-XX";
    case Unit::year:
      return "XXXX";
    default:
      return duration_timex(1, false, false, unit);
  }
}

}  // namespace

bool Grammar::set(std::size_t i, Spec& spec) const {
  spec.kind = Spec::Kind::set;
  spec.begin = i;
  spec.rule = "set";
  if (t[i].is(Role::frequency)) {
    static constexpr const char* kValues[] = {"XXXX-XX-XXTXX", "XXXX-XX-XX", "XXXX-XX-XXTNI", "XXXX-WXX",
                                              "XXXX-XX",       "XXXX-QX",    "XXXX"};
    spec.timex = kValues[t[i].value(Role::frequency)];
    spec.end = i + 1;
    return true;
  }
  if (t[i].is(Role::weekdays) && is(i - 1, w("of")) && is(i - 2, w("month")))
    return false;  // a month of Sundays
  if (t[i].is(Role::weekdays)) {
    spec.timex = "XXXX-WXX-";
    spec.timex.append_number(t[i].value(Role::weekdays), 1);
    spec.end = i + 1;
    return true;
  }
  if (is(i, w("per")) && t[i + 1].is(Role::unit)) {
    spec.timex = duration_timex(1, false, false, static_cast<Unit>(t[i + 1].value(Role::unit)));
    spec.rule = "rate";
    spec.end = i + 2;
    return true;
  }
  return t[i].is(Role::every) && every(i + 1, spec);
}

// What follows every or each.
bool Grammar::every(std::size_t j, Spec& spec) const {
  const bool other = is(j, w("other")) || is(j, w("second"));
  if (other) ++j;
  if (is(j, w("single"))) ++j;
  const auto& head = t[j];
  spec.end = j + 1;
  if (head.is(Role::weekday)) {
    spec.timex = other ? "P2W" : "XXXX-WXX-";
    if (!other) spec.timex.append_number(head.value(Role::weekday), 1);
    if (t[j + 1].is(Role::day_part)) {
      if (!other) spec.timex += day_part_time(static_cast<DayPart>(t[j + 1].value(Role::day_part)));
      spec.end = j + 2;
    }
    return true;
  }
  if (other && head.any(bit(Role::season) | bit(Role::month))) {
    spec.timex = "P2Y";
    return true;
  }
  if (head.is(Role::season)) {
    spec.timex = "XXXX-";
    spec.timex += season_code(static_cast<Season>(head.value(Role::season)));
    return true;
  }
  if (head.is(Role::month)) {
    spec.timex = "XXXX-";
    spec.timex.append_number(head.value(Role::month), 2);
    return true;
  }
  if (head.is(Role::day_part)) {
    spec.timex = "XXXX-XX-XX";
    spec.timex += day_part_time(static_cast<DayPart>(head.value(Role::day_part)));
    return true;
  }
  if (head.is(Role::unit)) {
    const auto unit = static_cast<Unit>(head.value(Role::unit));
    spec.timex = every_unit(unit, other);
    return unit > Unit::minute;  // every second man, every minute of it
  }
  return every_feast_or_number(j, spec);
}

// every Christmas, every two weeks
bool Grammar::every_feast_or_number(std::size_t j, Spec& spec) const {
  std::size_t past = j;
  if (const auto* phrase = t.phrase_at(j, past);
      phrase && phrase->day && phrase->day->kind == NamedDay::Kind::fixed) {
    DateValue value;
    value.precision = DateValue::Precision::day;
    value.month = phrase->day->month;
    value.day = phrase->day->day;
    spec.timex = to_timex(value);
    spec.end = past;
    spec.full_end = true;
    return true;
  }
  Count number;
  if (!count(j, number, past) || !t[past].is(Role::units)) return false;
  spec.timex =
      duration_timex(number.value, number.vague, number.half, static_cast<Unit>(t[past].value(Role::units)));
  spec.end = past + 1;
  return true;
}

}  // namespace witnessmark::dates
