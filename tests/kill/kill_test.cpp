#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "kill/coding_session.h"
#include "kill/killing_often.h"
#include "kill/work.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

constexpr int kKills = 100;
constexpr int kInsideTransaction = 25;

/// What the worker last said was done.
struct Confirmed {
  std::int64_t events = 0;
  int step = 0;
};
Confirmed last_confirmed(const std::string& output) {
  Confirmed confirmed;
  std::istringstream lines(output);
  for (std::string line; std::getline(lines, line);) {
    // A line that was cut short was not said.
    if (line.starts_with("done ") && !lines.eof()) {
      std::istringstream words(line.substr(5));
      words >> confirmed.events >> confirmed.step;
    }
  }
  return confirmed;
}

void check_after_kill(const std::filesystem::path& site, std::int64_t confirmed) {
  const SiteFile opened = must(SiteFile::edit(site, editor("B. Other", 99)));
  CHECK(findings(opened) == std::vector<std::string>{});
  CHECK(count_events(opened) >= confirmed);
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
      [&](const Killing& killing) { check_after_kill(site, last_confirmed(killing.output).events); });
  MESSAGE("killed " << tally.killed << " times, " << tally.inside << " times inside a transaction");
  CHECK(tally.killed >= kKills);
  CHECK(tally.inside >= kInsideTransaction);
}

TEST_CASE("whenever a coding session is killed, every decision it had confirmed is there, and undo works") {
  constexpr int kSessionKills = 200;
  constexpr int kSessionInside = 50;
  const TemporaryFolder folder;
  const auto before = folder / "before.site";
  {
    SiteFile made = must(SiteFile::create(before, {{}, "Tender Guillemot", "2031", "built-in"}, editor()));
    const auto steps = work_steps(kSessionTurns);
    for (std::size_t i = 0; i < kStepsBeforeCoding; ++i) steps[i](made);
  }
  const auto site = folder / "guillemot.site";
  int seed = 10;
  const Tally tally = kill_again_and_again(
      before, site, kSessionKills, kSessionInside,
      [&] {
        return std::vector<std::string>{KILLED_WORKER, site.string(), std::to_string(++seed), "coding"};
      },
      [&](const Killing& killing) {
        const auto said = last_confirmed(killing.output);
        check_session(site, said.events, said.step);
      });
  MESSAGE("killed " << tally.killed << " times, " << tally.inside << " times inside a transaction");
  CHECK(tally.killed >= kSessionKills);
  CHECK(tally.inside >= kSessionInside);
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

TEST_CASE("whenever a sitting at the terminal is killed, every decision its screen had confirmed is there") {
  constexpr int kSittingKills = 60;
  constexpr int kSittingInside = 15;
  const TemporaryFolder folder;
  const std::string demo = WITNESSMARK_SOURCE_DIR "/corpus-demo/";
  const auto before = folder / "before.site";
  const auto site = folder / "guillemot.site";
  const std::string program = WITNESSMARK_PROGRAM;
  must(SiteFile::create(before, {{}, "Demo", "2031", "built-in"}, editor()));
  run_to_end({program, "list", before.string(), "places", demo + "places.csv"});
  run_to_end({program, "list", before.string(), "equipment", demo + "equipment.csv"});
  run_to_end({program, "take-in", before.string(), demo + "interviews.csv"});
  run_to_end({program, "propose", before.string()});
  const auto script = folder / "sitting.txt";
  {
    std::ofstream orders(script);
    // Claims that need no more than saying so: a count or an attribute may lack what it states.
    orders << "key 2 f Down Down Down Right Right Right s\n";
    // What is done again is gone to: from there on to the next.
    for (int i = 0; i < 60; ++i) orders << (i % 9 == 8 ? "key u\nsay\nkey U\nsay\nkey Down\n" : "key s\nsay\n");
  }
  const Tally tally = kill_again_and_again(
      before, site, kSittingKills, kSittingInside,
      [&] {
        return std::vector<std::string>{program,         "review",  site.string(), "--script",
                                        script.string(), "--coder", kSessionCoder};
      },
      [&](const Killing& killing) {
        // Each decision is on another claim; those undone were done again, but for one that was cut short.
        std::size_t confirmed = 0;
        for (std::size_t at = killing.output.find("said so. Saved; u undoes:"); at != std::string::npos;
             at = killing.output.find("said so. Saved; u undoes:", at + 1))
          ++confirmed;
        SiteFile opened = must(SiteFile::edit(site, editor(kSessionCoder, 99)));
        CHECK(findings(opened) == std::vector<std::string>{});
        std::size_t decided = 0;
        for (const StoredClaim& stored : load_claims(opened)) decided += stored.decided ? 1 : 0;
        CHECK(decided + 1 >= confirmed);
        // Before the first undoing can have begun, not one may be missing.
        if (confirmed < 8) CHECK(decided >= confirmed);
      });
  MESSAGE("a sitting: killed " << tally.killed << " times, " << tally.inside
                               << " times inside a transaction");
  CHECK(tally.killed >= kSittingKills);
  CHECK(tally.inside >= kSittingInside);
}
#endif
