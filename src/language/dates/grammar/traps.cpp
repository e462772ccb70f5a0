// What looks like a date and is none.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
bool Grammar::month_is_verb(std::size_t i) const {
  const bool may = is(i, w("may")), march = is(i, w("march"));
  if (prose() && !t[i].capital && !t[i - 1].is_number() && !t[i + 1].is_number())
    return true;  // to march, to august heights
  if (is(i, w("august")) && is(i - 1, w("an")) && !t[i].capital) return true;
  if (!may && !march) return false;
  if (march && is(i + 1, w("to")) && !t[i + 2].any(bit(Role::month) | bit(Role::month_short)) &&
      !t[i + 2].is_number() && !is(i - 1, w("in")) && !t[i - 1].is(Role::part))
    return true;
  if (march && prose() && t[i - 1].is_word() && t[i - 1].capital && !t[i - 1].word)
    return true;  // the Ice March
  const auto& before = t[i - 1];
  const auto& after = t[i + 1];
  if (!prose() && (is(i + 1, w("or")) || is(i + 1, w("and")) || is(i + 1, w("to"))) &&
      t[i + 2].is(Role::month))
    return false;  // March or April of 1962
  if (i == 0 || ends_sentence(before)) {
    // At the head of a sentence the capital says nothing: "May 4", "March 1962" but "May I", "March on".
    return !(after.is_number() || after.is(Role::ordinal) || after.is_sign(',') || after.is_sign('-') ||
             after.is(Role::number) || is(i + 1, w("of")) || (after.is_word() && after.capital) ||
             after.kind == Token::Kind::end || after.paragraph);
  }
  if (before.is(Role::pronoun)) return true;
  if (is(i - 1, w("of")) || is(i - 1, w("in")) || before.is(Role::part) || before.is(Role::ordinal) ||
      is(i - 1, w("last")) || is(i - 1, w("next")) || is(i - 1, w("since")) || is(i - 1, w("until")) ||
      is(i - 1, w("by")) || before.is(Role::ordinal_ending))
    return false;
  if (after.is_number() || after.is(Role::ordinal)) return false;
  if (is(i + 1, w("the")) && (t[i + 2].is(Role::ordinal) || t[i + 2].is_number())) return false;
  if (after.is(Role::number) && !may) return false;
  if (after.is(Role::number)) return false;
  if (may && after.is(Role::verb_may)) return true;
  if (!t[i].capital) {
    if (march && (is(i - 1, w("a")) || is(i - 1, w("the")) || is(i - 1, w("to")) || is(i - 1, w("on"))))
      return true;
    return !before.is(Role::place_in_time) && !is(i - 1, w("that")) && !is(i - 1, w("this")) &&
           !is(i - 1, w("and")) && !is(i - 1, w("or"));
  }
  // "in the March of thirty-eight"; "the Long March", "the March on …"
  const bool of_year = is(i + 1, w("of")) && (t[i + 2].is_number() || t[i + 2].is(Role::number));
  if (is(i - 1, w("the")) && (of_year || is(i - 2, w("in")))) return false;
  return march && (is(i - 1, w("the")) || is(i - 1, w("long")) || is(i + 1, w("on")));
}

// "his wife April", "Captain May", "August Lindqvist", "the May Queen", "Friday Harbor", "the Easter Rose",
// "the schooner Christmas Eve": the date words from i to past are a name.
bool Grammar::name_not_date(std::size_t i, std::size_t past) const {
  if (prose()) return false;
  if (t[past].any(bit(Role::belonging)) && !t[past].newline) return true;
  if (t[i].is(Role::month) && t[i].possessive != 0) return true;  // at May's house
  if (t[i].is(Role::month)) {  // June and I, me and August, May who told me
    if (is(past, w("and")) && (is(past + 1, w("i")) || is(past + 1, w("me")))) return true;
    if (is(i - 1, w("and")) && (is(i - 2, w("me")) || is(i - 2, w("him")) || is(i - 2, w("her"))))
      return true;
    if (is(past, w("who")) || is(past, w("whom"))) return true;
  }
  if (!t[i].capital) return false;
  const auto& before = t[i - 1];
  const auto& after = t[past];
  if (after.is_number() || after.is(Role::ordinal) || after.is_sign('\'')) return false;
  if (before.is(Role::title) && !t[i].newline) return true;
  const bool the = is(i - 1, w("the"));
  if (the && t[i - 2].is(Role::service_place)) return true;  // aboard the Christmas Eve
  const bool proper =
      after.is_word() && after.space && !after.newline && after.capital && !is(past, w("i")) &&
      !after.any(bit(Role::month) | bit(Role::weekday) | bit(Role::number) | bit(Role::after_year) |
                 bit(Role::pronoun) | bit(Role::determiner) | bit(Role::title)) &&
      ends_in_small(past);
  if (!proper) return false;
  for (const auto word :
       {w("in"), w("on"), w("of"), w("by"), w("since"), w("until"), w("last"), w("next"), w("that"),
        w("this"), w("every"), w("each"), w("early"), w("late"), w("mid"), w("before"), w("after")})
    if (is(i - 1, word)) return t[i].is(Role::weekday) && (word == w("in") || word == w("of"));
  return true;
}

// Not all in capitals: then a capital says nothing.
bool Grammar::ends_in_small(std::size_t i) const {
  const auto text = t.text(t[i]);
  return !text.empty() && text.back() >= 'a' && text.back() <= 'z';
}

bool Grammar::season_is_thing(std::size_t i) const {
  const auto next = t[i + 1].is_sign('-') && !t[i + 1].space ? t[i + 2].hash : t[i + 1].hash;
  if (is(i, w("spring"))) {
    for (const auto thing :
         {w("line"), w("lines"),   w("tide"),   w("tides"),     w("steel"), w("loaded"), w("water"),
          w("lay"),  w("balance"), w("washer"), w("washers"),   w("up"),    w("back"),   w("mattress"),
          w("clip"), w("broke"),   w("inside"), w("mechanism"), w("coil"),  w("hook")})
      if (next == thing) return true;
    if (prose() && is(i - 1, w("a")) && t[i + 1].is_word()) return false;  // a spring offensive
    return is(i - 1, w("to")) || is(i - 1, w("a")) || (t[i - 1].is(Role::pronoun) && !is(i - 1, w("that")));
  }
  if (!is(i, w("fall"))) return false;
  // "the fall of Ostrey", "the fall broke his arm", "a fall", "they fall back", "the boat fall"
  if (is(i + 1, w("of"))) {
    Spec of;
    return !(
        year(i + 2, YearStance::supported, of) ||
        (t[i + 2].is(Role::determiner) && t[t[i + 3].is(Role::following) ? i + 4 : i + 3].is(Role::unit)) ||
        is(i + 2, w("that")) || is(i + 2, w("last")) || is(i + 2, w("next")));
  }
  Spec after;
  if (year(i + 1, YearStance::supported, after)) return false;
  const auto before = t[i - 1].hash;
  if (t[i - 1].is(Role::part) || t[i - 1].is(Role::following) || t[i - 1].is(Role::every) ||
      before == w("that") || before == w("this"))
    return before == w("last") || before == w("following") ? false : false;
  if (before == w("in") || before == w("by") || before == w("since")) return false;
  if (before == w("the")) {
    const auto ahead = t[i - 2].hash;
    const bool said_when = ahead == w("in") || ahead == w("by") || ahead == w("during") ||
                           ahead == w("until") || ahead == w("late") || ahead == w("early") ||
                           ahead == w("since") || ahead == w("throughout");
    return !said_when;
  }
  return true;
}

}  // namespace witnessmark::dates
