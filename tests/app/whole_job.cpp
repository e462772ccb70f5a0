#include "whole_job.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "witnessmark/app/propose.h"
#include "witnessmark/app/take_in.h"
#include "witnessmark/app/weigh.h"

namespace witnessmark {
namespace {

template <typename Account>
void must_be_done(const Account& account) {
  if (account.done) return;
  std::string all;
  for (const Diagnostic& diagnostic : account.diagnostics) all += to_string(diagnostic) + "\n";
  throw std::runtime_error(all);
}

}  // namespace

Result<std::string> MemoryFiles::read(const std::filesystem::path& path) const {
  const auto at = files.find(path.string());
  if (at != files.end()) return at->second;
  return system_.read(path);
}

bool MemoryFiles::exists(const std::filesystem::path& path) const {
  return files.contains(path.string()) || system_.exists(path);
}

std::filesystem::path source_tree() { return WITNESSMARK_SOURCE_DIR; }

MemoryFiles files_of(const std::filesystem::path& folder,
                     const std::function<std::string(const std::string&, std::string)>& change) {
  MemoryFiles held;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file()) continue;
    std::ifstream file(entry.path(), std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    const std::string name = std::filesystem::relative(entry.path(), folder).string();
    held.files[entry.path().string()] = change ? change(name, text.str()) : text.str();
  }
  return held;
}

Surroundings surroundings_of(const FileReader& files, Day today) {
  const auto shared = source_tree() / "shared";
  return {files, shared, shared / "language" / "en", today, "tester", seeded_random(11), {}, {}};
}

SiteFile whole_job(const FileReader& files, const std::filesystem::path& folder, Day today) {
  const Surroundings around = surroundings_of(files, today);
  SiteFile site = std::move(SiteFile::create(":memory:", {{}, "test", "", ""}, {"tester", around.random, {}})).value();
  must_be_done(take_in_list(site, AuthorityList::Kind::places, folder / "places.csv", around));
  must_be_done(take_in_list(site, AuthorityList::Kind::equipment, folder / "equipment.csv", around));
  must_be_done(take_in_interviews(site, folder / "interviews.csv", {}, around));
  must_be_done(take_in_evidence(site, folder / "entries.csv", {}, around));
  if (const auto proposed = propose(site, {}, around); !proposed)
    throw std::runtime_error(to_string(proposed.error()));
  if (const auto weighed = weigh(site, false, around); !weighed) throw std::runtime_error(to_string(weighed.error()));
  return site;
}

}  // namespace witnessmark
