#include <doctest/doctest.h>

#include <chrono>
#include <random>
#include <sstream>

#include "kill/killing.h"
#include "kill/work.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

constexpr int kKills = 100;
constexpr int kInsideTransaction = 25;

/// The last number the worker said, 0 for none.
std::int64_t confirmed_events(const std::string& output) {
  std::int64_t events = 0;
  std::istringstream lines(output);
  for (std::string word; lines >> word;) {
    if (word == "done") lines >> events;
  }
  return events;
}

void check_after_kill(const std::filesystem::path& site, std::int64_t confirmed) {
  const SiteFile opened = must(SiteFile::edit(site, editor("B. Other", 99)));
  CHECK(findings(opened) == std::vector<std::string>{});
  CHECK(count_events(opened) >= confirmed);
}

std::int64_t microseconds_of(const std::vector<std::string>& command) {
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

}  // namespace

TEST_CASE("whenever a worker is killed, what it had confirmed is there and verify accepts") {
  const TemporaryFolder folder;
  must(SiteFile::create(folder / "before.site", {{}, "Tender Guillemot", "2031", "built-in"}, editor()));
  const auto site = folder / "guillemot.site";
  int seed = 10;
  const Tally tally = kill_again_and_again(
      folder / "before.site", site, kKills, kInsideTransaction,
      [&] {
        return std::vector<std::string>{KILLED_WORKER, site.string(), std::to_string(++seed)};
      },
      [&](const Killing& killing) { check_after_kill(site, confirmed_events(killing.output)); });
  MESSAGE("killed " << tally.killed << " times, " << tally.inside << " times inside a transaction");
  CHECK(tally.killed >= kKills);
  CHECK(tally.inside >= kInsideTransaction);
}

#ifdef WITNESSMARK_PROGRAM
TEST_CASE(
    "whenever the program is killed taking in or proposing, verify accepts, and a second run ends as one "
    "undisturbed") {
  const TemporaryFolder folder;
  const std::string demo = WITNESSMARK_SOURCE_DIR "/corpus-demo/";
  const auto taken = folder / "taken.site";
  const auto empty = folder / "empty.site";
  const std::string program = WITNESSMARK_PROGRAM;
  must(SiteFile::create(empty, {{}, "Demo", "2031", "built-in"}, editor()));
  std::filesystem::copy_file(empty, taken);
  run_to_end({program, "list", taken.string(), "places", demo + "places.csv"});
  run_to_end({program, "list", taken.string(), "equipment", demo + "equipment.csv"});
  run_to_end({program, "take-in", taken.string(), demo + "interviews.csv"});
  run_to_end({program, "evidence", taken.string(), demo + "entries.csv"});

  struct Row {
    const char* what;
    std::filesystem::path before;
    std::vector<std::string> arguments;
  };
  const auto site = folder / "guillemot.site";
  for (const Row& row : {Row{"take-in", empty, {demo + "interviews.csv"}}, Row{"propose", taken, {}}}) {
    std::vector<std::string> command{program, row.what, site.string()};
    command.insert(command.end(), row.arguments.begin(), row.arguments.end());
    const auto count = [&] {
      const SiteFile opened = must(SiteFile::read(site));
      CHECK(findings(opened) == std::vector<std::string>{});
      return std::pair(load_interviews(opened).interviews.size(), load_claims(opened).size());
    };
    std::filesystem::remove(site);
    std::filesystem::copy_file(row.before, site);
    run_to_end(command);
    const auto undisturbed = count();
    const Tally tally = kill_again_and_again(
        row.before, site, kKills / 2, kInsideTransaction / 2 + 1, [&] { return command; },
        [&](const Killing&) { check_after_kill(site, 0); });
    MESSAGE(std::string(row.what) << ": killed " << tally.killed << " times, " << tally.inside
                                  << " times inside a transaction");
    CHECK(tally.killed >= kKills / 2);
    CHECK(tally.inside > kInsideTransaction / 2);
    run_to_end(command);
    CHECK(count() == undisturbed);
  }
}
#endif
