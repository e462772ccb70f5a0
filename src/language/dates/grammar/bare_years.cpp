// Years of two digits in talk: "sixty-two", "in 62". A bare number is a year only where a word of time stands
// before it, or talk is of years, and nothing it could count behind it.
#include "language/dates/grammar/grammar.h"

#include <algorithm>

namespace witnessmark::dates {

bool Grammar::plausible(std::int64_t two_digits) const {
  const auto year = setting_.century + two_digits;
  return (year >= setting_.first_year && year <= setting_.last_year) ||
         (year + 100 >= setting_.first_year && year + 100 <= setting_.last_year);
}

// 1951, 52, and 53; forty, forty-one, forty-two: behind a year, the next of a list.
bool Grammar::continues_list(std::size_t i, std::int64_t value) const {
  constexpr std::int64_t kFarthest = 10;
  const auto* last = setting_.listed ? &*setting_.listed : nullptr;
  if (!last || value < 20) return false;
  std::size_t j = i - 1;
  const bool joined_word = is(j, w("and")) || is(j, w("or"));
  if (joined_word) --j;
  std::size_t dots = 0;  // fifty... fifty-one
  while (dots < 3 && !joined_word && t[j - dots].is_sign('.')) ++dots;
  if (dots > 1)
    j -= dots;
  else if (t[j].is_sign(','))
    --j;
  if (j == i - 1 || !(t[j].end() == last->past)) return false;
  const auto apart = value - last->year % 100;
  return apart > 0 && apart <= kFarthest;
}

// "fifty-eight, no, fifty-nine": two numbers of which the second puts the first right.
bool Grammar::taken_back_for_year(std::size_t i, std::size_t past, std::int64_t value) const {
  const auto& before = t[i - 1];
  const bool told =
      i == 0 || before.is(Role::place_in_time) || before.kind == Token::Kind::sign || t[i].newline;
  std::size_t j = past;
  while (t[j].is_sign(',') || t[j].is_sign('-')) ++j;
  if (is(j, w("i")) && t[j + 1].is(Role::correct)) ++j;  // I mean
  if (!told || !t[j].is(Role::correct)) return false;
  ++j;
  while (t[j].is_sign(',') || t[j].any(bit(Role::filler) | bit(Role::correct))) ++j;
  std::int64_t second = 0;
  std::size_t end = j;
  if (!below_hundred(j, second, end) || second < 20 || !plausible(second) || counts_something(end))
    return false;
  const auto& after = t[end];
  return value >= 20 && (!after.is_word() || after.newline || after.is(Role::after_year));
}

// "forty nine fifty", "fifty-six fifty-seven": behind the first of two years that follow one another, without
// a comma.
std::size_t Grammar::past_next_year(std::size_t past, std::int64_t value) const {
  std::int64_t next = 0;
  std::size_t end = past;
  const bool follows = value >= 20 && !t[past].newline && below_hundred(past, next, end) && next == value + 1;
  return follows ? end : past;
}

bool Grammar::bare_year_supported(std::size_t i, std::size_t past, std::int64_t value, bool words) const {
  if (setting_.prose || value > 99 || !plausible(value)) return false;
  if (number_is_label(i) || counts_something(past) || age_of_somebody(i)) return false;
  if (words) past = past_next_year(past, value);
  if (counts_something(past)) return false;
  if (words && taken_back_for_year(i, past, value)) return true;
  const auto& after = t[past];
  const bool boundary = after.kind == Token::Kind::end || after.kind == Token::Kind::sign || after.newline ||
                        after.is(Role::after_year);
  if (!boundary ||
      (after.kind == Token::Kind::sign && (after.sign == ':' || after.sign == '/') && !after.space))
    return false;
  if (is(past, w("to")) && t[past + 1].any(bit(Role::counted) | bit(Role::units))) return false;
  const auto before = t[i - 1].hash;
  if (t[i].newline && t[i].paragraph) return false;
  if (continues_list(i, value)) return true;
  if (words && chooses_year(i, past, value)) return true;
  if (words && (reckons_year(i, value) || begins_two_years(i, past, value))) return true;
  if (words && value > 20 && part_of_it_follows(i, past)) return true;
  const bool strong =
      before == w("in") || before == w("since") || (before == w("either") && is(i - 2, w("in"))) ||
      t[i - 1].any(bit(Role::part) | bit(Role::season)) || before == w("year") ||
      (before == w("of") &&
       (t[i - 2].any(bit(Role::part_noun) | bit(Role::portion) | bit(Role::season) | bit(Role::happening))));
  const bool tens = value % 10 == 0;
  if (t[i - 1].is(Role::season) && stands_as_count(i, past, value)) return false;
  if (before == w("it") && is(i - 2, w("was")) && is(i - 3, w("or")) && setting_.year) return value >= 20;
  if (words && stands_alone(i, past, value)) return true;
  if (strong) return value >= 10 || (t[i].is_number() && t[i].digits == 2);
  // Talk has set the decade: "and then sixty-three, that was worse".
  const bool in_list = t[i - 1].is_sign(',') && (t[i - 2].is(Role::number) || t[i - 2].is_number());
  const bool opens = i == 0 || (t[i - 1].kind != Token::Kind::word && !in_list) || before == w("then") ||
                     before == w("and") || before == w("or") || before == w("maybe") || before == w("was") ||
                     before == w("probably") || before == w("that") ||
                     (before == w("been") && it_has_been(i));
  if (words && setting_.year && opens && value > 20 && after.kind != Token::Kind::end) {
    const auto apart = setting_.century + value - *setting_.year;
    const bool list =
        after.kind == Token::Kind::sign && (t[past + 1].is(Role::number) || t[past + 1].is_number());
    if (apart >= -9 && apart <= 9 && !list &&
        (after.kind == Token::Kind::sign || after.is(Role::pronoun) || is(past, w("the"))))
      return true;
  }
  if (!t[i - 1].is(Role::place_in_time)) return false;
  if ((before == w("about") || before == w("around") || before == w("like") || before == w("say") ||
       before == w("maybe")) &&
      (is(i - 2, w("in")) || is(i - 2, w("since"))))
    return value >= 20;
  // from fifty-two to fifty-eight, between fifty-six and fifty-eight
  const bool about = before == w("about") || before == w("around");
  if (about && setting_.year && value >= 20 && is(past, w("or"))) {  // around sixty-one or sixty-two
    std::size_t end = past;
    if (other_choice(past, value, end) &&
        (!t[end].is_word() || t[end].newline || t[end].is(Role::after_year)))
      return true;
  }
  const auto from = about ? t[i - 2].hash : before;
  if ((from == w("from") && t[past].is(Role::range_word)) || (from == w("between") && is(past, w("and")))) {
    std::int64_t second = 0;
    std::size_t after_second = past + 1;
    const bool read = t[past + 1].is_number()
                          ? (second = t[past + 1].number, after_second = past + 2, t[past + 1].digits == 2)
                          : below_hundred(past + 1, second, after_second);
    const auto& beyond = t[after_second];
    const bool open = beyond.kind != Token::Kind::word || beyond.newline || beyond.is(Role::after_year);
    if (read && open && second > value && value >= 20 && plausible(second) &&
        !counts_something(after_second) && (setting_.decade_set || value % 10 != 0 || second % 10 != 0))
      return true;
  }
  if (t[past].is(Role::range_word) || is(past, w("and"))) return false;  // from forty to sixty
  const bool clause = after.is_word() && !after.newline && !after.is(Role::limit);
  if (words && clause && !tens && value > 20 &&
      (before == w("by") || before == w("until") || before == w("till") || before == w("before") ||
       before == w("after")))
    return true;
  // by, until, before, from …: only where talk is about years already, and the number is no round one.
  if (!setting_.decade_set || tens || value < 20) return false;
  const auto year = setting_.century + value;
  return !setting_.year || (year - *setting_.year <= 25 && *setting_.year - year <= 25) || !words;
}

// "fifty-two or three", "fifty-two or fifty-three": the second of two numbers of which one is the year; 0 for
// none. `end` is set behind it.
std::int64_t Grammar::other_choice(std::size_t past, std::int64_t value, std::size_t& end) const {
  constexpr std::int64_t kFarthest = 3;
  std::int64_t next = 0;
  if (!is(past, w("or")) || !below_hundred(past + 1, next, end)) return 0;
  if (next < 10 && value % 10 != 0) next += value / 10 * 10;
  const bool near_by = next > value && next <= value + kFarthest;
  return near_by && !counts_something(end) && !plural_follows(end) ? next : 0;
}

// "It was fifty-two or three that we got the mule"; where talk is of years near by, also without the clause.
bool Grammar::chooses_year(std::size_t i, std::size_t past, std::int64_t value) const {
  std::size_t end = past;
  const bool was = is(i - 1, w("was")) && (is(i - 2, w("it")) || is(i - 2, w("that")));
  if ((!was && !(is(i - 1, w("been")) && it_has_been(i))) || value <= 20 || !other_choice(past, value, end))
    return false;
  const auto& after = t[end];
  if (after.is_sign('-') && !after.space) return false;
  if (is(end, w("that")) && t[end + 1].any(bit(Role::pronoun) | bit(Role::determiner))) return true;
  return near_talk(value) && (!after.is_word() || after.newline || after.is(Role::after_year));
}

// "Forty-six, in the spring of the year", "it was sixty-one, the June".
bool Grammar::part_of_it_follows(std::size_t i, std::size_t past) const {
  const bool it_was = is(i - 1, w("was")) && (is(i - 2, w("it")) || is(i - 2, w("that")));
  const bool opens = i == 0 || !t[i - 1].is_word() || t[i].newline || it_was;
  const bool listed = t[i - 1].is_sign(',') && (t[i - 2].is(Role::number) || t[i - 2].is_number());
  if (!opens || listed || !t[past].is_sign(',')) return false;
  std::size_t j = past + 1;
  if (is(j, w("in"))) ++j;
  if (is(j, w("the"))) ++j;
  return j > past + 1 && t[j].any(bit(Role::season) | bit(Role::month));
}

// Whether talk is of years, and this is one not far from them.
bool Grammar::near_talk(std::int64_t value) const {
  constexpr std::int64_t kNear = 25;
  if (!setting_.year) return false;
  const auto apart = setting_.century + value - *setting_.year;
  return apart >= -kNear && apart <= kNear;
}

// Whether a narrator of whom the birth is known can tell of it.
bool Grammar::in_life(std::int64_t value) const {
  constexpr std::int64_t kFirstMemory = 13;  // TalkSetting::first_year is ten years before birth.
  const auto year = setting_.century + value;
  return setting_.life_known && year >= setting_.first_year + kFirstMemory && year <= setting_.last_year;
}

// "It was that bad winter. Forty-seven.", "That was thirty-eight.", "so fifty-six", "until seventy-three": a
// number that is no round one, with nothing behind it, where a time stands.
bool Grammar::stands_alone(std::size_t i, std::size_t past, std::int64_t value) const {
  const auto& after = t[past];
  const bool ends = after.kind == Token::Kind::end || after.newline || after.is_sign('.') ||
                    after.is_sign(',') || after.is_sign('?') || after.is_sign(';') || after.is_sign('!');
  if (!ends || value <= 20 || value % 10 == 0 || !in_life(value)) return false;
  const bool list = after.is_sign(',') && (t[past + 1].is(Role::number) || t[past + 1].is_number());
  if (list || i == 0) return false;
  if (is(i - 1, w("so")) || is(i - 1, w("until")) || is(i - 1, w("till")) || is(i - 1, w("til"))) return true;
  if (is(i - 1, w("was"))) return is(i - 2, w("that")) || is(i - 2, w("which"));
  return ends_sentence(t[i - 1]);
}

// "It'd be fifty-six.", "That must have been sixty-two."
bool Grammar::reckons_year(std::size_t i, std::int64_t value) const {
  if (value <= 20 || value % 10 == 0 || !(near_talk(value) || in_life(value))) return false;
  if (is(i - 1, w("been"))) return it_has_been(i);
  return is(i - 1, w("be")) && it_would_be(i);
}

// It'd be, that would be, it must be.
bool Grammar::it_would_be(std::size_t i) const {
  const bool would = is(i - 2, w("would")) || is(i - 2, w("must")) || is(i - 2, w("might"));
  return is(i - 2, w("it'd")) || is(i - 2, w("that'd")) ||
         (would && (is(i - 3, w("it")) || is(i - 3, w("that"))));
}

// "He was sixty-three", "she'd be about sixty-four": an age, if anything.
bool Grammar::age_of_somebody(std::size_t i) const {
  constexpr std::size_t kReach = 5;
  bool was = false;
  for (std::size_t back = 1; back <= kReach && back <= i; ++back) {
    const std::size_t at = i - back;
    const auto is_one_of = [&](std::initializer_list<std::uint64_t> words) {
      return std::any_of(words.begin(), words.end(), [&](std::uint64_t word) { return is(at, word); });
    };
    if (is_one_of({w("was"), w("were"), w("be"), w("been"), w("is")})) {
      was = true;
    } else if (is_one_of({w("he"), w("she"), w("i"), w("who"), w("they"), w("he'd"), w("she'd"), w("i'd"),
                          w("they'd")})) {
      return was;
    } else if (!is_one_of({w("about"), w("around"), w("only"), w("just"), w("maybe"), w("nearly"), w("have"),
                           w("would"), w("must"), w("might")})) {
      return false;
    }
  }
  return false;
}

// "Fifty-three, fifty-four.", "Forty-two? Forty-three?": two numbers that follow one another, and no third.
bool Grammar::begins_two_years(std::size_t i, std::size_t past, std::int64_t value) const {
  const bool near_by = near_talk(value) || (in_life(value) && !is(i - 1, w("in")));
  if (value <= 20 || !near_by || !(t[past].is_sign(',') || t[past].is_sign('?'))) return false;
  std::int64_t next = 0;
  std::size_t end = past + 1;
  if (!below_hundred(past + 1, next, end) || next != value + 1) return false;
  if (counts_something(end) || plural_follows(end)) return false;
  const bool listed = t[i - 1].is_sign(',') && (t[i - 2].is(Role::number) || t[i - 2].is_number());
  if (listed) return false;
  const auto of_it = [&](std::size_t at) { return is(at, w("it")) || is(at, w("that")); };
  const bool opens = i == 0 || !t[i - 1].is_word() || t[i].newline || is(i - 1, w("say")) ||
                     is(i - 1, w("in")) || (is(i - 1, w("was")) && of_it(i - 2)) ||
                     (is(i - 1, w("been")) && it_has_been(i)) || (is(i - 1, w("be")) && it_would_be(i));
  const bool third = t[end].is_sign(',') && (t[end + 1].is(Role::number) || t[end + 1].is_number());
  return opens && !third && (!t[end].is_word() || t[end].newline || t[end].is(Role::after_year));
}

// It would have been, that must have been, it might've been, it'd have been.
bool Grammar::it_has_been(std::size_t i) const {
  std::size_t j = i - 2;
  if (is(j, w("have"))) --j;
  for (const auto word : {w("must"), w("would"), w("might"), w("could"), w("may"), w("must've"),
                          w("would've"), w("might've"), w("could've")})
    if (is(j, word)) return is(j - 1, w("it")) || is(j - 1, w("that"));
  return is(j, w("it'd")) || is(j, w("that'd"));
}

}  // namespace witnessmark::dates
