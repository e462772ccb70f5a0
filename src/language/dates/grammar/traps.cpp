// What looks like a date and is none.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
namespace {

bool ends_sentence(const Token& token) {
  return token.kind == Token::Kind::end ||
         (token.kind == Token::Kind::sign && (token.sign == '.' || token.sign == '!' || token.sign == '?' ||
                                              token.sign == ':' || token.sign == ';'));
}

}  // namespace

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
  // "the Long March", "the March on …"
  return march && (is(i - 1, w("the")) || is(i - 1, w("long")) || is(i + 1, w("on")));
}

// "his wife April", "Captain May", "August Lindqvist", "the May Queen", "Friday Harbor", "the Easter Rose",
// "the schooner Christmas Eve": the date words from i to past are a name.
bool Grammar::name_not_date(std::size_t i, std::size_t past) const {
  if (prose()) return false;
  if (t[past].any(bit(Role::belonging)) && !t[past].newline) return true;
  if (t[i].is(Role::month) && t[i].possessive != 0) return true;  // at May's house
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

bool Grammar::number_is_label(std::size_t i) const {
  if (i == 0) return false;
  const auto& before = t[i - 1];
  if (before.kind == Token::Kind::sign) {
    const char sign = before.sign;
    if (sign == '$' || sign == '#' || sign == '?' || sign == '@' || sign == '=' || sign == '_') return true;
    if ((sign == '-' || sign == '/' || sign == '.' || sign == ':') && !before.space && !t[i].space &&
        i >= 2) {
      const auto& head = t[i - 2];
      if (head.is_number()) {  // 1-75-4, but 1955-1957 and 6-7 February
        if (head.digits == 4 || head.grouped) return false;
        const auto& beyond = t[i + 1];
        const bool chain = beyond.kind == Token::Kind::sign && (beyond.sign == '-' || beyond.sign == '/') &&
                           !beyond.space && !t[i + 2].space;
        const bool earlier = i >= 3 && t[i - 3].kind == Token::Kind::sign &&
                             (t[i - 3].sign == '-' || t[i - 3].sign == '/') && !t[i - 2].space;
        return (sign != '-' && (sign != '/' || prose())) || chain || earlier ||
               !t[i + 1].any(bit(Role::month) | bit(Role::month_short));
      }
      if (head.is_word() &&
          !head.any(bit(Role::part) | bit(Role::month) | bit(Role::month_short) | bit(Role::season) |
                    bit(Role::limit)) &&
          sign == '-' && head.hash != w("pre") && head.hash != w("post"))
        return head.length <= 4 || head.capital;  // F-105, MiG-21
    }
    if (sign == '.' && i >= 2 && !before.space && t[i - 2].is(Role::label)) return true;  // No. 12
    return false;
  }
  if (before.is(Role::label)) return true;
  if (is(i - 1, w("was")) || is(i - 1, w("is")))  // my number was 1952
    for (const auto word :
         {w("number"), w("serial"), w("phone"), w("telephone"), w("extension"), w("code"), w("license"),
          w("licence"), w("badge"), w("address"), w("room"), w("combination")})
      if (is(i - 2, word)) return true;
  return !t[i].space && before.is_word();  // A1944
}

// "Up to nineteen fifty revolutions", "we landed 1950 herrings": a plural the lists do not know, behind a
// number that does not stand where a date stands.
bool Grammar::counts_unknown(std::size_t i, std::size_t past) const {
  const auto& thing = t[past];
  if (!prose() && thing.is_word() && thing.capital && t[past + 1].is(Role::belonging))
    return true;  // 1957 Main Street
  if (prose() || !thing.is_word() || thing.word || thing.capital || !thing.space || thing.newline)
    return false;
  constexpr std::size_t kShortest = 4;
  const auto text = t.text(thing);
  if (text.size() < kShortest || text.back() != 's' || text[text.size() - 2] == 's' || thing.possessive)
    return false;
  const auto& before = t[i - 1];
  if (!before.is_word()) return before.kind == Token::Kind::end;
  for (const auto word :
       {w("in"), w("since"), w("of"), w("by"), w("from"), w("until"), w("till"), w("year"), w("the"),
        w("before"), w("after"), w("during"), w("and"), w("through"), w("between")})
    if (is(i - 1, word)) return false;
  return !before.any(bit(Role::month) | bit(Role::season) | bit(Role::part) | bit(Role::ordinal) |
                     bit(Role::phrase) | bit(Role::month_short) | bit(Role::weekday));
}

// "My '49 Ford", "an old '52 Chevrolet", "the 1957 Evinrude": the year something was made, not one of the
// talk. "The '38 hurricane" and "a 1957 photograph" are of their year.
bool Grammar::model_year(std::size_t i, std::size_t past) const {
  const auto& after = t[past];
  if (prose() || !after.is_word() || !after.space || after.newline ||
      after.any(bit(Role::after_year) | bit(Role::limit) | bit(Role::range_word) | bit(Role::month) |
                bit(Role::season) | bit(Role::weekday) | bit(Role::number) | bit(Role::later) |
                bit(Role::phrase)))
    return false;
  const auto possessive = [&](std::size_t at) {
    for (const auto word : {w("my"), w("his"), w("her"), w("their"), w("your"), w("our")})
      if (is(at, word)) return true;
    return t[at].is_word() && t[at].possessive != 0;
  };
  const bool product = after.capital && ends_in_small(past);
  const bool adjective = t[i - 1].is_word() && !t[i - 1].word;  // my rusty '49 Ford
  const std::size_t head = adjective || is(i - 1, w("old")) ? i - 2 : i - 1;
  const bool four_digits = t[i].is_number() && t[i].digits == 4;
  if (possessive(head)) return product || !four_digits;
  if (is(head, w("a")) || is(head, w("an"))) return product || !four_digits;
  return is(head, w("the")) && product;
}

bool Grammar::counts_something(std::size_t past) const {
  const auto& after = t[past];
  if (after.kind == Token::Kind::end || after.newline) return false;
  if (after.is_sign('%') || after.is_sign('$')) return true;
  if (after.is_sign('-') && !after.space && !t[past + 1].space)
    return t[past + 1].is_word() &&
           !t[past + 1].any(bit(Role::month) | bit(Role::part));  // 300-millimetre, sixty-foot
  if (!after.is_word()) return false;
  if (after.any(bit(Role::counted) | bit(Role::units))) return true;
  if (after.hash == w("of")) return true;
  return !after.space && t[past - 1].is_number();  // 1944mm
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
