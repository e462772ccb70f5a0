#pragma once
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/boxed.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/language/discourse.h"
#include "witnessmark/time/edtf.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

class DateLexicon;

/// TIMEX3 types (TimeML; ISO 24617-1).
enum class TimexType { date, time, duration, set };
std::string_view to_string(TimexType type);   ///< "DATE" …

/// One date expression in running text and what it can mean.
struct DateExpression {
  DateExpression() {}                ///< Leaves the room for values it does not hold as it is: there are many.
  CodePointRange range;              ///< In the text given.
  std::string text;
  TimexType type = TimexType::date;
  std::string timex3;                ///< TIMEX3 value: "1962-FA", "XXXX-08-07", "P2Y"; never a guess from the clock.
  std::string mod;                   ///< TIMEX3 mod: START, MID, END, APPROX, BEFORE, …; may be empty.
  /// Nothing when unresolved, a duration or a set. A part of a unit, for which EDTF has no word, is one of the months,
  /// days or years that the part has under the policy: "late 1962" is [1962-09..1962-12], some time in those months;
  /// at an end of an interval, where one date must stand, the code for a third, quarter or half of a year if one fits
  /// ("until late 1962": ../1962-39), else the whole unit.
  std::optional<Edtf> edtf;
  std::optional<Period> period;      ///< Of edtf under the discourse's policy.
  Boxed<Edtf> whole;                 ///< What edtf would be without early, mid, late …; nothing without such a word.
  std::string_view rule;             ///< Name of the rule that read it; lives as long as the program.
  std::string anchor;                ///< What it was reckoned from, in words and value: "interview 1998-06-15".
  std::vector<std::string> alternatives;   ///< Other EDTF values (or TIMEX3 when unresolved) it may mean.
  bool corrected = false;            ///< Taken back by the speaker in the same breath.
  /// The two dates of a range ("from 1957 until 1963") or a choice ("late sixty-two or early sixty-three"); TIMEX3 tags
  /// these. Empty for a date on its own.
  std::vector<DateExpression> parts;
  bool operator==(const DateExpression&) const = default;
};

/// Whether what its own words leave open was taken from the date talked of before: "in June", in the year of which talk
/// was.
bool year_from_talk(const DateExpression& expression);

/// "late sixty-two | DATE 1962 END | 1962 | [..]" for tests.
std::string dump(const DateExpression& expression);

struct DateReading {
  std::vector<DateExpression> expressions;   ///< In order of the text, not overlapping.
  Discourse after;                           ///< The state talk has reached.
};

/// Reads the date expressions of a text in the light of what came before it, which may be moved in where a talk is read
/// turn by turn. Time grows linearly with the text.
DateReading read_dates(std::string_view text, const DateLexicon& lexicon, Discourse before);

/// Reads a talk turn by turn: the same as read_dates with the state handed on from turn to turn, without being made anew
/// for each. The lexicon must outlive it.
class DateReader {
 public:
  DateReader(const DateLexicon& lexicon, Discourse before);
  DateReader(DateReader&&) noexcept;
  DateReader& operator=(DateReader&&) noexcept;
  ~DateReader();
  /// Puts the expressions of the next turn in place of what `expressions` holds; their ranges lie in `text`.
  void read(std::string_view text, std::vector<DateExpression>& expressions);
  /// From the next turn on dates are reckoned from this speaker's life.
  void go_on_with(std::string speaker, std::optional<Edtf> birth, std::vector<ServicePeriod> service);
  const Discourse& talk() const;   ///< The state the talk has reached.

 private:
  class Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace witnessmark
