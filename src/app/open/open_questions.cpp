#include "witnessmark/app/open_questions.h"

#include <algorithm>
#include <tuple>

#include "app/open/open_finders.h"
#include "witnessmark/app/corroboration.h"
#include "witnessmark/store/conclusions.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

std::string_view to_string(OpenBecause because) {
  switch (because) {
    case OpenBecause::contradicted_story:
      return "contradicted-story";
    case OpenBecause::sources_disagree:
      return "sources-disagree";
    case OpenBecause::count_differs:
      return "count-differs";
    case OpenBecause::came_or_went_between:
      return "came-or-went-between";
    case OpenBecause::intention_only:
      return "intention-only";
    case OpenBecause::identification:
      return "identification";
    case OpenBecause::dated_by_itself:
      return "dated-by-itself";
    case OpenBecause::silent:
      return "silent";
  }
  return "";
}

std::string_view in_words(OpenBecause because) {
  switch (because) {
    case OpenBecause::contradicted_story:
      return "Told, and contradicted by the evidence for its date (it may be misdated, or of another thing)";
    case OpenBecause::sources_disagree:
      return "Sources disagree";
    case OpenBecause::count_differs:
      return "Totals that are not the sum of their positions";
    case OpenBecause::came_or_went_between:
      return "Came or went at some time between two dates";
    case OpenBecause::intention_only:
      return "Meant to be done; nothing shows whether it was";
    case OpenBecause::identification:
      return "May show another site";
    case OpenBecause::dated_by_itself:
      return "Dated or identified by the very thing";
    case OpenBecause::silent:
      return "Told, and nothing in the register speaks to it";
  }
  return "";
}

Result<OpenQuestions> open_questions(const SiteFile& site, const Surroundings& surroundings) {
  const auto table = load_grade_table(surroundings);
  if (!table) return table.error();
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  const auto shown = ShownEvidence::load(site, surroundings);
  if (!shown) return shown.error();
  const ConclusionFile records = load_conclusions(site);
  const OpenGround ground{**heard, *table, records.searches};

  OpenQuestions open;
  for (const bool preview : {false, true}) {
    add_disputed(ground, preview, open.questions);
    add_counts(ground, preview, open.questions);
  }
  add_doubtful_entries(ground, open.questions);
  add_silent(site, ground, open.questions);
  add_between(**shown, open.questions);
  std::stable_sort(
      open.questions.begin(), open.questions.end(), [](const OpenQuestion& a, const OpenQuestion& b) {
        return std::tuple(a.because, a.preview, -a.told_by) < std::tuple(b.because, b.preview, -b.told_by);
      });

  Withholding withholding(site, surroundings.today);
  for (ConclusionHistory& history : conclusion_histories(site, withholding)) {
    const bool went_out = !history.conclusion.published.empty() || !history.answers.empty();
    if (!history.stands() && went_out)
      open.to_correct.push_back(std::move(history));
    else if (history.stands() && !history.changed_since.empty())
      open.to_look_at.push_back(std::move(history));
  }
  for (const Interview& interview : (*heard)->people().file().interviews)
    if (reading_versions(site, interview.key).empty())
      open.unread.push_back(withholding.shown_interview(interview.key));
  for (OpenQuestion& question : open.questions)
    question.subject = withholding.shown_key("", question.subject);
  open.withheld = (*heard)->withheld();
  return open;
}

}  // namespace witnessmark
