#include "witnessmark/app/journal_listing.h"

#include <limits>

#include "app/names_of_events.h"
#include "witnessmark/app/withholding.h"
#include "witnessmark/store/claims.h"

namespace witnessmark {
namespace {

bool is_on(const JournalEvent& event, std::string_view on) {
  if (on.empty() || event.target == on || event.interview == on) return true;
  if (event.target.starts_with(std::string(on) + " ")) return true;
  if (event.target_kind == "entry-link" && event.target.ends_with(" " + std::string(on))) return true;
  if (!parse_id(on)) return false;
  // Notes on a claim, and claims split from or absorbed into it, name it in their content.
  const std::string named = '"' + std::string(on) + '"';
  return event.before.find(named) != std::string::npos || event.after.find(named) != std::string::npos;
}

/// What the content is about: the quotes of its claim, else the whole text.
std::vector<CodePointRange> ranges_of(const SiteFile& site, const JournalEvent& event) {
  if (event.target_kind == "claim") {
    const auto id = parse_id(event.target);
    const auto claim = id ? find_claim(site, *id) : std::nullopt;
    if (claim && !claim->lost) return claim->claim.quotes;
  }
  return {{CodePoint{0}, CodePoint{std::numeric_limits<std::int64_t>::max()}}};
}

}  // namespace

std::string list_journal(const SiteFile& site, std::string_view on, Day today,
                         const std::function<void(const ListedEvent&)>& visit) {
  Withholding withholding(site, today);
  const NamesOfEvents names(withholding);
  for_each_event(site, [&](const JournalEvent& event) {
    if (!is_on(event, on)) return;
    ListedEvent listed{event, Withheld::none, event.interview};
    if (!event.interview.empty() && !event.erased) {
      const auto ranges = ranges_of(site, event);
      listed.withheld = withholding.reason(event.interview, ranges);
      if (listed.withheld != Withheld::none) withholding.may_show(event.interview, ranges);
    }
    if (listed.withheld != Withheld::none) listed.event.why.clear();
    if (listed.withheld != Withheld::none || event.target_kind == "person") {
      listed.event.before.clear();
      listed.event.after.clear();
    }
    names.take_out(listed.event);
    visit(listed);
  });
  return withholding.account("event");
}

}  // namespace witnessmark
