// Numbers that are no years: names, labels, counts, prices, what was read off a gauge.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

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
  return !t[i].space && before.is_word();  // A1944
}

// A word the lists do not know that has the look of a plural: herrings, dories, watchmen.
bool Grammar::is_plural(std::size_t i) const {
  const auto& thing = t[i];
  if (!thing.is_word() || thing.word || thing.capital || !thing.space || thing.newline || thing.possessive)
    return false;
  constexpr std::size_t kShortest = 4;
  const auto text = t.text(thing);
  if (text.size() < kShortest) return false;
  if (text.ends_with("men")) return true;
  if (text.back() != 's') return false;
  for (const std::string_view other : {"ss", "us", "is", "ways", "wards", "times", "sides", "unless"})
    if (text.ends_with(other)) return false;
  return true;
}

// "In the spring fifty-two ships came in", "fifty-two old ships": a plural behind the number, perhaps after a
// word that describes it.
bool Grammar::plural_follows(std::size_t past) const {
  if (prose()) return false;
  const auto& word = t[past];
  const bool describes = word.is_word() && !word.word && !word.capital && word.space && !word.newline &&
                         !ends_with(past, "ed") && !ends_with(past, "ly");
  return is_plural(past) || (describes && (is_plural(past + 1) || t[past + 1].is(Role::counted)));
}

