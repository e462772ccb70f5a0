#pragma once
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "language/dates/grammar/spec.h"
#include "language/dates/words/tokens.h"

namespace witnessmark::dates {

/// What the grammar has to know of the talk so far.
struct TalkSetting {
  bool prose = false;
  bool decade_set = false;                  ///< Talk has named a year or a decade: bare numbers may be years.
  std::optional<std::int64_t> year;         ///< The year under discussion.
  std::optional<std::int64_t> speech_year;  ///< The year of speaking: later years are hardly meant.
  struct ListedYear {
    std::int64_t year = 0;
    std::size_t past = 0;  ///< Byte behind its words.
  };
  std::optional<ListedYear> listed;  ///< The year read last, of which a list may go on.
  std::int64_t first_year = 1800;    ///< Bare two-digit years are plausible from here …
  std::int64_t last_year = 2100;     ///< … to here.
  std::int64_t century = 1900;
  bool life_known = false;  ///< first_year is that of the narrator's life.
};

/// A mark that ends a sentence, or the end.
inline bool ends_sentence(const Token& token) {
  return token.kind == Token::Kind::end || token.is_sign('.') || token.is_sign('!') || token.is_sign('?') ||
         token.is_sign(':') || token.is_sign(';');
}

/// Reads date expressions from tokens. Every function looks at a bounded number of tokens from i on, fills
/// the spec (begin, end, and what was said) and says whether it read one. No function changes anything else;
/// none goes back.
class Grammar {
 public:
  /// COUNT UNIT as it stands in the words.
  struct Span {
    Count count;
    Unit unit = Unit::day;
    std::size_t past = 0;
    bool article = false;  ///< "a year".
    bool plural = false;
    bool hyphen = false;           ///< "ten-day".
    bool bare = false;             ///< "years", without any number.
    bool aged = false;             ///< "years old", "years of age".
    Season season = Season::none;  ///< Counted in summers or winters.
  };
  /// What stands before it: about, more than; the next, the last.
  struct Frame {
    std::size_t begin = 0;
    Mod mod = Mod::none;
    bool modified = false;
    bool the = false;
    bool following = false;
    Following which = Following::none;
  };

  Grammar(const TokenWindow& tokens, const TalkSetting& setting) : t(tokens), setting_(setting) {}

  /// The rules that a determiner may begin with the token i behind it.
  RuleSet rules_behind_determiner(std::size_t i) const {
    const auto& next = t[i];
    const auto& behind_of = is(i, w("year")) && is(i + 1, w("of")) ? t[is(i + 2, w("the")) ? i + 3 : i + 2]
                                                                   : next;  // the year of the flood
    if (next.word)
      return next.word->rules_after_determiner | ((next.rules | behind_of.rules) & kEventMayBegin);
    if (next.is_number()) return kDigitRulesAfterDeterminer;
    return next.is_sign('\'') ? kApostropheRules : next.rules & kEventMayBegin;
  }

  /// Whether what follows "at" or "I" can be part of a date: at nineteen, at the age of, at least; I was, I
  /// left.
  bool worth_a_look(std::size_t i) const {
    const auto& next = t[i + 1];
    if (next.is_number()) return true;
    if (!next.word) return false;
    if (is(i, w("at")))
      return next.is(Role::number) || is(i + 1, w("least")) || is(i + 1, w("most")) || is(i + 1, w("the")) ||
             is(i + 1, w("age"));
    return is(i + 1, w("was")) || is(i + 1, w("turned")) || is(i + 1, w("had")) || is(i + 1, w("must")) ||
           is(i + 1, w("would")) || is(i + 1, w("might")) || next.any(bit(Role::join) | bit(Role::leave)) ||
           is(i + 1, w("came")) || is(i + 1, w("went")) || is(i + 1, w("got")) || is(i + 1, w("first"));
  }

  /// The longest expression that begins at i and one of the rules reads; the spec must be fresh.
  bool read(std::size_t i, RuleSet rules, Spec& best) const;

  // number_words.cpp
  bool cardinal(std::size_t i, std::int64_t& value,
                std::size_t& past) const;  ///< Digits or words, to 999,999.
  bool cardinal_words(std::size_t i, std::int64_t& value, std::size_t& past) const;
  bool below_hundred(std::size_t i, std::int64_t& value, std::size_t& past) const;  ///< In words.
  bool ordinal(std::size_t i, std::int64_t& value, std::size_t& past) const;
  bool count(std::size_t i, Count& count, std::size_t& past) const;

