// Two dates said as one: from 1957 until 1963, between June and August, 6-7 February, 1995-96, 499-493 BC,
// late sixty-two or early sixty-three; and a date taken back: fifty-eight, no, fifty-nine.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
namespace {

using P = DateValue::Precision;

bool same_grain(const Spec& a, const Spec& b) {
  const auto rank = [](const Spec& spec) {
    switch (spec.date.precision) {
      case P::day:
        return 3;
      case P::month:
      case P::season:
      case P::quarter:
        return 2;
      case P::year:
      case P::half:
        return 1;
      default:
        return 0;
    }
  };
  return a.kind == Spec::Kind::calendar && b.kind == Spec::Kind::calendar && rank(a) == rank(b);
}

/// "June to August 1962", "the spring and summer of 1963": the first takes the second's year.
void share_year(Spec& first, const Spec& second) {
  if (first.year_said || !second.year_said || first.of || first.named) return;
  if (first.date.precision != P::month && first.date.precision != P::day && first.date.precision != P::season)
    return;
  first.date.year = second.date.year;
  if (second.date.precision == P::month && first.date.month > second.date.month) --first.date.year;
  first.date.year_known = true;
  first.short_year = second.short_year;
  first.year_said = true;
}

/// "between Christmas and New Year's 1955": the year may be the first's or the second's; Talk keeps both.
void share_year_of_feasts(Spec& first, const Spec& second) {
  if (!first.named || !second.named || first.year_said || !second.year_said || second.of) return;
  first.date.year = second.date.year;
  first.date.year_known = true;
  first.short_year = second.short_year;
  first.year_said = true;
}

}  // namespace

// 1995-96, 499-493 BC, 496 and 495 BC: the first number is a year only because of the second.
bool Grammar::year_span(std::size_t i, Spec& spec) const {
  if (!t[i].is_number() || t[i].grouped || t[i].digits > 4 || number_is_label(i)) return false;
  std::size_t j = i + 1;
  const bool glued = (t[j].is_sign('-') || t[j].is_sign('/')) && !t[j].space;
  const bool dash = t[j].is_sign('-');
  if (!glued && !dash && !is(j, w("to")) && !is(j, w("and")) && !is(j, w("or")) && !is(j, w("until")) &&
      !is(j, w("through")))
    return false;
  ++j;
  Spec second;
  if (t[j].is_number() && year(j, YearStance::supported, second) && second.date.year <= 0) {  // before Christ
    if (t[i].number < 1 - second.date.year) return false;
    spec.begin = i;
    spec.end = i + 1;
    spec.date = DateValue::of_year(1 - t[i].number);
    spec.year_said = true;
    spec.rule = "year-bc";
    const auto join = is(i + 1, w("or"))    ? Spec::Join::either
                      : is(i + 1, w("and")) ? Spec::Join::none
                                            : Spec::Join::range;
    spec = pair_of(spec, std::move(second), join);
    return true;
  }
  if (t[i].digits != 4 || !glued || t[i].number < 1000 || t[i].number > 2199) return false;
  if (!t[j].is_number() || t[j].space || t[j].digits != 2 || t[j].number <= t[i].number % 100) return false;
  if ((t[j + 1].is_word() && !t[j + 1].space) ||
      (t[j + 1].is_sign('-') && !t[j + 1].space && t[j + 2].is_number()))
    return false;
  spec.begin = i;
  spec.end = i + 1;
  spec.date = DateValue::of_year(t[i].number);
  spec.year_said = true;
  spec.rule = "year-digits";
  second = {};
  second.begin = j;
  second.end = j + 1;
  second.date = DateValue::of_year(t[i].number / 100 * 100 + t[j].number);
  second.year_said = true;
  second.rule = "year-short";
  spec = pair_of(spec, std::move(second), Spec::Join::range);
  return true;
}

// 6-7 February, the 3rd and 4th of May 1962: the first day takes the second's month and year.
bool Grammar::day_span(std::size_t i, Spec& spec) const {
  std::size_t j = i, past = 0;
  if (is(j, w("the"))) ++j;
  std::int64_t day = 0;
  if (number_is_label(j)) return false;
  if (!ordinal(j, day, past)) {
    if (!t[j].is_number() || t[j].digits > 2 || t[j].grouped) return false;
    day = t[j].number;
    past = j + 1;
  }
  if (day < 1 || day > 31) return false;
  std::size_t k = past;
  const bool dash = t[k].is_sign('-') || (t[k].is_sign('/') && !t[k].space && !t[k + 1].space && !prose());
  if (day_doubted(i, day, past, spec)) return true;
  if (!prose() && t[k].is_sign(',')) return days_before_month(i, day, past, spec);
  if (!dash && !is(k, w("to")) && !is(k, w("and")) && !is(k, w("or")) && !is(k, w("until")) &&
      !is(k, w("through")))
    return false;
  Spec second;
  if (!day_and_month(k + 1, second) || second.date.precision != P::day ||
      t[k + 1].any(bit(Role::month) | bit(Role::weekday)))
    return false;
  const auto join = is(k, w("or"))    ? Spec::Join::either
                    : is(k, w("and")) ? (is(i - 1, w("between")) ? Spec::Join::between : Spec::Join::none)
                                      : Spec::Join::range;
  spec = two_days(i, past, day, std::move(second), join);
  return true;
}

