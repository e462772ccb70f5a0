// Days and stretches of time that have a name: Christmas 1963, New Year's Eve, the Roaring Twenties, the war.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

// "Before the war", "in wartime"; not "war came", "the war memorial", "the war in Korea". Written history has
// many wars.
bool Grammar::names_stretch(std::size_t begin, std::size_t name, std::size_t past) const {
  if (prose()) return false;
  if (past > name + 1) return true;
  if (begin == name && !t[begin - 1].is(Role::limit) && !is(begin - 1, w("in"))) return false;
  if ((is(past, w("in")) || is(past, w("with")) || is(past, w("against"))) && t[past + 1].capital)
    return false;
  const auto& after = t[past];
  return after.kind != Token::Kind::word || after.newline || after.is(Role::after_year) ||
         starts_or_ends(past) != Part::none;
}

// started, broke out: the beginning; ended, was over: the end.
Part Grammar::starts_or_ends(std::size_t i) const {
  for (const auto verb : {w("started"), w("began"), w("begun"), w("broke"), w("came"), w("come")})
    if (is(i, verb)) return Part::beginning;
  for (const auto verb : {w("ended"), w("finished"), w("stopped")})
    if (is(i, verb)) return Part::end;
  const bool was = is(i, w("was")) || is(i, w("were"));
  const bool over =
      is(i + 1, w("over")) || is(i + 1, w("finished")) || is(i + 1, w("ended")) || is(i + 1, w("done"));
  if (was && is(i + 1, w("declared"))) return Part::beginning;
  return was && over ? Part::end : Part::none;
}

// "When the war broke out", "until the war was over": not the whole of it.
void Grammar::edge_of_stretch(Spec& spec) const {
  const Part part = starts_or_ends(spec.end);
  if (part == Part::none) return;
  spec.part = part;
  spec.end += is(spec.end, w("was")) || is(spec.end, w("were")) || is(spec.end + 1, w("out")) ? 2 : 1;
  spec.full_end = false;
}

bool Grammar::named_day(std::size_t i, Spec& spec) const {
  std::size_t past = 0;
  std::size_t j = i;
  if (is(j, w("the"))) ++j;
  const auto* phrase = t.phrase_at(j, past);
  if (!phrase || phrase->event >= 0) return false;
  const bool stretch = phrase->when && std::holds_alternative<EdtfInterval>(phrase->when->value);
  if (stretch && !names_stretch(i, j, past)) return false;
  if (is(j, w("new")) && past == j + 2 && is(j + 1, w("year")) &&
      (prose() || j != i || is(j - 1, w("the")) || is(j - 1, w("a")) || t[j - 1].capital))
    return false;  // in the new year: not on its first day; the Chinese New Year
  if (is(past, w("island")) || is(past, w("eve")) || name_not_date(j, past)) return false;
  start_calendar(spec, phrase->when ? i : j, DateValue::Precision::day,
                 phrase->day ? "named-day" : "named-time");
  spec.end = past;
  spec.full_end = true;
  spec.named = phrase->day ? &*phrase->day : nullptr;
  spec.when = phrase->when ? &*phrase->when : nullptr;
  if (stretch) edge_of_stretch(spec);
  if (phrase->when) return true;
  if (!prose() && phrase->day->part.empty()) {
    if (t[past].is(Role::day_part)) {  // Christmas morning
      spec.date.time = day_part_time(static_cast<DayPart>(t[past].value(Role::day_part)));
      spec.end = ++past;
      spec.full_end = false;
    } else if (is(past, w("time")) || is(past, w("week")) || is(past, w("season")) || is(past, w("tide"))) {
      spec.mod = Mod::approx;  // Easter week: about Easter
      spec.end = ++past;
      spec.full_end = false;
    }
  }
  if (year_after(past, spec) || said_year(past, spec)) spec.full_end = false;
  return true;
}

// The winter of 1962 to 1963, of sixty-two, sixty-three, of 1962/63: one winter.
void Grammar::whole_winter(Spec& spec) const {
  std::size_t j = spec.end;
  if (!t[j].is(Role::range_word) && !is(j, w("and")) && !t[j].is_sign('-') && !t[j].is_sign('/') &&
      !t[j].is_sign(',') && !t[j].is(Role::number))
    return;
  if (!t[j].is(Role::number)) ++j;
  std::int64_t next = 0;
  std::size_t past = 0;
  Spec second;
  if (t[j].is_number() && (t[j].digits == 2 || t[j].digits == 4) && !t[j].grouped)
    next = t[j].number, past = j + 1;
  else if (year(j, YearStance::supported, second))
    next = second.date.year, past = second.end;
  else
    return;
  if (next % 100 == (spec.date.year + 1) % 100) spec.end = past;
}

}  // namespace witnessmark::dates
