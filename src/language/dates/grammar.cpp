#include "language/dates/grammar.h"

namespace witnessmark::dates {
namespace {

constexpr std::uint64_t kMonths = bit(Role::month) | bit(Role::month_short);
constexpr std::uint64_t kNumbers = bit(Role::number) | bit(Role::ordinal);
constexpr std::uint64_t kCores = kMonths | kNumbers | bit(Role::weekday) | bit(Role::weekday_short) | bit(Role::season) | bit(Role::phrase) |
                                 bit(Role::decade) | bit(Role::era_sign) | bit(Role::unit) | bit(Role::units);
constexpr std::uint64_t kParts = bit(Role::part) | bit(Role::part_noun) | bit(Role::portion_place) | bit(Role::approx);
constexpr std::uint64_t kCounts = kNumbers | bit(Role::vague) | bit(Role::approx) | bit(Role::degree) | bit(Role::least_most) | bit(Role::units) |
                                  bit(Role::multiplier);

}  // namespace

bool Grammar::read(std::size_t i, Spec& spec) const {
  const auto& token = t[i];
  const auto& next = t[i + 1];
  const bool digits = token.is_number();
  const bool det = token.is(Role::determiner);
  const bool the = det && is(i, w("the"));
  const bool number_next = next.is_number() || next.any(kNumbers);
  Spec best;
  if (digits) offer(&Grammar::year_span, i, best);
  if (digits || token.any(kNumbers) || (the && number_next)) offer(&Grammar::day_span, i, best);
  if (digits || det || token.is_sign('\'') || token.any(kCores)) offer(&Grammar::core, i, best);
  if ((det && (next.any(kParts | bit(Role::ordinal)) || is(i + 1, w("very")))) || token.any(kParts | bit(Role::ordinal)) || is(i, w("very")))
    offer(&Grammar::parted, i, best);
  if (the || is(i, w("that")) || is(i, w("this")) || token.is(Role::following)) offer(&Grammar::said_relative, i, best);
  if (is(i, w("later")) || is(i, w("earlier"))) offer(&Grammar::within, i, best);
  if (det && (next.any(bit(Role::era) | bit(Role::following)))) offer(&Grammar::era, i, best);
  if (digits || token.any(kNumbers | bit(Role::clock_word) | bit(Role::year_zero)) || is(i, w("half")) || is(i, w("quarter")))
    offer(&Grammar::clock, i, best);
  if (digits || det || token.any(kCounts | bit(Role::unit) | bit(Role::following) | bit(Role::opener))) offer(&Grammar::duration, i, best);
  if (token.any(bit(Role::every) | bit(Role::frequency) | bit(Role::weekdays)) || is(i, w("per"))) offer(&Grammar::set, i, best);
  if ((det && next.any(bit(Role::day_part) | bit(Role::part))) || token.any(bit(Role::day_part) | bit(Role::weekday) | bit(Role::part)))
    offer(&Grammar::part_of_day, i, best);
  if ((det && next.any(bit(Role::watch) | bit(Role::ordinal) | bit(Role::following))) || token.any(bit(Role::watch) | bit(Role::ordinal)))
    offer(&Grammar::watch, i, best);
  if (token.any(bit(Role::present) | bit(Role::past) | bit(Role::future) | bit(Role::opener)) || is(i, w("these")) ||
      (the && (is(i + 1, w("present")) || is(i + 1, w("future")))))
    offer(&Grammar::reference, i, best);
  if (token.is(Role::day_word)) offer(&Grammar::day_word, i, best);
  if (t.has_events()) offer(&Grammar::event, i, best);
  if (prose()) {
    if (digits || token.is(Role::number)) offer(&Grammar::age, i, best);
  } else {
    if (token.is(Role::opener)) offer(&Grammar::age, i, best);
    if (is(i, w("when")) || is(i, w("my")) || is(i, w("i")) || (the && next.is(Role::unit))) offer(&Grammar::service, i, best);
  }
  if (the || token.is(Role::weekday)) offer(&Grammar::day_of_month, i, best);
  if (best.end == 0 && token.is(Role::weekday)) offer(&Grammar::lone_weekday, i, best);
  if (best.end == 0) return false;
  joined(best);
  spec = std::move(best);
  return true;
}

}  // namespace witnessmark::dates
