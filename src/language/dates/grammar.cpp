// Where a date may begin the rules that its first word allows are tried and the longest reading is taken; then a second date
// joined to it is looked for.
#include "language/dates/grammar.h"

namespace witnessmark::dates {

bool Grammar::read(std::size_t i, RuleSet rules, Spec& spec) const {
  struct Row {
    RuleName name;
    Rule rule;
  };
  static constexpr Row kRows[]{{RuleName::year_span, &Grammar::year_span}, {RuleName::day_span, &Grammar::day_span},
                               {RuleName::core, &Grammar::core},           {RuleName::parted, &Grammar::parted},
                               {RuleName::relative, &Grammar::said_relative}, {RuleName::within, &Grammar::within},
                               {RuleName::era, &Grammar::era},             {RuleName::clock, &Grammar::clock},
                               {RuleName::duration, &Grammar::duration},   {RuleName::set, &Grammar::set},
                               {RuleName::part_of_day, &Grammar::part_of_day}, {RuleName::watch, &Grammar::watch},
                               {RuleName::reference, &Grammar::reference}, {RuleName::day_word, &Grammar::day_word},
                               {RuleName::age, &Grammar::age},             {RuleName::service, &Grammar::service},
                               {RuleName::day_of_month, &Grammar::day_of_month}};
  constexpr auto kMonths = bit(Role::month) | bit(Role::month_short);
  constexpr auto kUnits = bit(Role::unit) | bit(Role::units) | bit(Role::season) | bit(Role::seasons) | bit(Role::day_part) | bit(Role::day_parts) |
                          bit(Role::weekday);
  constexpr std::size_t kToMonth = 10, kToUnit = 10;
  if (!near(i, kMonths, kToMonth)) rules &= ~bit(RuleName::day_span);
  if (!near(i, kUnits, kToUnit)) rules &= ~(bit(RuleName::duration));
  if (rules == 0) return false;
  Spec best;
  for (const auto& row : kRows)
    if ((rules & bit(row.name)) != 0) offer(row.rule, i, best);
  if ((rules & kEventMayBegin) != 0) offer(&Grammar::event, i, best);
  if (best.end == 0 && (rules & bit(RuleName::lone_weekday)) != 0) offer(&Grammar::lone_weekday, i, best);
  if (best.end == 0) return false;
  joined(best);
  spec = std::move(best);
  return true;
}

}  // namespace witnessmark::dates
