#include "witnessmark/base/file_system.h"

#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <csignal>
#include <fstream>
#include <stdexcept>

#include "witnessmark/base/id.h"

using namespace witnessmark;
namespace fs = std::filesystem;

namespace {

/// A folder of its own, gone at the end.
class TemporaryFolder {
 public:
  TemporaryFolder()
      : path_(fs::temp_directory_path() / ("file-system-test-" + to_string(make_id(system_random())))) {
    fs::create_directories(path_);
  }
  ~TemporaryFolder() { fs::remove_all(path_); }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  fs::path operator/(const char* name) const { return path_ / name; }
  std::ptrdiff_t count() const {
    return std::distance(fs::directory_iterator(path_), fs::directory_iterator());
  }

 private:
  fs::path path_;
};

/// Lets no file grow past the limit while in scope, as a full disk would.
class SmallDisk {
 public:
  explicit SmallDisk(rlim_t limit) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const struct rlimit small = {limit, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &small);
  }
  ~SmallDisk() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;

 private:
  struct rlimit before_ {};
  void (*handler_)(int);
};

std::string read(const fs::path& path) {
  const auto bytes = SystemFileReader().read(path);
  return bytes ? *bytes : "error: " + to_string(bytes.error());
}

}  // namespace

TEST_CASE("what is written is read back byte for byte") {
  const TemporaryFolder folder;
  for (const std::string& bytes : {std::string(), std::string("a\0\r\n\xff", 5), std::string(300000, 'x')}) {
    REQUIRE(write_file(folder / "log.csv", bytes).ok());
    CHECK(read(folder / "log.csv") == bytes);
    CHECK(folder.count() == 1);
  }
}

TEST_CASE("the files of a folder are named in order, folders left out") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder / "within");
  for (const char* name : {"b.txt", "a.vtt"}) REQUIRE(write_file(folder / name, ""));
  CHECK(SystemFileReader().names_in((folder / "b.txt").parent_path()) ==
        std::vector<std::string>{"a.vtt", "b.txt"});
  CHECK(SystemFileReader().names_in(folder / "nowhere").empty());
}

TEST_CASE("a file of no stated size is read whole") {
  // The kernel states size 0 for the files of /proc.
  const auto bytes = SystemFileReader().read("/proc/self/status");
  REQUIRE(bytes);
  CHECK(bytes->starts_with("Name:"));
}

TEST_CASE("a file that cannot be read is an error that names it") {
  const TemporaryFolder folder;
  const SystemFileReader reader(10);
  REQUIRE(write_file(folder / "ten", "0123456789").ok());
  REQUIRE(write_file(folder / "eleven", "0123456789a").ok());
  struct Row {
    fs::path path;
    const char* fault;
  };
  const Row rows[] = {
      {folder / "missing", "there is no such file (check the name and the folder)"},
      {folder / "ten/x", "there is no such file (check the name and the folder)"},
      {folder / ".", "is a folder, not a file (name a file in it)"},
      {folder / "eleven", "is larger than 10 bytes, the most read here (split it into parts)"},
      {"/dev/zero", "is larger than 10 bytes, the most read here (split it into parts)"},
      {"/proc/self/mem", "cannot be read: Input/output error (check that you may read it)"},
  };
  for (const Row& row : rows) {
    const auto bytes = reader.read(row.path);
    REQUIRE_FALSE(bytes);
    CHECK(to_string(bytes.error()) == row.path.string() + ": " + row.fault);
  }
  CHECK(reader.read(folder / "ten").ok());
  CHECK(reader.exists(folder / "ten"));
  CHECK_FALSE(reader.exists(folder / "missing"));
}

TEST_CASE("a place that cannot be written to is an error that names it") {
  const TemporaryFolder folder;
  struct Row {
    fs::path path;
    const char* fault;
  };
  const Row rows[] = {
      {folder / "no/such/log.csv", "cannot be written: its folder does not exist (make the folder first)"},
      {folder / ".", "is a folder, not a file (name a file in it)"},
      {"/dev/full",
       "cannot be written: No space left on device (check the room on the disk and your rights there)"},
  };
  for (const Row& row : rows) {
    const auto written = write_file(row.path, "text");
    REQUIRE_FALSE(written);
    CHECK(to_string(written.error()) == row.path.string() + ": " + row.fault);
  }
  CHECK(folder.count() == 0);
}

TEST_CASE("when writing fails half-way the old file stands and nothing is left beside it") {
  const TemporaryFolder folder;
  REQUIRE(write_file(folder / "log.csv", "old").ok());
  {
    const SmallDisk disk(1000);
    CHECK_FALSE(write_file(folder / "log.csv", std::string(5000, 'x')).ok());
  }
  CHECK(read(folder / "log.csv") == "old");
  CHECK(folder.count() == 1);
}

TEST_CASE("a file that is replaced keeps its rights, and a new one has those of the machine") {
  const TemporaryFolder folder;
  std::ofstream(folder / "by-others") << "x";
  REQUIRE(write_file(folder / "by-us", "x").ok());
  CHECK(fs::status(folder / "by-us").permissions() == fs::status(folder / "by-others").permissions());
  fs::permissions(folder / "by-us", fs::perms::owner_read | fs::perms::owner_write);
  REQUIRE(write_file(folder / "by-us", "y").ok());
  CHECK(fs::status(folder / "by-us").permissions() == (fs::perms::owner_read | fs::perms::owner_write));
}

TEST_CASE("a symbolic link stays and what it points to is replaced") {
  const TemporaryFolder folder;
  REQUIRE(write_file(folder / "real", "old").ok());
  fs::create_symlink("real", folder / "link");
  REQUIRE(write_file(folder / "link", "new").ok());
  CHECK(fs::is_symlink(folder / "link"));
  CHECK(read(folder / "real") == "new");
  CHECK(folder.count() == 2);
}

TEST_CASE("a file is written into the present folder by its bare name") {
  const TemporaryFolder folder;
  const fs::path before = fs::current_path();
  fs::current_path(folder / ".");
  const bool written = write_file("bare", "x").ok();
  fs::current_path(before);
  CHECK(written);
  CHECK(read(folder / "bare") == "x");
}

TEST_CASE("what is to be done first is done before a file shows, and when it fails nothing stays") {
  const TemporaryFolder folder;
  REQUIRE(write_file(folder / "claims.csv", "old").ok());
  std::string seen;
  const auto look = [&]() -> Result<void> {
    seen = read(folder / "claims.csv");
    return {};
  };
  CHECK(write_file(folder / "claims.csv", "new", look).ok());
  CHECK(seen == "old");
  CHECK(read(folder / "claims.csv") == "new");
  CHECK_FALSE(write_file(folder / "claims.csv", "newer", []() -> Result<void> {
    return Error{"", 0, 0, "cannot be noted", ""};
  }));
  CHECK_THROWS(write_file(folder / "claims.csv", "newer",
                          []() -> Result<void> { throw std::runtime_error("no room"); }));
  CHECK(read(folder / "claims.csv") == "new");
  CHECK(folder.count() == 1);
}
