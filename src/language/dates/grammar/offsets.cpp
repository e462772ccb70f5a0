// Points of time reckoned from another: two years later, seventy years ago, a couple of weeks before
// Christmas, a year from that spring, the day after, the Christmas before that, the week of July 4.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

// a year from that spring, two weeks from Christmas; not "two years from 1957 to 1959"
bool Grammar::from_date(std::size_t i, Spec& spec) const {
  Spec anchor;
  for (const Rule rule :
       {&Grammar::said_relative, &Grammar::day_and_month, &Grammar::named_day, &Grammar::season})
    offer(rule, i, anchor);
  if (anchor.end == 0 || (anchor.kind != Spec::Kind::calendar && anchor.kind != Spec::Kind::relative))
    return false;
  const auto& after = t[anchor.end];
  if (after.is(Role::range_word) || after.is_sign('-') || is(anchor.end, w("on")) ||
      is(anchor.end, w("onwards")))
    return false;
  spec.kind = Spec::Kind::offset;
  spec.later = Later::after;
  spec.end = anchor.end;
  spec.keeps_part = spec.unit == Unit::year && !spec.count.vague && !spec.count.upper && !spec.count.half;
  spec.anchor = std::make_unique<Spec>(std::move(anchor));
  return true;
}

// What stands behind a span and makes it a point: later, ago, before Christmas, after that.
bool Grammar::offset_tail(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (!prose() && is(j, w("from")) && from_date(j + 1, spec)) return true;
  if (!t[j].is(Role::later) && !(is(j, w("from")) && (is(j + 1, w("now")) || is(j + 1, w("today"))))) {
    if (is(j, w("following"))) {
      spec.later = Later::after;
      spec.kind = Spec::Kind::offset;
      spec.end = j + 1;
      Spec anchor;  // the Sunday following Easter
      if (!prose() && t[j + 1].is_word()) offer(&Grammar::core, j + 1, anchor);
      if (anchor.end != 0 && anchor.kind == Spec::Kind::calendar) {
        spec.end = anchor.end;
        spec.anchor = std::make_unique<Spec>(std::move(anchor));
      }
      return true;
    }
    return false;
  }
  if (is(j, w("from"))) {
    spec.kind = Spec::Kind::offset;
    spec.later = Later::after;
    spec.speech = true;
    spec.end = j + 2;
    return true;
  }
  if (is(j, w("back")) && (prose() || is(j + 1, w("to")) || is(j + 1, w("in")) || is(j + 1, w("and"))))
    return false;
  spec.later = static_cast<Later>(t[j].value(Role::later));
  spec.kind = Spec::Kind::offset;
  spec.speech = spec.later == Later::ago;
  spec.end = j + 1;
  if (spec.speech && ago_on(j + 1, spec)) return true;
  if (spec.speech ||
      (!is(j, w("before")) && !is(j, w("after")) && !is(j, w("prior")) && !is(j, w("earlier"))))
    return true;
  return offset_anchor(j, spec);
}

// three years ago this month, last June, today; a week ago today
bool Grammar::ago_on(std::size_t i, Spec& spec) const {
  if (prose() || (spec.unit != Unit::year && spec.unit != Unit::week) || spec.count.vague) return false;
  Spec on;
  if (t[i].is(Role::day_word))
    offer(&Grammar::day_word, i, on);
  else if (spec.unit == Unit::year && (is(i, w("this")) || is(i, w("last")) || is(i, w("next"))))
    offer(&Grammar::relative, i, on);
  const bool part_of_year =
      on.unit == Unit::month ||
      (on.unit == Unit::year && (on.named || on.date.precision != DateValue::Precision::none));
  if (on.end == 0 || (on.kind == Spec::Kind::relative && !part_of_year)) return false;
  spec.end = on.end;
  spec.speech = false;
  spec.keeps_part = true;
  spec.later = Later::before;
  spec.anchor = std::make_unique<Spec>(std::move(on));
  return true;
}

// What a span is reckoned from: before Christmas, after that, before the yard period, prior to 1962.
bool Grammar::offset_anchor(std::size_t j, Spec& spec) const {
  std::size_t k = j + 1;
  if (is(k, w("to")) && is(j, w("prior"))) ++k;
  const bool unit_follows =
      t[k + 1].any(bit(Role::unit) | bit(Role::season) | bit(Role::day_part) | bit(Role::weekday) |
                   bit(Role::month) | bit(Role::era) | bit(Role::following));
  if ((is(k, w("that")) || is(k, w("this"))) && !unit_follows) {
    if (t[k + 1].kind != Token::Kind::word || t[k + 1].is(Role::after_year) || t[k + 1].newline)
      spec.end = k + 1;
    return true;
  }
  Spec anchor;
  offer(&Grammar::event, k, anchor);
  if (anchor.end == 0 && t[k].is(Role::pronoun) && !is(k, w("i")))
    offer(&Grammar::event, k + 1, anchor);  // before we went into the yard
  if (anchor.end == 0)
    for (const Rule rule : {&Grammar::core, &Grammar::parted, &Grammar::said_relative, &Grammar::service,
                            &Grammar::day_word, &Grammar::my_birth})
      offer(rule, k, anchor);
  using Kind = Spec::Kind;
  const bool of_life =
      anchor.kind == Kind::age && (anchor.rule == "birthday" || anchor.rule == "birthday-year");
  if (anchor.end != 0 &&
      (anchor.kind == Kind::calendar || anchor.kind == Kind::event || anchor.kind == Kind::relative ||
       anchor.kind == Kind::service_edge || anchor.kind == Kind::day_word || of_life)) {
    spec.end = anchor.end;
    spec.anchor = std::make_unique<Spec>(std::move(anchor));
    return true;
  }
  // Something the lists do not know: the offset is real, its value is not to be had.
  const auto& next = t[j + 1];
  const bool clause = next.is(Role::pronoun) || next.is(Role::determiner) || next.capital;
  if (!clause || is(j, w("earlier"))) return true;
  if (prose() && next.capital && next.is_word() &&
      !next.is(Role::determiner)) {  // eight days after Fort Sumter
    for (k = j + 1; t[k].is_word() && t[k].capital && !t[k].newline; ++k) spec.end = k + 1;
    spec.count.vague = true;
    return true;
  }
  spec.timex = kUnknownAnchor;
  spec.end = j;
  return true;
}

