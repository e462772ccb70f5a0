#include "witnessmark/store/verify.h"
#include "witnessmark/base/counted.h"

#include <fmt/ostream.h>

#include "command.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

void add_verification(CLI::App& program, Command& command) {
  auto file = std::make_shared<std::string>();
  CLI::App* app =
      program.add_subcommand("verify", "Check a site file: hashes, quotes against text, journal replayed");
  app->add_option("FILE", *file, "Site file")->required();
  app->callback([file, &command] {
    const auto site = command.open_to_read(*file);
    if (!site) return command.fail(site.error());
    const VerifyReport report = verify(*site);
    for (const Finding& finding : report.findings)
      fmt::print(command.out(), "{}\n", visible(to_string(finding)));
    fmt::print(command.out(), "{}: {}, {}, {}, {}, {} looked at; {}\n", *file,
               counted(report.originals, "original"), counted(report.reading_texts, "reading text"),
               counted(report.utterances, "turn"), counted(report.claims, "claim"),
               counted(report.events, "journal event"),
               report.accepted() ? "no fault found" : counted(report.findings.size(), "fault"));
    if (!report.accepted()) command.end_with(kFaultsFound);
  });
}

void add_copy(CLI::App& program, Command& command) {
  struct Options {
    std::string file, to;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("copy", "Make a safe copy of a site file, also while it is in use");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("TO", options->to, "The copy; it must not exist")->required();
  app->callback([options, &command] {
    const auto site = command.open_to_read(options->file);
    if (!site) return command.fail(site.error());
    if (const auto copied = site->copy_to(options->to); !copied) return command.fail(copied.error());
    fmt::print(command.out(), "{}: a copy of {}\n", options->to, options->file);
  });
}

}  // namespace

void add_verify(CLI::App& program, Command& command) {
  add_verification(program, command);
  add_copy(program, command);
}

}  // namespace witnessmark
