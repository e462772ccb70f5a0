#include "witnessmark/app/conclusions.h"

#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "changes_json.h"
#include "command.h"
#include "report_text.h"
#include "taking_in_text.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/take_in.h"

namespace witnessmark {
namespace {

using Json = nlohmann::ordered_json;

struct ConclusionsOptions {
  std::string file, table, format = "text";
  ConclusionFilePaths paths;
};

void take_in(Command& command, const ConclusionsOptions& options) {
  auto site = command.open_to_edit(options.file);
  if (!site) return command.fail(site.error());
  const ConclusionsTakenIn taken = take_in_conclusions(*site, options.paths, command.surroundings());
  command.report(taken.diagnostics);
  if (!taken.done) return command.end_with(kBadInput);
  print_counts(command, "conclusions", taken.changes.conclusions);
  print_counts(command, "enquiries", taken.changes.enquiries);
  print_counts(command, "searches", taken.changes.searches);
  print_changed(command, taken.changes.changed);
}

void print_answers(Command& command, const ConclusionHistory& history) {
  for (const Enquiry& answer : history.answers)
    fmt::print(command.out(), "    {}answered to {} ({}): asked “{}”, sent “{}”\n",
               history.stands() ? "" : "to be told: ", one_line(answer.sent_to), to_string(answer.date),
               one_line(answer.question), one_line(answer.answer));
}

Json json_of(const ConclusionHistory& history) {
  const Conclusion& made = history.conclusion;
  Json object{{"conclusion", made.key},  {"stands", history.stands()}, {"wording", made.wording},
              {"reasons", made.reasons}, {"author", made.author},      {"date", to_string(made.date)}};
  if (!made.subject.empty()) object["subject"] = made.subject;
  if (!made.place.empty()) object["place"] = made.place;
  object["evidence"] = made.evidence;
  if (!made.published.empty()) object["published"] = made.published;
  object["replaces"] = made.replaces;
  if (!history.changed_since.empty()) object["changed_since"] = changes_json(history.changed_since);
  object["replaced_by"] = Json::array();
  for (const Conclusion& by : history.replaced_by) object["replaced_by"].push_back(by.key);
  object["answers"] = Json::array();
  for (const Enquiry& answer : history.answers)
    object["answers"].push_back(Json{{"enquiry", answer.key},
                                     {"question", answer.question},
                                     {"answer", answer.answer},
                                     {"sent_to", answer.sent_to},
                                     {"date", to_string(answer.date)}});
  if (!made.notes.empty()) object["notes"] = made.notes;
  return object;
}

void list(Command& command, const ConclusionsOptions& options) {
  const auto site = command.open_to_read(options.file);
  if (!site) return command.fail(site.error());
  Withholding withholding(*site, command.surroundings().today);
  const auto histories = conclusion_histories(*site, withholding);
  if (options.format == "jsonl") {
    for (const ConclusionHistory& history : histories)
      fmt::print(command.out(), "{}\n", json_of(history).dump());
    fmt::print(command.err(), "{}\n", withholding.account("conclusion"));
    return;
  }
  if (histories.empty()) fmt::print(command.out(), "no conclusion is recorded\n");
  for (const ConclusionHistory& history : histories) {
    Report lines;
    add_conclusion(lines, history);
    print_lines(command.out(), lines);
    print_answers(command, history);
  }
  fmt::print(command.out(), "{}\n", withholding.account("conclusion"));
}

}  // namespace

void add_conclusions(CLI::App& program, Command& command) {
  auto options = std::make_shared<ConclusionsOptions>();
  CLI::App* app =
      program.add_subcommand("conclusions", "List what was concluded and answered, or take it in");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("CONCLUSIONS", options->table,
                  "conclusions.csv to take in; enquiries.csv and searches.csv are looked for beside it");
  app->add_option("--enquiries", options->paths.enquiries, "Enquiries to take in, if elsewhere");
  app->add_option("--searches", options->paths.searches, "Searches to take in, if elsewhere");
  app->add_option("--format", options->format, "Of the listing: text or jsonl")
      ->check(CLI::IsMember({"text", "jsonl"}));
  command.add_coder_option(*app);
  command.add_today_option(*app);
  app->callback([app, options, &command] {
    if (!options->table.empty()) options->paths.conclusions = options->table;
    const ConclusionFilePaths& paths = options->paths;
    const bool listing = !paths.conclusions && !paths.enquiries && !paths.searches;
    for (const char* option : {"--format", "--today"})
      if (const auto checked = only_with(*app, option, listing, "the listing, without files to take in");
          !checked)
        return command.fail(checked.error());
    listing ? list(command, *options) : take_in(command, *options);
  });
}

}  // namespace witnessmark
