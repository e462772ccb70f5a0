// Where a date may begin the rules that its first word allows are tried and the longest reading is taken;
// then a second date joined to it is looked for.
#include "language/dates/grammar/grammar.h"

#include <bit>
#include <iterator>

namespace witnessmark::dates {

bool Grammar::read(std::size_t i, RuleSet rules, Spec& best) const {
  // In the order of RuleName; of two readings of the same length the earlier rule's stands.
  static constexpr Rule kRules[] = {&Grammar::year_span, &Grammar::day_span,      &Grammar::core,
                                    &Grammar::parted,    &Grammar::said_relative, &Grammar::within,
                                    &Grammar::era,       &Grammar::clock,         &Grammar::duration,
                                    &Grammar::set,       &Grammar::part_of_day,   &Grammar::watch,
                                    &Grammar::reference, &Grammar::day_word,      &Grammar::age,
                                    &Grammar::service,   &Grammar::day_of_month};
  constexpr std::size_t kRuleCount = std::size(kRules);
  constexpr std::size_t kAheadOfUnit = 12;  // The words between a count and its unit, a day and its month
  constexpr RuleSet kLongReach = bit(RuleName::day_span) | bit(RuleName::duration) | bit(RuleName::watch);
  std::uint64_t ahead = 0;
  for (std::size_t j = i; (rules & kLongReach) != 0 && j < i + kAheadOfUnit; ++j)
    if (const auto* word = t[j].word) ahead |= word->roles;
  constexpr auto kUnits = bit(Role::unit) | bit(Role::units) | bit(Role::season) | bit(Role::seasons) |
                          bit(Role::day_part) | bit(Role::day_parts) | bit(Role::weekday) | bit(Role::phrase);
  if ((ahead & (bit(Role::month) | bit(Role::month_short))) == 0) rules &= ~bit(RuleName::day_span);
  if ((ahead & kUnits) == 0) rules &= ~bit(RuleName::duration);
  if ((ahead & bit(Role::watch)) == 0) rules &= ~bit(RuleName::watch);
  if (!prose()) {
    const bool number = t[i].is_number() || t[i].is(Role::number);
    if (number) rules &= ~bit(RuleName::age);  // In talk an age begins with a word before the number.
    if (number && !may_be_clock(i)) rules &= ~bit(RuleName::clock);
    if (is(i, w("the")) && !is(i + 2, w("i")) && !is(i + 3, w("i"))) rules &= ~bit(RuleName::service);
  }
  for (auto left = rules & ((RuleSet{1} << kRuleCount) - 1); left != 0; left &= left - 1)
    offer(kRules[std::countr_zero(left)], i, best);
  if ((rules & kEventMayBegin) != 0) offer(&Grammar::event, i, best);
  if (best.end == 0 && (rules & bit(RuleName::lone_weekday)) != 0) offer(&Grammar::lone_weekday, i, best);
  if (best.end == 0) return false;
  joined(best);
  if (!prose()) {
    put_life(best);
    put_tense(best);
  }
  return true;
}

}  // namespace witnessmark::dates
