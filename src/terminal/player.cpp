#include "witnessmark/terminal/player.h"

#include <fcntl.h>
#include <fmt/core.h>
#include <spawn.h>
#include <unistd.h>

namespace witnessmark {
namespace {

void fill_in(std::string& word, std::string_view name, const std::string& value) {
  for (std::size_t at = word.find(name); at != std::string::npos; at = word.find(name, at + value.size()))
    word.replace(at, name.size(), value);
}

/// A recording's name comes with the site file, perhaps from somebody else: it is a file to be played and never an option.
void no_option(std::string& word) {
  if (word.starts_with('-')) word.insert(0, "./");
}

bool start(std::vector<std::string> words) {
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t quiet;
  posix_spawn_file_actions_init(&quiet);
  for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
    posix_spawn_file_actions_addopen(&quiet, stream, "/dev/null", O_RDWR, 0);
  pid_t process = 0;
  const int fault = posix_spawnp(&process, arguments[0], &quiet, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&quiet);
  return fault == 0;
}

}  // namespace

std::vector<std::string> player_words(const std::string& command, const std::string& recording,
                                      Millisecond at) {
  std::vector<std::string> words;
  for (std::size_t begin = 0; begin < command.size();) {
    const std::size_t end = std::min(command.find(' ', begin), command.size());
    if (end > begin) words.push_back(command.substr(begin, end - begin));
    begin = end + 1;
  }
  const bool placed = command.find("{recording}") != std::string::npos;
  for (std::string& word : words) {
    const bool option = word.starts_with('-');
    fill_in(word, "{seconds}", fmt::format("{:.1f}", static_cast<double>(at.value) / 1000));
    fill_in(word, "{recording}", recording);
    if (!option) no_option(word);
  }
  if (!placed) no_option(words.emplace_back(recording));
  return words;
}

Session::Player player_program(const std::string& command) {
  if (command.find_first_not_of(' ') == std::string::npos) return {};
  return [command](const std::string& recording, Millisecond at) {
    return start(player_words(command, recording, at));
  };
}

}  // namespace witnessmark
