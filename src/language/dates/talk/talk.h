#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "language/dates/grammar/grammar.h"
#include "language/dates/grammar/spec.h"
#include "witnessmark/language/date_expression.h"
#include "witnessmark/language/discourse.h"

namespace witnessmark::dates {

/// Begins the anchor of what was reckoned from the date under discussion.
inline constexpr std::string_view kTalkOf = "talk of ";

/// A value with everything the talk around it adds: what a Spec comes to mean.
struct Meaning {
  TimexType type = TimexType::date;
  DateValue value;
  std::string timex;             ///< When it is no calendar value; else made from value.
  std::optional<Edtf> edtf;      ///< When it is more than value.
  std::optional<Edtf> narrowed;  ///< The part of value that is meant: late 1962.
  std::optional<EdtfDate>
      part;  ///< The same as one date, when EDTF has a code for it: quarters, thirds, halves of a year.
  bool no_edtf = false;
  Mod mod = Mod::none;
  bool approximate = false;
  std::string anchor;
  std::vector<std::string> alternatives;
  bool moves_talk = true;  ///< Talk is about this date from here on.
  /// Something happened then: what was before or after it may have been on the same day, or in the same month
  /// where no more is known. Before 1950 is not in 1950.
  bool happening = false;
  bool years_long = false;  ///< A named stretch of years: "until the war" is until its beginning.
};

/// Gives specs their values from what the talk has established, and moves the talk on.
class Talk {
 public:
  /// The discourse must outlive the talk.
  explicit Talk(const Discourse& discourse);

  const TalkSetting& setting() const { return setting_; }
  const Discourse& discourse() const { return discourse_; }

  Meaning meaning(const Spec& spec) const;
  /// Talk has reached this date.
  void move_to(const Meaning& meaning, const Spec& spec, Mod limit);
  /// A year was read whose words end at that byte.
  void list_year(const Meaning& meaning, std::size_t past);
  void begin_section(std::int64_t year);
  void end_section();
  void begin_paragraph();
  /// Whether the talk itself has to say when the narrator came: nothing else does.
  bool asks_for_coming() const { return discourse_.service.empty() && !setting_.prose; }
  /// The talk has said when the narrator came.
  void put_coming(const DateValue& value);
  /// Writes the state reached into the discourse the talk began with.
  void put_state(Discourse& discourse) const;
  /// Begins the next text where the discourse stands.
  void take_state();
  /// Goes on with the life the discourse now holds.
  void take_life();

  /// Completes the edtf of a meaning: part, sign and limit. `limit` is none when there is none. Takes what
  /// the meaning holds.
  void put_edtf_of(Meaning& meaning, Mod limit, std::optional<Edtf>& out) const;
  /// The value as it stands at an end of an interval: one date, no wider than need be.
  std::optional<EdtfDate> end_of(const Meaning& meaning) const;
  /// The period of an edtf that put_edtf_of made.
  Period period_of(const Meaning& meaning, Mod limit, const Edtf& edtf) const;
  const DatePolicy& policy() const { return discourse_.policy; }

