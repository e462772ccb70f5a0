#include "witnessmark/app/weigh.h"

#include <fmt/ostream.h>

#include <algorithm>

#include "cli/report_text.h"
#include "cli/weigh/section.h"
#include "witnessmark/app/claim_records.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/write/claims_json.h"

namespace witnessmark {
namespace {

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

Result<void> print_account(Command& command, const WeighRequest& request, const WeighingAccount& account) {
  auto& out = command.out();
  fmt::print(out, "{} weighed now. How the claims stand (proposals included):\n",
             counted(request.weighed, "claim"));
  for (const Outcome outcome : kOutcomes) {
    const auto at = account.claims_by_outcome.find(outcome);
    fmt::print(out, "{:>6}  {}\n", at == account.claims_by_outcome.end() ? 0 : at->second, heading(outcome));
  }
  fmt::print(out, "{:>6}  of the compatible ones rest on an intention only\n", account.intention_only);
  fmt::print(out, "{:>6}  of those that agree say what the interviewer supplied\n", account.led);
  fmt::print(out, "{:>6}  are about a time when the narrator was not there\n", account.outside_service);
  fmt::print(out, "{}\n", account.withheld);
  struct Section {
    std::string_view title;
    const std::vector<Id>& claims;
    Outcome outcome;
  };
  const Section sections[] = {{"Conflicts", account.conflicts, Outcome::conflicts},
                              {"Agreements", account.agreements, Outcome::agrees},
                              {"Nothing in the register", account.silent, Outcome::silent}};
  for (const Section& section : sections) {
    if (section.claims.empty()) continue;
    fmt::print(out, "\n{} ({}):\n", section.title, section.claims.size());
    std::vector<Id> shown = section.claims;
    shown.resize(std::min(shown.size(), request.most));
    Withholding withholding(request.site, request.surroundings.today);
    const auto printed =
        for_each_record_of(request.site, shown, request.surroundings, withholding,
                           [&](const ClaimRecord& record) {
                             Report lines;
                             add_record(lines, record, section.outcome);
                             print_lines(out, lines);
                           });
    if (!printed) return printed;
    if (section.claims.size() > shown.size())
      fmt::print(out, "  … and {} more (--most)\n", section.claims.size() - shown.size());
  }
  return {};
}

Result<void> claims_text(Command& command, const WeighRequest& request) {
  const auto account = weighing_account(request.site, request.surroundings);
  if (!account) return account.error();
  return print_account(command, request, *account);
}

Result<void> claims_jsonl(Command& command, const WeighRequest& request) {
  const auto account = weighing_account(request.site, request.surroundings);
  if (!account) return account.error();
  Withholding withholding(request.site, request.surroundings.today);
  for (const auto* claims : {&account->conflicts, &account->agreements, &account->silent}) {
    const auto printed = for_each_record_of(
        request.site, *claims, request.surroundings, withholding,
        [&](const ClaimRecord& record) { fmt::print(command.out(), "{}\n", claim_json(record)); });
    if (!printed) return printed;
  }
  fmt::print(command.err(), "{}\n", account->withheld);
  return {};
}

Result<std::string> claims_total(const WeighRequest& request) {
  const auto account = weighing_account(request.site, request.surroundings);
  if (!account) return account.error();
  return fmt::format("{} conflict with an entry, {} agree with one", account->conflicts.size(),
                     account->agreements.size());
}

}  // namespace

const WeighSection kClaimsSection{"claims",
                                  "each claim held against the entries; jsonl: conflicts, agreements, silent",
                                  claims_text, claims_jsonl, claims_total};

}  // namespace witnessmark
