// What a careful curator would conclude of the demo corpus from its statements together
// (corpus-demo/README.md, what is planted and where).
#include <doctest/doctest.h>

#include <algorithm>

#include "whole_job.h"
#include "witnessmark/app/bounds.h"
#include "witnessmark/app/contradictions.h"

using namespace witnessmark;

namespace {

StatementKey entry(const char* key) {
  return {StatementKey::Kind::entry, key};
}

const FixtureBounds& of(const BoundsAccount& account, std::string_view subject, std::string_view place) {
  const auto at = std::find_if(account.fixtures.begin(), account.fixtures.end(), [&](const ShownBounds& one) {
    return one.bounds.subject == subject && one.bounds.place == place;
  });
  REQUIRE(at != account.fixtures.end());
  return at->bounds;
}

bool no_limit(const FixtureBounds& bounds, const char* key, NoLimit why) {
  return std::any_of(bounds.no_bound.begin(), bounds.no_bound.end(),
                     [&](const NoBound& one) { return one.statement == entry(key) && one.why == why; });
}

}  // namespace

TEST_CASE("the searchlight of the demo: the books on one interview against log, photograph and letter") {
  const SystemFileReader files;
  const Day today = to_day({2026, 1, 15});
  const SiteFile site = whole_job(files, source_tree() / "corpus-demo", today);
  const Surroundings around = surroundings_of(files, today);
  const auto account = contradiction_account(site, "arc searchlight", 50, around).value();
  REQUIRE(account.reviewed.size() == 1);
  const auto& sets = account.reviewed.front().dispute.sets;
  for (const char* book : {"e-086", "e-087", "e-089"})
    for (const char* shown : {"e-077", "e-078", "e-079"}) {
      const bool found = std::any_of(sets.begin(), sets.end(), [&](const auto& set) {
        return set.size() == 2 && std::count(set.begin(), set.end(), entry(book)) == 1 &&
               std::count(set.begin(), set.end(), entry(shown)) == 1;
      });
      CHECK(found);
    }
  CHECK(account.reviewed.front().resolution.set_aside.empty());
  CHECK(account.reviewed.front().resolution.set_aside_sources == std::vector<std::string>{"wt-1994"});

  const auto bounds = bounds_account(site, "", 1000, around).value();
  const FixtureBounds& searchlight = of(bounds, "arc-searchlight", "wheelhouse-top");
  CHECK(searchlight.from_register.state == BoundsState::contradicted);
  // The scanner's seat lies over its ring of holes: gone when the scanner came, whatever is set aside.
  CHECK(searchlight.from_register.stays.at(0).went_latest.day == to_day({1963, 5, 7}));
  CHECK(searchlight.from_register.stays.at(0).went_latest.from ==
        std::vector<StatementKey>{entry("e-080"), entry("e-084"), entry("e-085")});
  CHECK(no_limit(searchlight, "e-073", NoLimit::intention));
  CHECK(no_limit(of(bounds, "fog-bell", "forecastle"), "e-039", NoLimit::intention));
  CHECK(no_limit(of(bounds, "deck-crane", "buoy-deck"), "e-034", NoLimit::rests_on_itself));
  CHECK(no_limit(of(bounds, "crows-nest", "foremast"), "e-014", NoLimit::identification));
  CHECK(of(bounds, "port-workboat", "boat-space-port").from_register.stays.size() == 2);
}
