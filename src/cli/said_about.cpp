#include "witnessmark/app/said_about.h"

#include <fmt/ostream.h>

#include "command.h"
#include "conclusion_text.h"
#include "record_text.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/write/claims_json.h"

namespace witnessmark {
namespace {

void print_said(Command& command, const SaidAbout& said) {
  auto& out = command.out();
  for (const std::string& term : said.terms) fmt::print(out, "{}\n", visible(term));
  const auto conflicts = conflicting(said);
  if (!conflicts.empty())
    fmt::print(out, "\nConflict with an entry, {} of {} (each in full below):\n", conflicts.size(),
               counted(said.reviewed.size() + said.proposed.size(), "claim"));
  for (const ClaimRecord* record : conflicts)
    fmt::print(out, "  {} ({}): {}: with {}\n", visible(record->narrator), record->claim.interview,
               what_words(*record), visible(conflict_words(*record)));
  fmt::print(out, "\nSaid so, reviewed ({}):\n", said.reviewed.size());
  for (const ClaimRecord& record : said.reviewed) print_record(out, record);
  if (said.reviewed.empty()) fmt::print(out, "  none yet\n");
  fmt::print(out, "\nPreview: proposed, not yet reviewed ({}):\n", said.proposed.size());
  for (const ClaimRecord& record : said.proposed) print_record(out, record);
  fmt::print(out, "\nNamed in talk, in no claim, not read yet ({}):\n", said.unread.size());
  for (const UnreadPassage& passage : said.unread) {
    const std::string time = time_words(passage.time, passage.timing);
    fmt::print(out, "  {}{}{}: “{}”\n", passage.interview, time.empty() ? "" : " ", time,
               visible(passage.text));
  }
  if (!said.conclusions.empty()) fmt::print(out, "\nConcluded ({}):\n", said.conclusions.size());
  for (const ConclusionHistory& history : said.conclusions) print_conclusion(out, history);
  for (const std::string& interview : said.without_transcript)
    fmt::print(out, "{}: no transcript, so nothing in it was read\n", interview);
  fmt::print(out, "{}\n", said.withheld);
}

}  // namespace

void add_said_about(CLI::App& program, Command& command) {
  struct Options {
    std::string file, name, order = "event", format = "text";
  };
  auto options = std::make_shared<Options>();
  CLI::App* app =
      program.add_subcommand("said-about", "Everything said about a place or a piece of equipment");
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
    if (options->format == "text") return print_said(command, *said);
    for (const auto* records : {&said->reviewed, &said->proposed})
      for (const ClaimRecord& record : *records) fmt::print(command.out(), "{}\n", claim_json(record));
    fmt::print(command.err(), "{}\n", said->withheld);
  });
}

}  // namespace witnessmark
