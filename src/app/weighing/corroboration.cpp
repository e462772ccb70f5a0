#include "witnessmark/app/corroboration.h"

#include <algorithm>

#include "app/weighing/heard_evidence.h"
#include "app/weighing/question_words.h"

namespace witnessmark {
namespace {

/// The questions a proposal puts or speaks to.
bool spoken_to_by_proposal(const Corroboration& answer, const HeardEvidence& heard) {
  return std::any_of(answer.voices.begin(), answer.voices.end(), [&](const Voice& voice) {
    if (!voice.entry.empty() || (voice.stand != Stand::for_it && voice.stand != Stand::against_it))
      return false;
    return heard.find(voice.claim)->claim.status == ClaimStatus::proposed;
  });
}

Corroborator corroborator(const HeardEvidence& heard, bool with_proposals, const GradeTable& table) {
  return {heard.evidence(), heard.index(), heard.people().file(), heard.testimony(with_proposals), table};
}

struct Answers {
  std::vector<Corroboration> reviewed, preview;
};

Answers answers_of(const HeardEvidence& heard, const GradeTable& table) {
  Answers answers{corroborator(heard, false, table).all(), corroborator(heard, true, table).all()};
  std::erase_if(answers.preview,
                [&](const Corroboration& answer) { return !spoken_to_by_proposal(answer, heard); });
  return answers;
}

}  // namespace

Result<GradeTable> load_grade_table(const Surroundings& surroundings) {
  const auto path = surroundings.shared / "grades.csv";
  const auto text = surroundings.files.read(path);
  if (!text) return text.error();
  return parse_grade_table(*text, path.string());
}

Result<CorroborationAccount> corroboration_account(const SiteFile& site, const Surroundings& surroundings) {
  auto table = load_grade_table(surroundings);
  if (!table) return table.error();
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  Answers answers = answers_of(**heard, *table);
  CorroborationAccount account{std::move(*table),           {}, {},
                               (*heard)->reviewed_claims(), 0,  (*heard)->withheld()};
  QuestionWords words(**heard);
  for (Corroboration& answer : answers.reviewed) account.reviewed.push_back(words.shown(std::move(answer)));
  for (Corroboration& answer : answers.preview) account.preview.push_back(words.shown(std::move(answer)));
  for (const StoredClaim& stored : (*heard)->claims()) {
    const Claim& claim = stored.claim;
    const bool nameless = claim.subject.empty() && claim.statement != Statement::located;
    account.without_question += nameless || !claim.when.period;
  }
  return account;
}

Result<GradeCounts> count_grades(const SiteFile& site, const Surroundings& surroundings) {
  const auto table = load_grade_table(surroundings);
  if (!table) return table.error();
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  GradeCounts counts;
  counts.reviewed_claims = (*heard)->reviewed_claims();
  counts.reviewed =
      corroborator(**heard, false, *table).count_grades([](const Corroboration&) { return true; });
  counts.preview = corroborator(**heard, true, *table).count_grades([&](const Corroboration& answer) {
    return spoken_to_by_proposal(answer, **heard);
  });
  return counts;
}

}  // namespace witnessmark
