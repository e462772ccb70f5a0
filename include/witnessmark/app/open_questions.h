#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/conclusions.h"
#include "witnessmark/app/report.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/id.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Why a question is open.
enum class OpenBecause {
  contradicted_story,   ///< What narrators tell is contradicted, for its date, by evidence that is no testimony.
  sources_disagree,     ///< Independent sources on either side.
  count_differs,        ///< A total and the sum of its positions cannot be the same.
  came_or_went_between, ///< Two dated states leave a stretch of time in which it happened.
  intention_only,       ///< Meant to be done; nothing shows whether it was.
  identification,       ///< It may show another site or thing.
  dated_by_itself,      ///< An entry dated or identified by the very thing.
  silent                ///< Told, and nothing in the register speaks to it.
};
std::string_view to_string(OpenBecause because);
/// For people, as a heading: "Stories the evidence contradicts for their date".
std::string_view in_words(OpenBecause because);

/// One question nobody can answer yet, and what would.
struct OpenQuestion {
  OpenBecause because = OpenBecause::silent;
  bool preview = false;                    ///< Rests on proposals nobody has reviewed.
  std::string subject, place;              ///< Keys; may be empty.
  std::string question;                    ///< "Radar scanner (Wheelhouse top) fitted, spring 1963: was it so?"
  std::vector<std::string> also_told;  ///< Other datings of the same that overlap it and are answered alike.
  std::string standing;                    ///< What is known: "2 independent lines for it, 3 against".
  std::vector<std::string> would_decide;   ///< Kinds of evidence, with the place and the dates it should be of.
  std::vector<std::string> looked_at;      ///< For silence: who looked where, or where nobody is recorded to have looked.
  std::vector<Id> claims;                  ///< To go to.
  std::vector<std::string> entries;
  std::int64_t told_by = 0;                ///< How many narrators tell it.
};

struct OpenQuestions {
  std::vector<OpenQuestion> questions;     ///< By why they are open, reviewed before preview, then by subject and date.
  std::vector<ConclusionHistory> to_correct;   ///< Once concluded, published or answered, and replaced since.
  std::vector<ConclusionHistory>
      to_look_at;  ///< Conclusions that stand, and what they rest on has changed since.
  std::vector<std::string> unread;         ///< Interviews without a transcript: nobody can have looked there.
  std::string withheld;
};

/// What the evidence leaves open, of what may be shown on the day and from nothing else.
Result<OpenQuestions> open_questions(const SiteFile& site, const Surroundings& surroundings);

/// By why they are open, at most so many of each, and conclusions to be corrected. `how_to_see_more` stands where some are
/// left out.
Report question_report(const OpenQuestions& open, std::size_t most, std::string_view how_to_see_more);

}  // namespace witnessmark
