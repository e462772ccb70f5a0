#include "witnessmark/store/evidence.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"
#include "witnessmark/store/journal.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

template <typename T>
std::vector<T> without_ids(std::vector<T> rows) {
  for (T& row : rows) {
    CHECK(!row.id.is_nil());
    row.id = {};
  }
  return rows;
}

}  // namespace

TEST_CASE("the dated evidence comes back as it was taken in, every field of it") {
  SiteFile site = site_in_memory();
  must(save_register(site, evidence()));
  const Register loaded = load_register(site);
  CHECK(without_ids(loaded.sources) == evidence().sources);
  CHECK(loaded.derivations == evidence().derivations);
  CHECK(without_ids(loaded.entries) == evidence().entries);
  CHECK(without_ids(loaded.itinerary) == evidence().itinerary);
  CHECK(without_ids(loaded.events) == evidence().events);
}

TEST_CASE("evidence taken in again changes nothing; a changed entry is one event and makes weighings stale") {
  SiteFile site = site_in_memory();
  must(save_register(site, evidence()));
  const auto events = count_events(site);
  const auto revision = evidence_revision(site);
  CHECK(!must(save_register(site, evidence())).any());
  CHECK(count_events(site) == events);
  CHECK(evidence_revision(site) == revision);

  Register changed = evidence();
  changed.entries[0].when = dated("1961-07");
  changed.entries[0].observer = "O. Brandt";
  const RegisterChanges changes = must(save_register(site, changed));
  CHECK(changes.entries == RowCounts{0, 1, 1});
  CHECK(changes.changed == std::vector<ChangedRow>{{"entry", "e1", {"dated", "observer"}}});
  CHECK(count_events(site) == events + 1);
  CHECK(evidence_revision(site) > revision);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("an entry of an unknown source is refused") {
  SiteFile site = site_in_memory();
  Register spoiled = evidence();
  spoiled.entries[1].source = "none";
  CHECK(save_register(site, spoiled).error().message ==
        "entry \"e2\" names source \"none\", which is not known");
  spoiled = evidence();
  spoiled.entries[1].over = {"e9"};
  CHECK(save_register(site, spoiled).error().message ==
        "entry \"e2\" names entry \"e9\", which is not known");
  CHECK(load_register(site).sources.empty());
}

TEST_CASE("lists come back in their order, and grow at the end") {
  SiteFile site = site_in_memory();
  must(save_list(site, places()));
  AuthorityLists lists = load_lists(site);
  CHECK(without_ids(lists.places.terms()) == places().terms());
  CHECK(lists.equipment.empty());

  Term crane;
  crane.key = "crane";
  crane.name = "Crane";
  must(save_list(site, {AuthorityList::Kind::equipment, {crane}}));
  Term bridge;
  bridge.key = "bridge";
  bridge.name = "Bridge";
  Term deck = places().terms()[1];
  deck.spoken = {"forrard"};
  const ListChanges changes = must(save_list(site, {AuthorityList::Kind::places, {bridge, deck}}));
  CHECK(changes.terms == RowCounts{1, 1, 0});
  lists = load_lists(site);
  std::vector<std::string> keys;
  for (const Term& term : lists.places.terms()) keys.push_back(term.key);
  CHECK(keys == std::vector<std::string>{"ship", "foredeck", "bridge"});
  CHECK(lists.places.find("foredeck")->spoken == std::vector<std::string>{"forrard"});
  CHECK(lists.equipment.terms().size() == 1);
  CHECK(findings(site) == std::vector<std::string>{});
}
