// Spans and what is reckoned with them: for about two years, a ten-day visit; two years later, a couple of
// weeks before Christmas, the day after, seventy years ago; every Sunday, twice a year.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
namespace {

/// Words before a count that belong to it: about, more than, at least, up to.
std::size_t count_modifier(const Grammar& g, std::size_t i, Mod& mod) {
  const auto& token = g.token(i);
  if (g.is(i, w("at")) && g.token(i + 1).is(Role::least_most)) {
    mod = static_cast<Mod>(g.token(i + 1).value(Role::least_most));
    return i + 2;
  }
  if (g.is(i, w("no")) && g.token(i + 1).is(Role::degree) && g.is(i + 2, w("than"))) {
    mod = static_cast<Mod>(g.token(i + 1).value(Role::degree)) == Mod::more_than ? Mod::equal_or_less
                                                                                 : Mod::equal_or_more;
    return i + 3;
  }
  if (token.is(Role::degree) && g.is(i + 1, w("than"))) {
    mod = static_cast<Mod>(token.value(Role::degree));
    return i + 2;
  }
  if (g.is(i, w("well")) && g.token(i + 1).is(Role::approx)) return count_modifier(g, i + 1, mod);
  if (token.is(Role::approx)) {
    mod = static_cast<Mod>(token.value(Role::approx));
    if (g.token(i + 1).is_sign('.')) return i;
    // "just over a year", "only about two years"
    if (mod == Mod::none && g.token(i + 1).is(Role::approx))
      return g.prose() ? i : count_modifier(g, i + 1, mod);
    return i + 1;
  }
  return i;
}

struct Span {
  Count count;
  Unit unit = Unit::day;
  std::size_t past = 0;
  bool article = false;  ///< "a year".
  bool plural = false;
  bool hyphen = false;  ///< "ten-day".
  bool bare = false;    ///< "years", without any number.
  bool aged = false;    ///< "years old", "years of age".
};

/// COUNT [-] UNIT [-] [long|old]
bool read_span(const Grammar& g, std::size_t i, Span& span) {
  std::size_t j = i;
  span = {};
  const auto unit_at = [&](std::size_t at) {
    const auto& token = g.token(at);
    if (token.is(Role::units))
      return span.unit = static_cast<Unit>(token.value(Role::units)), span.plural = true, true;
    if (token.is(Role::unit))
      return span.unit = static_cast<Unit>(token.value(Role::unit)), span.plural = false, true;
    if (token.is(Role::day_parts)) return span.unit = Unit::day, span.plural = true, true;
    if (token.is(Role::seasons)) return span.unit = Unit::year, span.plural = true, true;
    return false;
  };
  if (g.token(j).is(Role::units) ||
      (g.is(j, w("year")) && g.token(j + 1).is_sign('-') && g.is(j + 2, w("long")))) {
    unit_at(j);
    span.bare = true;
    span.count.vague = true;
    span.past = j + 1;
    if (!span.plural) span.count.vague = false, span.count.value = 1, span.bare = false, span.hyphen = true;
  } else {
    if ((g.is(j, w("a")) || g.is(j, w("an"))) && g.token(j + 1).is(Role::number)) {  // a sixty-day period
      Count inner;
      std::size_t after = 0;
      if (!g.count(j + 1, inner, after) || !g.token(after).is_sign('-') ||
          !g.token(after + 1).is(Role::unit) || !g.is(after + 2, w("period")))
        return false;
      ++j;
    } else if ((g.is(j, w("a")) || g.is(j, w("an"))) && g.token(j + 1).is_number()) {
      if (!g.token(j + 2).is_sign('-') || !g.is(j + 4, w("period"))) return false;
      ++j;
    }
    if (!g.count(j, span.count, j)) return false;
    span.article = j == i + 1 && (g.is(i, w("a")) || g.is(i, w("an")));
    if (g.token(j).is_sign('-') && !g.token(j).space && !g.token(j + 1).space) ++j, span.hyphen = true;
    // adjectives that say nothing of the length: two full days, two bloody weeks
    if (!span.hyphen && !unit_at(j) && g.token(j).is_word() && !g.token(j).word && unit_at(j + 1) &&
        span.plural && !span.article)
      ++j;
    if (g.is(j, w("of")) && span.count.vague && g.token(j + 1).is(Role::units)) ++j;
    if (!unit_at(j)) return false;
    span.past = j + 1;
  }
  if (g.is(span.past, w("and")) && g.is(span.past + 1, w("a")) && g.is(span.past + 2, w("half")) &&
      !g.is(span.past + 3, w("of"))) {  // a year and a half
    span.count.half = true;
    span.past += 3;
  }
  std::size_t k = span.past;
  if (g.token(k).is_sign('-') && !g.token(k).space) ++k;
  if (g.token(k).is(Role::long_)) {
    span.aged = g.is(k, w("old"));
    span.past = k + 1;
  } else if (g.is(span.past, w("of")) && g.is(span.past + 1, w("age"))) {
    span.aged = true;
    span.past += 2;
  }
  return true;
}

bool after_for(const Grammar& g, std::size_t i) {
  for (const auto word : {w("for"), w("in"), w("within"), w("after"), w("took"), w("lasted"), w("about"),
                          w("over"), w("nearly"), w("almost"), w("another"), w("spent"), w("of"), w("than"),
                          w("taking"), w("takes"), w("lasting"), w("every")})
    if (g.is(i - 1, word)) return true;
  return false;
}

}  // namespace

