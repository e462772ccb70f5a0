#include "witnessmark/write/claims_csv.h"

#include <fmt/core.h>

#include <stdexcept>

#include "recall_text.h"
#include "witnessmark/base/csv.h"
#include "witnessmark/base/embedded_schema.h"

namespace witnessmark {
namespace {

std::string guarded(std::string cell, FormulaGuard guard) {
  constexpr std::string_view kFormulaStarts = "=+-@\t\r";
  if (guard == FormulaGuard::guarded && !cell.empty() && kFormulaStarts.find(cell.front()) != std::string_view::npos)
    cell.insert(cell.begin(), '\'');
  return csv_cell(cell);
}

std::string quotes_text(const ClaimRecord& record) {
  std::string text;
  for (const QuoteRecord& quote : record.quotes) text += (text.empty() ? "" : " … ") + quote.text;
  return text;
}

std::string comparisons_text(const ClaimRecord& record) {
  std::string text;
  for (const Comparison& comparison : record.comparisons) {
    if (!text.empty()) text += " | ";
    text += comparison.entry.empty() ? std::string(to_string(comparison.outcome))
                                     : fmt::format("{}: {}", comparison.entry, to_string(comparison.outcome));
    if (comparison.intention) text += " (intention)";
    if (comparison.circular) text += " (circular)";
    if (comparison.gap) text += fmt::format(" ({})", gap_text(*comparison.gap));
  }
  return text;
}

/// The cell of one column of schemas/export/claims.csv.
std::string cell_of(const ClaimRecord& record, std::string_view column) {
  const Claim& claim = record.claim;
  const QuoteRecord main = record.quotes.empty() ? QuoteRecord{} : record.quotes.front();
  const auto text = [](auto value) { return std::string(to_string(value)); };
  if (column == "claim") return to_string(claim.id);
  if (column == "status") return text(claim.status);
  if (column == "statement") return text(claim.statement);
  if (column == "subject") return claim.subject;
  if (column == "subject_name") return record.subject_name;
  if (column == "place") return claim.place;
  if (column == "place_name") return record.place_name;
  if (column == "when") return claim.when.dated.value ? to_string(*claim.when.dated.value) : "";
  if (column == "when_written") return claim.when.dated.written;
  if (column == "when_rule")
    return claim.when.anchor.empty() ? claim.when.rule : fmt::format("{}; {}", claim.when.rule, claim.when.anchor);
  if (column == "number_least") return claim.quantity ? std::to_string(claim.quantity->least) : "";
  if (column == "number_most") return claim.quantity ? std::to_string(claim.quantity->most) : "";
  if (column == "attribute") return claim.attribute;
  if (column == "basis") return text(claim.basis);
  if (column == "knower") return claim.knower;
  if (column == "firmness") return text(claim.firmness);
  if (column == "polarity") return text(claim.polarity);
  if (column == "led") return claim.led ? "yes" : "";
  if (column == "quote") return quotes_text(record);
  if (column == "quote_begin") return std::to_string(main.range.begin.value);
  if (column == "quote_end") return std::to_string(main.range.end.value);
  if (column == "time") return main.time ? to_timecode(main.time->begin) : "";
  if (column == "timing") return std::string(timing_text(main.timing));
  if (column == "narrator") return record.narrator;
  if (column == "interview") return claim.interview;
  if (column == "interview_date") return record.interview_date;
  if (column == "accession") return record.accession;
  if (column == "repository") return record.repository;
  if (column == "transcript_version") return std::to_string(record.transcript_version);
  if (column == "reading_text_sha256") return record.reading_text_sha256;
  if (column == "original_sha256") return record.original_sha256;
  if (column == "coded_by") return record.coded_by;
  if (column == "coded_at") return record.coded_at;
  if (column == "age_at_interview") return range_text(record.recall.age_at_interview);
  if (column == "age_at_event") return range_text(record.recall.age_at_event);
  if (column == "recall_distance") return range_text(record.recall.recall_distance);
  if (column == "in_service") return std::string(service_text(record.recall));
  if (column == "comparisons") return comparisons_text(record);
  throw std::logic_error("schemas/export/claims.csv has a column that is not written: " + std::string(column));
}

/// Column names in order, from the description the program is built from.
const std::vector<std::string>& columns() {
  static const std::vector<std::string> kColumns = [] {
    const auto file = parse_csv(embedded_schema("export/claims.csv").value(), "schemas/export/claims.csv").value();
    std::vector<std::string> names;
    for (std::size_t row = 1; row < file.rows.size(); ++row) names.push_back(file.rows[row].cells.at(0).text);
    return names;
  }();
  return kColumns;
}

}  // namespace

std::string claims_csv_header() {
  std::string line;
  for (const std::string& column : columns()) line += (line.empty() ? "" : ",") + csv_cell(column);
  return line + "\r\n";
}

std::string claim_csv_row(const ClaimRecord& record, FormulaGuard guard) {
  std::string line;
  bool first = true;
  for (const std::string& column : columns()) {
    if (!first) line += ',';
    first = false;
    line += guarded(cell_of(record, column), guard);
  }
  return line + "\r\n";
}

}  // namespace witnessmark
