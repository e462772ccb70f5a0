// How weighing grows with the site file: claims, a fifth as many entries, and 5, 20 or 167 entries to a thing.
// Printed for each size: weighing from cold, beside a bare SQLite insert of as many rows as there are
// comparisons, in the same run; one changed claim and one changed entry weighed anew; the report; and the peak
// of memory of the whole, in a process of its own.
//
//   weigh_bench [CLAIMS ...]                      default 1000 10000 100000
//   weigh_bench --make FILE CLAIMS TO-A-THING     only makes such a site file, for measuring the commands
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <string>

#include "bench/made_site.h"
#include "bench/must.h"
#include "witnessmark/app/bounds.h"
#include "witnessmark/app/coding_desk.h"
#include "witnessmark/app/contradictions.h"
#include "witnessmark/app/corroboration.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/store/claim_acts.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/store/weighings.h"

using namespace witnessmark;

namespace {

struct Spent {
  double wall = 0, processor = 0;
};
Spent spent(const std::function<void()>& work) {
  const auto begin = std::chrono::steady_clock::now();
  const std::clock_t processor = std::clock();
  work();
  return {std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count(),
          static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC};
}

/// As many rows of eight numbers straight into SQLite, with an index as one would need it.
double bare_insert(const std::filesystem::path& path, std::int64_t rows) {
  std::filesystem::remove(path);
  sqlite3* handle = nullptr;
  if (sqlite3_open(path.c_str(), &handle) != SQLITE_OK) std::exit(1);
  sqlite3_exec(handle,
               "PRAGMA journal_mode = WAL; CREATE TABLE t (a, b, c, d, e, f, g, h, PRIMARY KEY (a, b)) "
               "WITHOUT ROWID; BEGIN",
               nullptr, nullptr, nullptr);
  sqlite3_stmt* insert = nullptr;
  sqlite3_prepare_v2(handle, "INSERT INTO t VALUES (?, ?, ?, ?, ?, ?, ?, ?)", -1, &insert, nullptr);
  const Spent time = spent([&] {
    for (std::int64_t i = 0; i < rows; ++i) {
      sqlite3_bind_int64(insert, 1, i / 20);
      for (int column = 2; column <= 8; ++column) sqlite3_bind_int64(insert, column, i % 20 + column);
      if (sqlite3_step(insert) != SQLITE_DONE) std::exit(1);
      sqlite3_reset(insert);
    }
    sqlite3_exec(handle, "COMMIT", nullptr, nullptr, nullptr);
  });
  sqlite3_finalize(insert);
  sqlite3_close(handle);
  std::filesystem::remove(path);
  return time.wall;
}

double peak_megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

void run(int claims, int entries_to_a_thing, const Surroundings& surroundings) {
  const auto path = std::filesystem::temp_directory_path() / fmt::format("weigh-bench-{}.site", getpid());
  std::filesystem::remove(path);
  const Editor editor{"Bench", seeded_random(1), {}};
  {
    SiteFile site = must(SiteFile::create(path, {{}, "Bench", "", ""}, editor));
    MadeSite(claims, entries_to_a_thing).fill(site);
  }
  const double filled = peak_megabytes();
  const auto size_before = std::filesystem::file_size(path);
  std::optional<SiteFile> site(must(SiteFile::edit(path, editor)));
  std::int64_t weighed = 0;
  const Spent cold = spent([&] { weighed = must(weigh(*site, false, surroundings)); });
  const double peak = peak_megabytes();
  std::int64_t comparisons = 0;
  for (const OutcomeCount& count : count_outcomes(*site))
    if (count.outcome != Outcome::silent) comparisons += count.count;
  const double bare = bare_insert(path.string() + ".bare", comparisons);
  fmt::print("{:>6} claims x {:>5} entries, {:>3} to a thing: {:>8} comparisons in {:6.2f} s ({:.2f} s of the "
             "processor), {:.2f} of a bare insert of as many rows\n",
             weighed, claims / 5, entries_to_a_thing, comparisons, cold.wall, cold.processor, cold.wall / bare);

  const auto stored = load_claims(*site, {.statuses = {ClaimStatus::said_so}, .with_mentions = false});
  Claim claim = stored[stored.size() / 2].claim;
  claim.when.dated.value = edtf_year(1955);
  claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
  must(decide_claim(*site, claim, ""));
  const Spent one = spent([&] { weighed = must(weigh(*site, false, surroundings)); });
  fmt::print("       one claim's date changed: {} weighed in {:.1f} ms\n", weighed, one.wall * 1e3);
  Register changed;
  changed.entries = {load_register(*site).entries[7]};
  changed.entries[0].when.value = edtf_year(1954);
  must(save_register(*site, changed));
  const Spent entry = spent([&] { weighed = must(weigh(*site, false, surroundings)); });
  fmt::print("       one entry's date changed: {} weighed in {:.1f} ms\n", weighed, entry.wall * 1e3);
  fmt::print("       site file {:.1f} MB before, {:.1f} MB after; peak of memory {:.0f} MB, {:.0f} MB before weighing\n",
             static_cast<double>(size_before) / 1e6, static_cast<double>(std::filesystem::file_size(path)) / 1e6,
             peak, filled);
  // What a plain `weigh` prints: the claims, and a total of each other section.
  fmt::print("       report, s of the processor:");
  const auto report = [](const char* name, const std::function<void()>& work) {
    fmt::print(" {} {:.2f}", name, spent(work).processor);
    std::fflush(stdout);
  };
  report("claims", [&] { must(weighing_account(*site, surroundings)); });
  report("corroboration", [&] { must(count_grades(*site, surroundings)); });
  report("bounds", [&] { must(bounds_account(*site, "", 0, surroundings)); });
  report("contradictions", [&] { must(contradiction_account(*site, "", 0, surroundings)); });
  fmt::print("; peak {:.0f} MB\n", peak_megabytes());
  std::fflush(stdout);
  {
    site.reset();
    CodingDesk desk = must(CodingDesk::open(path, surroundings, false));
    claim.when.dated.value = edtf_year(1956);
    claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
    const Spent decided = spent([&] { must(desk.correct(claim, "")); });
    fmt::print("       at the desk: a corrected claim decided, weighed and on the disk in {:.1f} ms\n",
               decided.wall * 1e3);
  }
  std::filesystem::remove(path);
}

}  // namespace

