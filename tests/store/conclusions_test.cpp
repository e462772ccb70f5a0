#include "witnessmark/store/conclusions.h"

#include "store/sample_site.h"
#include "witnessmark/store/journal.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

Conclusion conclusion(const std::string& key, const std::string& wording,
                      std::vector<std::string> replaces = {}) {
  Conclusion made;
  made.key = key;
  made.wording = wording;
  made.reasons = "the log";
  made.author = "O. Brandt";
  made.date = dated("1995");
  made.evidence = {"e1"};
  made.replaces = std::move(replaces);
  return made;
}

ConclusionFile file() {
  ConclusionFile made;
  made.conclusions = {conclusion("c1", "Gone by 1962"), conclusion("c2", "Gone in 1963", {"c1"})};
  made.enquiries = {{{}, "q1", "When?", "By 1962", "A reader", "O. Brandt", dated("1996-02"), {"c1"}, ""}};
  Search search;
  search.key = "s1";
  search.source = evidence().sources.front().key;
  search.subject = "crane";
  search.when = dated("1962");
  search.author = "O. Brandt";
  made.searches = {search};
  return made;
}

}  // namespace

TEST_CASE("conclusions, enquiries and searches come back as taken in, and the journal replays to them") {
  SiteFile site = site_in_memory();
  must(save_register(site, evidence()));
  must(save_conclusions(site, file()));
  ConclusionFile loaded = load_conclusions(site);
  for (auto& row : loaded.conclusions) {
    CHECK(!row.id.is_nil());
    row.id = {};
  }
  for (auto& row : loaded.enquiries) row.id = {};
  for (auto& row : loaded.searches) row.id = {};
  CHECK(loaded.conclusions == file().conclusions);
  CHECK(loaded.enquiries == file().enquiries);
  CHECK(loaded.searches == file().searches);
  const auto events = count_events(site);
  CHECK(!must(save_conclusions(site, file())).any());
  CHECK(count_events(site) == events);
  ConclusionFile changed = file();
  changed.conclusions[0].published = "Guidebook of 1996";
  CHECK(must(save_conclusions(site, changed)).changed ==
        std::vector<ChangedRow>{{"conclusion", "c1", {"published"}}});
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("conclusions do not replace one another in a circle, and nothing names what is not there") {
  SiteFile site = site_in_memory();
  must(save_register(site, evidence()));
  must(save_conclusions(site, file()));
  CHECK(save_conclusions(site, {{conclusion("c1", "Gone by 1962", {"c2"})}, {}, {}}).error().message ==
        "conclusion \"c1\" replaces itself, through others or at once");
  CHECK(save_conclusions(site, {{conclusion("c3", "W", {"c9"})}, {}, {}}).error().message ==
        "conclusion \"c3\" names conclusion \"c9\", which is not known");
  ConclusionFile lost = file();
  lost.searches[0].source = "none";
  CHECK(save_conclusions(site, lost).error().message ==
        "search \"s1\" names source \"none\", which is not known");
}

TEST_CASE("what was done to what a conclusion rests on is told until the conclusion is looked at again") {
  SiteFile site = site_in_memory();
  Register held = evidence();
  must(save_register(site, held));
  must(save_conclusions(site, file()));
  CHECK(changed_since_concluded(site).empty());
  held.entries[1].locator = "p. 12";  // nothing rests on it
  must(save_register(site, held));
  CHECK(changed_since_concluded(site).empty());
  held.entries[0].when = dated("1960");
  must(save_register(site, held));
  const auto changes = changed_since_concluded(site);
  REQUIRE(changes.size() == 2);
  REQUIRE(changes.at("c1").size() == 1);
  CHECK(changes.at("c1")[0].kind == "changed");
  CHECK(changes.at("c1")[0].target == "e1");
  ConclusionFile again = file();
  again.conclusions[1].reasons = "the log, as corrected";
  must(save_conclusions(site, again));
  CHECK(changed_since_concluded(site).contains("c1"));
  CHECK_FALSE(changed_since_concluded(site).contains("c2"));
}
