#pragma once
#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "language/dates/words/named_days.h"
#include "language/dates/words/rule_starts.h"
#include "language/dates/words/text_hash.h"
#include "witnessmark/language/date_lexicon.h"
#include "witnessmark/time/edtf.h"

namespace witnessmark::dates {

/// The classes of date-words.csv, in the order of kRoleNames.
enum class Role : std::uint8_t {
  month,
  month_short,
  weekday,
  weekdays,
  weekday_short,
  number,
  multiplier,
  year_zero,
  ordinal,
  ordinal_ending,
  decade,
  season,
  seasons,
  unit,
  units,
  day_part,
  day_parts,
  clock_word,
  watch,
  watch_noun,
  day_word,
  present,
  past,
  future,
  part,
  part_noun,
  portion,
  portion_place,
  approx,
  degree,
  vague,
  following,
  later,
  long_,
  frequency,
  every,
  determiner,
  era,
  place_in_time,
  limit,
  range_word,
  era_sign,
  half_day,
  label,
  counted,
  after_year,
  pronoun,
  verb_may,
  service_place,
  workplace,
  join,
  leave,
  correct,
  filler,
  elder,
  descendant,
  death,
  amount,
  participle,
  title,
  happening,
  belonging,
  yarn,
  phrase,  ///< First word of a named day or time; no class of its own in the file.
  count_
};
inline constexpr std::size_t kRoleCount = static_cast<std::size_t>(Role::count_);
static_assert(kRoleCount <= 64);

constexpr std::uint64_t bit(Role role) {
  return std::uint64_t{1} << static_cast<int>(role);
}

enum class Unit : std::uint8_t {
  second,
  minute,
  hour,
  day,
  week,
  weekend,
  fortnight,
  month,
  year,
  decade,
  century
};
enum class Season : std::uint8_t { none, spring, summer, autumn, winter };
enum class DayPart : std::uint8_t { none, morning, midday, afternoon, evening, night, daytime };
/// TIMEX3 mod values. `until` is ours: a state that ends then; it prints as nothing. So is `not_before`:
/// something that came then or later, where `on_or_after` is a state that began then; both print alike.
enum class Mod : std::uint8_t {
  none,
  start,
  mid,
  end,
  approx,
  before,
  after,
  on_or_before,
  on_or_after,
  less_than,
  more_than,
  equal_or_less,
  equal_or_more,
  until,
  not_before
};
enum class Following : std::uint8_t { none, next, previous, last, same, between };
enum class Later : std::uint8_t { none, after, before, ago };

std::string_view day_part_time(DayPart part);  ///< "TMO"
std::string_view season_code(Season season);   ///< "SP"
std::string_view mod_name(Mod mod);            ///< "START"; empty for none and until.

/// Mark beside the rules of a word: a determiner, to which the next token adds rules.
inline constexpr RuleSet kBehindDeterminer = RuleSet{1} << 31;
/// A common word (at, I) whose rules count only with the right word behind it.
inline constexpr RuleSet kLooksAhead = RuleSet{1} << 28;

/// What one word can be.
struct Word {
  std::uint64_t hash = 0;
  std::uint64_t roles = 0;
  std::array<std::int16_t, kRoleCount> values{};
  RuleSet rules = 0;                   ///< Rules that may begin with it; kBehindDeterminer for a determiner.
  RuleSet rules_after_determiner = 0;  ///< Rules that may begin with a determiner before it.
  bool is(Role role) const { return (roles & bit(role)) != 0; }
  bool any(std::uint64_t mask) const { return (roles & mask) != 0; }
  int value(Role role) const { return values[static_cast<std::size_t>(role)]; }
};

/// A name of several words.
struct Phrase {
  std::vector<std::uint64_t> words;  ///< Hashes, in order; hyphens and full stops are skipped.
  std::optional<NamedDay> day;
  std::optional<Edtf> when;
  int event = -1;  ///< Index among the discourse's events.
  std::string name;
};

/// Splits a name into hashes of its words as the token scan would.
std::vector<std::uint64_t> phrase_words(std::string_view name);

}  // namespace witnessmark::dates

namespace witnessmark {

struct DateLexicon::Data {
  /// What the scan has to know of a word stands in the table itself.
  struct Slot {
    std::uint64_t hash = 0;  ///< 0: empty.
    const dates::Word* known = nullptr;
    dates::RuleSet rules = 0;
  };
  /// The slot of a word; an empty one when it has no role.
  const Slot& find(std::uint64_t hash) const {
    std::size_t at = hash & mask;
    // Found or empty are equally likely and must not be told apart by a branch; anything else is rare.
    while ((static_cast<int>(slots[at].hash != hash) & static_cast<int>(slots[at].hash != 0)) != 0)
      [[unlikely]] at = (at + 1) & mask;
    return slots[at];
  }
  std::vector<dates::Word> words;
  std::vector<Slot> slots{1};
  std::size_t mask = 0;
  std::vector<dates::Phrase> phrases;  ///< Sorted by first word, the longest first.
  bool has_non_ascii = false;          ///< Only then are words with other letters folded and looked up.
};

}  // namespace witnessmark
