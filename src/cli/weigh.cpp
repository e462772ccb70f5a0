#include "witnessmark/app/weigh.h"

#include <fmt/ostream.h>

#include "command.h"
#include "record_text.h"
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

}  // namespace

void add_weigh(CLI::App& program, Command& command) {
  struct Options {
    std::string file, format = "text";
    bool all = false;
    std::size_t most = 20;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("weigh", "Hold the claims against the register");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_flag("--all", options->all, "Weigh every claim, not only what is new or changed");
  app->add_option("--format", options->format, "text, or jsonl for conflicts and agreements")
      ->check(CLI::IsMember({"text", "jsonl"}));
  app->add_option("--most", options->most, "How many claims to print under each heading")
      ->capture_default_str();
  command.add_coder_option(*app);
  command.add_today_option(*app);
  command.add_data_options(*app);
  app->callback([options, &command] {
    auto site = command.open_to_edit(options->file);
    if (!site) return command.fail(site.error());
    const auto weighed = weigh(*site, options->all, command.surroundings());
    if (!weighed) return command.fail(weighed.error());
    const auto account = weighing_account(*site, command.surroundings());
    if (!account) return command.fail(account.error());
    if (options->format == "text") return print_account(command, *weighed, *account, options->most);
    for (const auto* records : {&account->conflicts, &account->agreements, &account->silent})
      for (const ClaimRecord& record : *records) fmt::print(command.out(), "{}\n", claim_json(record));
    fmt::print(command.err(), "{}\n", account->withheld);
  });
}

}  // namespace witnessmark
