#include <fmt/core.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/open_questions.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

/// Each line leads to its first claim, or else its first entry.
void add_question(Report& report, const OpenQuestion& open) {
  ReportLine line;
  if (!open.claims.empty())
    line.claim = open.claims.front();
  else if (!open.entries.empty())
    line.entry = open.entries.front();
  const auto add = [&](Weight weight, const std::string& text) {
    line.weight = weight;
    line.text = one_line(text);
    report.lines.push_back(line);
  };
  add(Weight::item, open.question + (open.preview ? " [preview: not reviewed]" : ""));
  if (!open.also_told.empty())
    add(Weight::detail, fmt::format("also told of: {}", fmt::join(open.also_told, "; ")));
  std::string standing = open.standing;
  if (open.told_by > 1 && open.because != OpenBecause::silent)
    standing += fmt::format("; told by {} narrators", open.told_by);
  if (!standing.empty()) add(Weight::detail, standing);
  for (const std::string& looked : open.looked_at) add(Weight::detail, looked);
  for (const std::string& evidence : open.would_decide) add(Weight::detail, "would decide: " + evidence);
  if (!open.entries.empty()) add(Weight::detail, fmt::format("see: {}", fmt::join(open.entries, ", ")));
}

}  // namespace

Report question_report(const OpenQuestions& open, std::size_t most, std::string_view how_to_see_more) {
  Report report;
  const auto& questions = open.questions;
  report.title = counted(questions.size(), "question") + " nobody can answer yet";
  if (questions.empty())
    add_line(report, Weight::item, "no question is open on what is dated and reviewed");
  for (std::size_t i = 0; i < questions.size();) {
    const OpenBecause because = questions[i].because;
    std::size_t past = i;
    while (past < questions.size() && questions[past].because == because) ++past;
    const std::size_t shown = std::min(past - i, most);
    add_line(report, Weight::heading, fmt::format("{} ({})", in_words(because), past - i));
    for (std::size_t j = i; j < i + shown; ++j) add_question(report, questions[j]);
    if (past - i > shown)
      add_line(report, Weight::item, fmt::format("… and {} more ({})", past - i - shown, how_to_see_more));
    i = past;
  }
  add_conclusions(report, "Once concluded and said, replaced since", open.to_correct);
  add_conclusions(report, "Concluded, and what it rests on has changed since", open.to_look_at);
  for (const std::string& interview : open.unread)
    add_line(report, Weight::caution, interview + ": no transcript, so nothing in it was read");
  add_line(report, Weight::caution, open.withheld);
  return report;
}

}  // namespace witnessmark
