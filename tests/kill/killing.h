#pragma once
#include <filesystem>
#include <string>
#include <vector>

namespace witnessmark {

/// How one run of a program that writes to a site file was ended.
struct Killing {
  bool killed = false;              ///< It ran when SIGKILL came; else it had ended by itself.
  bool inside_transaction = false;  ///< It held SQLite's write lock when SIGKILL came.
  int exit_code = 0;                ///< When it had ended by itself.
  std::string output;               ///< What it had written to standard output and error.
};

/// When to kill.
struct Moment {
  std::int64_t microseconds =
      0;  ///< After the start; or, with `after_lock`, after it was first seen writing.
  bool after_lock = false;
};

/// Starts a program and kills it. That it was inside a transaction is proven from outside: it is stopped
/// (SIGSTOP), the operating system is asked whether it holds the write lock of the write-ahead log (byte 120
/// of the -shm file: SQLite, "WAL-mode File Format", section 2.3.1), and only then killed.
Killing run_and_kill(const std::vector<std::string>& command, const std::filesystem::path& site,
                     const Moment& moment);

/// Runs to the end. Throws std::runtime_error when it does not end with 0.
std::string run_to_end(const std::vector<std::string>& command);

}  // namespace witnessmark
