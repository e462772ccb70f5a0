#include <fmt/ostream.h>

#include <filesystem>

#include "command.h"
#include "witnessmark/app/export_claims.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/base/sha256.h"
#include "witnessmark/store/handing_on.h"

namespace witnessmark {

namespace {

struct ExportOptions {
  std::string file, format = "csv", to;
  bool raw = false, reviewed = false;
};

HandedOn handed_on(const ExportOptions& options, std::string_view text, const ExportAccount& account) {
  HandedOn what;
  if (!options.to.empty()) what.to = std::filesystem::absolute(options.to).lexically_normal().string();
  what.format = options.format;
  what.sha256 = sha256_hex(text);
  what.claims = account.claims;
  what.interviews.assign(account.interviews.begin(), account.interviews.end());
  return what;
}

/// An export is in the journal, so that copies of it can be called back: where it cannot be noted, it is not
/// made.
Result<SiteFile> open_to_hand_on(const Command& command, const std::string& file) {
  auto site = command.open_to_edit(file);
  if (site) return site;
  Error refused = site.error();
  if (command.open_to_read(file))
    refused.message += ": what is handed on is noted in its journal, so nothing was";
  return refused;
}

Result<void> check_target(const ExportOptions& options) {
  std::error_code code;
  if (options.to.empty() || !std::filesystem::equivalent(options.to, options.file, code)) return {};
  return Error{options.to, 0, 0, "is the site file itself", "give another name"};
}

}  // namespace

void add_export(CLI::App& program, Command& command) {
  auto options = std::make_shared<ExportOptions>();
  CLI::App* app = program.add_subcommand("export", "Hand claims on with their provenance");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("--format", options->format, "csv or jsonl")->check(CLI::IsMember({"csv", "jsonl"}));
  app->add_option(
      "--to", options->to,
      "File to write (default: standard output); an existing one is replaced whole; noted in the journal");
  app->add_flag("--raw", options->raw, "CSV: do not guard cells that a spreadsheet would run as formulas");
  app->add_flag("--reviewed", options->reviewed, "Only claims a coder has found to be said so");
  command.add_today_option(*app);
  command.add_coder_option(*app);
  command.add_data_options(*app);
  app->callback([app, options, &command] {
    if (const auto checked = only_with(*app, "--raw", options->format == "csv", "--format csv"); !checked)
      return command.fail(checked.error());
    if (const auto checked = check_target(*options); !checked) return command.fail(checked.error());
    auto site = open_to_hand_on(command, options->file);
    if (!site) return command.fail(site.error());
    const ExportRequest request{options->format == "csv" ? ExportFormat::csv : ExportFormat::jsonl,
                                options->raw ? FormulaGuard::raw : FormulaGuard::guarded, options->reviewed};
    std::string text;
    const auto account = export_claims(
        *site, request, [&](std::string_view piece) { text += piece; }, command.surroundings());
    if (!account) return command.fail(account.error());
    const auto note = [&]() -> Result<void> {
      note_handing_on(*site, handed_on(*options, text, *account));
      return {};
    };
    if (options->to.empty()) {
      SiteTransaction work(*site);
      if (const auto noted = note(); !noted) return command.fail(noted.error());
      command.out() << text;
      command.send_out();
      work.commit();
    } else if (const auto written = write_file(options->to, text, note); !written) {
      return command.fail(written.error());
    }
    const std::string names = account->names_withheld == 0
                                  ? ""
                                  : counted(account->names_withheld, "name") + " withheld in quotes; ";
    fmt::print(command.err(), "{} handed on, {} of them not yet reviewed by anybody; {}{}\n",
               counted(account->claims, "claim"), account->proposals, names, account->withheld);
  });
}

}  // namespace witnessmark
