#include "witnessmark/app/said_about.h"

#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "command.h"
#include "report_text.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/write/claims_json.h"

namespace witnessmark {
namespace {

void print_said(std::ostream& out, const SaidAbout& said) {
  for (const std::string& term : said.terms) fmt::print(out, "{}\n", visible(term));
  print_lines(out, said_report(said));
}

}  // namespace

void add_said_about(CLI::App& program, Command& command) {
  struct Options {
    std::string file, name, order = "event", format = "text";
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand(
      "said-about", "Everything said about a place or a piece of equipment, and the entries on it");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("NAME", options->name, "Key, preferred, former or spoken name, or number")->required();
  app->add_option("--order", options->order, "By time of the event or of the telling: event, telling")
      ->check(CLI::IsMember({"event", "telling"}));
  app->add_option("--format", options->format, "text or jsonl")->check(CLI::IsMember({"text", "jsonl"}));
  command.add_today_option(*app);
  command.add_data_options(*app);
  app->callback([options, &command] {
    const auto site = command.open_to_read(options->file);
    if (!site) return command.fail(site.error());
    const auto order = options->order == "event" ? TellingOrder::event : TellingOrder::telling;
    const auto said = said_about(*site, options->name, order, command.surroundings());
    if (!said) return command.fail(said.error());
    if (options->format == "text") return print_said(command.out(), *said);
    for (const auto* records : {&said->reviewed, &said->proposed, &said->put_aside})
      for (const ClaimRecord& record : *records) fmt::print(command.out(), "{}\n", claim_json(record));
    for (const StatementLine& entry : said->entries) {
      const nlohmann::ordered_json object{
          {"entry", entry.key.key}, {"source", entry.source}, {"by", entry.by}, {"says", entry.says}};
      fmt::print(command.out(), "{}\n", object.dump());
    }
    fmt::print(command.err(), "{}\n", said->withheld);
  });
}

}  // namespace witnessmark
