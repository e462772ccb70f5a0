// Several dates of one kind, listed or to choose from: fifty-one or two; fifty-five, fifty-six or
// fifty-seven; 1949, or it may have been 1950; May 5, 6 and 7, 1957; the fifth, sixth and seventh of May.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

using P = DateValue::Precision;

/// "1957 to 62", "the 1950s and sixties": the second takes the first's century.
Spec two_days(std::size_t begin, std::size_t end, std::int64_t day, Spec&& second, Spec::Join join) {
  Spec first;
  first.begin = begin;
  first.end = end;
  first.rule = "day-month";
  first.date = second.date;
  first.date.day = static_cast<int>(day);
  first.short_year = second.short_year;
  first.year_said = second.year_said;
  return pair_of(first, std::move(second), join);
}

void share_century(const Spec& first, Spec& second) {
  if (!second.short_year || first.short_year || first.date.precision != second.date.precision) return;
  if (first.date.precision != P::year && first.date.precision != P::decade) return;
  second.date.year += first.date.year / 100 * 100;
  second.short_year = false;
  constexpr std::int64_t kLongest = 50;  // 1898 to 03, but not 1944 to 40
  const bool turn = first.date.precision == P::year && second.date.year < first.date.year;
  if (turn && second.date.year + 100 - first.date.year <= kLongest) second.date.year += 100;
}

Spec pair_of(Spec& first, Spec&& second, Spec::Join join) {
  if (join == Spec::Join::either && first.about && second.mod == Mod::none) {  // about 1957 or 58
    second.mod = first.mod;
    second.about = true;
  }
  Spec pair;
  pair.kind = Spec::Kind::calendar;
  pair.begin = first.begin;
  pair.end = second.end;
  pair.join = join;
  pair.taken_back = false;
  pair.rule = join == Spec::Join::either ? "either" : join == Spec::Join::between ? "between" : "range";
  pair.first = std::make_unique<Spec>(std::move(first));
  pair.second = std::make_unique<Spec>(std::move(second));
  return pair;
}

// fifty-one or two, 1951 or 2
bool Grammar::or_last_digit(Spec& first) const {
  if (prose() || first.date.precision != P::year || first.date.year < 1 || !is(first.end, w("or")))
    return false;
  const std::size_t j = first.end + 1;
  const auto& digit = t[j];
  const std::int64_t value = digit.is_number() && digit.digits == 1 ? digit.number
                             : digit.is(Role::number)               ? digit.value(Role::number)
                                                                    : 0;
  const auto& after = t[j + 1];
  const bool open = !after.is_word() || after.newline || after.is(Role::after_year);
  if (value <= first.date.year % 10 || value > 9 || !open || (after.is_sign('-') && !after.space))
    return false;
  if (first.date.year % 10 == 0 || counts_something(j + 1)) return false;
  Spec second;
  second.begin = j;
  second.end = j + 1;
  second.date = first.date;
  second.date.year = first.date.year / 10 * 10 + value;
  second.short_year = first.short_year;
  second.year_said = true;
  second.rule = first.rule;
  first = pair_of(first, std::move(second), Spec::Join::either);
  return true;
}

// about forty nine fifty: one or the other
bool Grammar::years_in_a_row(Spec& first) const {
  if (prose() || first.rule != "year-short-words" || first.date.precision != P::year || !first.short_year)
    return false;
  if (past_next_year(first.end, first.date.year) == first.end) return false;
  Spec second;
  if (!year(first.end, YearStance::supported, second) || second.date.year != first.date.year + 1)
    return false;
  first = pair_of(first, std::move(second), Spec::Join::either);
  return true;
}

// Behind "or": maybe, it may have been, was it, could it have been, I suppose it was.
std::size_t Grammar::past_doubt(std::size_t j) const {
  constexpr std::size_t kMost = 7;
  if (prose()) return is(j, w("possibly")) || is(j, w("perhaps")) || is(j, w("even")) ? j + 1 : j;
  const auto start = j;
  for (; j < start + kMost; ++j) {
    bool doubt = t[j].is_sign(',');
    for (const auto word : {w("maybe"), w("perhaps"), w("possibly"), w("probably"), w("even"), w("it"),
                            w("was"), w("may"), w("might"), w("could"), w("have"), w("been"), w("i"),
                            w("suppose"), w("think"), w("that"), w("else")})
      doubt |= is(j, word);
    if (!doubt) break;
  }
  return j;
}

// "fifty-five, fifty-six or fifty-seven", "1955 or 1956 or 1957": the rest of a choice of years behind its
// second.
bool Grammar::third_choice(const Spec& first, Spec& second) const {
  if (prose() || !is(second.end, w("or")) || first.date.precision != P::year ||
      second.date.precision != P::year)
    return false;
  Spec third;
  if (!second_date(second, past_doubt(second.end + 1), third) || third.date.precision != P::year)
    return false;
  share_century(first, second);
  share_century(second, third);
  if (second.date.year <= first.date.year || third.date.year <= second.date.year ||
      third.short_year != second.short_year)
    return false;
  more_or_less(third);
  second = pair_of(second, std::move(third), Spec::Join::either);
  return true;
}

// "in sixty-two, sixty-three": one or the other.
bool Grammar::guesses_between(const Spec& first, const Spec& second) const {
  if (!first.short_year || !second.short_year || second.date.precision != P::year ||
      second.date.year != first.date.year + 1)
    return false;
  const auto before = t[first.begin - 1].hash;
  if (before == w("about") || before == w("around") || first.mod == Mod::approx) return true;
  return hedged(second.end) || begins_two_years(first.begin, first.end, first.date.year);
}