  // year_forms.cpp; decades and centuries in decades.cpp
  enum class YearStance : std::uint8_t {
    alone,     ///< The year is the whole expression: what stands around it has to support it.
    supported  ///< A month, season or part stands before it.
  };
  bool year(std::size_t i, YearStance stance, Spec& spec) const;
  bool decade(std::size_t i, Spec& spec) const;
  bool century(std::size_t i, Spec& spec) const;

  // calendar_dates.cpp
  bool day_and_month(std::size_t i, Spec& spec) const;
  bool numeric_date(std::size_t i, Spec& spec) const;
  bool lone_weekday(std::size_t i, Spec& spec) const;
  bool day_of_month(std::size_t i, Spec& spec) const;  ///< "the seventh", month and year from the talk.
  bool names_stretch(std::size_t begin, std::size_t name, std::size_t past) const;
  Part starts_or_ends(std::size_t i) const;
  void edge_of_stretch(Spec& spec) const;
  bool named_day(std::size_t i, Spec& spec) const;
  bool season(std::size_t i, Spec& spec) const;

  // parts.cpp
  // core() and parted() take the longest of several readings and want a fresh spec.
  bool core(std::size_t i, Spec& spec) const;       ///< A date without modifiers before it.
  bool lone_year(std::size_t i, Spec& spec) const;  ///< year() standing alone; "the year 1962".
  bool parted(std::size_t i, Spec& spec) const;  ///< early 1962, the end of March, the latter half of 1962.
  bool within(std::size_t i, Spec& spec) const;  ///< later that month.

  // relatives.cpp
  bool relative(std::size_t i, Spec& spec) const;  ///< Also "the year", which only parts of dates may hold.
  bool said_relative(std::size_t i, Spec& spec) const;  ///< relative() without "the year".
  bool era(std::size_t i, Spec& spec) const;
  bool reference(std::size_t i, Spec& spec) const;
  bool day_word(std::size_t i, Spec& spec) const;

  // durations.cpp; what is reckoned from another date in offsets.cpp
  bool duration(std::size_t i, Spec& spec) const;  ///< Durations, and offsets made of them.
  bool set(std::size_t i, Spec& spec) const;

  // clock.cpp
  bool clock(std::size_t i, Spec& spec) const;
  bool may_be_clock(std::size_t i) const;  ///< In talk: whether clock() is worth trying at a number.
  bool part_of_day(std::size_t i, Spec& spec) const;
  bool watch(std::size_t i, Spec& spec) const;

  // life.cpp; which way a date lies by its tense in tense.cpp
  bool age(std::size_t i, Spec& spec) const;
  bool service(std::size_t i, Spec& spec) const;
  bool event(std::size_t i, Spec& spec) const;
  bool tells_coming(const Spec& spec) const;  ///< The date of "I reported aboard on …".

  // traps.cpp, number_traps.cpp
  bool month_is_verb(std::size_t i) const;        ///< may, march.
  bool number_is_label(std::size_t i) const;      ///< room 1944, frame 75, 1-75-4-M.
  bool counts_something(std::size_t past) const;  ///< 1944 feet, sixty of us.
  bool season_is_thing(std::size_t i) const;      ///< spring line, the fall.

  // ranges.cpp; what is listed or to choose from in lists.cpp
  bool year_span(std::size_t i, Spec& spec) const;  ///< 1995-96, 499-493 BC.
  bool day_span(std::size_t i, Spec& spec) const;   ///< 6-7 February.
  bool joined(Spec& first) const;                   ///< Takes in "… until 1963", "or early sixty-three".

  const Token& token(std::size_t i) const { return t[i]; }
  bool is(std::size_t i, std::uint64_t hash) const { return t[i].hash == hash && t[i].is_word(); }
  bool prose() const { return setting_.prose; }
  const TalkSetting& setting() const { return setting_; }

