#include <fmt/core.h>

#include "app/coding/report_lines.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/open_questions.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

void add_question(Report& report, const OpenQuestion& question) {
  ReportLine line{Weight::item,
                  one_line(question.question) + (question.preview ? " [preview: rests on proposals]" : ""),
                  std::nullopt,
                  "",
                  std::nullopt,
                  "",
                  ""};
  if (!question.claims.empty())
    line.claim = question.claims.front();
  else if (!question.entries.empty())
    line.entry = question.entries.front();
  report.lines.push_back(line);
  line.weight = Weight::detail;
  const auto add = [&](std::string text) {
    line.text = one_line(text);
    report.lines.push_back(line);
  };
  for (const std::string& told : question.also_told) add("also told of: " + told);
  if (!question.standing.empty()) add(question.standing);
  for (const std::string& evidence : question.would_decide) add("would decide it: " + evidence);
  for (const std::string& place : question.looked_at) add(place);
}

}  // namespace

Result<Report> question_report(const SiteFile& site, const Surroundings& surroundings) {
  const auto open = open_questions(site, surroundings);
  if (!open) return open.error();
  Report report;
  report.title = counted(open->questions.size(), "question") + " nobody can answer yet";
  const OpenQuestion* before = nullptr;
  for (const OpenQuestion& question : open->questions) {
    if (before == nullptr || before->because != question.because)
      add_line(report, Weight::heading, std::string(in_words(question.because)));
    before = &question;
    add_question(report, question);
  }
  if (open->questions.empty()) add_line(report, Weight::item, "none found");
  for (const std::string& interview : open->unread)
    add_line(report, Weight::caution, interview + ": no transcript, so nobody can have looked there");
  add_line(report, Weight::caution, open->withheld);
  return report;
}

}  // namespace witnessmark