 private:
  Meaning named_time(const Spec& spec) const;
  Meaning calendar(const Spec& spec) const;
  /// The year an undated part of a year belongs to, and the other year it may belong to.
  struct YearChoice {
    std::int64_t year = 0;
    std::optional<std::int64_t> other;
    bool open = false;  ///< Which of the two cannot be told.
  };
  Meaning undated(const Spec& spec, DateValue value) const;
  YearChoice year_for(const Spec& spec, int month) const;
  YearChoice year_for_season(int at, Season season) const;
  void undated_name(const Spec& spec, Meaning& meaning) const;
  Meaning relative(const Spec& spec) const;
  Meaning relative_to_nothing(const Spec& spec) const;
  void add_seen_from_today(const Spec& spec, Meaning& meaning) const;
  void put_part_of_year(const Spec& spec, const DateValue& from, Meaning& meaning) const;
  void put_feast_beside(const Spec& spec, const DateValue& from, Meaning& meaning) const;
  void put_day(const Spec& spec, const DateValue& from, Meaning& meaning) const;
  std::optional<DateValue> base_of(const Spec& spec, std::string& anchor) const;
  Meaning unit_beside(const Spec& spec, const DateValue& base, const std::string& anchor) const;
  void put_part_in_year(const Spec& spec, const DateValue& base, Meaning& meaning) const;
  bool put_months_of(const DateValue& base, std::int64_t count, const Spec& spec, Meaning& meaning) const;
  Meaning week_beside(const DateValue& base, bool forward, bool named_anchor, Meaning& meaning) const;
  void put_half_years(const Spec& spec, const DateValue& base, Meaning& meaning) const;
  void put_compound(const Spec& spec, const DateValue& base, Meaning& meaning) const;
  void put_few(const Spec& spec, const DateValue& base, Meaning& meaning) const;
  void put_between(const Spec& spec, const DateValue& base, Meaning& meaning) const;
  void put_counted(const Spec& spec, const DateValue& base, Meaning& meaning) const;
  Meaning within(const Spec& spec) const;
  Meaning offset(const Spec& spec) const;
  Meaning era(const Spec& spec) const;
  Meaning day_word(const Spec& spec) const;
  Meaning age(const Spec& spec) const;
  void limit_age(const Spec& spec, Day first, Day last, bool days_known, Meaning& meaning) const;
  Meaning age_said_otherwise(const Spec& spec) const;
  Meaning season_of_life(const Spec& spec, const DateValue& born, Day first, Meaning& meaning) const;
  void put_week_of(const Spec& spec, Day day, Meaning& meaning) const;
  void put_beside_feast(const Spec& spec, Meaning& meaning) const;
  Meaning service_year(const Spec& spec) const;
  Meaning service_edge(const Spec& spec) const;
  Meaning event(const Spec& spec) const;
  Meaning clock(const Spec& spec) const;
  Meaning duration(const Spec& spec) const;
  Meaning set_or_reference(const Spec& spec) const;
  Meaning without_modifier(const Spec& spec) const;
  void narrow(const Spec& spec, Meaning& meaning) const;
  void narrow_to_count(const Spec& spec, Meaning& meaning) const;
  Meaning nth_of(const Spec& spec) const;
  Meaning weekday(const Spec& spec) const;
  bool passing(std::int64_t year, Mod limit);
  void complete_year(const Spec& spec, Meaning& meaning) const;
  void put_century(const Spec& spec, Meaning& meaning) const;
  void forget_future(const Spec& spec, Meaning& meaning) const;
  std::optional<Edtf> limited(const Edtf& edtf, const Meaning& meaning, Mod limit) const;
  void named_once_of_several(const NamedDay& rule, Meaning& meaning, std::optional<std::int64_t> year) const;
  void named(const Spec& spec, Meaning& meaning, std::optional<std::int64_t> year) const;
  std::string reference_anchor() const;
  void refresh_setting();

  const Discourse& discourse_;  ///< What is fixed, and the state talk began with.
  std::optional<std::int64_t> decade_;
  TalkSetting setting_;
  std::optional<DateValue> speech_;  ///< Day, month or year of speaking.
  std::optional<Day> speech_past_;   ///< The day after it; nothing in prose.
  std::optional<DateValue> reference_;
  std::optional<DateValue> day_talked_of_;  ///< The last reference that names a day or month.
  std::optional<std::int64_t> year_;
  std::vector<ServicePeriod> service_;        ///< The discourse's, or what the talk said.
  bool moved_ = false;                        ///< reference_ is no longer the discourse's.
  std::optional<std::int64_t> far_year_;      ///< Prose: a far year mentioned once.
  std::optional<std::int64_t> section_year_;  ///< Prose: the one year of the section's heading.
};

/// An interval between two days, inclusive.
Edtf day_interval(Day first, Day last);
/// `[..last]`, `[first..]`, `[first..last]`.
Edtf one_of_span(std::optional<EdtfDate> first, std::optional<EdtfDate> last);
EdtfDate day_date(Day day);
/// The ISO 8601 week of a day, which is that of its Thursday: "1957-W07".
std::string week_timex(Day day);
/// What is known of a date with nothing to reckon it from.
DateValue unresolved(const Spec& spec);
/// The month a value lies in, the first of a season; 0 for none.
int month_of(const DateValue& value);
/// That week, the following week: Monday to Sunday.
void put_week(const DateValue& from, int step, bool prose, Meaning& meaning);

/// Moves a value by whole units, at the unit's precision or the value's, whichever is finer and known.
std::optional<DateValue> moved(const DateValue& from, std::int64_t count, Unit unit);

}  // namespace witnessmark::dates