 private:
  using Rule = bool (Grammar::*)(std::size_t, Spec&) const;
  /// Keeps the longer of what is there and what the rule reads at i.
  void offer(Rule rule, std::size_t i, Spec& best) const {
    Spec found;
    if ((this->*rule)(i, found) && found.end > best.end) best = std::move(found);
  }
  /// Whether a word of one of the roles stands among the next `count` tokens from i on.
  bool near(std::size_t i, std::uint64_t roles, std::size_t count) const {
    for (std::size_t j = i; j < i + count; ++j)
      if (t[j].any(roles)) return true;
    return false;
  }
  bool part_before(std::size_t i, Spec& spec) const;
  bool noun_part(std::size_t i, Spec& spec) const;
  bool quarter_of(std::size_t i, std::size_t j, Spec& spec) const;
  bool portion_part(std::size_t i, Spec& spec) const;
  bool nth_of(std::size_t i, Spec& spec) const;
  bool approximate(std::size_t i, Spec& spec) const;
  bool month_name(std::size_t i, int& month, std::size_t& past, bool beside_number) const;
  bool teen_year(std::size_t i, const Spec& season, Spec& spec) const;
  std::size_t past_aside(std::size_t i) const;
  bool year_after(std::size_t i, Spec& spec) const;  ///< [,] [of] year; moves spec.end.
  bool stands_as_count(std::size_t i, std::size_t past, std::int64_t value) const;
  void whole_winter(Spec& spec) const;
  bool said_year(std::size_t i, Spec& spec) const;  ///< of that year, last year.
  bool year_in_digits(std::size_t i, YearStance stance, Spec& spec) const;
  bool year_in_words(std::size_t i, YearStance stance, Spec& spec) const;
  bool may_be_shillings(std::size_t i, std::int64_t value) const;
  std::int64_t rest_of_year(std::size_t i, std::size_t j, std::size_t& past) const;
  bool day_number(std::size_t i, std::int64_t& day, std::size_t& past) const;
  bool day_first(std::size_t i, std::size_t at, Spec& spec) const;
  bool day_after_month(std::size_t d, Spec& spec) const;
  bool edge_of_service(std::size_t i, Spec& spec) const;
  bool service_edge(std::size_t i, Spec& spec) const;
  bool service_year(std::size_t i, Spec& spec) const;
  bool ends_here(std::size_t i) const;
  bool came_at(std::size_t i) const;
  bool bare_year_supported(std::size_t i, std::size_t past, std::int64_t value, bool words) const;
  bool plausible(std::int64_t two_digits) const;
  bool letter_joined(std::size_t i) const;
  bool four_digit_supported(std::size_t i) const;
  bool belongs_to_someone(std::size_t i) const;
  bool names_owner(std::size_t i) const;
  bool relative_unit(std::size_t j, bool bare, bool ordered, Spec& spec) const;
  bool offset_tail(std::size_t i, Spec& spec) const;
  bool from_date(std::size_t i, Spec& spec) const;
  bool offset_anchor(std::size_t j, Spec& spec) const;
  bool whole_unit(std::size_t i, Spec& spec) const;
  bool unit_beside(std::size_t i, Spec& spec) const;
  bool count_before_following(std::size_t i, std::size_t j, Spec& spec) const;
  bool span_as_offset(const Span& span, const Frame& frame, Spec& spec) const;
  bool bare_span_stands(const Span& span, const Frame& frame) const;
  bool one_unit(const Span& span, const Frame& frame, Spec& spec) const;
  bool counted_span_stands(const Span& span, const Frame& frame, Spec& spec) const;
  bool every(std::size_t j, Spec& spec) const;
  bool every_feast_or_number(std::size_t j, Spec& spec) const;
  bool corrected(Spec& first) const;
  bool second_date(const Spec& first, std::size_t j, Spec& second) const;
  bool guesses_between(const Spec& first, const Spec& second) const;
  bool second_day(Spec& first, std::size_t j, Spec& second) const;
  bool year_put_right(const Spec& first, std::size_t j, Spec& second) const;
  std::size_t past_doubt(std::size_t j) const;
  bool third_choice(const Spec& first, Spec& second) const;
  bool more_days(std::size_t j, std::int64_t last, std::vector<Spec>& days, Spec::Join& join) const;
  Spec chain_of(std::vector<Spec>& days, const Spec& dated, Spec::Join join) const;
  bool days_listed(Spec& first) const;
  bool day_doubted(std::size_t i, std::int64_t day, std::size_t past, Spec& spec) const;
  bool days_before_month(std::size_t i, std::int64_t day, std::size_t past, Spec& spec) const;
  bool is_plural(std::size_t i) const;
  bool plural_follows(std::size_t past) const;
  bool dotted_clock(std::size_t i, Spec& spec) const;
  static void put_half_of_day(Spec& spec);
  bool clock_digits(std::size_t i, Spec& spec) const;
  bool clock_span(std::size_t i, Spec& spec) const;
  bool minutes_past(std::size_t i, Spec& spec) const;
  bool hour_alone(std::size_t i, Spec& spec) const;
  bool hours_and_minutes(std::size_t i, Spec& spec) const;
  void clock_day(std::size_t i, Spec& spec) const;
  bool clock_follows_at(std::size_t i) const;
  void night_between(std::size_t i, Spec& day) const;
  bool model_year(std::size_t i, std::size_t past) const;
  bool counts_unknown(std::size_t i, std::size_t past) const;
  std::size_t past_next_year(std::size_t past, std::int64_t value) const;
  bool false_start(Spec& first) const;
  bool hundreds(std::size_t i, Spec& spec) const;
  void more_or_less(Spec& spec) const;
  bool or_last_digit(Spec& first) const;
  bool years_in_a_row(Spec& first) const;
  bool all_year_round(std::size_t i) const;
  bool seasons_paired(std::size_t j) const;
  bool counts_till(std::size_t past) const;
  bool hours_or_years(std::size_t i) const;
  bool told_future(std::size_t i, std::int64_t year) const;
  bool continues_list(std::size_t i, std::int64_t value) const;
  void put_listed_century(Spec& spec) const;
  bool taken_back_for_year(std::size_t i, std::size_t past, std::int64_t value) const;
  bool is_price(std::size_t i, std::size_t past) const;
  bool stands_in_date(std::size_t i) const;
  bool is_measured(std::size_t i, std::size_t past) const;
  bool names_a_thing(std::size_t i, std::size_t past) const;
  bool counts_yarn(std::size_t i) const;
  bool ages_of_someone(std::size_t i) const;
  bool is_reading(std::size_t i) const;
  std::int64_t other_choice(std::size_t past, std::int64_t value, std::size_t& end) const;
  bool chooses_year(std::size_t i, std::size_t past, std::int64_t value) const;
  bool part_of_it_follows(std::size_t i, std::size_t past) const;
  bool near_talk(std::int64_t value) const;
  bool in_life(std::int64_t value) const;
  bool stands_alone(std::size_t i, std::size_t past, std::int64_t value) const;
  bool age_of_somebody(std::size_t i) const;
  bool it_would_be(std::size_t i) const;
  bool reckons_year(std::size_t i, std::int64_t value) const;
  bool begins_two_years(std::size_t i, std::size_t past, std::int64_t value) const;
  bool it_has_been(std::size_t i) const;
  int era_sign(std::size_t i, std::size_t& past) const;
  bool spoken_year(std::size_t i, std::size_t past, std::int64_t head, std::int64_t rest) const;
  bool ends_in_small(std::size_t i) const;
  bool year_apostrophe_words(std::size_t i, YearStance stance, Spec& spec) const;
  bool year_zero(std::size_t i, Spec& spec) const;
  bool birthday(std::size_t i, Spec& spec) const;
  bool supposed_age(std::size_t& j) const;
  bool turned_age(std::size_t& j) const;
  bool age_stands(std::size_t past) const;
  bool joins_service(std::size_t i) const;
  bool starts_service(std::size_t i, Spec& spec) const;
  bool week_of(std::size_t i, Spec& spec) const;
  bool day_turned(std::size_t i, Spec& spec) const;
  bool my_birth(std::size_t i, Spec& spec) const;
  bool year_turned(std::size_t i, Spec& spec) const;
  bool decade_of_life(std::size_t i, Spec& spec) const;
  bool hedged(std::size_t past) const;
  bool name_not_date(std::size_t i, std::size_t past) const;
  bool ago_on(std::size_t i, Spec& spec) const;
  void put_life(Spec& spec) const;
  void put_tense(Spec& spec) const;
  bool opens_going_back(std::size_t i) const;
  bool pluperfect_near(const Spec& spec) const;
  bool before_last(std::size_t i, Spec& spec) const;
  bool feast_beside(std::size_t i, Spec& spec) const;
  Life life_told(const Spec& spec) const;
  bool clock_tail(std::size_t i, int& hour, std::size_t& past, bool& said) const;

  bool ends_with(std::size_t i, std::string_view ending) const {
    const auto text = t.text(t[i]);
    return text.size() > ending.size() && text.substr(text.size() - ending.size()) == ending;
  }
  std::size_t past_noun_phrase(std::size_t i) const;  ///< "of fierce battles", prose only.

  const TokenWindow& t;
  const TalkSetting& setting_;
};

}  // namespace witnessmark::dates
