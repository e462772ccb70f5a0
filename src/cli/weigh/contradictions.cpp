#include "witnessmark/app/contradictions.h"

#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "cli/weigh/section.h"
#include "cli/weigh/statement_text.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/remedies.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

using Json = nlohmann::ordered_json;

void print_sets(std::ostream& out, const Dispute& dispute) {
  const auto sets = set_lines(dispute);
  if (!sets.empty()) fmt::print(out, "    which cannot be true together\n");
  for (const std::string& set : sets) fmt::print(out, "      {}\n", set);
}

void print_resolution(std::ostream& out, const Resolution& resolution) {
  fmt::print(out, "    what would resolve it\n");
  for (const Remedy& remedy : remedies(resolution))
    fmt::print(out, "      {:<22}{}\n", remedy.heading, remedy.words);
}

void print_disputes(std::ostream& out, const std::vector<ShownDispute>& disputes,
                    const StatementLines& statements) {
  for (const ShownDispute& one : disputes) {
    fmt::print(out, "\n  {}:\n", one_line(one.sentence));
    for (const StatementKey& key : one.dispute.statements)
      if (const auto at = statements.find(key); at != statements.end())
        print_statement(out, at->second, "    ");
    print_sets(out, one.dispute);
    print_resolution(out, one.resolution);
  }
}

void print_returns(std::ostream& out, const ContradictionAccount& account) {
  if (account.returns_total == 0) return;
  fmt::print(out, "\n{} ({}):\n", kReturnsHeading, account.returns_total);
  for (const ShownReturn& one : account.returns) {
    fmt::print(out, "\n  {}:\n", one_line(one.thing));
    for (const StatementKey& key : {one.there, one.come})
      if (const auto at = account.statements.find(key); at != account.statements.end())
        print_statement(out, at->second, "    ");
  }
  if (account.returns_total > static_cast<std::int64_t>(account.returns.size()))
    fmt::print(out, "\n  … and {} more (--most, --of)\n",
               account.returns_total - static_cast<std::int64_t>(account.returns.size()));
}

Result<void> contradictions_text(Command& command, const WeighRequest& request) {
  const auto account = contradiction_account(request.site, request.of, request.most, request.surroundings);
  if (!account) return account.error();
  auto& out = command.out();
  const auto section = [&](const std::string& title, std::int64_t sets, std::int64_t all,
                           const std::vector<ShownDispute>& some) {
    fmt::print(out, "{}: {}, in {}\n", title, counted(sets, "set"), counted(all, "dispute"));
    if (all == 0) fmt::print(out, "  none found\n");
    print_disputes(out, some, account->statements);
    if (all > static_cast<std::int64_t>(some.size()))
      fmt::print(out, "\n  … and {} more (--most, --of)\n", all - static_cast<std::int64_t>(some.size()));
  };
  section("Cannot all be true, by " + grounds_words(account->reviewed_claims), account->reviewed_sets,
          account->reviewed_total, account->reviewed);
  print_returns(out, *account);
  fmt::print(out, "\n");
  section("Preview: cannot all be true, with claims nobody has reviewed", account->preview_sets,
          account->preview_total, account->preview);
  if (!account->limits.empty()) fmt::print(out, "\n{}:\n", kLimitsHeading);
  for (const SearchLimit& limit : account->limits) fmt::print(out, "  {}\n", limit_words(limit));
  fmt::print(
      out,
      "\nThe order of statements is for reading only, and none of this is a finding about a person.\n{}\n",
      account->withheld);
  return {};
}

Json optional_json(const std::optional<std::int64_t>& number) {
  return number ? Json(*number) : Json(nullptr);
}

Json resolution_json(const Resolution& resolution) {
  Json object = Json::object();
  Json& identification = object["wrong_identification"] = Json::array();
  for (const auto& one : resolution.wrong_identification) {
    Json made = key_json(one.statement);
    made["how"] = one.how;
    identification.push_back(std::move(made));
  }
  object["another_episode"] = resolution.another_episode ? Json(resolution.episode_words) : Json(nullptr);
  Json& misdating = object["misdating"] = Json::array();
  for (const auto& one : resolution.misdating) {
    Json made = key_json(one.statement);
    made["days_earlier"] = optional_json(one.earlier);
    made["days_later"] = optional_json(one.later);
    if (!one.how.empty()) made["how"] = one.how;
    misdating.push_back(std::move(made));
  }
  Json& mishearing = object["mishearing"] = Json::array();
  for (const auto& one : resolution.mishearing) {
    Json made = key_json(one.statement);
    if (!one.other_date.empty()) made["other_date"] = one.other_date;
    mishearing.push_back(std::move(made));
  }
  object["set_aside"] = keys_json(resolution.set_aside);
  object["set_aside_sources"] = resolution.set_aside_sources;
  return object;
}

Json dispute_json(const ShownDispute& one, const StatementLines& statements) {
  const Dispute& dispute = one.dispute;
  Json object{{"section", "contradictions"}, {"kind", to_string(dispute.kind)}};
  object["footing"] = to_string(dispute.footing);
  object["subject"] = dispute.subject;
  object["place"] = dispute.place;
  if (!dispute.property.empty()) object["property"] = dispute.property;
  object["sentence"] = one.sentence;
  Json& lines = object["statements"] = Json::array();
  for (const StatementKey& key : dispute.statements)
    if (const auto at = statements.find(key); at != statements.end())
      lines.push_back(statement_json(at->second));
  Json& sets = object["sets"] = Json::array();
  for (const auto& set : dispute.sets) sets.push_back(keys_json(set));
  object["resolution"] = resolution_json(one.resolution);
  return object;
}

Json return_json(const ShownReturn& one, const StatementLines& statements) {
  Json object{{"section", "contradictions"}, {"kind", "taken to have come again"}};
  object["subject"] = one.subject;
  object["place"] = one.place;
  Json& lines = object["statements"] = Json::array();
  for (const StatementKey& key : {one.there, one.come})
    if (const auto at = statements.find(key); at != statements.end())
      lines.push_back(statement_json(at->second));
  return object;
}

Result<void> contradictions_jsonl(Command& command, const WeighRequest& request) {
  const auto account =
      contradiction_account(request.site, request.of, static_cast<std::size_t>(-1), request.surroundings);
  if (!account) return account.error();
  for (const auto* list : {&account->reviewed, &account->preview})
    for (const ShownDispute& one : *list)
      fmt::print(command.out(), "{}\n", dispute_json(one, account->statements).dump());
  for (const ShownReturn& one : account->returns)
    fmt::print(command.out(), "{}\n", return_json(one, account->statements).dump());
  fmt::print(command.err(), "{}\n", account->withheld);
  return {};
}

Result<std::string> contradictions_total(const WeighRequest& request) {
  const auto account = contradiction_account(request.site, request.of, 0, request.surroundings);
  if (!account) return account.error();
  std::string text = fmt::format(
      "by {}: {} of statements that cannot all be true; {} more with claims nobody has reviewed",
      grounds_words(account->reviewed_claims), counted(account->reviewed_sets, "set"), account->preview_sets);
  if (account->returns_total > 0)
    text += fmt::format("; {} taken for a return", counted(account->returns_total, "coming"));
  return text;
}

}  // namespace

const WeighSection kContradictionsSection{
    "contradictions",     "statements that cannot all be true, and what would resolve it",
    contradictions_text,  contradictions_jsonl,
    contradictions_total, true};

}  // namespace witnessmark
