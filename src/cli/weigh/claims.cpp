#include "witnessmark/app/weigh.h"

#include <fmt/ostream.h>

#include "cli/record_text.h"
#include "cli/weigh/section.h"
#include "witnessmark/write/claims_json.h"

namespace witnessmark {
namespace {

constexpr Outcome kOutcomes[] = {Outcome::agrees, Outcome::compatible, Outcome::conflicts,
                                 Outcome::cannot_tell, Outcome::silent};

std::string_view heading(Outcome outcome) {
  switch (outcome) {
    case Outcome::agrees:
      return "agree with an entry";
    case Outcome::compatible:
      return "compatible with what entries say";
    case Outcome::conflicts:
      return "conflict with an entry";
    case Outcome::cannot_tell:
      return "cannot be told";
    case Outcome::silent:
      return "nothing in the register speaks to them";
  }
  return "";
}

void print_account(Command& command, std::int64_t weighed, const WeighingAccount& account, std::size_t most) {
  auto& out = command.out();
  fmt::print(out, "{} claims weighed now. How the claims stand (proposals included):\n", weighed);
  for (const Outcome outcome : kOutcomes) {
    const auto at = account.claims_by_outcome.find(outcome);
    fmt::print(out, "{:>6}  {}\n", at == account.claims_by_outcome.end() ? 0 : at->second, heading(outcome));
  }
  fmt::print(out, "{:>6}  of the compatible ones rest on an intention only\n", account.intention_only);
  fmt::print(out, "{:>6}  are about a time when the narrator was not there\n", account.outside_service);
  fmt::print(out, "{}\n", account.withheld);
  const auto section = [&](std::string_view title, const std::vector<ClaimRecord>& records, Outcome outcome) {
    if (records.empty()) return;
    fmt::print(out, "\n{} ({}):\n", title, records.size());
    for (std::size_t i = 0; i < std::min(most, records.size()); ++i) print_record(out, records[i], outcome);
    if (records.size() > most) fmt::print(out, "  … and {} more (--most)\n", records.size() - most);
  };
  section("Conflicts", account.conflicts, Outcome::conflicts);
  section("Agreements", account.agreements, Outcome::agrees);
  section("Nothing in the register", account.silent, Outcome::silent);
}

Result<void> text(Command& command, const WeighRequest& request) {
  const auto account = weighing_account(request.site, request.surroundings);
  if (!account) return account.error();
  print_account(command, request.weighed, *account, request.most);
  return {};
}

Result<void> jsonl(Command& command, const WeighRequest& request) {
  const auto account = weighing_account(request.site, request.surroundings);
  if (!account) return account.error();
  for (const auto* records : {&account->conflicts, &account->agreements, &account->silent})
    for (const ClaimRecord& record : *records) fmt::print(command.out(), "{}\n", claim_json(record));
  fmt::print(command.err(), "{}\n", account->withheld);
  return {};
}

Result<std::string> total(const WeighRequest& request) {
  const auto account = weighing_account(request.site, request.surroundings);
  if (!account) return account.error();
  return fmt::format("{} conflict with an entry, {} agree with one", account->conflicts.size(),
                     account->agreements.size());
}

}  // namespace

const WeighSection kClaimsSection{"claims",
                                  "each claim held against the entries; jsonl: conflicts, agreements, silent",
                                  text, jsonl, total};

}  // namespace witnessmark
