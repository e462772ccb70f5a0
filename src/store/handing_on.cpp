#include "witnessmark/store/handing_on.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "store/connection.h"
#include "store/journal_writer.h"
#include "witnessmark/store/journal.h"

namespace witnessmark {
namespace {

constexpr std::string_view kHandedOn = "handed-on";

}  // namespace

void note_handing_on(SiteFile& site, const HandedOn& what) {
  SiteTransaction transaction(site);
  const nlohmann::ordered_json after{{"to", what.to},
                                     {"format", what.format},
                                     {"sha256", what.sha256},
                                     {"claims", what.claims},
                                     {"interviews", what.interviews}};
  append_event(site.connection(), {.kind = std::string(kHandedOn),
                                   .target_kind = "export",
                                   .target = what.to.empty() ? "standard output" : what.to,
                                   .after = after.dump()});
  transaction.commit();
}

std::vector<HandedOn> handed_on_of(const SiteFile& site, const std::string& interview) {
  std::vector<HandedOn> found;
  for_each_event(site, [&](const JournalEvent& event) {
    if (event.kind != kHandedOn) return;
    const nlohmann::json after = nlohmann::json::parse(event.after, nullptr, false);
    if (!after.is_object()) return;
    HandedOn what;
    what.to = after.value("to", "");
    what.format = after.value("format", "");
    what.sha256 = after.value("sha256", "");
    what.claims = after.value("claims", std::int64_t{0});
    what.interviews = after.value("interviews", std::vector<std::string>());
    if (std::find(what.interviews.begin(), what.interviews.end(), interview) == what.interviews.end()) return;
    what.by = event.actor;
    what.wall_time = event.wall_time;
    found.push_back(std::move(what));
  });
  return found;
}

}  // namespace witnessmark
