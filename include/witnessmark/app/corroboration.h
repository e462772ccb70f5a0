#pragma once
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/corroboration.h"

namespace witnessmark {

/// The grade table of the shared folder (grades.csv).
Result<GradeTable> load_grade_table(const Surroundings& surroundings);

/// A voice in words. Its claim or entry is named in `voice`, so that a reader can go there.
struct ShownVoice {
  Voice voice;
  std::string who;      ///< "Wilf Tarrock (wt-1994, at 0:11:30.0)"; "log e-079, Deck log, 1962 to 1963, p. 121".
  std::string stated;   ///< "taken away, 29 April 1963": without the subject, which is the question's.
  std::string words;    ///< The quote, or what the entry records; may be empty.
  bool proposed = false;   ///< A claim nobody has reviewed.
};

struct ShownQuestion {
  Corroboration answer;
  std::string question;                  ///< "Steam windlass (Forecastle deck) taken away, October 1962".
  std::vector<ShownVoice> voices;        ///< As answer.voices.
  std::vector<std::vector<std::string>> links;   ///< As answer.groups: why its voices are one, in words.
};

struct CorroborationAccount {
  GradeTable table;
  std::vector<ShownQuestion> reviewed;   ///< From reviewed claims and the register alone.
  std::vector<ShownQuestion> preview;    ///< With proposals nobody has reviewed: the questions they put or speak to.
  std::int64_t reviewed_claims = 0;      ///< None: `reviewed` is what the register says alone.
  std::int64_t without_question = 0;     ///< Claims without a date or a subject: they put no question.
  std::string withheld;
};

/// How well each statement stands, of what may be shown on the day and from nothing else.
Result<CorroborationAccount> corroboration_account(const SiteFile& site, const Surroundings& surroundings);

/// How many questions have which grade; nothing is written out.
struct GradeCounts {
  std::map<std::string, std::int64_t> reviewed, preview;
  std::int64_t reviewed_claims = 0;
};
Result<GradeCounts> count_grades(const SiteFile& site, const Surroundings& surroundings);

}  // namespace witnessmark
