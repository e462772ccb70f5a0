#pragma once
#include <optional>

#include "language/statements/statements.h"

namespace witnessmark::claims {

/// What a question asks of where people were: "When did the family go out to the island?", "Which house did
/// you have?", "You left the next year."
struct JourneyAsked {
  Draft draft;  ///< Without a date, and without a place where the place is asked for.
  bool of_narrator = false;
  std::string verb;       ///< "leave", "went back".
  CodePointRange people;  ///< Where the question names them.
  bool when = false;      ///< Asked with "when": a bare "fifty-three" is a year.
  bool leaving = false;   ///< The date is the end of a stay.
};

std::optional<JourneyAsked> journey_asked(const StatementContext& question);

/// The answer's whereabouts: the asked ones with the date or the place of a sentence that states nothing else
/// ("Nineteen thirty-five.", "Number three."). Nothing when it gives neither.
std::optional<Draft> journey_answered(const StatementContext& answer, const JourneyAsked& asked);

/// What was asked, said yes or no to ("I was.", "No."). Nothing when the question names no whereabouts.
std::optional<Draft> journey_confirmed(const StatementContext& answer, const JourneyAsked& asked,
                                       bool denied);

}  // namespace witnessmark::claims
