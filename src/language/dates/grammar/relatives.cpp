// Units seen from the date under discussion or from the day of speaking: that spring, the following year, the
// next morning, last year, this week; "this period", now, today.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

// "Her last year afloat", "the last year of the war": not seen from the day of speaking.
bool Grammar::belongs_to_someone(std::size_t i) const {
  for (const auto word : {w("the"), w("my"), w("his"), w("their"), w("your"), w("our"), w("its")})
    if (is(i - 1, word)) return !t[i].newline;
  if (is(i - 1, w("her"))) {  // but: they painted her last winter
    for (const auto word :
         {w("was"), w("is"), w("in"), w("for"), w("of"), w("during"), w("since"), w("after")})
      if (is(i - 2, word)) return true;
    return i == 1 || t[i - 2].kind != Token::Kind::word;
  }
  return names_owner(i - 1);
}

// the mate's, Anna's; not it's, that's
bool Grammar::names_owner(std::size_t i) const {
  return t[i].is_word() &&
         (t[i].possessive != 0 || (!t[i].word && (ends_with(i, "'s") || ends_with(i, "\xE2\x80\x99s"))));
}

// [the|that|this|…] [same|next|following|previous|last|…] UNIT, where UNIT is a unit of a day or more, a
// season, a month, a weekday or a part of the day.
bool Grammar::relative(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  const auto det = t[j].hash;
  const bool the = det == w("the"), that = det == w("that"), self = det == w("this");
  if (the || that || self) ++j;
  auto following = Following::none;
  const bool very = is(j, w("very"));
  if (very) ++j;
  if (t[j].is(Role::following)) {
    following = static_cast<Following>(t[j].value(Role::following));
    if (following == Following::between) return false;
    ++j;
    if (following == Following::same && is(j, w("very"))) ++j;
  }
  if (!the && !that && !self && (following == Following::none || following == Following::same)) return false;
  if (!the && !that && !self && !prose() && belongs_to_someone(i)) return false;
  const bool past_word = t[j - 1].hash == w("past") || t[j - 1].hash == w("coming");
  if (past_word && !the && !self && (prose() || !t[j].is(Role::weekday))) return false;
  const auto& head = t[j];
  if (!head.is_word() || head.paragraph) return false;
  spec.kind = Spec::Kind::relative;
  spec.begin = i;
  spec.end = j + 1;
  spec.rule = "relative";
  const bool bare = the && following == Following::none;
  if (!relative_unit(j, bare, following != Following::none, spec)) return false;
  if (bare) spec.rule = "the-unit";
  if (following == Following::none || following == Following::same) {
    spec.following = Following::same;
    spec.speech = self && following == Following::none && !prose();
  } else if (following == Following::last) {
    spec.following = Following::previous;
    spec.speech = !prose() && (!the || past_word || self);
  } else {
    spec.following = following;
    spec.speech = !prose() && ((is(i, w("next")) && !the && !that) || self);
  }
  // "for the next decade", "in the past decade": how long, not when.
  if (head.is(Role::unit) && the && spec.unit >= Unit::week &&
      (past_word || (is(i - 1, w("for")) && is(i + 1, w("next"))))) {
    spec.kind = Spec::Kind::duration;
    spec.rule = "duration";
    spec.speech = false;
    return true;
  }
  // "next to", "the last year of the war": not ours.
  return spec.following == Following::same || !head.is(Role::unit) || !is(j + 1, w("of")) || (!the && !that);
}

// The unit, season, month, weekday, part of the day or feast at j. `bare`: only "the" stands before it, which
// makes a month or a feast no relative; `ordered`: next, last, same.
bool Grammar::relative_unit(std::size_t j, bool bare, bool ordered, Spec& spec) const {
  const auto& head = t[j];
  if (is(j, w("week")) && !bare && !prose() && t[j + 1].is(Role::weekday) && !t[j + 1].newline) {
    spec.unit = Unit::week;  // that week Monday
    spec.date.precision = DateValue::Precision::day;
    spec.date.weekday = t[j + 1].value(Role::weekday);
    spec.of_week = true;
    spec.end = j + 2;
    return true;
  }
  if (head.is(Role::unit) && static_cast<Unit>(head.value(Role::unit)) >= Unit::day) {
    spec.unit = static_cast<Unit>(head.value(Role::unit));
    spec.date.precision = DateValue::Precision::none;
    return true;
  }
  if (head.is(Role::season)) {
    spec.unit = Unit::year;
    spec.date.precision = DateValue::Precision::season;
    spec.date.season = static_cast<Season>(head.value(Role::season));
    return is(j, w("fall")) ? !bare : !is(j, w("spring")) || !season_is_thing(j);
  }
  if (head.is(Role::month)) {
    spec.unit = Unit::year;
    spec.date.precision = DateValue::Precision::month;
    spec.date.month = head.value(Role::month);
    return !bare && (ordered || !month_is_verb(j));
  }
  spec.date.precision = DateValue::Precision::day;
  if (head.is(Role::weekday)) {
    spec.unit = Unit::week;
    spec.date.weekday = head.value(Role::weekday);
    return true;
  }
  if (head.is(Role::day_part)) {
    spec.unit = Unit::day;
    spec.date.time = day_part_time(static_cast<DayPart>(head.value(Role::day_part)));
    return !t[j + 1].is(Role::watch_noun);
  }
  std::size_t past = 0;  // the following Christmas, that Easter
  const auto* phrase = t.phrase_at(j, past);
  if (!phrase || !phrase->day || bare) return false;
  spec.unit = Unit::year;
  spec.named = &*phrase->day;
  spec.end = past;
  spec.full_end = true;
  return true;
}