// nineteen fifty... fifty-one: begun, and said whole.
bool Grammar::false_start(Spec& first) const {
  std::size_t k = first.end, dots = 0;
  while (t[k].is_sign('.') && dots < 3) ++k, ++dots;
  const bool dash = dots == 0 && t[k].is_sign('-') && t[k].space && t[k + 1].space;
  if (dash) ++k;
  if ((dots < 2 && !dash) || first.date.precision != P::year || first.date.year % 10 != 0) return false;
  if (first.rule != "year-words" && first.rule != "year-short-words") return false;
  Spec second;
  if (t[k].newline || !t[k].is(Role::number) || !year(k, YearStance::supported, second) || !second.short_year)
    return false;
  const auto tens = first.date.year % 100 / 10;
  if (second.date.year / 10 != tens || second.date.year % 10 == 0) return false;
  first.taken_back = true;
  if (dots > 1) return true;  // The second is read as the next of a list.
  share_century(first, second);
  first = pair_of(first, std::move(second), Spec::Join::none);
  return true;
}

// fifty-eight, no, fifty-nine; 1962, I mean 1963
bool Grammar::corrected(Spec& first) const {
  if (prose()) return false;
  if (false_start(first)) return true;
  std::size_t k = first.end;
  const auto pause = [&](std::size_t at) {
    return t[at].kind == Token::Kind::sign &&
           (t[at].sign == ',' || t[at].sign == '-' || t[at].sign == '.' || t[at].sign == ';');
  };
  for (int signs = 0; signs < 3 && pause(k); ++signs) ++k;
  if (k == first.end && !t[k].is(Role::correct) && !(is(k, w("i")) && t[k + 1].is(Role::correct)))
    return false;
  bool corrects = false;
  constexpr int kMostWords = 9;
  for (int words = 0; words < kMostWords; ++words, ++k) {
    corrects |= t[k].is(Role::correct);
    const bool or_rather = is(k, w("or")) && is(k + 1, w("rather"));
    if (!t[k].is_sign(',') && !t[k].is_sign('-') && !t[k].any(bit(Role::filler) | bit(Role::correct)) &&
        !is(k, w("in")) && !or_rather)
      break;
  }
  Spec second;
  if (!corrects) return false;
  if ((!second_date(first, k, second) || !same_grain(first, second)) && !year_put_right(first, k, second))
    return false;
  first.taken_back = true;
  const auto& before_second = t[k - 1];
  if (before_second.is(Role::correct) || before_second.is_sign(','))
    share_year(first, second);  // March, no, April of 1956
  const bool part_of_year = second.date.precision == P::month || second.date.precision == P::season ||
                            second.date.precision == P::day;
  if (first.year_said && !second.year_said && !second.of && !second.named && part_of_year) {
    second.date.year = first.date.year;  // January of fifty-six, no, February
    second.date.year_known = second.year_said = true;
    second.short_year = first.short_year;
  }
  first = pair_of(first, std::move(second), Spec::Join::none);
  return true;
}

// "June of eighty-three, no, eighty-four": the year alone is put right; the month stands.
bool Grammar::year_put_right(const Spec& first, std::size_t j, Spec& second) const {
  if (!first.year_said || first.of || first.named || first.date.precision < P::half) return false;
  Spec found;
  if (t[j].paragraph || !year(j, YearStance::supported, found) || counts_till(found.end) ||
      plural_follows(found.end))
    return false;
  second = {};
  second.begin = j;
  second.end = found.end;
  second.date = first.date;
  second.date.year = found.date.year;
  second.short_year = found.short_year;
  second.year_said = true;
  second.rule = first.rule;
  return true;
}

// "forty in sixty-four": the number has a year of its own and is none.
bool Grammar::counts_till(std::size_t past) const {
  Spec other;
  return is(past, w("in")) && year(past + 1, YearStance::supported, other);
}

// A date; after a year also a bare one.
bool Grammar::second_date(const Spec& first, std::size_t j, Spec& second) const {
  offer(&Grammar::core, j, second);
  offer(&Grammar::parted, j, second);
  Spec found;
  if (first.date.precision == P::year && !t[j].paragraph && year(j, YearStance::supported, found) &&
      found.end > second.end && !(found.short_year && counts_till(found.end)))
    second = std::move(found);
  return second.end != 0 && second.kind == Spec::Kind::calendar && !second.first;
}

