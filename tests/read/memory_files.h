#pragma once
#include <map>
#include <string>

#include "witnessmark/base/file_system.h"

/// Files of a test, by path.
class MemoryFiles final : public witnessmark::FileReader {
 public:
  explicit MemoryFiles(std::map<std::string, std::string> files) : files_(std::move(files)) {}
  witnessmark::Result<std::string> read(const std::filesystem::path& path) const override {
    const auto found = files_.find(path.string());
    if (found != files_.end()) return found->second;
    return witnessmark::Error{path.string(), 0, 0, "there is no such file", "check the path"};
  }
  bool exists(const std::filesystem::path& path) const override { return files_.contains(path.string()); }

 private:
  std::map<std::string, std::string> files_;
};

/// Diagnostics and unresolved keys, one a line.
template <typename Reading>
std::string faults(const Reading& reading) {
  std::string lines;
  for (const auto& diagnostic : reading.diagnostics) lines += to_string(diagnostic) + "\n";
  for (const auto& open : reading.unresolved) lines += "unresolved: " + to_string(open.what) + "\n";
  return lines;
}
