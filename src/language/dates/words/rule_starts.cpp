// Which words a rule can begin with. The reader looks a token's rules up instead of trying them all; a rule
// left out here for a word is never tried there.
#include "language/dates/words/rule_starts.h"

#include <initializer_list>

#include "language/dates/words/words.h"

namespace witnessmark::dates {
namespace {

struct Start {
  RuleName rule;
  std::uint64_t roles;
  std::initializer_list<std::uint64_t> words;
};

RuleSet collect(std::initializer_list<Start> starts, std::uint64_t roles, std::uint64_t hash) {
  RuleSet rules = 0;
  for (const auto& start : starts) {
    bool begins = (start.roles & roles) != 0;
    for (const auto word : start.words) begins |= word == hash;
    if (begins) rules |= bit(start.rule);
  }
  return rules;
}

constexpr auto kNumbers = bit(Role::number) | bit(Role::ordinal);

}  // namespace

RuleSet rules_at(std::uint64_t roles, std::uint64_t hash) {
  return collect(
      {{RuleName::day_span, kNumbers, {}},
       {RuleName::core,
        kNumbers | bit(Role::month) | bit(Role::month_short) | bit(Role::weekday) | bit(Role::weekday_short) |
            bit(Role::season) | bit(Role::seasons) | bit(Role::phrase) | bit(Role::decade) |
            bit(Role::era_sign) | bit(Role::year_zero),
        {w("year")}},
       {RuleName::parted,
        bit(Role::part) | bit(Role::part_noun) | bit(Role::portion_place) | bit(Role::approx) |
            bit(Role::ordinal),
        {w("very")}},
       {RuleName::relative, bit(Role::following), {}},
       {RuleName::within, 0, {w("later"), w("earlier")}},
       {RuleName::clock, kNumbers | bit(Role::clock_word) | bit(Role::year_zero), {w("half"), w("quarter")}},
       {RuleName::duration,
        bit(Role::number) | bit(Role::vague) | bit(Role::approx) | bit(Role::degree) | bit(Role::units) |
            bit(Role::multiplier) | bit(Role::following),
        {w("couple"), w("half"), w("at"), w("well"), w("no"), w("dozens"), w("all"), w("year")}},
       {RuleName::set, bit(Role::every) | bit(Role::frequency) | bit(Role::weekdays), {w("per")}},
       {RuleName::part_of_day, bit(Role::day_part) | bit(Role::weekday) | bit(Role::part), {}},
       {RuleName::watch, bit(Role::watch) | bit(Role::ordinal), {}},
       {RuleName::reference,
        bit(Role::present) | bit(Role::past) | bit(Role::future),
        {w("right"), w("these"), w("present"), w("date")}},
       {RuleName::day_word, bit(Role::day_word), {}},
       {RuleName::age, bit(Role::number), {w("when"), w("i"), w("i'd"), w("at"), w("age"), w("aged")}},
       {RuleName::service, 0, {w("when"), w("i")}},
       {RuleName::day_of_month, bit(Role::weekday), {}},
       {RuleName::lone_weekday, bit(Role::weekday), {}}},
      roles, hash);
}

RuleSet rules_after_determiner(std::uint64_t roles, std::uint64_t hash) {
  return collect({{RuleName::day_span, kNumbers, {}},
                  {RuleName::core,
                   kNumbers | bit(Role::season) | bit(Role::seasons) | bit(Role::phrase) | bit(Role::decade) |
                       bit(Role::unit) | bit(Role::units) | bit(Role::month),
                   {}},
                  {RuleName::parted,
                   bit(Role::part) | bit(Role::part_noun) | bit(Role::portion_place) | bit(Role::ordinal),
                   {w("very")}},
                  {RuleName::relative,
                   bit(Role::unit) | bit(Role::season) | bit(Role::month) | bit(Role::weekday) |
                       bit(Role::day_part) | bit(Role::following) | bit(Role::phrase),
                   {}},
                  {RuleName::era, bit(Role::era) | bit(Role::following), {}},
                  {RuleName::duration,
                   bit(Role::number) | bit(Role::vague) | bit(Role::following) | bit(Role::unit) |
                       bit(Role::units) | bit(Role::season) | bit(Role::seasons) | bit(Role::day_part) |
                       bit(Role::day_parts) | bit(Role::weekday) | bit(Role::multiplier) | bit(Role::phrase),
                   {w("couple"), w("pair"), w("few"), w("good"), w("great"), w("number"), w("matter"),
                    w("dozen"), w("first"), w("final"), w("other")}},
                  {RuleName::part_of_day, bit(Role::day_part) | bit(Role::part), {}},
                  {RuleName::watch, bit(Role::watch) | bit(Role::ordinal), {w("last")}},
                  {RuleName::reference, 0, {w("present"), w("future"), w("days")}},
                  {RuleName::service,
                   bit(Role::unit) | kNumbers | bit(Role::decade) | bit(Role::part) | bit(Role::season),
                   {w("last"), w("final"), w("very"), w("teens"), w("time")}},
                  {RuleName::day_of_month, kNumbers, {}}},
                 roles, hash);
}

}  // namespace witnessmark::dates
