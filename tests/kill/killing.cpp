#include "kill/killing.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <stdexcept>
#include <thread>

namespace witnessmark {
namespace {

using Clock = std::chrono::steady_clock;

struct Child {
  pid_t process = -1;
  int output = -1;
};

Child start(const std::vector<std::string>& command) {
  std::vector<char*> arguments;
  for (const std::string& argument : command) arguments.push_back(const_cast<char*>(argument.c_str()));
  arguments.push_back(nullptr);
  int ends[2];
  if (pipe2(ends, O_CLOEXEC) != 0) throw std::runtime_error("pipe failed");
  const pid_t process = fork();
  if (process < 0) throw std::runtime_error("fork failed");
  if (process == 0) {
    dup2(ends[1], STDOUT_FILENO);
    dup2(ends[1], STDERR_FILENO);
    execv(arguments[0], arguments.data());
    _exit(127);
  }
  close(ends[1]);
  return {process, ends[0]};
}

std::string read_all(int descriptor) {
  std::string text;
  char buffer[4096];
  while (true) {
    const ssize_t length = read(descriptor, buffer, sizeof buffer);
    if (length <= 0) break;
    text.append(buffer, static_cast<std::size_t>(length));
  }
  close(descriptor);
  return text;
}

/// Whether a process other than this one holds the write lock of the write-ahead log.
bool writes(const std::filesystem::path& site) {
  const int shared = open((site.string() + "-shm").c_str(), O_RDWR | O_CLOEXEC);
  if (shared < 0) return false;
  struct flock lock {};
  lock.l_type = F_WRLCK;
  lock.l_whence = SEEK_SET;
  lock.l_start = 120;
  lock.l_len = 1;
  const bool asked = fcntl(shared, F_GETLK, &lock) == 0;
  close(shared);
  return asked && lock.l_type != F_UNLCK;
}

/// True when the child ended by itself; then it is reaped.
bool has_ended(pid_t process, int& status) {
  return waitpid(process, &status, WNOHANG) == process;
}

}  // namespace

Killing run_and_kill(const std::vector<std::string>& command, const std::filesystem::path& site,
                     const Moment& moment) {
  const Child child = start(command);
  Killing killing;
  int status = 0;
  bool ended = false;
  if (moment.after_lock) {
    const auto limit = Clock::now() + std::chrono::seconds(60);
    while (!ended && !writes(site) && Clock::now() < limit) ended = has_ended(child.process, status);
  }
  if (!ended) std::this_thread::sleep_for(std::chrono::microseconds(moment.microseconds));
  if (!ended) ended = has_ended(child.process, status);
  if (!ended) {
    kill(child.process, SIGSTOP);
    ended = waitpid(child.process, &status, WUNTRACED) == child.process && !WIFSTOPPED(status);
  }
  if (!ended) {
    killing.inside_transaction = writes(site);
    kill(child.process, SIGKILL);
    waitpid(child.process, &status, 0);
    killing.killed = WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL;
  } else {
    killing.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  }
  killing.output = read_all(child.output);
  return killing;
}

std::string run_to_end(const std::vector<std::string>& command) {
  const Child child = start(command);
  std::string output = read_all(child.output);
  int status = 0;
  waitpid(child.process, &status, 0);
  if (!WIFEXITED(status) || WEXITSTATUS(status) != 0)
    throw std::runtime_error(command[0] + " failed: " + output);
  return output;
}

}  // namespace witnessmark
