#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "witnessmark/app/journal_listing.h"
#include "witnessmark/app/journal_words.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/evidence.h"

namespace witnessmark {
namespace {

std::string line_of(const ListedEvent& listed, const AuthorityLists& lists) {
  const JournalEvent& event = listed.event;
  std::string line = fmt::format("{}  {}  {}", event.wall_time.empty() ? "(no date)" : event.wall_time,
                                 event.actor, event_words(event));
  if (const std::string target = target_words(event); !target.empty()) line += " (" + target + ")";
  if (const std::string changes = change_words(event, lists); !changes.empty()) line += "; " + changes;
  if (event.blind) line += ", proposals hidden";
  if (event.imported) line += ", in another copy";
  if (event.erased) line += ", erased";
  if (listed.withheld != Withheld::none) line += fmt::format(", withheld: {}", to_string(listed.withheld));
  if (!event.why.empty()) line += ": " + event.why;
  return visible(line);
}

nlohmann::ordered_json content_of(const std::string& json) {
  return json.empty() ? nlohmann::ordered_json() : nlohmann::ordered_json::parse(json);
}

std::string json_of(const ListedEvent& listed) {
  const JournalEvent& event = listed.event;
  nlohmann::ordered_json line{{"event", to_string(event.id)}, {"act", to_string(event.act)},
                              {"actor", event.actor},         {"when", event.wall_time},
                              {"kind", event.kind},           {"target_kind", event.target_kind},
                              {"target", event.target},       {"interview", event.interview}};
  if (event.reverses) line["reverses"] = to_string(*event.reverses);
  if (event.blind) line["proposals_hidden"] = true;
  if (event.imported) line["in_another_copy"] = true;
  if (event.erased) line["erased"] = true;
  if (listed.withheld != Withheld::none) line["withheld"] = to_string(listed.withheld);
  line["before"] = content_of(event.before);
  line["after"] = content_of(event.after);
  line["why"] = event.why;
  return line.dump();
}

}  // namespace

void add_journal(CLI::App& program, Command& command) {
  struct Options {
    std::string file, on, format = "text";
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("journal", "What was done, by whom, when and why");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("--on", options->on, "Only on this interview, claim, entry, person or term: its key or id");
  app->add_option("--format", options->format, "text or jsonl")->check(CLI::IsMember({"text", "jsonl"}));
  command.add_today_option(*app);
  app->callback([options, &command] {
    const auto site = command.open_to_read(options->file);
    if (!site) return command.fail(site.error());
    const bool text = options->format == "text";
    const AuthorityLists lists = load_lists(*site);
    std::size_t events = 0;
    const std::string withheld =
        list_journal(*site, options->on, command.surroundings().today, [&](const ListedEvent& listed) {
          ++events;
          fmt::print(command.out(), "{}\n", text ? line_of(listed, lists) : json_of(listed));
        });
    if (events == 0 && !options->on.empty()) {
      return command.fail({"", 0, 0, fmt::format("the journal has nothing on “{}”", options->on),
                           "give a key, or the id of a claim or note"});
    }
    fmt::print(text ? command.out() : command.err(), "{}; {}\n", counted(events, "event"), withheld);
  });
}

}  // namespace witnessmark
