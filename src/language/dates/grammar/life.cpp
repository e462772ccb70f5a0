// Dates hung on a life or on the register: when I was nineteen, my second year aboard, the day I reported,
// before the yard period.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

// when I was nineteen, I was about nineteen years old, at nineteen, at the age of 19
bool Grammar::age(std::size_t i, Spec& spec) const {
  if (prose()) {  // died at age [seventy-nine], aged [26]
    std::int64_t years = 0;
    std::size_t past = 0;
    if ((!is(i - 1, w("age")) && !is(i - 1, w("aged"))) || !cardinal(i, years, past) || years < 1 ||
        years > 120 || t[past].is(Role::units))
      return false;
    spec.kind = Spec::Kind::duration;
    spec.begin = i;
    spec.end = past;
    spec.unit = Unit::year;
    spec.count.value = years;
    spec.rule = "age-duration";
    return true;
  }
  std::size_t j = i;
  bool said = false;
  if (is(j, w("when")) && (is(j + 1, w("i")) || is(j + 1, w("i'd")))) {
    j += 2;
    if (is(j, w("was")) || is(j, w("turned")) || is(j, w("were")))
      ++j;
    else
      return false;
    said = true;
  } else if (is(j, w("i")) && is(j + 1, w("was"))) {
    j += 2;
  } else if (is(j, w("at")) || is(j, w("age")) || is(j, w("aged"))) {
    if (is(j, w("at")) && is(j + 1, w("the")) && is(j + 2, w("age")) && is(j + 3, w("of")))
      j += 4, said = true;
    else if (is(j, w("at"))) {
      ++j;
      if (is(j, w("age"))) ++j, said = true;
    } else
      ++j, said = true;
  } else {
    return false;
  }
  const std::size_t number_at = j;
  if (t[j].is(Role::approx) || is(j, w("like")) || is(j, w("maybe"))) ++j, spec.mod = Mod::approx;
  if (is(j, w("only")) || is(j, w("just"))) ++j, spec.mod = Mod::none;
  std::int64_t years = 0;
  std::size_t past = 0;
  if (!cardinal(j, years, past) || years < 3 || years > 99 || (t[j].is_number() && t[j].grouped))
    return false;
  if (t[j].is(Role::number) && is(past, w("or")))
    return false;  // eighteen or nineteen: alternatives are not read
  const bool old = is(past, w("years")) && is(past + 1, w("old"));
  if (old) past += 2;
  const auto& after = t[past];
  if (is(i, w("at")) && !said && !old) {  // at nineteen: not at ten, at forty feet
    if (years < 13 || years > 24 || t[j].is_number()) return false;
    if (after.is_word() && !after.newline && !after.is(Role::pronoun) && !after.is(Role::after_year))
      return false;
    if (is(past, w("hundred")) || is(past, w("to")) || after.is(Role::number) || after.is_number())
      return false;
  }
  if (is(i, w("i")) && !old) {
    if (years > 40 || (after.is_word() && !after.newline && !after.is(Role::after_year))) return false;
  }
  if (counts_something(past)) return false;
  if (after.is(Role::number) || after.is(Role::multiplier)) return false;
  (void)number_at;
  spec.kind = Spec::Kind::age;
  spec.begin = i;
  spec.end = past;
  spec.number = static_cast<int>(years);
  spec.rule = "age";
  return true;
}

