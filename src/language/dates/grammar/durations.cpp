// Spans of time: for about two years, a ten-day visit, all winter; what stands behind them makes some of them
// points (offsets.cpp).
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
namespace {

/// Words before a count that belong to it: about, more than, at least, up to.
std::size_t count_modifier(const Grammar& g, std::size_t i, Mod& mod) {
  const auto& token = g.token(i);
  if (g.is(i, w("at")) && (g.is(i + 1, w("least")) || g.is(i + 1, w("most")))) {
    mod = g.is(i + 1, w("least")) ? Mod::equal_or_more : Mod::equal_or_less;
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

/// Behind "a year": or two, or so; behind "a week": or ten days. Only before what makes it a point of time:
/// later, after.
void or_more(const Grammar& g, Grammar::Span& span) {
  if (g.prose() || !span.article || span.count.vague || span.count.half || !g.is(span.past, w("or"))) return;
  const auto offset_at = [&](std::size_t at) { return g.token(at).is(Role::later); };
  const std::size_t j = span.past + 1;
  if (g.is(j, w("so")) && offset_at(j + 1)) {
    span.count.couple = true;  // more or less
    span.past = j + 1;
    return;
  }
  Count upper;
  std::size_t past = 0;
  if (g.is(j, w("a")) || !g.count(j, upper, past) || upper.vague || upper.half || upper.upper) return;
  if (offset_at(past) && upper.value > span.count.value && upper.value <= 5) {  // a year or two
    span.count.upper = upper.value;
    span.past = past;
    return;
  }
  if (!g.token(past).is(Role::units) || !offset_at(past + 1)) return;  // a week or ten days
  const auto unit = static_cast<Unit>(g.token(past).value(Role::units));
  const std::int64_t days = span.unit == Unit::week ? 7 : span.unit == Unit::fortnight ? 14 : 0;
  const std::int64_t other = unit == Unit::day ? 1 : unit == Unit::week ? 7 : 0;
  if (days == 0 || other == 0 || upper.value * other <= days) return;
  span.unit = Unit::day;
  span.count.value = days;
  span.count.upper = upper.value * other;
  span.past = past + 1;
}

/// COUNT [-] UNIT [-] [long|old]
bool read_span(const Grammar& g, std::size_t i, Grammar::Span& span) {
  std::size_t j = i;
  span = {};
  const auto unit_at = [&](std::size_t at) {
    const auto& token = g.token(at);
    if (token.is(Role::units))
      return span.unit = static_cast<Unit>(token.value(Role::units)), span.plural = true, true;
    if (token.is(Role::unit))
      return span.unit = static_cast<Unit>(token.value(Role::unit)), span.plural = false, true;
    if (token.is(Role::day_parts)) return span.unit = Unit::day, span.plural = true, true;
    if (token.is(Role::seasons)) {
      span.season = static_cast<Season>(token.value(Role::seasons));
      return span.unit = Unit::year, span.plural = true, true;
    }
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
    const auto& after = g.token(span.past);  // the twenty-second of May is a day
    if (span.hyphen && span.unit == Unit::second && span.count.value >= 20 &&
        (!after.is_word() || after.newline || after.hash == w("of") ||
         after.any(bit(Role::after_year) | bit(Role::month))))
      return false;
  }
  or_more(g, span);
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

/// Less than a year later, nearly two years later: between one less and that; more than a year later: up to
/// half as much again (common practice, no source).
void put_bounds(Mod mod, Count& count) {
  if (mod == Mod::less_than || mod == Mod::equal_or_less) {
    count.upper = count.value;
    --count.value;
  } else if (mod == Mod::more_than || mod == Mod::equal_or_more) {
    count.upper = count.value + (count.value + 1) / 2;
  }
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

// all day, all winter; "all that winter" stays a date.
bool Grammar::whole_unit(std::size_t i, Spec& spec) const {
  const std::size_t j = is(i + 1, w("the")) ? i + 2 : i + 1;
  const auto& unit = t[j];
  const bool span = unit.is(Role::unit) && static_cast<Unit>(unit.value(Role::unit)) >= Unit::day;
  const bool season = unit.is(Role::season);
  if (!span && !season && !is(j, w("night"))) return false;
  spec.kind = Spec::Kind::duration;
  spec.begin = i;
  spec.end = j + 1;
  spec.unit = span ? static_cast<Unit>(unit.value(Role::unit)) : season ? Unit::month : Unit::day;
  if (season) spec.count.value = 3;
  spec.rule = "duration";
  return !is(j + 1, w("of")) && !t[j + 1].is_number() && !t[j + 1].is(Role::number);
}

// the four previous weeks
bool Grammar::count_before_following(std::size_t i, std::size_t j, Spec& spec) const {
  Count number;
  std::size_t past = 0;
  if (!count(j, number, past) || number.vague || !t[past].is(Role::following) || !t[past + 1].is(Role::units))
    return false;
  spec.kind = Spec::Kind::duration;
  spec.begin = i;
  spec.end = past + 2;
  spec.count = number;
  spec.unit = static_cast<Unit>(t[past + 1].value(Role::units));
  spec.rule = "duration";
  return true;
}

bool Grammar::duration(std::size_t i, Spec& spec) const {
  if (is(i, w("all"))) return !prose() && whole_unit(i, spec);
  Frame frame;
  frame.begin = i;
  std::size_t j = count_modifier(*this, i, frame.mod);
  frame.modified = j != i;
  if (!frame.modified && (is(j, w("the")) || is(j, w("those")) || is(j, w("these")))) ++j;
  const bool determined = j != i && !frame.modified;
  if (t[j].is(Role::following) && !is(j, w("very"))) {  // the next few months, the last three years
    frame.which = static_cast<Following>(t[j].value(Role::following));
    frame.following = true;
    ++j;
  } else if (j != i && (is(j, w("first")) || is(j, w("final")) || is(j, w("other")))) {
    frame.following = true;
    ++j;
  }
  if (determined && !frame.following && count_before_following(i, j, spec)) return true;
  frame.the = j != i && !frame.modified;
  Span span;
  if (!read_span(*this, j, span)) return !frame.modified && !frame.following && unit_beside(i, spec);
  if (number_is_label(j) && t[j].is_number()) return false;
  if (prose() && !span.hyphen && !span.aged && is(span.past, w("of")) && span.unit >= Unit::day &&
      t[span.past - 1].any(bit(Role::unit) | bit(Role::units)))
    span.past = past_noun_phrase(span.past);
  spec.begin = i;
  spec.end = span.past;
  spec.kind = Spec::Kind::duration;
  spec.unit = span.unit;
  spec.count = span.count;
  spec.mod = frame.mod;
  spec.rule = span.aged ? "age-duration" : "duration";
  if (span.hyphen) {  // ten-day, 46-day, one-year: an adjective, the article stays outside
    if (is(span.past, w("period")) && prose()) return spec.end = span.past + 1, true;  // a sixty-day period
    return !frame.the && !span.count.vague && !(t[j].is(Role::determiner) && span.count.value == 1);
  }
  if (span.aged) return span.unit > Unit::minute;
  if (!frame.the && (!span.bare || prose()) && span_as_offset(span, frame, spec)) return true;
  const bool plural = t[span.past - 1].any(bit(Role::units) | bit(Role::day_parts) | bit(Role::seasons));
  if (!plural && !span.article && span.count.value != 1 && !span.count.half && !t[span.past - 1].possessive &&
      !prose())
    return false;  // two year, forty minute; but ten year's
  if (span.bare) return bare_span_stands(span, frame);
  if (span.article && span.count.value == 1 && !span.count.half && !span.count.vague)
    return one_unit(span, frame, spec);
  return counted_span_stands(span, frame, spec);
}

// two years later, a couple of weeks before Christmas
bool Grammar::span_as_offset(const Span& span, const Frame& frame, Spec& spec) const {
  Spec offset;
  offset.begin = frame.begin;
  offset.unit = span.unit;
  offset.count = span.count;
  offset.mod = frame.mod == Mod::approx ? frame.mod : Mod::none;
  offset.rule = "offset";
  if (!prose() && !span.count.vague && !span.count.upper && !span.count.half)
    put_bounds(frame.mod, offset.count);
  if (span.season != Season::none && !prose()) {  // two summers later
    if (span.count.vague || offset.count.upper || span.count.half || span.count.value < 1) return false;
    offset.date.precision = DateValue::Precision::season;
    offset.date.season = span.season;
  }
  std::size_t past = span.past;
  Span
      more;  // A year and two months later. "We stayed a year and two months later we left" is no such thing.
  const auto& before = t[frame.begin - 1];
  const bool opens = !before.is_word() || t[frame.begin].newline || is(frame.begin - 1, w("was")) ||
                     (before.is(Role::approx) && is(frame.begin - 2, w("was")));
  if (!prose() && opens && !frame.following && is(past, w("and")) && span.unit >= Unit::week &&
      !span.count.vague && !span.count.half && !span.count.upper && read_span(*this, past + 1, more) &&
      more.unit < span.unit && more.unit >= Unit::day && !more.bare && !more.aged && !more.count.vague &&
      !more.count.half && !more.count.upper) {
    offset.more = more.count;
    offset.more_unit = more.unit;
    offset.has_more = true;
    past = more.past;
  }
  if (!offset_tail(past, offset)) return false;
  if (offset.timex == kUnknownAnchor) {
    // A year or two after the war: a date, and nobody knows which. "It was two weeks before we got her off"
    // is a length.
    const bool length = t[frame.begin - 1].is(Role::pronoun) || is(frame.begin - 1, w("was")) ||
                        is(frame.begin - 1, w("took")) || is(frame.begin - 1, w("for")) ||
                        is(frame.begin - 1, w("be"));
    if (prose() || frame.following || (is(past, w("before")) && length) || is(past, w("earlier")))
      return false;
    offset.end = past + 1;
  }
  spec = std::move(offset);
  return true;
}

// "years", "the following days": no number at all.
bool Grammar::bare_span_stands(const Span& span, const Frame& frame) const {
  if (span.unit <= Unit::minute || frame.the) return prose() && frame.the && frame.following;
  const auto& before = t[frame.begin - 1];
  if (before.is(Role::determiner) || before.is(Role::every)) return false;
  return prose() || before.hash == w("for") || before.hash == w("took") || before.hash == w("in");
}

// a year, a day: a duration after for, in, took …; thirty a day: a rate; a minute, just a second: idioms.
bool Grammar::one_unit(const Span& span, const Frame& frame, Spec& spec) const {
  const auto i = frame.begin;
  if (span.unit <= Unit::minute && frame.mod == Mod::none) return false;
  if (is(span.past, w("of")) && t[span.past + 1].is(Role::weekdays)) return false;  // a month of Sundays
  if (!frame.modified && (t[i - 1].is_number() || t[i - 1].is(Role::number) || is(i - 1, w("times")) ||
                          is(i - 1, w("once")) || is(i - 1, w("twice")))) {
    spec.kind = Spec::Kind::set;
    spec.timex = duration_timex(1, false, false, span.unit);
    spec.rule = "rate";
    return true;
  }
  if (is(span.past, w("or")) && is(span.past + 1, w("two"))) spec.count.upper = 2, spec.end = span.past + 2;
  if (is(span.past, w("or")) && is(span.past + 1, w("so"))) spec.mod = Mod::approx, spec.end = span.past + 2;
  return frame.modified || after_for(*this, i) || prose();
}

bool Grammar::counted_span_stands(const Span& span, const Frame& frame, Spec& spec) const {
  const auto i = frame.begin;
  if (span.unit <= Unit::minute && span.count.value == 1 && !frame.modified) return false;
  if (is(i, w("one"))) {  // one day, one night: some day
    if (!prose() && !span.count.half && !after_for(*this, i)) return false;
    if (prose() && is(span.past, w("of"))) return false;
  }
  if (is(span.past, w("or")) && is(span.past + 1, w("so"))) spec.mod = Mod::approx, spec.end = span.past + 2;
  if (!frame.the) return true;
  spec.up_to_now = frame.which == Following::last && !prose();
  if (frame.which == Following::same) return prose();
  if (frame.which == Following::between || frame.following) return true;
  return prose() || !span.count.vague;
}

}  // namespace witnessmark::dates
