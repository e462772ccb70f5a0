#pragma once
#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/file_system.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/store/weighings.h"

namespace witnessmark {

/// Files held in memory, with the real ones behind them for paths it does not have.
class MemoryFiles final : public FileReader {
 public:
  Result<std::string> read(const std::filesystem::path& path) const override;
  bool exists(const std::filesystem::path& path) const override;
  std::map<std::string, std::string> files;

 private:
  SystemFileReader system_;
};

/// The project's own source tree.
std::filesystem::path source_tree();

/// Every file below a folder, each changed by `change` (path relative to the folder, bytes).
MemoryFiles files_of(const std::filesystem::path& folder,
                     const std::function<std::string(const std::string&, std::string)>& change = {});

Surroundings surroundings_of(const FileReader& files, Day today);

/// A site file in memory with the lists, register, interviews, proposals and weighings of a folder laid out as the demo
/// corpus. Throws with all that was remarked when a step is refused.
SiteFile whole_job(const FileReader& files, const std::filesystem::path& folder, Day today);

}  // namespace witnessmark
