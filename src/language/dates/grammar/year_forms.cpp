// Years: 1962, '62, nineteen sixty-two, nineteen-oh-eight, in 62, 490 BC. A bare two-digit number is a
// year only in talk, where a word of time stands before it and nothing it could count behind it.
#include "language/dates/grammar/grammar.h"

#include <algorithm>

namespace witnessmark::dates {
namespace {

void set_year(Spec& spec, std::size_t begin, std::size_t end, std::int64_t year, bool short_year,
              const char* rule) {
  spec.kind = Spec::Kind::calendar;
  spec.begin = begin;
  spec.end = end;
  spec.date = DateValue::of_year(year);
  spec.short_year = short_year;
  spec.year_said = true;
  spec.rule = rule;
}

}  // namespace

// BC, B.C., BCE at i; past is set behind it. 1 for before Christ, 2 for AD.
int Grammar::era_sign(std::size_t i, std::size_t& past) const {
  const auto& token = t[i];
  if (token.is(Role::era_sign) && token.capital) return past = i + 1, token.value(Role::era_sign);
  if ((is(i, w("b")) || is(i, w("a"))) && token.capital && t[i + 1].is_sign('.') && !t[i + 1].space &&
      (is(i + 2, w("c")) || is(i + 2, w("d"))) && t[i + 2].capital) {
    const bool before = is(i, w("b"));
    past = t[i + 3].is_sign('.') ? i + 4 : i + 3;
    return before ? 1 : 2;
  }
  return 0;
}

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

// "It'd be fifty-six.", "That must have been sixty-two."
bool Grammar::reckons_year(std::size_t i, std::int64_t value) const {
  if (value <= 20 || value % 10 == 0 || !near_talk(value)) return false;
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
  if (value <= 20 || !near_talk(value) || !(t[past].is_sign(',') || t[past].is_sign('?'))) return false;
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

// A year after the year of speaking has to be said as one: by 2050.
bool Grammar::told_future(std::size_t i, std::int64_t year) const {
  if (prose() || !setting_.speech_year || year <= *setting_.speech_year) return true;
  for (const auto word : {w("in"), w("by"), w("before"), w("after"), w("year"), w("since")})
    if (is(i - 1, word)) return true;
  return t[i + 1].is_sign('/') && !t[i + 1].space;  // 2050/Sep/23
}

// "Contract 1955-B", "drawing 1962/C": a letter joined to the number makes it a label; a dash is no hyphen.
bool Grammar::letter_joined(std::size_t i) const {
  const auto& letter = t[i + 1];
  const auto& beyond = t[i + 2];
  return (t[i].is_sign('-') || t[i].is_sign('/')) && t[i].length == 1 && !t[i].space && letter.is_word() &&
         letter.length == 1 && letter.capital && !letter.space && (beyond.space || !beyond.is_word());
}

bool Grammar::four_digit_supported(std::size_t i) const {
  if (number_is_label(i)) return false;
  if (!prose() && (clock_follows_at(i) || hours_or_years(i))) return false;
  const auto& after = t[i + 1];
  if (after.kind == Token::Kind::sign && !after.space) {
    if (after.sign == '%') return false;
    if (after.sign == '-' && t[i + 2].is_word() && !t[i + 2].space &&
        t[i + 2].any(bit(Role::counted) | bit(Role::unit)))
      return false;
    if (letter_joined(i + 1)) return false;
    if (after.sign == '-' && !t[i + 2].space && t[i + 2].is_number() && t[i + 2].digits != 4 &&
        t[i + 2].digits != 2)
      return false;
  }
  if (!after.is_word()) return true;
  if (!after.space) return is(i + 1, w("ish"));  // not 1944mm; 1940s is read as a decade before
  if (after.any(bit(Role::counted) | bit(Role::units))) return false;
  const auto year = t[i].number;
  const auto before = t[i - 1].hash;
  if (!prose() && year % 100 == 0 && !t[i - 1].is(Role::place_in_time) && after.is_word() && !after.newline &&
      !after.any(bit(Role::after_year) | bit(Role::limit) | bit(Role::range_word) | bit(Role::pronoun)))
    return false;  // the 1800 spindles
  const bool told =
      t[i - 1].is(Role::place_in_time) || before == w("the") || before == w("year") || before == w("and");
  if (after.hash == w("hours")) return false;
  if ((year % 100 == 0 || year > 2050 || year < 1500) && !told) return false;
  return true;
}

// 1962, 62, 490 BC
bool Grammar::year_in_digits(std::size_t i, YearStance stance, Spec& spec) const {
  const auto& token = t[i];
  std::size_t past = i;
  if (token.grouped) return false;
  if (const int era = era_sign(i + 1, past); era && token.digits <= 4 && token.number > 0) {
    const bool before_christ = era == 1;
    set_year(spec, i, past, before_christ ? 1 - token.number : token.number, false,
             before_christ ? "year-bc" : "year-ad");
    return true;
  }
  if (token.digits == 4 && token.number >= 1000 && token.number <= 2199) {
    if (!t[i + 1].space && (is(i + 1, w("s")) || is(i + 1, w("a")))) return false;
    if (!four_digit_supported(i) || model_year(i, i + 1) || counts_unknown(i, i + 1) ||
        names_a_thing(i, i + 1) || is_measured(i, i + 1))
      return false;
    if (stance == YearStance::alone && !told_future(i, token.number)) return false;
    set_year(spec, i, i + 1, token.number, false, "year-digits");
    return true;
  }
  if (token.digits != 2 || (!t[i + 1].space && t[i + 1].is_word())) return false;
  const bool supported = stance == YearStance::supported
                             ? !prose() && !counts_something(i + 1) && plausible(token.number)
                             : bare_year_supported(i, i + 1, token.number, false);
  if (!supported) return false;
  set_year(spec, i, i + 1, token.number, true, "year-short");
  if (stance == YearStance::alone) put_listed_century(spec);
  return true;
}

// "A pair of boots was nineteen and six": shillings and pence, of which there are no more than eleven, or any
// two numbers; a year behind a preposition of time ("in nineteen and six"), or behind what else begins a
// date.
bool Grammar::may_be_shillings(std::size_t i, std::int64_t value) const {
  constexpr std::int64_t kMostPence = 11;
  const auto& before = t[i - 1];
  if (!before.is_word() || before.any(bit(Role::month) | bit(Role::season) | bit(Role::ordinal)))
    return false;
  bool timed = false;
  for (const auto word :
       {w("in"), w("since"), w("by"), w("until"), w("till"), w("til"), w("from"), w("during"), w("before"),
        w("after"), w("through"), w("throughout"), w("between"), w("late"), w("early"), w("mid"), w("on")})
    timed |= is(i - 1, word);
  if (timed) return false;
  if (is(i - 1, w("of")))  // the summer of nineteen and six, but a bill of nineteen and six
    return !t[i - 2].any(bit(Role::season) | bit(Role::month) | bit(Role::part_noun) | bit(Role::portion) |
                         bit(Role::happening) | bit(Role::ordinal) | bit(Role::ordinal_ending) |
                         bit(Role::phrase));
  if (is(i - 1, w("to"))) return !t[i - 2].is(Role::number);  // from nineteen and two to nineteen and six
  if (before.is(Role::approx)) return !is(i - 2, w("in")) && !is(i - 2, w("since")) && !is(i - 2, w("by"));
  const bool told = is(i - 1, w("was")) && (is(i - 2, w("it")) || is(i - 2, w("that")));
  return !told || value <= kMostPence;
}

// What stands behind "nineteen": forty-nine, and forty-nine, oh eight, hundred and eight, 44. Less than 0 for
// nothing.
std::int64_t Grammar::rest_of_year(std::size_t i, std::size_t j, std::size_t& past) const {
  const auto head = t[i].value(Role::number);
  std::int64_t value = 0;
  const bool dated = t[i - 1].is(Role::place_in_time) ||
                     (!prose() && t[i - 1].any(bit(Role::month) | bit(Role::season) | bit(Role::ordinal))) ||
                     (t[i - 1].is_sign(',') && !prose() &&
                      t[i - 2].any(bit(Role::ordinal) | bit(Role::month) | bit(Role::ordinal_ending)));
  if (is(j, w("and")) && head < 20 && below_hundred(j + 1, value, past) && dated &&
      value >= (prose() ? 20 : 1))
    return value < 20 && may_be_shillings(i, value) ? -1 : value;
  if (t[j].is(Role::year_zero)) {
    std::size_t k = j + 1;
    if (t[k].is_sign('-') && !t[k].space) ++k;
    if (!t[k].is(Role::number) || t[k].value(Role::number) >= 10) return -1;
    past = k + 1;
    return t[k].value(Role::number);
  }
  if (is(j, w("hundred")) && head < 20) {
    past = j + 1;
    std::size_t after = 0;
    if (!below_hundred(is(past, w("and")) ? past + 1 : past, value, after)) return 0;
    past = after;
    return value;
  }
  if (t[j].is_number() && t[j].digits == 2 && !t[j].grouped) {
    past = j + 1;
    return t[j].number;
  }
  return below_hundred(j, value, past) && value >= 10 ? value : -1;
}

// The next of a list of years is of the last one's century.
void Grammar::put_listed_century(Spec& spec) const {
  if (!continues_list(spec.begin, spec.date.year)) return;
  spec.date.year += setting_.listed->year / 100 * 100;
  spec.short_year = false;
}

// nineteen forty-nine, two thousand and eight
bool Grammar::year_in_words(std::size_t i, YearStance stance, Spec& spec) const {
  const auto head = t[i].value(Role::number);
  std::size_t j = i + 1, past = i;
  if (t[j].is_sign('-') && !t[j].space && !t[j + 1].space) ++j;
  const bool told = stance == YearStance::supported || t[i - 1].is(Role::place_in_time);
  // Before 1600 "fifteen sixty" is more often a number of things: it must stand where a date stands.
  const bool early = head >= 11 && head < 16 && told;
  if ((early || (head >= 16 && head <= 20)) && !t[j].paragraph) {
    const auto rest = rest_of_year(i, j, past);
    const bool other =
        rest >= 0 && (counts_something(past) || counts_unknown(i, past) || is(i - 1, w("at")) ||
                      is(past, w("hours")) || number_is_label(i) || names_a_thing(i, past) ||
                      is_measured(i, past) || (!prose() && !spoken_year(i, past, head, rest)));
    if (rest >= 0 && !other && (stance == YearStance::supported || told_future(i, head * 100 + rest))) {
      set_year(spec, i, past, head * 100 + rest, false, "year-words");
      return true;
    }
  }
  if (!is(i, w("two")) || !is(i + 1, w("thousand"))) return false;
  std::int64_t rest = 0;
  if (!below_hundred(is(i + 2, w("and")) ? i + 3 : i + 2, rest, past)) rest = 0, past = i + 2;
  const auto& before = t[i - 1];
  const auto& after = t[past];
  const bool opens = (i == 0 || before.kind != Token::Kind::word || t[i].newline) &&
                     (!after.is_word() || after.newline) && rest > 0 && told_future(i, 2000 + rest);
  const bool stands = told || is(i - 1, w("year")) || (opens && !prose());
  if (!stands || counts_something(past)) return false;
  set_year(spec, i, past, 2000 + rest, false, "year-words");
  return true;
}

// in oh-eight, since ought-five; not the bearing oh-four-five
bool Grammar::year_zero(std::size_t i, Spec& spec) const {
  const auto& before = t[i - 1];
  const bool told = is(i - 1, w("in")) || is(i - 1, w("since")) || is(i - 1, w("of")) ||
                    is(i - 1, w("until")) ||
                    before.any(bit(Role::month) | bit(Role::season) | bit(Role::part));
  const std::size_t j = t[i + 1].is_sign('-') && !t[i + 1].space ? i + 2 : i + 1;
  if (prose() || !told || !t[j].is(Role::number) || t[j].value(Role::number) > 9) return false;
  const auto& after = t[j + 1];
  if (after.any(bit(Role::number) | bit(Role::multiplier) | bit(Role::year_zero)) ||
      (after.is_sign('-') && !after.space) || counts_something(j + 1))
    return false;
  set_year(spec, i, j + 1, t[j].value(Role::number), true, "year-short-words");
  return true;
}

// in 'fifty-six, the winter of 'forty-seven; not the opening of a quotation: he said, 'Fifty-six of us …'
bool Grammar::year_apostrophe_words(std::size_t i, YearStance stance, Spec& spec) const {
  const bool told = stance == YearStance::supported || t[i - 1].is(Role::place_in_time) ||
                    t[i - 1].any(bit(Role::month) | bit(Role::season)) || is(i - 1, w("or")) ||
                    is(i - 1, w("and"));
  std::int64_t value = 0;
  std::size_t past = i;
  if (prose() || !told || !t[i].space || !below_hundred(i + 1, value, past) || value < 20) return false;
  if (counts_something(past) || !plausible(value) || (t[past].is_sign('\'') && !t[past].space)) return false;
  set_year(spec, i, past, value, true, "year-apostrophe");
  return true;
}

bool Grammar::year(std::size_t i, YearStance stance, Spec& spec) const {
  const auto& token = t[i];
  if (token.is_number()) return year_in_digits(i, stance, spec);
  const auto& next = t[i + 1];
  if (token.is_sign('\'') && next.is_number() && next.digits == 2 && !next.space) {  // '62
    if ((!t[i + 2].space && t[i + 2].is_word()) || counts_something(i + 2) || model_year(i, i + 2))
      return false;
    set_year(spec, i, i + 2, next.number, true, "year-apostrophe");
    return true;
  }
  if (token.is_sign('\'') && next.is(Role::number) && !next.space)
    return year_apostrophe_words(i, stance, spec);
  const bool anno_domini = token.is(Role::era_sign) && token.capital && token.value(Role::era_sign) == 2;
  if (anno_domini && next.is_number() && !next.grouped && next.digits <= 4) {  // AD 43
    set_year(spec, i, i + 2, next.number, false, "year-ad");
    return true;
  }
  if (token.is(Role::year_zero)) return year_zero(i, spec);
  if (!token.is(Role::number)) return false;
  if (year_in_words(i, stance, spec)) return true;
  if (is(i, w("two")) && is(i + 1, w("thousand"))) return false;
  std::int64_t value = 0;
  std::size_t past = i;
  if (!below_hundred(i, value, past) || value < 20) return false;  // sixty-two
  const bool supported = stance == YearStance::supported
                             ? !prose() && !counts_something(past) && plausible(value)
                             : bare_year_supported(i, past, value, true);
  if (!supported) return false;
  set_year(spec, i, past, value, true, "year-short-words");
  if (stance == YearStance::alone) put_listed_century(spec);
  return true;
}

}  // namespace witnessmark::dates
