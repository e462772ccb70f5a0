#include <fmt/core.h>
#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "witnessmark/app/coding_desk.h"
#include "witnessmark/terminal/session.h"

// From a key to the screen it makes, as text, at a large site file: handling the key, what it asks of the
// file, the view and the picture, without drawing on a terminal. Decisions are left out: they wait for the
// disk (store_bench has them).
//
//   store_bench 1000 100 FOLDER keep && terminal_bench FOLDER/witnessmark-bench.site SOURCE_TREE/shared

using namespace witnessmark;

namespace {

using Clock = std::chrono::steady_clock;

double milliseconds(Clock::time_point begin) {
  return std::chrono::duration<double, std::milli>(Clock::now() - begin).count();
}

class Sitting {
 public:
  explicit Sitting(Session& session) : session_(session) {}

  void press(const char* name, int times = 1) {
    for (int i = 0; i < times; ++i) {
      const auto begin = Clock::now();
      session_.press(*parse_key(name));
      const Picture picture = render(view(session_.state()), session_.state().size);
      spent_.push_back({milliseconds(begin), name});
      shown_ += as_text(picture).size();
    }
  }

  void type(const std::string& words) {
    for (const char c : words) press(std::string(1, c).c_str());
  }

  void print(const char* what) {
    std::sort(spent_.begin(), spent_.end());
    const auto at = [&](double share) {
      return spent_[static_cast<std::size_t>(share * static_cast<double>(spent_.size() - 1))].first;
    };
    fmt::print("{:<28} {:4} keys: median {:6.2f} ms, 99 of 100 within {:6.2f} ms, most {:6.2f} ms ({})\n",
               what, spent_.size(), at(0.5), at(0.99), spent_.back().first, spent_.back().second);
    all_.insert(all_.end(), spent_.begin(), spent_.end());
    spent_.clear();
  }

  void print_all() {
    spent_ = all_;
    print("all of them");
    if (shown_ == 0) std::exit(1);
  }

 private:
  Session& session_;
  std::vector<std::pair<double, std::string>> spent_, all_;
  std::size_t shown_ = 0;
};

/// As many rows of claims as a list holds at a time, read bare.
double bare_rows(const std::string& path) {
  sqlite3* handle = nullptr;
  if (sqlite3_open_v2(path.c_str(), &handle, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK) std::exit(1);
  sqlite3_stmt* statement = nullptr;
  sqlite3_prepare_v2(handle,
                     "SELECT * FROM claims ORDER BY review_rank, interview, first, claim LIMIT 300 OFFSET ?",
                     -1, &statement, nullptr);
  const auto begin = Clock::now();
  std::int64_t bytes = 0;
  constexpr int kTimes = 20;
  for (int i = 0; i < kTimes; ++i) {
    sqlite3_bind_int(statement, 1, i * 400);
    while (sqlite3_step(statement) == SQLITE_ROW)
      for (int column = 0; column < sqlite3_column_count(statement); ++column)
        bytes += sqlite3_column_bytes(statement, column);
    sqlite3_reset(statement);
  }
  const double each = milliseconds(begin) / kTimes;
  sqlite3_finalize(statement);
  sqlite3_close(handle);
  return bytes > 0 ? each : 0;
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 3) return fmt::print(stderr, "usage: terminal_bench SITE_FILE SHARED_FOLDER\n"), 2;
  const std::string path = arguments[1];
  const std::filesystem::path shared = arguments[2];
  const SystemFileReader files;
  const Surroundings around{
      files, shared, shared / "language" / "en", to_day({2026, 1, 15}), "bench", seeded_random(1), {}, {}};
  const auto begin = Clock::now();
  auto desk = CodingDesk::open(path, around);
  if (!desk) return fmt::print(stderr, "{}\n", to_string(desk.error())), 1;
  Session session(*desk, Size{120, 40});
  const Picture first = render(view(session.state()), session.state().size);
  fmt::print("open, to the first screen    {:.0f} ms ({} interviews)\n", milliseconds(begin),
             session.state().interviews.size());

  Sitting sitting(session);
  sitting.press("2");
  sitting.press("Down", 300);
  sitting.press("PageDown", 100);
  sitting.press("End");
  sitting.press("Home");
  sitting.print("list of all claims");
  sitting.press("Enter");
  sitting.press("Right", 100);
  sitting.press("PageDown", 5);
  sitting.press("Escape");
  sitting.print("claims in full");
  sitting.press("f");
  sitting.press("Down", 3);
  sitting.press("Right", 2);
  sitting.press("s");
  sitting.press("PageDown", 50);
  sitting.print("those of one statement");
  sitting.press("1");
  sitting.press("PageDown", 10);
  sitting.press("Enter");
  sitting.press("Down", 200);
  sitting.press("Tab");
  sitting.press("Down", 50);
  sitting.print("a transcript");
  sitting.press("/");
  sitting.type("crane");
  sitting.press("Enter");
  sitting.press("Down", 50);
  sitting.print("a search");
  sitting.print_all();
  const double bare = bare_rows(path);
  sitting.press("2");
  fmt::print("bare SQLite read of the 300 claim rows a list holds: {:.2f} ms\n", bare);
}
