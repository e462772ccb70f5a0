#include "witnessmark/store/weighings.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"
#include "witnessmark/store/journal.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

Weighing weighing_of(const Id& claim) {
  Weighing weighing;
  weighing.claim = claim;
  weighing.recall = {YearRange{66, 67}, YearRange{30, 31}, YearRange{35, 36}, Answer::no, true};
  Comparison conflict;
  conflict.claim = claim;
  conflict.entry = "e1";
  conflict.outcome = Outcome::conflicts;
  conflict.intention = true;
  conflict.relation = AllenSet::of(Allen::precedes) | AllenSet::of(Allen::preceded_by);
  conflict.gap = Distance{-3, std::nullopt};
  Comparison other;
  other.claim = claim;
  other.entry = "s1";
  other.outcome = Outcome::compatible;
  other.circular = true;
  Comparison silent;
  silent.claim = claim;
  weighing.comparisons = {conflict, other, silent};
  return weighing;
}

}  // namespace

TEST_CASE("weighings come back, without explanations, and replace former ones") {
  SiteFile site = filled_site();
  const auto ids = claims_to_weigh(site);
  REQUIRE(ids.size() == 2);
  Weighing first = weighing_of(ids[0]);
  Weighing bare;
  bare.claim = ids[1];
  must(save_weighings(site, {first, bare}));
  CHECK(load_weighing(site, ids[0]) == first);
  CHECK(load_weighing(site, ids[1]) == bare);
  CHECK(claims_to_weigh(site).empty());
  CHECK(comparisons_with(site, "e1") == std::vector<Comparison>{first.comparisons[0]});
  CHECK(comparisons_with(site, "s1").size() == 1);
  CHECK(count_outcomes(site).size() == 3);

  first.comparisons.pop_back();
  first.comparisons[0].explanation = "is made when read";
  must(save_weighings(site, {first}));
  first.comparisons[0].explanation = "";
  CHECK(load_weighing(site, ids[0]) == first);
  std::vector<Id> visited;
  for_each_weighing(site, [&visited](const Weighing& weighing) { visited.push_back(weighing.claim); });
  CHECK(visited == ids);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("only what changed is weighed again: a corrected claim, or everything when the evidence changed") {
  SiteFile site = filled_site();
  const auto ids = claims_to_weigh(site);
  must(save_weighings(site, {weighing_of(ids[0]), weighing_of(ids[1])}));

  Claim claim = find_claim(site, ids[0])->claim;
  claim.status = ClaimStatus::said_so;
  must(decide_claim(site, claim, ""));
  CHECK(claims_to_weigh(site).empty());
  claim.place = "bridge";
  must(decide_claim(site, claim, ""));
  CHECK(claims_to_weigh(site) == std::vector<Id>{ids[0]});
  CHECK(!load_weighing(site, ids[0]));

  must(save_weighings(site, {weighing_of(ids[0])}));
  Register more;
  NamedEvent event;
  event.key = "launch";
  event.name = "Launch";
  more.events = {event};
  must(save_register(site, more));
  CHECK(claims_to_weigh(site) == ids);
}

TEST_CASE("weighing a claim that is not there is refused whole") {
  SiteFile site = filled_site();
  const auto ids = claims_to_weigh(site);
  const auto events = count_events(site);
  CHECK(!save_weighings(site, {weighing_of(ids[0]), weighing_of(Id{})}).ok());
  CHECK(!load_weighing(site, ids[0]));
  CHECK(count_events(site) == events);
}
