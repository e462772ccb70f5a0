#include "language/dates/grammar.h"

namespace witnessmark::dates {
namespace {

constexpr std::uint64_t kMonths = bit(Role::month) | bit(Role::month_short);
constexpr std::uint64_t kNumbers = bit(Role::number) | bit(Role::ordinal);
constexpr std::uint64_t kParts = bit(Role::part) | bit(Role::part_noun) | bit(Role::portion_place) | bit(Role::approx);
constexpr std::uint64_t kCounts = kNumbers | bit(Role::vague) | bit(Role::approx) | bit(Role::degree) | bit(Role::least_most) | bit(Role::units) |
                                  bit(Role::multiplier);

}  // namespace

bool Grammar::read(std::size_t i, Spec& spec) const {
  const auto& token = t[i];
  const bool digits = token.is_number();
  const bool det = token.is(Role::determiner);
  Spec best;
  Spec pair;
  if (digits || det || token.any(kNumbers)) {
    if (digits && year_span(i, pair) && pair.end > best.end) best = std::move(pair);
    pair = {};
    if (day_span(i, pair) && pair.end > best.end) best = std::move(pair);
  }
  if (digits || det || token.is_sign('\'') ||
      token.any(kMonths | kNumbers | bit(Role::weekday) | bit(Role::weekday_short) | bit(Role::season) | bit(Role::phrase) | bit(Role::decade) |
                bit(Role::era_sign) | bit(Role::unit)))
    offer(&Grammar::core, i, best);
  if (det || token.any(kParts) || is(i, w("very"))) offer(&Grammar::parted, i, best);
  if (det || token.is(Role::following)) offer(&Grammar::said_relative, i, best);
  if (is(i, w("later")) || is(i, w("earlier"))) offer(&Grammar::within, i, best);
  if (det) offer(&Grammar::era, i, best);
  if (digits || token.any(kNumbers | bit(Role::clock_word) | bit(Role::year_zero)) || is(i, w("half")) || is(i, w("quarter")))
    offer(&Grammar::clock, i, best);
  if (det || digits || token.any(kCounts | bit(Role::unit) | bit(Role::following)) || is(i, w("couple")) || is(i, w("half")) || is(i, w("at")) ||
      is(i, w("well")) || is(i, w("no")) || is(i, w("dozens")) || is(i, w("all")))
    offer(&Grammar::duration, i, best);
  if (token.any(bit(Role::every) | bit(Role::frequency) | bit(Role::weekdays)) || is(i, w("per"))) offer(&Grammar::set, i, best);
  if (det || token.any(bit(Role::day_part) | bit(Role::weekday) | bit(Role::part))) offer(&Grammar::part_of_day, i, best);
  if (det || token.any(bit(Role::watch) | bit(Role::ordinal))) offer(&Grammar::watch, i, best);
  if (token.any(bit(Role::present) | bit(Role::past) | bit(Role::future)) || is(i, w("right")) || is(i, w("these")) || is(i, w("the")) || is(i, w("present")) || is(i, w("date")))
    offer(&Grammar::reference, i, best);
  if (token.is(Role::day_word)) offer(&Grammar::day_word, i, best);
  offer(&Grammar::event, i, best);
  if (prose()) {
    if (digits || token.is(Role::number)) offer(&Grammar::age, i, best);
  } else {
    if (is(i, w("when")) || is(i, w("at")) || is(i, w("age")) || is(i, w("aged")) || is(i, w("i"))) offer(&Grammar::age, i, best);
    if (is(i, w("when")) || is(i, w("my")) || is(i, w("the")) || is(i, w("i"))) offer(&Grammar::service, i, best);
  }
  if (is(i, w("the")) || token.is(Role::weekday)) offer(&Grammar::day_of_month, i, best);
  if (best.end == 0 && token.is(Role::weekday)) offer(&Grammar::lone_weekday, i, best);
  if (best.end == 0) return false;
  joined(best);
  spec = std::move(best);
  return true;
}

}  // namespace witnessmark::dates
