#include <pwd.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include "witnessmark/cli/run.h"
#include "witnessmark/terminal/review.h"

namespace {

using witnessmark::Day;

std::tm local_time() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  localtime_r(&now, &parts);
  return parts;
}

Day local_day() {
  const std::tm now = local_time();
  return witnessmark::to_day({now.tm_year + 1900, now.tm_mon + 1, now.tm_mday});
}

std::string local_clock() {
  const std::tm now = local_time();
  char text[32];
  std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%S%z", &now);
  return text;
}

std::string user_name() {
  const passwd* entry = getpwuid(geteuid());
  return entry != nullptr ? entry->pw_name : "unknown";
}

/// Where the data installed with the program lies: a folder named by the environment, beside the program as installed,
/// or in the source tree the program was built from.
std::filesystem::path shared_folder() {
  if (const char* named = std::getenv("WITNESSMARK_SHARED")) return named;
  std::error_code error;
  const auto program = std::filesystem::read_symlink("/proc/self/exe", error);
  const auto installed = program.parent_path().parent_path() / WITNESSMARK_DATADIR / "witnessmark";
  if (!error && std::filesystem::exists(installed, error)) return installed;
  return WITNESSMARK_SOURCE_SHARED;
}

witnessmark::Result<void> review(witnessmark::CodingDesk& desk, const witnessmark::ReviewMode& request) {
  const char* no_colour = std::getenv("NO_COLOR");
  witnessmark::ReviewMode wanted = request;
  wanted.typed = isatty(STDIN_FILENO) == 1;
  wanted.colour = no_colour == nullptr || *no_colour == '\0';  // the convention of no-color.org
  return witnessmark::review(desk, wanted, std::cin, std::cout);
}

}  // namespace

int main(int argc, char** argv) {
  const witnessmark::SystemFileReader files;
  const std::vector<std::string> arguments(argv + 1, argv + argc);
  return witnessmark::run(arguments, {std::cin, std::cout, std::cerr, files, shared_folder(), local_day(), user_name(),
                                      witnessmark::system_random(), local_clock, isatty(STDERR_FILENO) == 1, review});
}
