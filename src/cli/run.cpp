#include "witnessmark/cli/run.h"

#include <fmt/ostream.h>

#include <algorithm>
#include <optional>

#include "command.h"
#include "witnessmark/base/did_you_mean.h"

namespace witnessmark {
namespace {

constexpr std::string_view kCautions =
    "Interviews are about living people: closed, restricted and unreleased passages are withheld and "
    "counted.\n"
    "A story about a named person is not a finding of fact. Findings about the fabric are historical only: "
    "before\n"
    "anyone enters, opens or handles anything, site safety rules, local codes and licensed people decide.\n"
    "Exit codes: 0 done, 1 faults found, 2 wrong use or bad input, 3 the machine failed.";

/// A first word that is no command, with the commands it may have been meant for.
std::optional<Error> unknown_command(const CLI::App& program, const std::vector<std::string>& arguments) {
  if (arguments.empty() || arguments.front().starts_with("-")) return std::nullopt;
  std::vector<std::string> names;
  for (const CLI::App* command : program.get_subcommands({})) names.push_back(command->get_name());
  if (std::find(names.begin(), names.end(), arguments.front()) != names.end()) return std::nullopt;
  const std::string near = did_you_mean(near_matches(arguments.front(), names));
  return Error{"", 0, 0, "“" + arguments.front() + "” is no command", near.empty() ? "see --help" : near};
}

int parse_and_run(CLI::App& program, Command& command, std::vector<std::string> arguments,
                  const CommandSetting& setting) {
  std::reverse(arguments.begin(), arguments.end());
  try {
    program.parse(arguments);
  } catch (const CLI::Success& asked_for_help) {
    return program.exit(asked_for_help, setting.out, setting.err);
  } catch (const CLI::ParseError& error) {
    program.exit(error, setting.out, setting.err);
    return kBadInput;
  }
  return command.exit_code();
}

}  // namespace

int run(const std::vector<std::string>& arguments, const CommandSetting& setting) {
  CLI::App program("Weighs what was told against dated evidence: what was where, when, and how sure we are.",
                   "witnessmark");
  program.require_subcommand(1);
  program.set_version_flag("--version", "witnessmark " WITNESSMARK_VERSION);
  program.footer(std::string(kCautions));
  Command command(setting);
  add_create(program, command);
  add_taking_in(program, command);
  add_propose(program, command);
  add_review(program, command);
  add_weigh(program, command);
  add_configuration(program, command);
  add_said_about(program, command);
  add_conclusions(program, command);
  add_open_questions(program, command);
  add_export(program, command);
  add_dates(program, command);
  add_edtf(program, command);
  add_verify(program, command);
  add_journal(program, command);
  add_merge(program, command);
  add_erase(program, command);
  if (const auto unknown = unknown_command(program, arguments)) {
    command.fail(*unknown);
    return command.exit_code();
  }
  try {
    const int code = parse_and_run(program, command, arguments, setting);
    command.send_out();
    return code;
  } catch (const std::exception& failure) {
    fmt::print(setting.err, "witnessmark: the machine failed: {}\n", failure.what());
    return kMachineFailed;
  }
}

}  // namespace witnessmark