// "two months of fierce battles": what filled the time belongs to the expression (TimeML annotation
// guidelines: a postmodifier is part of the extent). The phrase ends at a sign or a word that cannot be in
// it.
std::size_t Grammar::past_noun_phrase(std::size_t i) const {
  std::size_t j = i + 1;
  for (int words = 0; words < 8; ++words, ++j) {
    const auto& token = t[j];
    if (!token.is_word() || token.newline) break;
    const bool joins = token.hash == w("and");
    if (token.any(bit(Role::year_zero)) || (token.any(bit(Role::place_in_time) | bit(Role::after_year) |
                                                      bit(Role::limit) | bit(Role::determiner)) &&
                                            !joins))
      break;
    if (joins && (!t[j + 1].is_word() || t[j + 1].any(bit(Role::determiner) | bit(Role::after_year)))) break;
  }
  return j == i + 1 ? i : j;
}

// What stands behind a span and makes it a point: later, ago, before Christmas, after that.
bool Grammar::offset_tail(std::size_t i, Spec& spec) const {
  std::size_t j = i;
  if (!t[j].is(Role::later) && !(is(j, w("from")) && (is(j + 1, w("now")) || is(j + 1, w("today"))))) {
    if (is(j, w("following"))) {
      spec.later = Later::after;
      spec.kind = Spec::Kind::offset;
      spec.end = j + 1;
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
  if (spec.speech ||
      (!is(j, w("before")) && !is(j, w("after")) && !is(j, w("prior")) && !is(j, w("earlier"))))
    return true;
  // An anchor: before Christmas, after that, before the yard period, prior to 1962.
  std::size_t k = j + 1;
  if (is(k, w("to")) && is(j, w("prior"))) ++k;
  if ((is(k, w("that")) || is(k, w("this"))) &&
      !t[k + 1].any(bit(Role::unit) | bit(Role::season) | bit(Role::day_part) | bit(Role::weekday) |
                    bit(Role::month) | bit(Role::era) | bit(Role::following))) {
    const bool pronoun =
        t[k + 1].kind != Token::Kind::word || t[k + 1].is(Role::after_year) || t[k + 1].newline;
    if (pronoun)
      spec.end = k + 1;
    else if (prose())
      spec.anchor = nullptr;
    return true;
  }
  Spec anchor;
  offer(&Grammar::event, k, anchor);
  if (anchor.end == 0 && t[k].is(Role::pronoun) && !is(k, w("i")))
    offer(&Grammar::event, k + 1, anchor);  // before we went into the yard
  if (anchor.end == 0) {
    offer(&Grammar::core, k, anchor);
    offer(&Grammar::parted, k, anchor);
    offer(&Grammar::said_relative, k, anchor);
    offer(&Grammar::service, k, anchor);
    offer(&Grammar::day_word, k, anchor);
  }
  if (anchor.end != 0 && (anchor.kind == Spec::Kind::calendar || anchor.kind == Spec::Kind::event ||
                          anchor.kind == Spec::Kind::relative || anchor.kind == Spec::Kind::service_edge ||
                          anchor.kind == Spec::Kind::day_word)) {
    spec.end = anchor.end;
    spec.anchor = std::make_unique<Spec>(std::move(anchor));
    return true;
  }
  // Something the lists do not know: the offset is real, its value is not to be had.
  const auto& next = t[j + 1];
  const bool open =
      next.kind != Token::Kind::word || next.newline || is(j, w("earlier")) || next.is(Role::after_year);
  const bool clause = next.is(Role::pronoun) || next.is(Role::determiner) || next.capital;
  if (clause && !is(j, w("earlier"))) {
    if (prose() && next.capital && next.is_word() &&
        !next.is(Role::determiner)) {  // eight days after Fort Sumter
      for (k = j + 1; t[k].is_word() && t[k].capital && !t[k].newline; ++k) spec.end = k + 1;
      spec.count.vague = true;
      return true;
    }
    spec.timex = "unknown-anchor";
    spec.end = j;
    return true;
  }
  return open || !clause;
}

bool Grammar::duration(std::size_t i, Spec& spec) const {
  if (is(i, w("all")) && !prose()) {  // all day, all that winter stays a date
    std::size_t j = is(i + 1, w("the")) ? i + 2 : i + 1;
    const auto& unit = t[j];
    const bool span = unit.is(Role::unit) && static_cast<Unit>(unit.value(Role::unit)) >= Unit::day;
    if (!span && !unit.is(Role::season) && !is(j, w("night"))) return false;
    spec.kind = Spec::Kind::duration;
    spec.begin = i;
    spec.end = j + 1;
    spec.unit = span                    ? static_cast<Unit>(unit.value(Role::unit))
                : unit.is(Role::season) ? Unit::month
                                        : Unit::day;
    if (unit.is(Role::season)) spec.count.value = 3;
    spec.rule = "duration";
    return !is(j + 1, w("of")) && !t[j + 1].is_number() && !t[j + 1].is(Role::number);
  }
  Mod mod = Mod::none;
  std::size_t j = count_modifier(*this, i, mod);
  const bool modified = j != i;
  // "the next few months", "the last three years", "the day before"
  std::size_t det = j;
  if (!modified && (is(j, w("the")) || is(j, w("those")) || is(j, w("these")))) ++j;
  bool following = false;
  auto which = Following::none;
  if (t[j].is(Role::following) && !is(j, w("very"))) {
    which = static_cast<Following>(t[j].value(Role::following));
    following = true;
    ++j;
  } else if ((is(j, w("first")) || is(j, w("final")) || is(j, w("other"))) && j != i) {
    following = true;
    ++j;
  }
  if (!following && j != i) {
    Count number;
    std::size_t past = 0;
    if (count(j, number, past) && !number.vague && t[past].is(Role::following) &&
        t[past + 1].is(Role::units)) {  // the four previous weeks
      spec.kind = Spec::Kind::duration;
      spec.begin = i;
      spec.end = past + 2;
      spec.count = number;
      spec.unit = static_cast<Unit>(t[past + 1].value(Role::units));
      spec.rule = "duration";
      return true;
    }
  }
  Span span;
  if (!read_span(*this, j, span)) {
    // the day before, the year after Christmas, the summer before we went into the yard
    if (modified || following || !is(i, w("the"))) return false;
    const auto& unit = t[i + 1];
    const bool season = unit.is(Role::season), night = unit.is(Role::day_part),
               weekday = unit.is(Role::weekday);
    if (!season && !night && !weekday &&
        !(unit.is(Role::unit) && static_cast<Unit>(unit.value(Role::unit)) >= Unit::day))
      return false;
    if (!is(i + 2, w("before")) && !is(i + 2, w("after")) && !is(i + 2, w("following")) &&
        !is(i + 2, w("previous")) && !is(i + 2, w("prior")))
      return false;
    spec.begin = i;
    spec.rule = "offset-unit";
    spec.unit = season    ? Unit::year
                : night   ? Unit::day
                : weekday ? Unit::week
                          : static_cast<Unit>(unit.value(Role::unit));
    if (season)
      spec.date.precision = DateValue::Precision::season,
      spec.date.season = static_cast<Season>(unit.value(Role::season));
    if (weekday)
      spec.date.precision = DateValue::Precision::day, spec.date.weekday = unit.value(Role::weekday);
    if (night)
      spec.date.precision = DateValue::Precision::day,
      spec.date.time = day_part_time(static_cast<DayPart>(unit.value(Role::day_part)));
    if (!offset_tail(i + 2, spec)) return false;
    if (spec.timex != "unknown-anchor") return true;
    // "the year before we lost the boat", or "The year before, we lost the boat": which is meant cannot be
    // told.
    if (prose() || is(i + 2, w("following"))) return false;
    spec.end = i + 3;
    return true;
  }
  (void)det;
  if (prose() && !span.hyphen && !span.aged && is(span.past, w("of")) && span.unit >= Unit::day &&
      t[span.past - 1].any(bit(Role::unit) | bit(Role::units)))
    span.past = past_noun_phrase(span.past);
  const bool the = j != i && !modified;
  if (number_is_label(j) && t[j].is_number()) return false;
  spec.begin = i;
  spec.end = span.past;
  spec.kind = Spec::Kind::duration;
  spec.unit = span.unit;
  spec.count = span.count;
  spec.mod = mod;
  spec.rule = "duration";
  const bool small = span.unit <= Unit::minute;
  // ten-day, 46-day, one-year: an adjective, the article stays outside
  if (span.hyphen) {
    const bool period = is(span.past, w("period")) && prose();  // a sixty-day period, the same 28-day period
    if (period) return spec.end = span.past + 1, true;
    return !the && !span.count.vague && !(t[j].is(Role::determiner) && span.count.value == 1);
  }
  if (span.aged) {
    spec.kind = Spec::Kind::duration;
    spec.rule = "age-duration";
    return span.unit >= Unit::week || !small;
  }
  if (!the) {
    Spec offset;
    offset.begin = i;
    offset.unit = span.unit;
    offset.count = span.count;
    offset.mod = mod == Mod::approx ? mod : Mod::none;
    offset.rule = "offset";
    if (!span.bare || prose()) {
      if (offset_tail(span.past, offset)) {
        if (offset.timex != "unknown-anchor") {
          spec = std::move(offset);
          return true;
        }
      }
    }
  }
  if (!t[span.past - 1].any(bit(Role::units) | bit(Role::day_parts) | bit(Role::seasons)) && !span.article &&
      span.count.value != 1 && !span.count.half) {
    // "two year", "forty minute": only with a long word or before a noun; "ten year's"
    if (!t[span.past - 1].possessive && !prose()) return false;
  }
  if (span.bare) {
    if (small || the)
      return prose() && the && !following ? (is(span.past, w("of")) ? false : span.unit == Unit::day && false)
                                          : prose() && the && following;
    if (t[i - 1].is(Role::determiner) || t[i - 1].is(Role::every)) return false;
    return prose() || is(i - 1, w("for")) || is(i - 1, w("took")) || is(i - 1, w("in"));
  }
  if (span.article && span.count.value == 1 && !span.count.half && !span.count.vague) {
    if (small && mod == Mod::none) return false;  // a minute, just a second: idioms
    // thirty a day: a rate
    if (!modified && (t[i - 1].is_number() || t[i - 1].is(Role::number) || is(i - 1, w("times")) ||
                      is(i - 1, w("once")) || is(i - 1, w("twice")))) {
      spec.kind = Spec::Kind::set;
      spec.timex = duration_timex(1, false, false, span.unit);
      spec.rule = "rate";
      return true;
    }
    if (is(span.past, w("or")) && is(span.past + 1, w("two"))) spec.count.upper = 2, spec.end = span.past + 2;
    if (is(span.past, w("or")) && is(span.past + 1, w("so")))
      spec.mod = Mod::approx, spec.end = span.past + 2;
    if (!modified && !after_for(*this, i) && !prose()) return false;
    return true;
  }
  if (small && span.count.value == 1 && !modified) return false;
  if (is(i, w("one")) && !prose() && !span.count.half && !after_for(*this, i))
    return false;  // one day, one night
  if (is(i, w("one")) && prose() && is(span.past, w("of"))) return false;
  if (is(span.past, w("or")) && is(span.past + 1, w("so"))) {
    spec.mod = Mod::approx;
    spec.end = span.past + 2;
  }
  if (the) {
    spec.up_to_now = which == Following::last && !prose();
    if (which == Following::same || which == Following::between)
      return which == Following::between || prose();
    if (!following) return prose() || !span.count.vague;
  }
  return true;
}

// every Sunday, each winter, twice a week, daily, on Sundays
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
  if (!t[i].is(Role::every)) return false;
  std::size_t j = i + 1;
  const bool other = is(j, w("other")) || is(j, w("second"));
  if (other) ++j;
  if (is(j, w("single"))) ++j;
  Count number;
  std::size_t past = j;
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
    if (unit <= Unit::minute) return false;  // every second man, every minute of it
    if (other) return spec.timex = duration_timex(2, false, false, unit), true;
    switch (unit) {
      case Unit::hour:
        spec.timex = "XXXX-XX-XXTXX";
        break;
      case Unit::day:
        spec.timex = "XXXX-XX-XX";
        break;
      case Unit::week:
        spec.timex = "XXXX-WXX";
        break;
      case Unit::weekend:
        spec.timex = "XXXX-WXX-WE";
        break;
      case Unit::fortnight:
        spec.timex = "P2W";
        break;
      case Unit::month:
        spec.timex = "XXXX-XX";
        break;
      case Unit::year:
        spec.timex = "XXXX";
        break;
      default:
        spec.timex = duration_timex(1, false, false, unit);
    }
    return true;
  }
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
  if (count(j, number, past) && t[past].is(Role::units)) {  // every two weeks
    spec.timex = duration_timex(number.value, number.vague, number.half,
                                static_cast<Unit>(t[past].value(Role::units)));
    spec.end = past + 1;
    return true;
  }
  return false;
}

}  // namespace witnessmark::dates