// something like that, somewhere in there, around there, or so, I think
bool Grammar::hedged(std::size_t past) const {
  const std::size_t i = t[past].is_sign(',') ? past + 1 : past;
  for (const auto word : {w("something"), w("somewhere"), w("sometime"), w("thereabouts"), w("around"),
                          w("about"), w("or"), w("maybe"), w("perhaps"), w("probably")})
    if (is(i, word)) return true;
  return is(i, w("i")) && (is(i + 1, w("think")) || is(i + 1, w("guess")) || is(i + 1, w("believe")));
}

// ", 6 and 7": the days behind one, the last of them behind "and" or "or".
bool Grammar::more_days(std::size_t j, std::int64_t last, std::vector<Spec>& days, Spec::Join& join) const {
  constexpr std::size_t kMost = 10;
  while (days.size() < kMost) {
    const bool comma = t[j].is_sign(',');
    if (comma) ++j;
    const bool and_word = is(j, w("and")), or_word = is(j, w("or"));
    if (and_word || or_word) ++j;
    if (!comma && !and_word && !or_word) return false;
    Spec spec;
    spec.begin = j;
    if (is(j, w("the"))) ++j;
    std::int64_t day = 0;
    if (!ordinal(j, day, spec.end)) {
      if (!t[j].is_number() || t[j].digits > 2 || t[j].grouped) return false;
      day = t[j].number;
      spec.end = j + 1;
    }
    if (day <= last || day > 31 || (t[spec.end].is_word() && !t[spec.end].space)) return false;
    spec.date.precision = P::day;
    spec.date.day = static_cast<int>(day);
    spec.rule = "month-day";
    j = spec.end;
    last = day;
    days.push_back(std::move(spec));
    if (!and_word && !or_word) continue;
    join = or_word ? Spec::Join::either : Spec::Join::none;
    return true;
  }
  return false;
}

// One spec of several: each day and the rest behind it; month and year are those of `dated`.
Spec Grammar::chain_of(std::vector<Spec>& days, const Spec& dated, Spec::Join join) const {
  for (auto& day : days) {
    day.date.month = dated.date.month;
    day.date.year = dated.date.year;
    day.date.year_known = dated.date.year_known;
    day.year_said = dated.year_said;
    day.short_year = dated.short_year;
  }
  Spec chain = std::move(days.back());
  for (std::size_t i = days.size() - 1; i-- > 0;) chain = pair_of(days[i], std::move(chain), join);
  return chain;
}

// May 5, 6 and 7, 1957
bool Grammar::days_listed(Spec& first) const {
  if (prose() || first.rule != "month-day" || first.year_said || first.of || !t[first.end].is_sign(','))
    return false;
  std::vector<Spec> days(1);
  auto join = Spec::Join::none;
  if (!more_days(first.end, first.date.day, days, join)) return false;
  Spec& last = days.back();
  if (days.size() < 3 || (!year_after(last.end, last) && counts_something(last.end))) return false;
  days[0].begin = first.begin;
  days[0].end = first.end;
  days[0].date = first.date;
  days[0].rule = first.rule;
  Spec dated;
  dated.date = last.date;
  dated.date.month = first.date.month;
  dated.year_said = last.year_said;
  dated.short_year = last.short_year;
  first = chain_of(days, dated, join);
  return true;
}

// "the tenth, or was it the eleventh, of August 1959": `day`, which ends at `past`, is the first
bool Grammar::day_doubted(std::size_t i, std::int64_t day, std::size_t past, Spec& spec) const {
  std::size_t j = t[past].is_sign(',') ? past + 1 : past;
  if (prose() || t[i].is_number() || !is(j, w("or"))) return false;
  j = past_doubt(j + 1);
  Spec second;
  second.begin = j;
  if (is(j, w("the"))) ++j;
  std::int64_t other = 0;
  int month = 0;
  std::size_t end = j;
  if (!ordinal(j, other, end) || other < 1 || other > 31 || other == day) return false;
  if (t[end].is_sign(',')) ++end;
  if (!is(end, w("of")) || !month_name(end + 1, month, second.end, true)) return false;
  second.date.precision = P::day;
  second.date.month = month;
  second.date.day = static_cast<int>(other);
  second.rule = "day-month";
  if (!year_after(second.end, second) && said_year(second.end, second)) return false;
  spec = two_days(i, past, day, std::move(second), Spec::Join::either);
  return true;
}

// the fifth, sixth and seventh of May; 5, 6 and 7 May 1957: `day`, which ends at `past`, is the first
bool Grammar::days_before_month(std::size_t i, std::int64_t day, std::size_t past, Spec& spec) const {
  std::vector<Spec> days(1);
  auto join = Spec::Join::none;
  if (!more_days(past, day, days, join)) return false;
  Spec dated;
  if (!day_first(days.back().begin, days.back().begin, dated)) return false;
  days.back().end = dated.end;
  days[0].begin = i;
  days[0].end = past;
  days[0].date.precision = P::day;
  days[0].date.day = static_cast<int>(day);
  days[0].rule = "day-month";
  const auto of = std::move(dated.of);
  if (of) return false;
  spec = chain_of(days, dated, join);
  return true;
}

}  // namespace witnessmark::dates