// the day before, the year after Christmas, the summer before we went into the yard
bool Grammar::unit_beside(std::size_t i, Spec& spec) const {
  const auto& unit = t[i + 1];
  const bool season = unit.is(Role::season), night = unit.is(Role::day_part),
             weekday = unit.is(Role::weekday);
  const bool span = unit.is(Role::unit) && static_cast<Unit>(unit.value(Role::unit)) >= Unit::day;
  if (!is(i, w("the"))) return false;
  if (!prose() && week_of(i, spec)) return true;
  if (!prose() && unit.is(Role::phrase) && feast_beside(i, spec)) return true;
  if (!season && !night && !weekday && !span) return false;
  if (before_last(i, spec)) return true;
  bool told = false;
  for (const auto word : {w("before"), w("after"), w("following"), w("previous"), w("prior")})
    told |= is(i + 2, word);
  if (!told) return false;
  spec.begin = i;
  spec.rule = "offset-unit";
  if (season) {
    spec.unit = Unit::year;
    spec.date.precision = DateValue::Precision::season;
    spec.date.season = static_cast<Season>(unit.value(Role::season));
  } else if (night) {
    spec.unit = Unit::day;
    spec.date.precision = DateValue::Precision::day;
    spec.date.time = day_part_time(static_cast<DayPart>(unit.value(Role::day_part)));
  } else if (weekday) {
    spec.unit = Unit::week;
    spec.date.precision = DateValue::Precision::day;
    spec.date.weekday = unit.value(Role::weekday);
  } else {
    spec.unit = static_cast<Unit>(unit.value(Role::unit));
  }
  if (!offset_tail(i + 2, spec)) return false;
  if (spec.timex != kUnknownAnchor) return true;
  // "the year before we lost the boat", or "The year before, we lost the boat": which is meant cannot be
  // told.
  if (prose() || is(i + 2, w("following"))) return false;
  spec.end = i + 3;
  return true;
}

// the week of July 4, the weekend of the third of May
bool Grammar::week_of(std::size_t i, Spec& spec) const {
  if ((!is(i + 1, w("week")) && !is(i + 1, w("weekend"))) || !is(i + 2, w("of"))) return false;
  Spec day;
  for (const Rule rule :
       {&Grammar::day_and_month, &Grammar::named_day, &Grammar::day_of_month, &Grammar::numeric_date})
    offer(rule, i + 3, day);
  if (day.end == 0 || day.date.precision != DateValue::Precision::day || day.first) return false;
  spec.kind = Spec::Kind::offset;
  spec.begin = i;
  spec.end = day.end;
  spec.full_end = day.full_end;
  spec.unit = static_cast<Unit>(t[i + 1].value(Role::unit));
  spec.rule = "week-of";
  spec.anchor = std::make_unique<Spec>(std::move(day));
  return true;
}

// the Christmas before that, the Easter after the yard period, the Christmas before last
bool Grammar::feast_beside(std::size_t i, Spec& spec) const {
  std::size_t past = 0;
  const auto* phrase = t.phrase_at(i + 1, past);
  if (!phrase || !phrase->day || phrase->day->kind == NamedDay::Kind::once) return false;
  if (!is(past, w("before")) && !is(past, w("after"))) return false;
  spec.begin = i;
  spec.unit = Unit::year;
  spec.named = &*phrase->day;
  if (is(past, w("before")) && is(past + 1, w("last")) &&
      !t[past + 2].any(bit(Role::unit) | bit(Role::season))) {
    spec.kind = Spec::Kind::relative;
    spec.following = Following::previous;
    spec.count.value = 2;
    spec.speech = true;
    spec.end = past + 2;
    spec.rule = "before-last";
    return true;
  }
  spec.rule = "offset-unit";
  if (!offset_tail(past, spec)) return false;
  return spec.timex != kUnknownAnchor;
}

// the year before last, the winter before last: seen from the day of speaking
bool Grammar::before_last(std::size_t i, Spec& spec) const {
  if (prose() || !is(i + 2, w("before")) || !is(i + 3, w("last")) ||
      t[i + 4].any(bit(Role::unit) | bit(Role::season)))
    return false;
  if (!relative(i, spec)) return false;
  spec.end = i + 4;
  spec.following = Following::previous;
  spec.count.value = 2;
  spec.speech = true;
  spec.rule = "before-last";
  return true;
}

}  // namespace witnessmark::dates
