#pragma once
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "kill/work.h"
#include "store/random_coder.h"
#include "store/table_dump.h"
#include "witnessmark/store/undo.h"
#include "witnessmark/store/workplace.h"

namespace witnessmark::sample {

constexpr const char* kSessionCoder = "S. Coder";

/// A coder at work: decisions of every kind, undone and redone now and then, each with where the coder then
/// stands in one transaction; between them only that.
inline std::vector<std::function<void(SiteFile&)>> coding_steps(int count, std::uint64_t seed, int turns) {
  std::vector<std::function<void(SiteFile&)>> steps;
  const auto coder = std::make_shared<std::unique_ptr<RandomCoder>>();
  for (int n = 1; n <= count; ++n) {
    steps.push_back([=](SiteFile& site) {
      if (!*coder) *coder = std::make_unique<RandomCoder>(site, seed, "aske-1", long_talk(turns, "aske-1"));
      const std::string stands = "{\"step\":" + std::to_string(n) + "}";
      if (n % 4 == 0) must(save_workplace(site, kSessionCoder, "{\"step\":" + std::to_string(n - 1) + "}"));
      SiteTransaction transaction(site);
      if (n % 7 == 0) {
        must(undo(site));
      } else if (n % 11 == 0) {
        must(redo(site));
      } else {
        (*coder)->act();
      }
      must(save_workplace(site, kSessionCoder, stands));
      transaction.commit();
    });
  }
  return steps;
}

/// The step a coder's workplace tells of; 0 for none.
inline int step_kept(const SiteFile& site) {
  const auto kept = load_workplace(site, kSessionCoder);
  return kept ? std::stoi(kept->substr(kept->find(':') + 1)) : 0;
}

/// All that must hold after a session ended in whatever way: what was confirmed is there, it is sound, stands
/// where it stood, and what was done can be undone and done again.
inline void check_session(const std::filesystem::path& path, std::int64_t confirmed_events,
                          int confirmed_steps) {
  SiteFile site = must(SiteFile::edit(path, editor(kSessionCoder, 99)));
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(count_events(site) >= confirmed_events);
  CHECK(step_kept(site) >= confirmed_steps);
  const auto before = state_dump(site);
  if (!must(undo(site))) return;
  must(redo(site));
  CHECK(first_difference(before, state_dump(site)) == "");
  while (must(undo(site))) {
  }
  CHECK(findings(site) == std::vector<std::string>{});
}

}  // namespace witnessmark::sample
