#include "witnessmark/store/merge.h"
#include "witnessmark/base/counted.h"

#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

void print_report(Command& command, const std::string& other, const MergeReport& report) {
  auto& out = command.out();
  if (report == MergeReport{}) {
    fmt::print(out, "{}: nothing in it is new here\n", other);
    return;
  }
  fmt::print(out, "{}: {} brought in\n", other, counted(report.events, "journal event"));
  fmt::print(out, "  decisions only the other copy had made, taken: {}\n", report.taken);
  fmt::print(out, "  made alike in both: {}\n", report.alike);
  fmt::print(out, "  made differently, for a person to settle: {}\n", report.differences);
  if (report.rows + report.transcripts + report.proposals > 0)
    fmt::print(out, "  rows taken in: {}; transcripts: {}; interviews with other proposals: {}\n",
               report.rows, report.transcripts, report.proposals);
  for (const NotTaken& each : report.not_taken)
    fmt::print(out, "  not taken: {}\n", visible(each.what + " " + each.which + ": " + each.why));
}

void print_json(Command& command, const MergeReport& report) {
  nlohmann::ordered_json line{
      {"events", report.events},       {"taken", report.taken},
      {"alike", report.alike},         {"differences", report.differences},
      {"rows", report.rows},           {"transcripts", report.transcripts},
      {"proposals", report.proposals}, {"not_taken", nlohmann::ordered_json::array()}};
  for (const NotTaken& each : report.not_taken)
    line["not_taken"].push_back({{"what", each.what}, {"which", each.which}, {"why", each.why}});
  fmt::print(command.out(), "{}\n", line.dump());
}

}  // namespace

void add_merge(CLI::App& program, Command& command) {
  struct Options {
    std::string file, other, format = "text";
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("merge", "Bring in what another coder did in a copy of a site file");
  app->add_option("FILE", options->file, "Site file, which is changed")->required();
  app->add_option("OTHER", options->other, "The copy, which is only read")->required();
  app->add_option("--format", options->format, "text or jsonl")->check(CLI::IsMember({"text", "jsonl"}));
  command.add_coder_option(*app);
  app->callback([options, &command] {
    auto site = command.open_to_edit(options->file);
    if (!site) return command.fail(site.error());
    const auto other = command.open_to_read(options->other);
    if (!other) return command.fail(other.error());
    const auto report = merge_site_file(*site, *other);
    if (!report) return command.fail(report.error());
    if (options->format == "jsonl") return print_json(command, *report);
    print_report(command, options->other, *report);
  });
}

}  // namespace witnessmark
