#include "witnessmark/app/propose.h"
#include "witnessmark/base/counted.h"

#include <fmt/ostream.h>

#include "command.h"

namespace witnessmark {

void add_propose(CLI::App& program, Command& command) {
  struct Options {
    std::string file;
    std::vector<std::string> interviews;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app =
      program.add_subcommand("propose", "Read the transcripts and propose claims; decisions stay");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("INTERVIEW", options->interviews, "Only these interviews");
  command.add_coder_option(*app);
  command.add_data_options(*app);
  app->callback([options, &command] {
    auto site = command.open_to_edit(options->file);
    if (!site) return command.fail(site.error());
    const auto account = propose(*site, options->interviews, command.surroundings());
    if (!account) return command.fail(account.error());
    std::size_t total = 0;
    for (const ProposedInterview& one : account->interviews) {
      total += one.claims;
      fmt::print(command.out(), "{}: claims {} ({} new, {} changed, {} gone, {} as before)\n", one.interview,
                 one.claims, one.changes.added, one.changes.changed, one.changes.gone, one.changes.unchanged);
    }
    fmt::print(command.out(), "{} proposed", counted(total, "claim"));
    const char* separator = ": ";
    for (const auto& [statement, count] : account->by_statement) {
      fmt::print(command.out(), "{}{} {}", separator, to_string(statement), count);
      separator = ", ";
    }
    fmt::print(command.out(), "\n");
    for (const std::string& key : account->without_transcript)
      fmt::print(command.out(), "{}: no transcript\n", key);
  });
}

}  // namespace witnessmark
