#include <fmt/core.h>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/said_about.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

void add_conflicts(Report& report, const SaidAbout& said) {
  const auto conflicts = conflicting(said);
  if (conflicts.empty()) return;
  add_line(report, Weight::heading,
           fmt::format("Conflict with an entry, {} of {} (each in full below)", conflicts.size(),
                       counted(said.reviewed.size() + said.proposed.size(), "claim")));
  for (const ClaimRecord* record : conflicts)
    report.lines.push_back({Weight::item,
                            one_line(fmt::format("{} ({}): {}: with {}", record->narrator, record->interview,
                                                 what_words(*record), conflict_words(*record))),
                            record->claim.id, record->claim.interview});
}

void add_records(Report& report, std::string_view heading, const std::vector<ClaimRecord>& records) {
  add_line(report, Weight::heading, fmt::format("{} ({})", heading, records.size()));
  for (const ClaimRecord& record : records) add_record(report, record);
}

void add_entries(Report& report, const std::vector<StatementLine>& entries) {
  add_line(report, Weight::heading, fmt::format("In the register, dated evidence ({})", entries.size()));
  for (const StatementLine& entry : entries) {
    ReportLine line{Weight::item, one_line(fmt::format("{}: {}", entry.key.key, entry.says))};
    line.entry = entry.key.key;
    report.lines.push_back(line);
    line.weight = Weight::detail;
    line.text = one_line(entry.by);
    report.lines.push_back(std::move(line));
  }
}

void add_unread_turns(Report& report, const std::vector<UnreadPassage>& passages) {
  add_line(report, Weight::heading, fmt::format("Named in talk, in no claim, not read yet ({})", passages.size()));
  for (const UnreadPassage& passage : passages) {
    const std::string time = time_words(passage.time, passage.timing);
    report.lines.push_back({Weight::item,
                            fmt::format("{}{}{}: “{}”", passage.shown_interview, time.empty() ? "" : " ",
                                        time, one_line(passage.text)),
                            std::nullopt, passage.interview, passage.range.begin});
  }
}

}  // namespace

Report said_report(const SaidAbout& said) {
  Report report;
  for (const std::string& term : said.terms) report.title += (report.title.empty() ? "" : "; ") + one_line(term);
  add_conflicts(report, said);
  add_records(report, "Said so, reviewed", said.reviewed);
  if (said.reviewed.empty()) add_line(report, Weight::item, "none yet");
  add_records(report, "Preview: proposed, not yet reviewed", said.proposed);
  if (!said.put_aside.empty())
    add_records(report, "Marked misread or set aside by a coder, of no weight", said.put_aside);
  add_entries(report, said.entries);
  add_unread_turns(report, said.unread);
  add_conclusions(report, "Concluded", said.conclusions);
  for (const std::string& interview : said.without_transcript)
    add_line(report, Weight::caution, interview + ": no transcript, so nothing in it was read");
  add_line(report, Weight::caution, said.withheld);
  return report;
}

}  // namespace witnessmark
