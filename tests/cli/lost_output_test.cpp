// What a command prints must arrive: where the disk is full, a pipe is broken or /dev/full is meant, it does not end as done.
#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <sstream>

#include "witnessmark/cli/run.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/site_file.h"

using namespace witnessmark;

namespace {

namespace fs = std::filesystem;

/// Takes so many bytes in all, as a disk does that is nearly full; like a file it says so only when it is flushed.
class NearlyFull final : public std::streambuf {
 public:
  explicit NearlyFull(std::size_t room) : room_(room) {}

 private:
  int_type overflow(int_type byte) override {
    ++taken_;
    return traits_type::not_eof(byte);
  }
  std::streamsize xsputn(const char*, std::streamsize count) override {
    taken_ += static_cast<std::size_t>(count);
    return count;
  }
  int sync() override { return taken_ > room_ ? -1 : 0; }

  std::size_t room_, taken_ = 0;
};

class LostOutputFolder {
 public:
  LostOutputFolder() : path_(fs::temp_directory_path() / ("witnessmark-lost-output-" + std::to_string(getpid()))) {
    fs::remove_all(path_);
    fs::create_directories(path_);
  }
  ~LostOutputFolder() { fs::remove_all(path_); }
  std::string file(const char* name) const { return (path_ / name).string(); }

 private:
  fs::path path_;
};

struct Ended {
  int code = 0;
  std::string said;
};

Ended ended(const std::vector<std::string>& arguments, std::size_t room) {
  NearlyFull disk(room);
  std::istringstream in;
  std::ostream out(&disk);
  std::ostringstream err;
  const SystemFileReader files;
  const int code =
      run(arguments, {in, out, err, files, fs::path(WITNESSMARK_SOURCE_DIR) / "shared", to_day({2026, 1, 15}),
                      "tester", seeded_random(3), [] { return std::string("2026-01-15T10:00:00+0000"); }, false,
                      nullptr});
  return {code, err.str()};
}

std::size_t acts_noted(const std::string& file) {
  const auto site = SiteFile::read(file);
  REQUIRE(site);
  std::size_t acts = 0;
  for_each_event(*site, [&](const JournalEvent&) { ++acts; });
  return acts;
}

}  // namespace

TEST_CASE("a command whose output is lost does not end as done") {
  const LostOutputFolder folder;
  const std::string site = folder.file("site.wms"), places = folder.file("places.csv");
  const auto written = write_file(places, "place,name,within\nfore,Foredeck,\n");
  REQUIRE(written);
  constexpr std::size_t kRoom = 1'000'000;
  REQUIRE(ended({"create", site}, kRoom).code == kDone);
  REQUIRE(ended({"list", site, "places", places}, kRoom).code == kDone);
  const std::vector<std::vector<std::string>> commands{{"export", site},
                                                       {"said-about", site, "Foredeck"},
                                                       {"weigh", site},
                                                       {"verify", site},
                                                       {"journal", site},
                                                       {"open-questions", site},
                                                       {"configuration", site, "--on", "1958"},
                                                       {"edtf", "1958"},
                                                       {"dates", "it was in 1958"},
                                                       {"--help"},
                                                       {"--version"}};
  for (const auto& command : commands) {
    CAPTURE(command.front());
    CHECK(ended(command, kRoom).code == kDone);
    const Ended full = ended(command, 0);
    CHECK(full.code == kMachineFailed);
    CHECK(full.said.find("could not all be written") != std::string::npos);
  }
}

TEST_CASE("an export that did not arrive is not noted as handed on") {
  const LostOutputFolder folder;
  const std::string site = folder.file("site.wms");
  REQUIRE(ended({"create", site}, 1'000).code == kDone);
  const std::size_t before = acts_noted(site);
  CHECK(ended({"export", site}, 0).code == kMachineFailed);
  CHECK(acts_noted(site) == before);
  CHECK(ended({"export", site}, 100'000).code == kDone);
  CHECK(acts_noted(site) == before + 1);
}
