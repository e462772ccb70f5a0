#include "witnessmark/app/corroboration.h"

#include <algorithm>

#include "app/weighing/heard_evidence.h"
#include "app/weighing/question_words.h"

namespace witnessmark {
namespace {

Corroborator corroborator(const HeardEvidence& heard, bool with_proposals, const GradeTable& table) {
  return {heard.evidence(), heard.index(), heard.people().file(), heard.testimony(with_proposals), table};
}

/// Grades in the order of the table, each once.
std::vector<GradedQuestions> grades_of(const GradeTable& table) {
  std::vector<GradedQuestions> grades;
  for (const GradeRule& rule : table.rules()) {
    const auto held = std::find_if(grades.begin(), grades.end(),
                                   [&](const GradedQuestions& one) { return one.grade == rule.grade; });
    if (held == grades.end())
      grades.push_back({rule.grade, rule.meaning, 0, 0, {}});
    else
      held->meaning += "; or " + rule.meaning;
  }
  return grades;
}

/// What one entry of the register says alone is no question to anybody yet.
bool put_by_one_entry(const CorroborationOutline& outline) {
  const Tally& tally = outline.tally;
  return !outline.put_by_testimony && tally.groups_for <= 1 && !outline.dissent &&
         tally.groups_against + tally.second_hand_against == 0;
}

/// The questions asked, of a preview those that a proposal puts or speaks to.
std::vector<CorroborationOutline> outlines_of(const Corroborator& asked, bool preview) {
  auto outlines = asked.outlines();
  if (preview) std::erase_if(outlines, [](const CorroborationOutline& one) { return !one.with_proposal; });
  return outlines;
}

std::vector<GradedQuestions> by_grade(HeardEvidence& heard, bool preview, const GradeTable& table, std::size_t most) {
  const Corroborator asked = corroborator(heard, preview, table);
  QuestionWords words(heard);
  std::vector<GradedQuestions> grades = grades_of(table);
  for (const CorroborationOutline& outline : outlines_of(asked, preview)) {
    GradedQuestions& graded = *std::find_if(grades.begin(), grades.end(), [&](const GradedQuestions& one) {
      return one.grade == outline.grade;
    });
    ++graded.total;
    if (put_by_one_entry(outline))
      ++graded.put_by_one_entry;
    else if (graded.shown.size() < most)
      graded.shown.push_back(words.shown(asked.answer(outline)));
  }
  return grades;
}

}  // namespace

Result<GradeTable> load_grade_table(const Surroundings& surroundings) {
  const auto path = surroundings.shared / "grades.csv";
  const auto text = surroundings.files.read(path);
  if (!text) return text.error();
  return parse_grade_table(*text, path.string());
}

Result<CorroborationAccount> corroboration_account(const SiteFile& site, std::size_t most,
                                                   const Surroundings& surroundings) {
  const auto table = load_grade_table(surroundings);
  if (!table) return table.error();
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  CorroborationAccount account;
  account.reviewed = by_grade(**heard, false, *table, most);
  account.preview = by_grade(**heard, true, *table, most);
  account.reviewed_claims = (*heard)->reviewed_claims();
  account.withheld = (*heard)->withheld();
  for (const StoredClaim& stored : (*heard)->claims()) {
    const Claim& claim = stored.claim;
    const bool nameless = claim.subject.empty() && claim.statement != Statement::located;
    account.without_question += nameless || !claim.when.period;
  }
  return account;
}

Result<std::string> for_each_question(const SiteFile& site, const Surroundings& surroundings,
                                      const std::function<void(const ShownQuestion&, bool preview)>& visit) {
  const auto table = load_grade_table(surroundings);
  if (!table) return table.error();
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  QuestionWords words(**heard);
  for (const bool preview : {false, true}) {
    const Corroborator asked = corroborator(**heard, preview, *table);
    for (const CorroborationOutline& outline : outlines_of(asked, preview))
      visit(words.shown(asked.answer(outline)), preview);
  }
  return (*heard)->withheld();
}

Result<GradeCounts> count_grades(const SiteFile& site, const Surroundings& surroundings) {
  const auto table = load_grade_table(surroundings);
  if (!table) return table.error();
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  GradeCounts counts;
  counts.reviewed_claims = (*heard)->reviewed_claims();
  for (const CorroborationOutline& outline : outlines_of(corroborator(**heard, false, *table), false))
    ++counts.reviewed[outline.grade];
  for (const CorroborationOutline& outline : outlines_of(corroborator(**heard, true, *table), true))
    ++counts.preview[outline.grade];
  return counts;
}

}  // namespace witnessmark
