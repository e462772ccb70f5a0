#include "witnessmark/app/counts.h"

#include <fmt/ostream.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "cli/weigh/section.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

using Json = nlohmann::ordered_json;

std::string difference_words(const CountComparison& comparison) {
  std::string text;
  const auto add = [&](const NumberRange& range, std::string_view what) {
    if (range == NumberRange{0, 0}) return;
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", to_string(range), what);
  };
  add(comparison.unaccounted, "unaccounted for");
  add(comparison.excess, "over");
  return text.empty() ? "they are the same" : text;
}

void print_count(std::ostream& out, const ShownCount& shown) {
  fmt::print(out, "  {}\n    reported by {}\n", visible(shown.total_words), visible(shown.reported_by));
  for (const ShownCount::Position& position : shown.positions) {
    fmt::print(out, "    + {}\n", visible(position.words));
    for (const std::string& by : position.stated_by) fmt::print(out, "        {}\n", visible(by));
  }
  for (const std::string& place : shown.nothing_said)
    fmt::print(out, "    ? {}: nothing said of that date\n", visible(place));
  fmt::print(out, "    sum by position {}: {}\n", to_string(shown.comparison.sum),
             difference_words(shown.comparison));
}

void print_counts_of(std::ostream& out, const std::vector<ShownCount>& counts, std::size_t most) {
  for (std::size_t i = 0; i < std::min(most, counts.size()); ++i) print_count(out, counts[i]);
  if (counts.size() > most) fmt::print(out, "  … and {} more (--most)\n", counts.size() - most);
}

Json range_json(const NumberRange& range) {
  Json object{{"least", range.least}, {"most", nullptr}};
  if (range.most) object["most"] = *range.most;
  return object;
}

Json statement_json(const NumberStatement& stated) {
  Json object = Json::object();
  if (stated.entry.empty())
    object["claim"] = to_string(stated.claim);
  else
    object["entry"] = stated.entry;
  object["number"] = range_json(stated.number);
  if (stated.entry.empty()) object["reviewed"] = stated.reviewed;
  return object;
}

std::string count_json(const ShownCount& shown, bool preview) {
  const CountComparison& comparison = shown.comparison;
  Json object{{"count", shown.total_words},
              {"subject", comparison.subject},
              {"place", comparison.place},
              {"when", to_string(comparison.when)},
              {"preview", preview}};
  object["total"] = range_json(comparison.total);
  object["reported"] = statement_json(comparison.reported);
  object["positions"] = Json::array();
  for (const CountedPosition& position : comparison.positions) {
    Json one{
        {"subject", position.subject}, {"place", position.place}, {"number", range_json(position.number)}};
    one["statements"] = Json::array();
    for (const NumberStatement& stated : position.statements)
      one["statements"].push_back(statement_json(stated));
    object["positions"].push_back(std::move(one));
  }
  object["nothing_said"] = comparison.nothing_said;
  object["sum"] = range_json(comparison.sum);
  object["unaccounted"] = range_json(comparison.unaccounted);
  object["excess"] = range_json(comparison.excess);
  return object.dump();
}

Result<void> counts_text(Command& command, const WeighRequest& request) {
  const auto account = counts_account(request.site, request.surroundings);
  if (!account) return account.error();
  auto& out = command.out();
  fmt::print(out, "Totals reported for a date against what is known position by position.\n");
  fmt::print(out, "\nBy {}: {}\n", grounds_words(account->reviewed_claims),
             counted(account->reviewed.size(), "total"));
  print_counts_of(out, account->reviewed, request.most);
  fmt::print(out, "\nPreview, with proposals nobody has reviewed ({}):\n", account->preview.size());
  print_counts_of(out, account->preview, request.most);
  fmt::print(out, "{}\n", account->withheld);
  return {};
}

Result<void> counts_jsonl(Command& command, const WeighRequest& request) {
  const auto account = counts_account(request.site, request.surroundings);
  if (!account) return account.error();
  for (const ShownCount& shown : account->reviewed)
    fmt::print(command.out(), "{}\n", count_json(shown, false));
  for (const ShownCount& shown : account->preview) fmt::print(command.out(), "{}\n", count_json(shown, true));
  fmt::print(command.err(), "{}\n", account->withheld);
  return {};
}

Result<std::string> counts_total(const WeighRequest& request) {
  const auto account = counts_account(request.site, request.surroundings);
  if (!account) return account.error();
  const auto differing = [](const std::vector<ShownCount>& counts) {
    return std::count_if(counts.begin(), counts.end(),
                         [](const ShownCount& one) { return one.comparison.differ(); });
  };
  return fmt::format(
      "by {}: totals that differ from the sum of their positions: {} of {}; preview, with proposals: {} of "
      "{}",
      grounds_words(account->reviewed_claims), differing(account->reviewed), account->reviewed.size(),
      differing(account->preview), account->preview.size());
}

}  // namespace

const WeighSection kCountsSection{"counts", "totals for a date against the sum by position", counts_text,
                                  counts_jsonl, counts_total};

}  // namespace witnessmark