// my second year aboard, my first winter aboard, my last year; the day I reported, when I left
bool Grammar::service(std::size_t i, Spec& spec) const {
  if (prose()) return false;
  spec.begin = i;
  const auto edge = [&](std::size_t at) {
    const bool aboard = t[at + 1].is(Role::service_place) || is(at + 1, w("her")) || is(at + 1, w("here"));
    if (t[at].is(Role::join)) return spec.first_edge = true, spec.end = aboard ? at + 2 : at + 1, true;
    if (is(at, w("came")) && aboard) return spec.first_edge = true, spec.end = at + 2, true;
    if (is(at, w("went")) && t[at + 1].is(Role::service_place))
      return spec.first_edge = true, spec.end = at + 2, true;
    if (is(at, w("first")) && is(at + 1, w("came")))
      return spec.first_edge = true, spec.end = t[at + 2].is(Role::service_place) ? at + 3 : at + 2, true;
    if (is(at, w("got")) && (is(at + 1, w("here")) || t[at + 1].is(Role::service_place)))
      return spec.first_edge = true, spec.end = at + 2, true;
    if (t[at].is(Role::leave)) {
      const auto& after = t[at + 1];  // I left the lamp burning
      const bool whole =
          after.kind != Token::Kind::word || after.newline || after.is(Role::service_place) ||
          is(at + 1, w("her")) ||
          (after.is(Role::after_year) && !is(at + 1, w("the")) && !is(at + 1, w("it")) &&
           !is(at + 1, w("a")) && !is(at + 1, w("my")) && !is(at + 1, w("him")) && !is(at + 1, w("them")) &&
           !is(at + 1, w("that")) && !is(at + 1, w("out")) && !is(at + 1, w("off"))) ||
          (is(at + 1, w("the")) &&
           (is(at + 2, w("ship")) || is(at + 2, w("service")) || is(at + 2, w("tender")) ||
            is(at + 2, w("boat")) || is(at + 2, w("mill"))));
      if (!whole) return false;
      spec.end = is(at + 1, w("the"))                                          ? at + 3
                 : (t[at + 1].is(Role::service_place) || is(at + 1, w("her"))) ? at + 2
                                                                               : at + 1;
      return true;
    }
    return false;
  };
  if (is(i, w("when")) && is(i + 1, w("i")) && edge(i + 2)) {
    spec.kind = Spec::Kind::service_edge;
    spec.rule = spec.first_edge ? "service-begins" : "service-ends";
    return true;
  }
  if (is(i, w("i")) &&
      (is(i - 1, w("before")) || is(i - 1, w("after")) || is(i - 1, w("since")) || is(i - 1, w("until"))) &&
      edge(i + 1)) {
    spec.kind = Spec::Kind::service_edge;
    spec.rule = spec.first_edge ? "service-begins" : "service-ends";
    return true;
  }
  if (is(i, w("the")) &&
      (is(i + 1, w("day")) || is(i + 1, w("year")) || is(i + 1, w("month")) || is(i + 1, w("week")))) {
    std::size_t j = i + 2;
    if (is(j, w("that")) || is(j, w("when"))) ++j;
    if (is(j, w("i")) && edge(j + 1)) {
      spec.kind = Spec::Kind::service_edge;
      spec.unit = static_cast<Unit>(t[i + 1].value(Role::unit));
      spec.rule = spec.first_edge ? "service-begins" : "service-ends";
      return true;
    }
    return false;
  }
  if (!is(i, w("my"))) return false;
  std::size_t j = i + 1, past = 0;
  if (is(j, w("very"))) ++j;
  std::int64_t number = 0;
  if (is(j, w("last")) || is(j, w("final")))
    number = -1, past = j + 1;
  else if (!ordinal(j, number, past) || number > 40)
    return false;
  const auto& unit = t[past];
  const bool aboard =
      t[past + 1].is(Role::service_place) || (is(past + 1, w("on")) && is(past + 2, w("board")));
  const auto end_after = [&] {
    return t[past + 1].is(Role::service_place) ? past + 2 : aboard ? past + 3 : past + 1;
  };
  spec.kind = Spec::Kind::service_year;
  spec.number = static_cast<int>(number);
  spec.rule = "service-year";
  if (unit.is(Role::season)) {
    spec.unit = Unit::year;
    spec.date.season = static_cast<Season>(unit.value(Role::season));
    spec.end = end_after();
    return true;
  }
  if (!unit.is(Role::unit)) return false;
  spec.unit = static_cast<Unit>(unit.value(Role::unit));
  if (spec.unit != Unit::year && spec.unit != Unit::day && spec.unit != Unit::week &&
      spec.unit != Unit::month)
    return false;
  spec.end = end_after();
  return true;
}

bool Grammar::event(std::size_t i, Spec& spec) const {
  std::size_t past = 0;
  std::size_t j = i;  // Names are kept without a leading article.
  if (is(j, w("the")) && is(j + 1, w("year")) && is(j + 2, w("of"))) {  // the year of the flood
    if (!event(j + 3, spec)) return false;
    spec.begin = i;
    spec.unit = Unit::year;
    return true;
  }
  if (is(j, w("the")) || is(j, w("that")) || is(j, w("our")) || is(j, w("this"))) ++j;
  const auto* phrase = t.phrase_at(j, past);
  if (!phrase || phrase->event < 0) return false;
  spec.kind = Spec::Kind::event;
  spec.begin = i;
  spec.end = past;
  spec.full_end = true;
  spec.event = phrase->event;
  spec.rule = "named-event";
  return true;
}

}  // namespace witnessmark::dates