int main(int count, char** arguments) {
  if (count == 5 && std::string_view(arguments[1]) == "--make") {
    SiteFile site = must(SiteFile::create(arguments[2], {{}, "Bench", "", ""}, {"Bench", seeded_random(1), {}}));
    MadeSite(std::atoi(arguments[3]), std::atoi(arguments[4])).fill(site);
    return 0;
  }
  std::vector<int> sizes;
  for (int i = 1; i < count; ++i) sizes.push_back(std::atoi(arguments[i]));
  if (sizes.empty()) sizes = {1000, 10'000, 100'000};
  const SystemFileReader files;
  const std::filesystem::path shared = WITNESSMARK_SOURCE_DIR "/shared";
  const Surroundings surroundings{files,   shared,           shared / "language" / "en", Day{22'000},
                                  "Bench", seeded_random(2), {},                         {}};
  for (const int to_a_thing : {5, 20, 167}) {
    for (const int size : sizes) {
      std::fflush(stdout);
      const pid_t child = fork();
      if (child == 0) {
        run(size, to_a_thing, surroundings);
        std::fflush(stdout);
        _exit(0);
      }
      int status = 0;
      if (child < 0 || waitpid(child, &status, 0) < 0 || status != 0) {
        fmt::print(stderr, "a measurement ended with status {}\n", status);
        return 1;
      }
    }
  }
  return 0;
}
