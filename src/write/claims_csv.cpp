#include "witnessmark/write/claims_csv.h"

#include <fmt/core.h>

#include <algorithm>
#include <functional>
#include <stdexcept>
#include <vector>

#include "recall_text.h"
#include "witnessmark/base/csv.h"
#include "witnessmark/base/embedded_schema.h"

namespace witnessmark {
namespace {

std::string guarded(std::string cell, FormulaGuard guard) {
  constexpr std::string_view kFormulaStarts = "=+-@\t\r";
  if (guard == FormulaGuard::guarded && !cell.empty() &&
      kFormulaStarts.find(cell.front()) != std::string_view::npos)
    cell.insert(cell.begin(), '\'');
  return csv_cell(cell);
}

std::string comparisons_text(const ClaimRecord& record) {
  std::string text;
  for (const Comparison& comparison : record.comparisons) {
    if (!text.empty()) text += " | ";
    text += comparison.entry.empty() ? std::string(to_string(comparison.outcome))
                                     : fmt::format("{}: {}", comparison.entry, to_string(comparison.outcome));
    if (comparison.intention) text += " (intention)";
    if (comparison.circular) text += " (circular)";
    if (!comparison.noted.empty()) text += fmt::format(" (noted {})", comparison.noted);
    if (comparison.gap && comparison.gap->least > 0) text += fmt::format(" ({})", in_unit(*comparison.gap, "day"));
  }
  return text;
}

template <typename Value>
std::string words(Value value) {
  return std::string(to_string(value));
}

const QuoteRecord& main_quote(const ClaimRecord& record) {
  static const QuoteRecord kNone;
  return record.quotes.empty() ? kNone : record.quotes.front();
}

std::string carried_text(const Claim& claim) {
  std::string text;
  const auto add = [&](bool carried, std::string_view what) {
    if (carried) text.append(text.empty() ? "" : " | ").append(what);
  };
  add(claim.subject_carried, "subject");
  add(claim.place_carried, "place");
  add(claim.when.carried, "when");
  return text;
}

struct Column {
  std::string_view name;
  std::function<std::string(const ClaimRecord&)> cell;
};

/// How each column of schemas/export/claims.csv is filled.
const std::vector<Column>& cells() {
  static const std::vector<Column> kCells{
      {"claim", [](const ClaimRecord& record) { return to_string(record.claim.id); }},
      {"status", [](const ClaimRecord& record) { return words(record.claim.status); }},
      {"statement", [](const ClaimRecord& record) { return words(record.claim.statement); }},
      {"subject", [](const ClaimRecord& record) { return record.subject; }},
      {"subject_name", [](const ClaimRecord& record) { return record.subject_name; }},
      {"place", [](const ClaimRecord& record) { return record.claim.place; }},
      {"place_name", [](const ClaimRecord& record) { return record.place_name; }},
      {"when",
       [](const ClaimRecord& record) {
         return record.claim.when.dated.value ? to_string(*record.claim.when.dated.value) : "";
       }},
      {"when_written", [](const ClaimRecord& record) { return record.claim.when.dated.written; }},
      {"when_rule",
       [](const ClaimRecord& record) {
         return record.claim.when.anchor.empty()
                    ? record.claim.when.rule
                    : fmt::format("{}; {}", record.claim.when.rule, record.claim.when.anchor);
       }},
      {"carried", [](const ClaimRecord& record) { return carried_text(record.claim); }},
      {"number_least",
       [](const ClaimRecord& record) {
         return record.claim.quantity ? std::to_string(record.claim.quantity->least) : "";
       }},
      {"number_most",
       [](const ClaimRecord& record) {
         return record.claim.quantity ? std::to_string(record.claim.quantity->most) : "";
       }},
      {"attribute", [](const ClaimRecord& record) { return record.claim.attribute; }},
      {"basis", [](const ClaimRecord& record) { return words(record.claim.basis); }},
      {"knower", [](const ClaimRecord& record) { return record.claim.knower; }},
      {"firmness", [](const ClaimRecord& record) { return words(record.claim.firmness); }},
      {"polarity", [](const ClaimRecord& record) { return words(record.claim.polarity); }},
      {"led", [](const ClaimRecord& record) { return record.claim.led ? "yes" : ""; }},
      {"withdrawn", [](const ClaimRecord& record) { return record.claim.withdrawn ? "yes" : ""; }},
      {"reason", [](const ClaimRecord& record) { return record.claim.reason; }},
      {"quote", [](const ClaimRecord& record) { return own_words(record); }},
      {"words_of_others", [](const ClaimRecord& record) { return words_of_others(record); }},
      {"quote_begin",
       [](const ClaimRecord& record) { return std::to_string(main_quote(record).range.begin.value); }},
      {"quote_end",
       [](const ClaimRecord& record) { return std::to_string(main_quote(record).range.end.value); }},
      {"time",
       [](const ClaimRecord& record) {
         return main_quote(record).time ? to_timecode(main_quote(record).time->begin) : "";
       }},
      {"timing",
       [](const ClaimRecord& record) { return std::string(timing_text(main_quote(record).timing)); }},
      {"narrator", [](const ClaimRecord& record) { return record.narrator; }},
      {"interview", [](const ClaimRecord& record) { return record.interview; }},
      {"interview_date", [](const ClaimRecord& record) { return record.interview_date; }},
      {"accession", [](const ClaimRecord& record) { return record.accession; }},
      {"repository", [](const ClaimRecord& record) { return record.repository; }},
      {"transcript_version",
       [](const ClaimRecord& record) { return std::to_string(record.transcript_version); }},
      {"reading_text_sha256", [](const ClaimRecord& record) { return record.reading_text_sha256; }},
      {"original_sha256", [](const ClaimRecord& record) { return record.original_sha256; }},
      {"coded_by", [](const ClaimRecord& record) { return record.coded_by; }},
      {"coded_at", [](const ClaimRecord& record) { return record.coded_at; }},
      {"age_at_interview",
       [](const ClaimRecord& record) { return age_text(record.recall.age_at_interview); }},
      {"age_at_event", [](const ClaimRecord& record) { return age_text(record.recall.age_at_event); }},
      {"recall_distance", [](const ClaimRecord& record) { return distance_text(record.recall); }},
      {"in_service", [](const ClaimRecord& record) { return std::string(service_text(record.recall)); }},
      {"comparisons", [](const ClaimRecord& record) { return comparisons_text(record); }},
  };
  return kCells;
}

/// The columns in the order of the description the program is built from.
const std::vector<Column>& columns() {
  static const std::vector<Column> kColumns = [] {
    const auto file =
        parse_csv(embedded_schema("export/claims.csv").value(), "schemas/export/claims.csv").value();
    std::vector<Column> ordered;
    for (std::size_t row = 1; row < file.rows.size(); ++row) {
      const std::string& name = file.rows[row].cells.at(0).text;
      const auto at = std::find_if(cells().begin(), cells().end(),
                                   [&](const Column& column) { return column.name == name; });
      if (at == cells().end())
        throw std::logic_error("schemas/export/claims.csv has a column nobody fills: " + name);
      ordered.push_back(*at);
    }
    return ordered;
  }();
  return kColumns;
}

}  // namespace

std::string claims_csv_header() {
  std::string line;
  for (const Column& column : columns()) line += (line.empty() ? "" : ",") + csv_cell(column.name);
  return line + "\r\n";
}

std::string claim_csv_row(const ClaimRecord& record, FormulaGuard guard) {
  std::string line;
  bool first = true;
  for (const Column& column : columns()) {
    if (!first) line += ',';
    first = false;
    line += guarded(column.cell(record), guard);
  }
  return line + "\r\n";
}

}  // namespace witnessmark