// "Up to nineteen fifty revolutions", "we landed 1950 herrings": a plural the lists do not know, behind a
// number that does not stand where a date stands.
bool Grammar::counts_unknown(std::size_t i, std::size_t past) const {
  const auto& thing = t[past];
  if (!prose() && thing.is_word() && thing.capital && t[past + 1].is(Role::belonging))
    return true;  // 1957 Main Street
  if (prose() || !thing.is_word() || thing.word || thing.capital || !thing.space || thing.newline)
    return false;
  if (!is_plural(past)) return false;
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

// "cost nineteen fifty", "paid me about nineteen forty", "nineteen forty a week": money, unless "in" or the
// like stands before it.
bool Grammar::is_price(std::size_t i, std::size_t past) const {
  const auto& before = t[i - 1];
  const bool loose = is(i - 1, w("about")) || is(i - 1, w("around")) || is(i - 1, w("like")) ||
                     is(i - 1, w("say")) || is(i - 1, w("maybe")) || is(i - 1, w("was")) ||
                     is(i - 1, w("past"));
  if ((before.is(Role::place_in_time) && !loose) || stands_in_date(i)) return false;
  const bool rate = ((is(past, w("a")) || is(past, w("an"))) && !t[past + 2].is(Role::later) &&
                     t[past + 1].any(bit(Role::unit) | bit(Role::counted))) ||
                    (is(past, w("per")) && t[past + 1].is_word());
  if (rate || is(past, w("apiece")) || is(past, w("each"))) return true;
  constexpr std::size_t kReach = 6;
  for (std::size_t back = 1; back <= kReach && back <= i; ++back) {
    const auto& token = t[i - back];
    if (token.kind == Token::Kind::end || (token.is(Role::place_in_time) && !loose)) return false;
    if (token.kind == Token::Kind::sign && token.sign != '\'') return false;
    if (token.is(Role::amount)) return true;
  }
  return false;
}

// Whether a year in words is one: no price, no round number of things, and, long before the narrator's time,
// said where a year is said.
bool Grammar::spoken_year(std::size_t i, std::size_t past, std::int64_t head, std::int64_t rest) const {
  if (is_price(i, past)) return false;
  const auto& before = t[i - 1];
  const auto& after = t[past];
  const bool told = before.any(bit(Role::place_in_time) | bit(Role::part) | bit(Role::month) |
                               bit(Role::season) | bit(Role::ordinal) | bit(Role::phrase)) ||
                    is(i - 1, w("year")) || before.is_sign(',') || before.is_number();
  if (rest == 0 && after.is_word() && !after.newline &&
      !after.any(bit(Role::after_year) | bit(Role::limit) | bit(Role::place_in_time) | bit(Role::range_word) |
                 bit(Role::pronoun) | bit(Role::determiner) | bit(Role::later)))
    return false;  // eighteen hundred spindles
  if (rest == 0 && !told && before.is_word() && !t[i].newline && !prose())
    return false;  // it should have said eighteen hundred
  const auto century_before = setting_.century / 100 - 1;
  return head >= century_before || (told && !is(i - 1, w("was")));
}

// A month, a season, a day or a part stands before the year.
bool Grammar::stands_in_date(std::size_t i) const {
  return t[i - 1].is_number() ||
         t[i - 1].any(bit(Role::month) | bit(Role::month_short) | bit(Role::season) | bit(Role::part) |
                      bit(Role::ordinal) | bit(Role::ordinal_ending) | bit(Role::phrase) |
                      bit(Role::day_part));
}

// "The gauge stood at nineteen forty", "her tonnage was eighteen eighty", "it read 1955 on the meter": a
// number read off or counted up, unless "in" or the like stands before it.
bool Grammar::is_measured(std::size_t i, std::size_t past) const {
  if (prose()) return false;
  if (stands_in_date(i)) return false;  // the gauge was changed in July 1940
  bool straight = false;
  for (const auto word : {w("was"), w("is"), w("were"), w("to"), w("at"), w("past"), w("said"), w("say"),
                          w("until"), w("like")})
    straight |= is(i - 1, word);
  if (t[i - 1].is(Role::place_in_time) && !straight) return false;
  if (is(past, w("on")) && is(past + 1, w("the")) && t[past + 2].is(Role::amount)) return true;
  constexpr std::size_t kReach = 7;
  for (std::size_t back = 1; back <= kReach && back <= i; ++back) {
    const auto& token = t[i - back];
    if (token.kind == Token::Kind::end || (token.kind == Token::Kind::sign && token.sign != '\''))
      return false;
    if (token.is(Role::amount)) return true;
    if (back > 1 && (token.is(Role::pronoun) || is(i - back, w("when")) || is(i - back, w("since"))))
      return false;
  }
  return false;
}

// "1940 was the coal yard's extension", "the nineteen forty was a better lathe", "the number on the boiler
// was 1938": a number by which something is called.
bool Grammar::names_a_thing(std::size_t i, std::size_t past) const {
  if (prose()) return false;
  const bool was = is(past, w("was")) || is(past, w("is")) || is(past, w("were"));
  if (was && is(i - 1, w("the"))) return true;
  const auto called = [&](std::size_t at) {
    for (const auto word :
         {w("number"),  w("serial"),   w("phone"),      w("telephone"), w("extension"), w("code"),
          w("license"), w("licence"),  w("badge"),      w("address"),   w("room"),      w("combination"),
          w("lodge"),   w("line"),     w("locker"),     w("local"),     w("ward"),      w("ticket"),
          w("house"),   w("exchange"), w("switchboard")})
      if (is(at, word)) return true;
    return false;
  };
  constexpr std::size_t kReach = 7;
  if (is(i - 1, w("was")) || is(i - 1, w("is")))  // my number was 1952, the serial on it was 1938
    for (std::size_t back = 2; back <= kReach && back <= i; ++back) {
      const auto& token = t[i - back];
      if (!token.is_word() || token.is(Role::pronoun)) {
        if (is(i - back, w("it"))) continue;
        break;
      }
      if (called(i - back) && (back == 2 || is(i - back, w("number")) || is(i - back, w("serial"))))
        return true;
    }
  const auto& before = t[i - 1];
  const bool opens = i == 0 || before.kind != Token::Kind::word || t[i].newline || is(i - 1, w("and")) ||
                     is(i - 1, w("but"));
  if (!was || !opens || !t[past + 1].is_word()) return false;
  constexpr std::size_t kLabelBefore = 12;  // Extension 1938 was the office and 1940 was the yard.
  for (std::size_t back = 2; back <= kLabelBefore && back < i; ++back) {
    if (t[i - back].kind == Token::Kind::sign && t[i - back].sign == '.') break;
    if (t[i - back - 1].is(Role::label) && t[i - back].any(bit(Role::number))) return true;
    if (t[i - back - 1].is(Role::label) && t[i - back].is_number()) return true;
  }
  std::size_t head = past + 1;  // was [the coal yard's] extension: the last word of what it was
  while (head < past + kReach && t[head + 1].is_word() && !t[head + 1].newline &&
         !t[head + 1].any(bit(Role::place_in_time) | bit(Role::after_year) | bit(Role::pronoun)))
    ++head;
  if (called(head)) return true;
  return (is(head + 1, w("on")) || is(head + 1, w("at"))) && is(head + 2, w("the")) && called(head + 3);
}

}  // namespace witnessmark::dates
