#pragma once
#include <chrono>
#include <filesystem>
#include <random>
#include <string>
#include <vector>

#include "kill/killing.h"

namespace witnessmark {

inline std::int64_t microseconds_of(const std::vector<std::string>& command) {
  const auto begin = std::chrono::steady_clock::now();
  run_to_end(command);
  return std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - begin)
      .count();
}

struct Tally {
  int killed = 0;
  int inside = 0;
};

/// Kills a command again and again, each time on a new copy of a site file: at random moments of its run, and
/// every other time at a random moment after it was first seen writing.
template <typename Command, typename Check>
Tally kill_again_and_again(const std::filesystem::path& before, const std::filesystem::path& site, int kills,
                           int inside, Command command, Check check) {
  const auto renew = [&] {
    for (const char* side : {"", "-wal", "-shm"}) std::filesystem::remove(site.string() + side);
    std::filesystem::copy_file(before, site);
  };
  renew();
  const std::int64_t whole = microseconds_of(command());
  std::mt19937_64 random(7);
  Tally tally;
  for (int attempt = 0; (tally.killed < kills || tally.inside < inside) && attempt < 5 * kills; ++attempt) {
    renew();
    const bool after_lock = attempt % 2 == 1;
    const auto moment =
        static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(after_lock ? whole / 16 + 1 : whole));
    const Killing killing = run_and_kill(command(), site, {moment, after_lock});
    if (!killing.killed) continue;
    ++tally.killed;
    tally.inside += killing.inside_transaction ? 1 : 0;
    CAPTURE(attempt);
    check(killing);
  }
  return tally;
}

}  // namespace witnessmark
