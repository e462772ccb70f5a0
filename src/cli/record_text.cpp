#include "record_text.h"

#include <fmt/ostream.h>

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// White space as it falls in a transcript is no part of how a quote reads.
std::string one_line(const std::string& text) {
  std::string line;
  for (const char c : text) {
    const bool space = c == '\n' || c == ' ' || c == '\t';
    if (!space)
      line += c;
    else if (!line.empty() && line.back() != ' ')
      line += ' ';
  }
  return visible(trim(line));
}

std::string what(const ClaimRecord& record) {
  const Claim& claim = record.claim;
  std::string text(to_string(claim.statement));
  if (!record.subject_name.empty()) text += " · " + record.subject_name + (claim.subject_carried ? " (carried)" : "");
  if (claim.quantity) {
    text += fmt::format(" · {}", claim.quantity->least);
    if (claim.quantity->most != claim.quantity->least) text += fmt::format(" to {}", claim.quantity->most);
  }
  if (!claim.attribute.empty()) text += " · " + claim.attribute;
  if (!record.place_name.empty()) text += " · " + record.place_name + (claim.place_carried ? " (carried)" : "");
  if (claim.when.dated.value) {
    text += fmt::format(" · {}", to_string(*claim.when.dated.value));
    if (!claim.when.dated.written.empty() && claim.when.dated.written != to_string(*claim.when.dated.value))
      text += fmt::format(" (“{}”)", claim.when.dated.written);
  } else if (!claim.when.dated.written.empty()) {
    text += fmt::format(" · “{}” (not resolved)", claim.when.dated.written);
  }
  return one_line(text);
}

std::string how(const Claim& claim) {
  std::string text(to_string(claim.basis));
  if (!claim.knower.empty()) text += fmt::format(" ({})", claim.knower);
  text += fmt::format(", {}", to_string(claim.firmness));
  if (claim.polarity == Polarity::denied) text += ", denied";
  if (claim.led) text += ", led by the interviewer";
  if (claim.withdrawn) text += ", taken back";
  return one_line(text);
}

std::string recall_words(const Recall& recall) {
  std::string text;
  const auto add = [&](std::string words) { text += (text.empty() ? "" : ", ") + words; };
  if (recall.recall_distance) add(fmt::format("told {} years after", to_string(*recall.recall_distance)));
  if (recall.age_at_event && recall.age_at_event->most < 0)
    add("not born then");
  else if (recall.age_at_event)
    add(fmt::format("aged {} then", to_string(*recall.age_at_event)));
  if (recall.partly_in_service)
    add("there for part of that time");
  else if (recall.in_service == Answer::yes)
    add("there at the time");
  else if (recall.in_service == Answer::no)
    add("not there at the time");
  return text;
}

}  // namespace

std::string time_words(const std::optional<TimeRange>& time, Timing timing) {
  if (!time) return "";
  return fmt::format("at {}{}", timing == Timing::interpolated ? "about " : "", to_timecode(time->begin));
}

void print_record(std::ostream& out, const ClaimRecord& record, std::optional<Outcome> only) {
  const QuoteRecord main = record.quotes.empty() ? QuoteRecord{} : record.quotes.front();
  const std::string time = time_words(main.time, main.timing);
  fmt::print(out, "  {} ({}, {}{}{})", visible(record.narrator), record.claim.interview,
             record.interview_date, time.empty() ? "" : ", ", time);
  if (record.claim.status != ClaimStatus::proposed) fmt::print(out, " [{}]", to_string(record.claim.status));
  fmt::print(out, "\n");
  for (const QuoteRecord& quote : record.quotes) fmt::print(out, "    “{}”\n", one_line(quote.text));
  fmt::print(out, "    {}; {}\n", what(record), how(record.claim));
  if (const std::string recall = recall_words(record.recall); !recall.empty())
    fmt::print(out, "    {}\n", recall);
  for (const Comparison& comparison : record.comparisons) {
    if (!only || comparison.outcome == *only) fmt::print(out, "    → {}\n", one_line(comparison.explanation));
  }
}

}  // namespace witnessmark
