// Years: 1962, '62, nineteen sixty-two, nineteen-oh-eight, in 62, 490 BC; bare two-digit numbers in
// bare_years.cpp.
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