bool Grammar::said_relative(std::size_t i, Spec& spec) const {
  if (!relative(i, spec) || spec.rule == "the-unit") return false;
  if (spec.following == Following::same && spec.unit == Unit::day && is(i, w("the")) &&
      !is(i + 1, w("same")) && !is(i + 1, w("very")))
    return false;
  return true;
}

bool Grammar::era(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  const bool self = is(j, w("this")), that = is(j, w("that")), the = is(j, w("the"));
  if (!self && !that && !the) return false;
  ++j;
  bool same = false;
  if (is(j, w("same")) || is(j, w("very"))) ++j, same = true;
  if (!t[j].is(Role::era)) return false;
  const bool time = is(j, w("time")), point = is(j, w("point"));
  const auto before = t[i - 1].hash;
  const bool told = before == w("at") || before == w("during") || before == w("by") || before == w("since") ||
                    before == w("until") || before == w("throughout") || before == w("from") ||
                    before == w("before") || before == w("after") || before == w("around") ||
                    before == w("about") || before == w("in") || before == w("of") || before == w("over");
  if (the && !same && !(time && before == w("at") && prose())) return false;
  if ((time || point) && !told) return false;
  if (point) return false;
  if (!time && !told) return false;
  if (time && is(j + 1, w("of")) && !is(j + 2, w("the"))) return false;
  spec.kind = Spec::Kind::era;
  spec.begin = i;
  spec.end = j + 1;
  spec.following = self ? Following::none : Following::same;
  spec.speech = the && same;
  spec.rule = "era";
  return true;
}

bool Grammar::reference(std::size_t i, Spec& spec) const {
  spec.kind = Spec::Kind::reference;
  spec.begin = i;
  spec.end = i + 1;
  spec.rule = "reference";
  if (is(i, w("right")) && is(i + 1, w("now"))) {
    spec.end = i + 2;
    spec.timex = "PRESENT_REF";
    return true;
  }
  if (is(i, w("these")) && is(i + 1, w("days"))) {
    if (is(i - 1, w("of")) && is(i - 2, w("one")) && !prose()) return false;
    spec.end = i + 2;
    spec.timex = "PRESENT_REF";
    return true;
  }
  if (is(i, w("the")) && (is(i + 1, w("present")) || is(i + 1, w("future")))) {
    if (is(i + 1, w("present")) && !is(i + 2, w("day"))) return false;
    spec.end = is(i + 1, w("present")) ? i + 3 : i + 2;
    spec.timex = is(i + 1, w("present")) ? "PRESENT_REF" : "FUTURE_REF";
    return prose();
  }
  if (is(i, w("present")) && is(i + 1, w("day")) && prose()) {
    spec.end = i + 2;
    spec.timex = "PRESENT_REF";
    return true;
  }
  if (t[i].is(Role::present)) {
    spec.timex = "PRESENT_REF";
    if (prose() || is(i, w("nowadays"))) return true;
    if (!is(i, w("now")) && !is(i, w("currently"))) return false;
    // In talk "now" opens sentences and fills gaps.
    const auto& after = t[i + 1];
    const auto& before = t[i - 1];
    const bool opens =
        i == 0 || before.kind == Token::Kind::end || before.kind == Token::Kind::sign || t[i].newline;
    return !opens && !is(i + 1, w("then")) && !is(i + 1, w("that")) && !is(i + 1, w("and")) &&
           !is(i - 1, w("and")) && !is(i - 1, w("day")) && !is(i - 1, w("just")) && !is(i - 1, w("but")) &&
           !is(i - 1, w("so")) &&
           (after.kind == Token::Kind::end || (after.kind == Token::Kind::sign && after.sign != '-') ||
            is(i - 1, w("until")) || is(i - 1, w("is")) || is(i - 1, w("are")) || is(i - 1, w("by")));
  }
  if (!prose()) return false;
  if (is(i, w("date")) && is(i - 1, w("to"))) return spec.timex = "PRESENT_REF", true;
  if (t[i].is(Role::past)) {
    spec.timex = "PAST_REF";
    if (is(i, w("former")) &&
        (is(i - 1, w("the")) && (t[i + 1].kind == Token::Kind::sign || t[i + 1].is(Role::after_year))))
      return false;
    return true;
  }
  if (t[i].is(Role::future)) {
    spec.timex = "FUTURE_REF";
    return true;
  }
  return false;
}

bool Grammar::day_word(std::size_t i, Spec& spec) const {
  if (!t[i].is(Role::day_word)) return false;
  spec.kind = Spec::Kind::day_word;
  spec.begin = i;
  spec.end = i + 1;
  spec.count.value = t[i].value(Role::day_word);
  spec.rule = "day-word";
  if (is(i, w("tonight"))) spec.date.time = "TNI";
  if (t[i + 1].is(Role::day_part) && !t[i + 1].newline) {  // tomorrow night
    spec.date.time = day_part_time(static_cast<DayPart>(t[i + 1].value(Role::day_part)));
    spec.end = i + 2;
  }
  return true;
}

}  // namespace witnessmark::dates