// May 4 and 5, April 6-7: the second day is a number alone.
bool Grammar::second_day(Spec& first, std::size_t j, Spec& second) const {
  std::int64_t day = 0;
  const std::size_t at = is(j, w("the")) ? j + 1 : j;
  std::size_t past = at;
  if (!ordinal(at, day, past)) {
    const bool number = t[at].is_number() && t[at].digits <= 2 && !t[at].grouped;
    if (!number || first.rule != "month-day" || counts_something(at + 1)) return false;
    day = t[at].number;
    past = at + 1;
  }
  if (day > 31 || day <= first.date.day || (t[past].is_word() && !t[past].space) || first.year_said)
    return false;
  second = {};
  second.begin = j;
  second.end = past;
  second.date = first.date;
  second.date.day = static_cast<int>(day);
  second.rule = "month-day";
  year_after(past, second);
  if (!second.year_said) return true;
  first.date.year = second.date.year;
  first.date.year_known = first.year_said = true;
  first.short_year = second.short_year;
  return true;
}

// 1953 or so, 1953 or thereabouts, 1953 give or take, 1953ish
void Grammar::more_or_less(Spec& spec) const {
  if (prose() || spec.kind != Spec::Kind::calendar || spec.full_end ||
      (spec.mod != Mod::none && spec.mod != Mod::approx))
    return;
  std::size_t past = spec.end;
  if (is(past, w("or")) && (is(past + 1, w("so")) || is(past + 1, w("thereabouts"))))
    past += 2;
  else if (is(past, w("give")) && is(past + 1, w("or")) && is(past + 2, w("take")))
    past += 3;
  else if (is(past, w("ish")) || (t[past].is_sign('-') && is(past + 1, w("ish"))))
    past += is(past, w("ish")) ? 1 : 2;
  else
    return;
  spec.mod = Mod::approx;
  spec.about = true;
  spec.end = past;
}

bool Grammar::joined(Spec& first) const {
  if (first.kind != Spec::Kind::calendar || (first.full_end && !first.named) || first.first) return false;
  if (corrected(first) || or_last_digit(first) || years_in_a_row(first) || days_listed(first)) return true;
  more_or_less(first);
  std::size_t j = first.end;
  const bool thinks = is(j, w("i")) && t[j + 1].is(Role::filler);
  if (!prose() && (t[j].is_sign(',') || thinks)) {  // 1957, I think, or maybe 1958
    std::size_t or_at = j;
    for (int words = 0; words < 6 && (t[or_at].is_sign(',') || t[or_at].is(Role::filler)); ++words) ++or_at;
    if (is(or_at, w("or"))) j = or_at;
  }
  const bool between = is(first.begin - 1, w("between"));
  const bool dash = t[j].is_sign('-'), comma = t[j].is_sign(','), range_word = t[j].is(Role::range_word);
  const bool and_word = is(j, w("and")), or_word = is(j, w("or"));
  if ((!dash && !range_word && !and_word && !or_word && !comma) || t[j].paragraph) return false;
  if (comma && (prose() || first.date.precision != P::year)) return false;
  ++j;
  if (or_word) j = past_doubt(j);
  if (((range_word || dash) && is(j, w("about"))) || (or_word && is(j, w("in")))) ++j;
  Spec second;
  if (!second_date(first, j, second)) {
    const bool day = first.date.precision == P::day && first.date.month && !t[j].space == dash;
    if (second.end != 0 || !day || !second_day(first, j, second)) return false;
  }
  const std::size_t head = is(first.begin, w("the")) ? first.begin + 1 : first.begin;
  if (t[head].is(Role::seasons) && first.date.precision == P::season && second.date.precision == P::year) {
    second.date.precision = P::season;  // the summers of 1955 and 1956
    second.date.season = first.date.season;
  }
  if ((comma || or_word) && third_choice(first, second)) {
    first = pair_of(first, std::move(second), Spec::Join::either);
    return true;
  }
  if (comma ? !guesses_between(first, second)
            : !same_grain(first, second) && !range_word && !dash && !between)
    return false;
  if (first.date.precision == P::decade && dash) return false;
  share_year(first, second);
  share_year_of_feasts(first, second);
  share_century(first, second);
  const auto join = or_word || comma ? Spec::Join::either
                    : !and_word      ? Spec::Join::range
                    : between        ? Spec::Join::between
                                     : Spec::Join::none;
  more_or_less(second);
  first = pair_of(first, std::move(second), join);
  return true;
}

}  // namespace witnessmark::dates
