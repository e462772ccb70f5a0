#include "command.h"

#include <fmt/ostream.h>

#include <algorithm>
#include <stdexcept>

#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/time/edtf.h"
#include "witnessmark/time/period.h"

namespace witnessmark {
namespace {

/// A day given as YYYY-MM-DD; the option's check has refused anything else.
std::optional<Day> day_of(const std::string& text) {
  const auto value = parse_edtf(text);
  if (!value) return std::nullopt;
  const auto* date = std::get_if<EdtfDate>(&value->value);
  if (date == nullptr || !date->month || !date->day || date->time || !date->month->specified() ||
      !date->day->specified() || !date->year.specified())
    return std::nullopt;
  return to_day({date->year.value, static_cast<int>(date->month->value), static_cast<int>(date->day->value)});
}

}  // namespace

void Command::add_data_options(CLI::App& app) {
  app.add_option("--shared", shared_, "Folder of the data installed with the program");
  app.add_option("--language", language_,
                 "Folder of the language data (default: language/en in the shared folder)");
}

void Command::add_today_option(CLI::App& app) {
  app.add_option("--today", today_, "Judge access as on this day, YYYY-MM-DD (default: today)")
      ->check([](const std::string& text) {
        return day_of(text) ? std::string() : "'" + text + "' is no day; write it as YYYY-MM-DD";
      });
}

void Command::add_coder_option(CLI::App& app) {
  app.add_option("--coder", coder_, "Name that goes into the journal (default: the user's)");
}

void Command::add_most_option(CLI::App& app, std::size_t& into, const std::string& description) {
  app.add_option("--most", into, description)->capture_default_str()->check([](const std::string& text) {
    constexpr std::size_t kMostDigits = 9;
    const bool number = !text.empty() && text.size() <= kMostDigits &&
                        text.find_first_not_of("0123456789") == std::string::npos;
    return number ? std::string() : "'" + text + "' is no number of things; write 0, 20 or such";
  });
}

Result<void> only_with(const CLI::App& app, const std::string& option, bool applies, std::string_view with) {
  if (applies || app.count(option) == 0) return {};
  return Error{"", 0, 0, fmt::format("{} does nothing here: it goes with {}", option, with), "leave it out"};
}

void Command::add_words(CLI::App& app, const std::string& name, const std::string& description) {
  app.allow_extras();
  app.footer(name + ": " + description);
}

Result<std::vector<std::string>> Command::words_of(const CLI::App& app) const {
  std::vector<std::string> words = app.remaining();
  for (const std::string& word : words) {
    if (word.size() > 2 && word.starts_with("--"))
      return Error{"", 0, 0, "“" + word + "” is no option of " + app.get_name(),
                   "see " + app.get_name() + " --help"};
  }
  return words;
}

Surroundings Command::surroundings() const {
  const std::filesystem::path shared(shared_);
  std::function<void(std::string_view)> progress;
  if (setting_.err_is_terminal)
    progress = [this](std::string_view what) { setting_.err << "\r\x1b[K" << visible(what) << std::flush; };
  return {setting_.files,
          shared,
          language_.empty() ? shared / "language" / "en" : std::filesystem::path(language_),
          today_.empty() ? setting_.today : day_of(today_).value_or(setting_.today),
          coder_,
          setting_.random,
          setting_.wall_clock,
          progress};
}

Result<SiteFile> Command::open_to_edit(const std::string& path) const {
  return SiteFile::edit(path, {coder_, setting_.random, setting_.wall_clock});
}

Result<SiteFile> Command::open_to_read(const std::string& path) const {
  return SiteFile::read(path);
}

void Command::send_out() const {
  if (!out().flush())
    throw std::runtime_error("what was printed could not all be written; see whether the disk is full");
}

void Command::fail(const Error& error) {
  fmt::print(err(), "witnessmark: {}\n", visible(to_string(error)));
  exit_code_ = kBadInput;
}

void Command::report(const std::vector<Diagnostic>& diagnostics) const {
  std::size_t errors = 0;
  for (const Diagnostic& diagnostic : diagnostics) {
    fmt::print(err(), "{}\n", visible(to_string(diagnostic)));
    errors += diagnostic.severity == Diagnostic::Severity::error;
  }
  if (errors > 0)
    fmt::print(err(), "witnessmark: {}; nothing was taken in, the site file is as it was\n",
               counted(errors, "error"));
}

}  // namespace witnessmark
