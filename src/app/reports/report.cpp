#include "witnessmark/app/report.h"

#include <fmt/core.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "witnessmark/app/claim_words.h"

namespace witnessmark {

void add_line(Report& report, ReportLine::Weight weight, std::string text) {
  report.lines.push_back({weight, std::move(text)});
}

void add_record(Report& report, const ClaimRecord& record, std::optional<Outcome> only) {
  const Claim& claim = record.claim;
  const auto add = [&](ReportLine::Weight weight, std::string text) {
    report.lines.push_back({weight, one_line(text), claim.id, claim.interview});
  };
  const QuoteRecord main = record.quotes.empty() ? QuoteRecord{} : record.quotes.front();
  const std::string time = time_words(main.time, main.timing);
  std::string head = fmt::format("{} ({}, {}{}{})", record.narrator, record.interview, record.interview_date,
                                 time.empty() ? "" : ", ", time);
  if (claim.status != ClaimStatus::proposed) head += fmt::format(" [{}]", in_words(claim.status));
  add(ReportLine::Weight::item, std::move(head));
  for (const QuoteRecord& quote : record.quotes)
    add(ReportLine::Weight::detail,
        fmt::format("{}{}“{}”", quote.own ? "" : speaker_words(quote), quote.own ? "" : ": ", quote.text));
  add(ReportLine::Weight::detail, fmt::format("{}; {}", what_words(record), how_words(claim)));
  if (const std::string recall = recall_words(record.recall); !recall.empty())
    add(ReportLine::Weight::detail, recall);
  std::vector<const Comparison*> comparisons;
  for (const Comparison& comparison : record.comparisons)
    if (!only || comparison.outcome == *only) comparisons.push_back(&comparison);
  std::stable_sort(comparisons.begin(), comparisons.end(),
                   [](const Comparison* a, const Comparison* b) { return weight_of(*a) < weight_of(*b); });
  for (const Comparison* comparison : comparisons)
    add(ReportLine::Weight::detail, "→ " + comparison->explanation);
}

void add_conclusions(Report& report, const std::string& heading, const std::vector<ConclusionHistory>& histories) {
  if (histories.empty()) return;
  add_line(report, ReportLine::Weight::heading, fmt::format("{} ({})", heading, histories.size()));
  for (const ConclusionHistory& history : histories) add_conclusion(report, history);
}

void add_conclusion(Report& report, const ConclusionHistory& history) {
  const auto add = [&](ReportLine::Weight weight, const std::string& text) {
    add_line(report, weight, one_line(text));
  };
  using enum ReportLine::Weight;
  const Conclusion& made = history.conclusion;
  add(item, fmt::format("{}{}: “{}”", history.stands() ? "" : "once concluded, ", made.key, made.wording));
  std::string about = history.subject_name;
  if (!history.place_name.empty()) about += (about.empty() ? "" : " · ") + history.place_name;
  if (!about.empty()) add(detail, "about: " + about);
  add(detail, fmt::format("{}, {}; because: {}", made.author, to_string(made.date), made.reasons));
  if (!made.evidence.empty()) add(detail, fmt::format("known then: {}", fmt::join(made.evidence, ", ")));
  add(detail, made.published.empty() ? "not published" : "published: " + made.published);
  for (const GroundChange& change : history.changed_since)
    add(detail, fmt::format("what it rests on has changed since: {}{} ({}, {})", change.what,
                            change.how.empty() ? "" : ": " + change.how, change.by, change.at));
  for (const Conclusion& by : history.replaced_by)
    add(detail, fmt::format("replaced by {} ({}): “{}”", by.key, to_string(by.date), by.wording));
  for (const Conclusion& earlier : history.replaces)
    add(detail, fmt::format("replaces {} ({}){}", earlier.key, to_string(earlier.date),
                            earlier.published.empty() ? "" : ", published: " + earlier.published));
  if (!history.answers.empty() && !history.stands())
    add(detail, fmt::format("{} answered on it and to be told: see the command conclusions", history.answers.size()));
}

}  // namespace witnessmark
