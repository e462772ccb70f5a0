#pragma once
#include <optional>
#include <vector>

#include "language/claims/answers/journeys.h"

namespace witnessmark::claims {

/// What the interviewer's last turn asked or put forward.
struct Asked {
  std::vector<Draft> drafts;  ///< What it would state.
  bool yes_no = false;
  bool put_negative = false;  ///< Put as not being so; the drafts are what that denies.
  bool when = false, where = false, how_many = false;
  bool of_people = false;               ///< "Where were you": of the narrator or the site.
  bool inventory = false;               ///< What there was at a place.
  bool of_extent = false;               ///< "Was it there the whole time?": no is not that it was not there.
  bool supposes = false;                ///< What would be, or what somebody would like: not what was.
  std::string event;                    ///< A named event it asks about ("the fall"); empty when none.
  std::optional<JourneyAsked> journey;  ///< What it asks of where people were.
  CodePointRange quote;
  std::optional<Referent> place;  ///< Place it was about.
  bool answered = true;           ///< Nothing left to answer.
};

/// Reads a sentence of the interviewer's into what was asked.
void ask(const StatementContext& context, CodePointRange quote, Asked& asked);

/// The drafts of an answer's first sentence: own ones, those it confirms or denies, and those it completes
/// with a date, a place or a number.
std::vector<Draft> answer(const StatementContext& context, const Asked& asked, std::vector<Draft> own);

}  // namespace witnessmark::claims
