#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "cli/weigh/section.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/recall_table.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

std::int64_t number(const OutcomeRow& row, Outcome outcome) {
  const auto at = row.by_outcome.find(outcome);
  return at == row.by_outcome.end() ? 0 : at->second;
}

void print_row(std::ostream& out, const OutcomeRow& row) {
  fmt::print(out, "    {:<32}{:>8}", row.name, row.claims);
  for (const Outcome outcome : kOutcomes) fmt::print(out, "{:>13}", number(row, outcome));
  fmt::print(out, "\n");
}

void print_rows(std::ostream& out, std::string_view title, const std::vector<OutcomeRow>& rows) {
  fmt::print(out, "  {:<34}{:>8}", title, "claims");
  for (const Outcome outcome : kOutcomes) fmt::print(out, "{:>13}", in_words(outcome));
  fmt::print(out, "\n");
  for (const OutcomeRow& row : rows) print_row(out, row);
}

void print_table(std::ostream& out, const RecallTable& table) {
  if (table.all.claims == 0) {
    fmt::print(out, "  none\n");
    return;
  }
  print_rows(out, "told so long after", table.by_distance);
  print_rows(out, "the narrator knows it", table.by_basis);
  print_rows(out, "the narrator was", table.by_presence);
  print_rows(out, "", {table.all});
}

Result<void> recall_text(Command& command, const WeighRequest& request) {
  const auto account = recall_account(request.site, request.surroundings);
  if (!account) return account.error();
  auto& out = command.out();
  fmt::print(
      out, "How claims came out, of how many. A claim counts once, under what matters most to a curator.\n");
  fmt::print(out, "\nReviewed claims ({}):\n", account->reviewed.all.claims);
  print_table(out, account->reviewed);
  fmt::print(out, "\nPreview, with proposals nobody has reviewed ({}):\n", account->preview.all.claims);
  print_table(out, account->preview);
  fmt::print(out, "\n{}\n{}\n", kRecallTableCaution, account->withheld);
  return {};
}

void print_json(std::ostream& out, const RecallTable& table, bool preview) {
  const auto print = [&](std::string_view by, const std::vector<OutcomeRow>& rows) {
    for (const OutcomeRow& row : rows) {
      nlohmann::ordered_json object{
          {"by", by}, {"row", row.name}, {"preview", preview}, {"claims", row.claims}};
      for (const Outcome outcome : kOutcomes) object[std::string(to_string(outcome))] = number(row, outcome);
      fmt::print(out, "{}\n", object.dump());
    }
  };
  print("recall distance", table.by_distance);
  print("basis", table.by_basis);
  print("presence", table.by_presence);
}

Result<void> recall_jsonl(Command& command, const WeighRequest& request) {
  const auto account = recall_account(request.site, request.surroundings);
  if (!account) return account.error();
  print_json(command.out(), account->reviewed, false);
  print_json(command.out(), account->preview, true);
  fmt::print(command.err(), "{}\n{}\n", kRecallTableCaution, account->withheld);
  return {};
}

Result<std::string> recall_total(const WeighRequest& request) {
  const auto account = recall_account(request.site, request.surroundings);
  if (!account) return account.error();
  return fmt::format("a table of {}; preview: of {}", counted(account->reviewed.all.claims, "reviewed claim"),
                     account->preview.all.claims);
}

}  // namespace

const WeighSection kRecallSection{"recall",
                                  "how claims came out by recall distance and by basis, of how many",
                                  recall_text, recall_jsonl, recall_total};

}  // namespace witnessmark
