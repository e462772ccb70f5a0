#pragma once
#include <cstddef>
#include <cstdint>
#include <functional>
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
  std::string interview;  ///< Claims: what it may be called.
  std::string who;      ///< "Wilf Tarrock (wt-1994, at 0:11:30.0)"; "log e-079, Deck log, 1962 to 1963, p. 121".
  std::string stated;   ///< "taken away, 29 April 1963": without the subject, which is the question's.
  std::string words;    ///< The narrator's words, or what the entry records; may be empty.
  std::string others;   ///< What was asked, with who asked; may be empty.
  bool proposed = false;   ///< A claim nobody has reviewed.
};

struct ShownQuestion {
  Corroboration answer;
  std::string question;                  ///< "Steam windlass (Forecastle deck) taken away, October 1962".
  std::vector<ShownVoice> voices;        ///< As answer.voices.
  std::vector<std::vector<std::string>> links;   ///< As answer.groups: why its voices are one, in words.
};

/// The questions of one grade.
struct GradedQuestions {
  std::string grade, meaning;          ///< With the meanings of all the rules of the table that give the grade.
  std::int64_t total = 0;
  std::int64_t put_by_one_entry = 0;   ///< Of these: by one entry alone, with no voice against it.
  std::vector<ShownQuestion> shown;    ///< The first of the others.
};

struct CorroborationAccount {
  std::vector<GradedQuestions> reviewed;   ///< From reviewed claims and the register alone; by grade, in the table's order.
  std::vector<GradedQuestions> preview;    ///< With proposals nobody has reviewed: the questions they put or speak to.
  std::int64_t reviewed_claims = 0;        ///< None: `reviewed` is what the register says alone.
  std::int64_t without_question = 0;       ///< Claims without a date or a subject: they put no question.
  std::string withheld;
};

/// How well each statement stands, of what may be shown on the day and from nothing else; at most so many of each grade are
/// written out.
Result<CorroborationAccount> corroboration_account(const SiteFile& site, std::size_t most,
                                                   const Surroundings& surroundings);

/// Every question one after another, in the order of the lists, reviewed ones first; no more than one is held in memory.
/// Returns in words what was withheld.
Result<std::string> for_each_question(const SiteFile& site, const Surroundings& surroundings,
                                      const std::function<void(const ShownQuestion&, bool preview)>& visit);

/// How many questions have which grade; nothing is written out.
struct GradeCounts {
  std::map<std::string, std::int64_t> reviewed, preview;
  std::int64_t reviewed_claims = 0;
};
Result<GradeCounts> count_grades(const SiteFile& site, const Surroundings& surroundings);

}  // namespace witnessmark
