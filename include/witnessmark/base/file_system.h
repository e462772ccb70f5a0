#pragma once
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/result.h"

namespace witnessmark {

/// Reads files whole. An argument wherever files are read, so that tests need none.
class FileReader {
 public:
  virtual ~FileReader() = default;
  /// The file's bytes; an Error naming the path when it is missing, a folder, unreadable or over the size
  /// limit.
  virtual Result<std::string> read(const std::filesystem::path& path) const = 0;
  virtual bool exists(const std::filesystem::path& path) const = 0;
  /// Names of the files in a folder, sorted; none when it cannot be looked into. For advice on a misspelt
  /// name.
  virtual std::vector<std::string> names_in(const std::filesystem::path& folder) const;
};

/// The real file system. Files over limit_bytes are refused.
class SystemFileReader final : public FileReader {
 public:
  explicit SystemFileReader(std::int64_t limit_bytes = std::int64_t{1} << 30) : limit_bytes_(limit_bytes) {}
  Result<std::string> read(const std::filesystem::path& path) const override;
  bool exists(const std::filesystem::path& path) const override;
  std::vector<std::string> names_in(const std::filesystem::path& folder) const override;

 private:
  std::int64_t limit_bytes_;
};

/// Writes the whole file beside its place, makes it durable and renames it: nothing half-written ever stands
/// there. Keeps the rights of a file it replaces and writes through a symbolic link. A pipe or device is
/// written to as it is. `first` is done when all is on the disk and before any of it shows under that name:
/// when it fails or throws, nothing stays. An Error naming the path when its folder is missing, it is a
/// folder, or the system refuses.
Result<void> write_file(const std::filesystem::path& path, std::string_view bytes,
                        const std::function<Result<void>()>& first = nullptr);

}  // namespace witnessmark
