#include "witnessmark/base/file_system.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>

namespace witnessmark {
namespace {

namespace fs = std::filesystem;

Error file_error(const fs::path& path, std::string message, std::string advice) {
  return {path.string(), 0, 0, std::move(message), std::move(advice)};
}

std::string reason(int code) {
  return std::generic_category().message(code);
}

Error read_error(const fs::path& path, int code) {
  if (code == ENOENT || code == ENOTDIR) {
    return file_error(path, "there is no such file", "check the name and the folder");
  }
  if (code == EISDIR) return file_error(path, "is a folder, not a file", "name a file in it");
  return file_error(path, "cannot be read: " + reason(code), "check that you may read it");
}

Error write_error(const fs::path& path, int code) {
  if (code == ENOENT || code == ENOTDIR) {
    return file_error(path, "cannot be written: its folder does not exist", "make the folder first");
  }
  if (code == EISDIR) return file_error(path, "is a folder, not a file", "name a file in it");
  return file_error(path, "cannot be written: " + reason(code),
                    "check the room on the disk and your rights there");
}

/// An open file, closed when it goes out of scope.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;  // two owners would close it twice
  Descriptor& operator=(const Descriptor&) = delete;

  bool is_open() const { return number_ >= 0; }
  int number() const { return number_; }

  /// Closes and returns 0 or errno: some file systems report a failed write only now.
  int close() {
    const int result = ::close(number_);
    number_ = -1;
    return result == 0 ? 0 : errno;
  }

 private:
  int number_;
};

/// 0, or errno.
int write_all(const Descriptor& file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file.number(), bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

/// A pipe or a device has no place beside it that could be renamed onto it.
Result<void> write_straight(const fs::path& path, std::string_view bytes,
                            const std::function<Result<void>()>& first) {
  const Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
  if (!file.is_open()) return write_error(path, errno);
  if (first)
    if (auto done = first(); !done) return done;
  if (const int code = write_all(file, bytes)) return write_error(path, code);
  return {};
}

/// Makes the renaming itself durable. Some file systems cannot do that for folders; the file is whole all the
/// same.
void sync_folder(const fs::path& folder) {
  const Descriptor opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (opened.is_open()) ::fsync(opened.number());
}

/// Takes a file away that was not renamed.
class Temporary {
 public:
  explicit Temporary(const fs::path& name) : name_(name) {}
  ~Temporary() { ::unlink(name_.c_str()); }
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;

 private:
  const fs::path& name_;
};

/// A new file in the folder under a name nobody has, and the name.
Descriptor open_beside(const fs::path& folder, fs::path& name) {
  for (int attempt = 0; attempt < 1000; ++attempt) {
    name = folder / fmt::format(".writing-{}-{}", ::getpid(), attempt);
    const int number = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (number >= 0 || errno != EEXIST) return Descriptor(number);
  }
  return Descriptor(-1);
}

}  // namespace

Result<std::string> SystemFileReader::read(const fs::path& path) const {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.is_open()) return read_error(path, errno);
  struct stat about {};
  if (::fstat(file.number(), &about) != 0) return read_error(path, errno);
  if (S_ISDIR(about.st_mode)) return read_error(path, EISDIR);
  const Error too_large = file_error(
      path, fmt::format("is larger than {} bytes, the most read here", limit_bytes_), "split it into parts");
  if (S_ISREG(about.st_mode) && about.st_size > limit_bytes_) return too_large;

  // The size is only a hint: pipes have none and a file may grow while it is read.
  constexpr std::size_t kChunk = std::size_t{1} << 16;
  std::string bytes;
  std::size_t length = 0;
  while (true) {
    const auto hint = static_cast<std::size_t>(std::max<std::int64_t>(about.st_size, 0));
    if (bytes.size() == length) bytes.resize(length == 0 ? hint + 1 : length + std::max(kChunk, length / 2));
    const ssize_t got = ::read(file.number(), bytes.data() + length, bytes.size() - length);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return read_error(path, errno);
    if (got == 0) break;
    length += static_cast<std::size_t>(got);
    if (static_cast<std::int64_t>(length) > limit_bytes_) return too_large;
  }
  bytes.resize(length);
  return bytes;
}

bool SystemFileReader::exists(const fs::path& path) const {
  std::error_code code;
  return fs::exists(path, code);
}

std::vector<std::string> FileReader::names_in(const fs::path&) const {
  return {};
}

std::vector<std::string> SystemFileReader::names_in(const fs::path& folder) const {
  constexpr std::size_t kMost = 10'000;
  std::vector<std::string> names;
  std::error_code code;
  fs::directory_iterator entry(folder.empty() ? fs::path(".") : folder, code);
  for (; !code && entry != fs::directory_iterator() && names.size() < kMost; entry.increment(code)) {
    std::error_code unknown;
    if (entry->is_regular_file(unknown)) names.push_back(entry->path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

Result<void> write_file(const fs::path& path, std::string_view bytes,
                        const std::function<Result<void>()>& first) {
  struct stat before {};
  const bool replaces = ::stat(path.c_str(), &before) == 0;
  if (replaces && S_ISDIR(before.st_mode)) return write_error(path, EISDIR);
  if (replaces && !S_ISREG(before.st_mode)) return write_straight(path, bytes, first);

  // A symbolic link stays: what it points to is replaced.
  std::error_code unresolved;
  fs::path target = replaces ? fs::canonical(path, unresolved) : path;
  if (unresolved) target = path;
  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");

  fs::path temporary;
  Descriptor file = open_beside(folder, temporary);
  if (!file.is_open()) return write_error(path, errno);
  const Temporary removed_unless_renamed(temporary);
  int code = write_all(file, bytes);
  if (code == 0 && replaces && ::fchmod(file.number(), before.st_mode & 07777) != 0) code = errno;
  if (code == 0 && ::fsync(file.number()) != 0) code = errno;
  if (const int closing = file.close(); code == 0) code = closing;
  if (code == 0 && first)
    if (auto done = first(); !done) return done;
  if (code == 0 && ::rename(temporary.c_str(), target.c_str()) != 0) code = errno;
  if (code != 0) return write_error(path, code);
  sync_folder(folder);
  return {};
}

}  // namespace witnessmark
