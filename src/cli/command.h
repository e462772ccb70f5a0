#pragma once
#include <CLI/CLI.hpp>
#include <iostream>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/error.h"
#include "witnessmark/base/result.h"
#include "witnessmark/cli/run.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// What every command shares: the streams, the options all of them take, and how they end.
class Command {
 public:
  Command(const CommandSetting& setting)
      : setting_(setting), shared_(setting.shared), coder_(setting.coder) {}

  /// --shared and --language, for commands that read data of the program.
  void add_data_options(CLI::App& app);
  /// --today, for commands that may withhold.
  void add_today_option(CLI::App& app);
  /// --coder, for commands that write.
  void add_coder_option(CLI::App& app);

  /// --most: how many of a list to print, from 0.
  void add_most_option(CLI::App& app, std::size_t& into, const std::string& description);

  /// For commands that take free words: CLI11 would read [1962,1964] as a list of its own and -1985 as an
  /// option.
  void add_words(CLI::App& app, const std::string& name, const std::string& description);
  /// The words given; an Error when one looks like a long option that the command does not have.
  Result<std::vector<std::string>> words_of(const CLI::App& app) const;

  std::istream& in() const { return setting_.in; }
  std::ostream& out() const { return setting_.out; }
  std::ostream& err() const { return setting_.err; }

  /// Sends on what was printed; throws where it cannot be written, as on a full disk.
  void send_out() const;

  const CommandSetting& setting() const { return setting_; }
  Surroundings surroundings() const;

  Result<SiteFile> open_to_edit(const std::string& path) const;
  Result<SiteFile> open_to_read(const std::string& path) const;

  /// Tells what is wrong and ends with kBadInput.
  void fail(const Error& error);
  /// Prints what was remarked; the numbers of errors and warnings come last.
  void report(const std::vector<Diagnostic>& diagnostics) const;
  void end_with(int code) { exit_code_ = code; }
  int exit_code() const { return exit_code_; }

 private:
  const CommandSetting& setting_;
  std::string shared_, language_, coder_;
  std::string today_;
  int exit_code_ = kDone;
};

/// An Error when the option was given where it would do nothing; `with` says what it goes with.
Result<void> only_with(const CLI::App& app, const std::string& option, bool applies, std::string_view with);

// One function for each group of commands; each adds its own to the program.
void add_create(CLI::App& program, Command& command);
void add_taking_in(CLI::App& program, Command& command);  // take-in, evidence, list
void add_conclusions(CLI::App& program, Command& command);
void add_open_questions(CLI::App& program, Command& command);
void add_propose(CLI::App& program, Command& command);
void add_review(CLI::App& program, Command& command);
void add_weigh(CLI::App& program, Command& command);
void add_configuration(CLI::App& program, Command& command);
void add_said_about(CLI::App& program, Command& command);
void add_export(CLI::App& program, Command& command);
void add_verify(CLI::App& program, Command& command);  // verify, copy
void add_journal(CLI::App& program, Command& command);
void add_merge(CLI::App& program, Command& command);
void add_erase(CLI::App& program, Command& command);
void add_dates(CLI::App& program, Command& command);
void add_edtf(CLI::App& program, Command& command);

}  // namespace witnessmark
