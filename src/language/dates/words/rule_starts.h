#pragma once
#include <cstdint>
#include <string_view>

namespace witnessmark::dates {

/// The rules of the grammar that are tried where a date may begin.
enum class RuleName : std::uint8_t {
  year_span,
  day_span,
  core,
  parted,
  relative,
  within,
  era,
  clock,
  duration,
  set,
  part_of_day,
  watch,
  reference,
  day_word,
  age,
  service,
  day_of_month,
  lone_weekday
};
using RuleSet = std::uint32_t;
constexpr RuleSet bit(RuleName rule) {
  return RuleSet{1} << static_cast<int>(rule);
}

/// What a digit and an apostrophe can begin, and what digits behind a determiner can.
inline constexpr RuleSet kDigitRules = bit(RuleName::year_span) | bit(RuleName::day_span) |
                                       bit(RuleName::core) | bit(RuleName::clock) | bit(RuleName::duration) |
                                       bit(RuleName::age);
inline constexpr RuleSet kApostropheRules = bit(RuleName::core);
inline constexpr RuleSet kDigitRulesAfterDeterminer =
    bit(RuleName::day_span) | bit(RuleName::core) | bit(RuleName::duration) | bit(RuleName::day_of_month);

/// The rules that can begin with a word of these roles (bits of Role) or with this word.
RuleSet rules_at(std::uint64_t roles, std::uint64_t hash);

/// The rules that can begin with a determiner when a word of these roles, or this word, follows it.
RuleSet rules_after_determiner(std::uint64_t roles, std::uint64_t hash);

/// Function words that begin or follow in a rule but have no class of their own: they must be known to the
/// scan.
inline constexpr std::string_view kFunctionWords[]{
    "later", "earlier", "couple", "half",   "quarter", "at",      "well",  "no",    "per",    "when",  "age",
    "aged",  "i",       "right",  "very",   "dozens",  "present", "date",  "all",   "my",     "these", "year",
    "few",   "good",    "great",  "number", "pair",    "matter",  "other", "first", "final",  "last",  "days",
    "was",   "came",    "went",   "got",    "future",  "most",    "least", "teens", "turned", "had"};

}  // namespace witnessmark::dates
