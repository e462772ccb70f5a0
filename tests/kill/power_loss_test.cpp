#include <doctest/doctest.h>

#include <fstream>
#include <optional>
#include <stdexcept>

#include "kill/coding_session.h"
#include "kill/lossy_disk.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

constexpr int kTurns = 12;

/// How far the work came before the power went.
struct Progress {
  bool created = false;        ///< create() had returned.
  std::int64_t confirmed = 0;  ///< Events there when the last step had returned.
  int steps = 0;               ///< That had returned.
  bool inside_step = false;    ///< The power went between the begin and the end of a step.
  std::int64_t operations = 0;
};

/// Works on a disk that loses its power after so many operations.
Progress work_until_loss(LossyDisk& disk, const std::filesystem::path& path,
                         const std::vector<std::function<void(SiteFile&)>>& steps) {
  Progress progress;
  try {
    auto created = SiteFile::create(path, {{}, "Tender Guillemot", "2031", "built-in"}, editor(kSessionCoder),
                                    {disk.name(), 0});
    if (created.ok()) {
      SiteFile site = std::move(created).value();
      progress.created = true;
      progress.confirmed = count_events(site);
      for (const auto& step : steps) {
        progress.inside_step = true;
        step(site);
        progress.confirmed = count_events(site);
        ++progress.steps;
        progress.inside_step = false;
      }
    }
  } catch (const std::runtime_error&) {
    CHECK(disk.lost());
  }
  progress.operations = disk.operations();
  return progress;
}

/// Starts the machine again: the surviving files in a folder, opened with SQLite's own file layer.
template <typename Check>
void with_survivors(const LossyDisk& disk, const std::filesystem::path& path, Loss loss, std::uint64_t seed,
                    Check check) {
  // In memory where there is such a place: thousands of files are made, and none has to last.
  static const std::filesystem::path kMemory = "/dev/shm";
  const TemporaryFolder folder(
      std::filesystem::is_directory(kMemory) ? kMemory : std::filesystem::temp_directory_path());
  const auto found = folder / "guillemot.site";
  for (const auto& [name, content] : disk.survivors(loss, seed)) {
    std::ofstream(found.string() + name.substr(path.string().size()), std::ios::binary) << content;
  }
  check(found);
}

void check_survivors(const LossyDisk& disk, const Progress& progress, const std::filesystem::path& path,
                     Loss loss, std::uint64_t seed) {
  with_survivors(disk, path, loss, seed, [&](const std::filesystem::path& found) {
    auto opened = SiteFile::edit(found, editor("B. Other", 2));
    if (!opened.ok()) {
      // Only a site file that never was: and its name can be used.
      CHECK_MESSAGE(!progress.created, to_string(opened.error()));
      CHECK(SiteFile::create(found, {{}, "Tender Guillemot", "", ""}, editor()).ok());
      return;
    }
    CHECK(findings(*opened) == std::vector<std::string>{});
    CHECK(count_events(*opened) >= progress.confirmed);
    // And it can be worked with.
    must(save_list(*opened, places()));
  });
}

}  // namespace

TEST_CASE("whenever the power goes, what was confirmed is there and verify accepts") {
  const auto at_root = std::filesystem::temp_directory_path() / "guillemot-lossy.site";
  std::int64_t all = 0;
  {
    LossyDisk disk("lossy-whole", std::int64_t{1} << 40);
    const Progress progress = work_until_loss(disk, at_root, work_steps(kTurns));
    REQUIRE(progress.created);
    REQUIRE(!progress.inside_step);
    all = progress.operations;
  }
  REQUIRE(all > 300);
  std::int64_t losses = 0;
  std::int64_t inside = 0;
  const std::int64_t stride = std::max<std::int64_t>(1, all / 400);
  for (std::int64_t at = 0; at < all; at += stride) {
    LossyDisk disk("lossy", at);
    const Progress progress = work_until_loss(disk, at_root, work_steps(kTurns));
    REQUIRE(disk.lost());
    ++losses;
    inside += progress.inside_step ? 1 : 0;
    CAPTURE(at);
    check_survivors(disk, progress, at_root, Loss::all, 0);
    check_survivors(disk, progress, at_root, Loss::some, static_cast<std::uint64_t>(at));
    check_survivors(disk, progress, at_root, Loss::torn, static_cast<std::uint64_t>(at));
  }
  MESSAGE("power lost " << losses << " times in " << all << " operations, " << inside
                        << " times inside a step");
  CHECK(inside > 25);
}

TEST_CASE("whenever the power goes in a coding session, every decision confirmed is there, and undo works") {
  const auto at_root = std::filesystem::temp_directory_path() / "guillemot-lossy.site";
  const auto steps_to = [](int acts) {
    auto steps = work_steps(kSessionTurns);
    steps.resize(kStepsBeforeCoding);
    for (auto& step : coding_steps(acts, 3, kSessionTurns)) steps.push_back(std::move(step));
    return steps;
  };
  const auto operations_of = [&](int acts) {
    LossyDisk disk("lossy-session-whole", std::int64_t{1} << 40);
    return work_until_loss(disk, at_root, steps_to(acts)).operations;
  };
  constexpr int kActs = 40;
  // Closing is after the last step: what is written then is in both.
  const std::int64_t begin = operations_of(1);
  const std::int64_t end = operations_of(kActs);
  std::int64_t losses = 0;
  std::int64_t inside = 0;
  const std::int64_t stride = std::max<std::int64_t>(1, (end - begin) / 200);
  for (std::int64_t at = begin; at < end; at += stride) {
    LossyDisk disk("lossy-session", at);
    const Progress progress = work_until_loss(disk, at_root, steps_to(kActs));
    REQUIRE(disk.lost());
    REQUIRE(progress.created);
    ++losses;
    inside += progress.inside_step ? 1 : 0;
    CAPTURE(at);
    for (const Loss loss : {Loss::all, Loss::some, Loss::torn}) {
      with_survivors(
          disk, at_root, loss, static_cast<std::uint64_t>(at), [&](const std::filesystem::path& found) {
            check_session(found, progress.confirmed, progress.steps - static_cast<int>(kStepsBeforeCoding));
          });
    }
  }
  MESSAGE("power lost " << losses << " times in a session, " << inside << " times inside a step");
  CHECK(losses >= 200);
  CHECK(inside >= 50);
}

TEST_CASE("the lossy disk does lose: without syncing, confirmed work is gone") {
  const auto at_root = std::filesystem::temp_directory_path() / "guillemot-lossy.site";
  LossyDisk disk("lossy-unsynced", std::int64_t{1} << 40);
  sqlite3* handle = nullptr;
  REQUIRE(sqlite3_open_v2(at_root.c_str(), &handle, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE,
                          "lossy-unsynced") == SQLITE_OK);
  REQUIRE(sqlite3_exec(handle, "PRAGMA synchronous = OFF; CREATE TABLE t (x); INSERT INTO t VALUES (1)",
                       nullptr, nullptr, nullptr) == SQLITE_OK);
  CHECK(disk.survivors(Loss::all, 0)[at_root.string()].empty());
  REQUIRE(sqlite3_exec(handle, "PRAGMA synchronous = FULL; INSERT INTO t VALUES (2)", nullptr, nullptr,
                       nullptr) == SQLITE_OK);
  CHECK(disk.survivors(Loss::all, 0)[at_root.string()].size() == 2 * 4096);
  sqlite3_close(handle);
}
