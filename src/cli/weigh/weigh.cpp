#include "witnessmark/app/weigh.h"

#include <fmt/ostream.h>

#include <algorithm>

#include "cli/command.h"
#include "cli/weigh/section.h"

namespace witnessmark {
namespace {

struct WeighOptions {
  std::string file, of, format = "text";
  std::vector<std::string> sections;
  bool all = false;
  std::size_t most = 20;
};

bool asked_for(const WeighOptions& options, const WeighSection& section) {
  if (options.sections.empty())
    return options.of.empty() ? &section == &weigh_sections().front() : section.keeps_to_one;
  return std::find(options.sections.begin(), options.sections.end(), section.name) != options.sections.end();
}

/// What is asked for of one thing is never answered of all.
Result<void> check_sections(const WeighOptions& options) {
  if (options.of.empty()) return {};
  for (const WeighSection& section : weigh_sections())
    if (asked_for(options, section) && !section.keeps_to_one)
      return Error{"", 0, 0, fmt::format("the section {} does not keep to one thing", section.name),
                   "leave out --of or the section; said-about lists the claims on a thing"};
  return {};
}

/// Without --section the claims in full, and of each other section its total.
Result<void> print_sections(Command& command, const WeighOptions& options, const WeighRequest& request) {
  bool first = true;
  for (const WeighSection& section : weigh_sections()) {
    if (!asked_for(options, section)) continue;
    if (!first) fmt::print(command.out(), "\n");
    first = false;
    if (const auto printed = section.text(command, request); !printed) return printed.error();
  }
  if (!options.sections.empty() || !options.of.empty() || weigh_sections().size() == 1) return {};
  fmt::print(command.out(), "\nAlso (--section NAME):\n");
  for (const WeighSection& section : weigh_sections()) {
    if (asked_for(options, section)) continue;
    const auto total = section.total(request);
    if (!total) return total.error();
    fmt::print(command.out(), "  {:<15} {}\n", section.name, *total);
  }
  return {};
}

Result<void> print_sections_as_jsonl(Command& command, const WeighOptions& options,
                                     const WeighRequest& request) {
  for (const WeighSection& section : weigh_sections()) {
    if (!asked_for(options, section)) continue;
    if (const auto printed = section.jsonl(command, request); !printed) return printed.error();
  }
  return {};
}

/// A site file and how many of its claims were weighed just now.
struct Weighed {
  SiteFile site;
  std::int64_t now = 0;
};

/// Where nothing is to be weighed the file need not be written: it may be open at somebody's desk, or be
/// write-protected.
Result<Weighed> weighed_file(const Command& command, const WeighOptions& options,
                             const Surroundings& surroundings) {
  auto site = command.open_to_edit(options.file);
  if (site) {
    const auto now = weigh(*site, options.all, surroundings);
    if (!now) return now.error();
    return Weighed{std::move(site).value(), *now};
  }
  Error refused = site.error();
  auto reading = command.open_to_read(options.file);
  if (!reading) return refused;
  const auto up_to_date = is_weighed(*reading, surroundings);
  if (!up_to_date) return up_to_date.error();
  if (*up_to_date && !options.all) return Weighed{std::move(reading).value()};
  refused.message += ", and claims are to be weighed, which is kept in it";
  return refused;
}

std::string section_help() {
  std::string text = "What to report, repeatable:";
  for (const WeighSection& section : weigh_sections())
    text += fmt::format(" {} ({}),", section.name, section.about);
  text.pop_back();
  return text + "; default claims, and the others in a line each; with --of bounds and contradictions";
}

}  // namespace

void add_weigh(CLI::App& program, Command& command) {
  auto options = std::make_shared<WeighOptions>();
  CLI::App* app = program.add_subcommand("weigh", "Hold the claims against the register");
  app->add_option("FILE", options->file, "Site file")->required();
  std::vector<std::string> names;
  for (const WeighSection& section : weigh_sections()) names.emplace_back(section.name);
  app->add_option("--section", options->sections, section_help())
      ->check(CLI::IsMember(names))
      ->allow_extra_args(false);
  app->add_option("--of", options->of,
                  "Only this fixture or place, by any of its names: its bounds and contradictions");
  app->add_flag("--all", options->all, "Weigh every claim, not only what is new or changed");
  app->add_option("--format", options->format, "text or jsonl")->check(CLI::IsMember({"text", "jsonl"}));
  command.add_most_option(*app, options->most, "How many items to print under each heading");
  command.add_coder_option(*app);
  command.add_today_option(*app);
  command.add_data_options(*app);
  app->callback([app, options, &command] {
    if (const auto checked = check_sections(*options); !checked) return command.fail(checked.error());
    if (const auto checked = only_with(*app, "--most", options->format == "text", "--format text"); !checked)
      return command.fail(checked.error());
    const Surroundings surroundings = command.surroundings();
    const auto weighed = weighed_file(command, *options, surroundings);
    if (!weighed) return command.fail(weighed.error());
    const WeighRequest request{weighed->site, surroundings, weighed->now, options->most, options->of};
    const auto print = options->format == "text" ? print_sections : print_sections_as_jsonl;
    if (const auto printed = print(command, *options, request); !printed) command.fail(printed.error());
  });
}

}  // namespace witnessmark
