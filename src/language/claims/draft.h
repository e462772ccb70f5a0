#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "language/clauses/sentence_reading.h"
#include "language/passage/passage.h"
#include "witnessmark/base/boxed.h"
#include "witnessmark/model/claim.h"

namespace witnessmark::claims {

/// What a claim speaks of: named in the sentence or taken from the talk before.
struct Referent {
  ThingKind kind = ThingKind::equipment;
  std::vector<std::uint32_t> terms;
  std::string words;
  bool plural = false;
  bool near_match = false;
  bool carried = false;
  CodePointRange range;  ///< Of the words, wherever they stand.
};

/// A date chosen for a claim.
struct ChosenDate {
  DateExpression expression;
  bool carried = false;
};

/// A claim before it is written out: subjects with several meanings are still one.
struct Draft {
  Statement statement = Statement::present;
  std::optional<Referent> subject;
  std::optional<Referent> place;
  std::string subject_words;  ///< Where nothing of the lists was named: "a hole".
  std::string place_words;    ///< Where no term of the list was named: "just aft of the crane".
  std::optional<Quantity> quantity;
  std::string attribute;
  Boxed<ChosenDate> date;
  Basis basis = Basis::unstated;
  std::string knower;
  Firmness firmness = Firmness::firm;
  Polarity polarity = Polarity::affirmed;
  bool not_there = false;  ///< "Before my time": what "we" did tells nothing of how the narrator knows.
  bool led = false;
  bool date_led = false;  ///< The date is the interviewer's, and the fact.
  bool withdrawn = false;
  bool fragment = false;            ///< No verb was found.
  bool throughout = false;          ///< It was so the whole time of its date.
  bool by_then = false;             ///< Its date is the latest it can have been.
  bool is_now = false;              ///< Said in the present tense: no date of the past is carried to it.
  bool today = false;               ///< Said as it was on the day of speaking.
  std::optional<double> odds;       ///< Natural logarithm of the odds, by the weights.
  bool by_weights = false;          ///< No rule read it.
  bool no_joined_date = false;      ///< A date joined to it is no date of it ("her name on, and 1937").
  bool of_place = false;            ///< "It" stood for the place spoken of.
  bool elliptical = false;          ///< Repeats an earlier claim with another date, number or place.
  std::int32_t subject_thing = -1;  ///< Of the passage, when the subject was named here.
  Agent agent = Agent::none;        ///< Who did it, as far as the words say.
  std::uint32_t clause = 0;
  std::string action;           ///< The words of the verb.
  CodePointRange clause_range;  ///< What was said of it.
  std::vector<CodePointRange> quotes;
  std::vector<Mention> cues;         ///< Cue and action spans.
  std::vector<std::string> because;  ///< Reasons in words.
};

/// Says the opposite of it: what was there was not; what was done was not done.
inline void deny(Draft& draft) {
  switch (draft.statement) {
    case Statement::present:
      draft.statement = Statement::absent;
      break;
    case Statement::absent:
      draft.statement = Statement::present;
      break;
    default:
      draft.polarity = draft.polarity == Polarity::denied ? Polarity::affirmed : Polarity::denied;
      break;
  }
}

}  // namespace witnessmark::claims
