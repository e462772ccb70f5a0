#include <fmt/ostream.h>

#include "command.h"
#include "witnessmark/app/export_claims.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {

void add_export(CLI::App& program, Command& command) {
  struct Options {
    std::string file, format = "csv", to;
    bool raw = false, reviewed = false;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("export", "Hand claims on with their provenance");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("--format", options->format, "csv or jsonl")->check(CLI::IsMember({"csv", "jsonl"}));
  app->add_option("--to", options->to,
                  "File to write (default: standard output); an existing one is replaced whole");
  app->add_flag("--raw", options->raw, "CSV: do not guard cells that a spreadsheet would run as formulas");
  app->add_flag("--reviewed", options->reviewed, "Only claims a coder has found to be said so");
  command.add_today_option(*app);
  command.add_data_options(*app);
  app->callback([options, &command] {
    const auto site = command.open_to_read(options->file);
    if (!site) return command.fail(site.error());
    const ExportRequest request{options->format == "csv" ? ExportFormat::csv : ExportFormat::jsonl,
                                options->raw ? FormulaGuard::raw : FormulaGuard::guarded, options->reviewed};
    std::string text;
    const auto write = [&](std::string_view piece) {
      if (options->to.empty())
        command.out() << piece;
      else
        text += piece;
    };
    const auto account = export_claims(*site, request, write, command.surroundings());
    if (!account) return command.fail(account.error());
    if (!options->to.empty()) {
      if (const auto written = write_file(options->to, text); !written) return command.fail(written.error());
    }
    fmt::print(command.err(), "{} handed on, {} of them not yet reviewed by anybody; {}\n",
               counted(account->claims, "claim"), account->proposals, account->withheld);
  });
}

}  // namespace witnessmark
