#include "witnessmark/store/weighings.h"

#include <doctest/doctest.h>

#include <limits>

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

TEST_CASE("how a claim stands is kept beside its comparisons") {
  SiteFile site = filled_site();
  const auto ids = claims_to_weigh(site);
  Weighing first = weighing_of(ids[0]);
  Comparison circle = first.comparisons[1];
  circle.outcome = Outcome::agrees;
  Weighing second = weighing_of(ids[1]);
  second.comparisons = {circle};
  must(save_weighings(site, {first, second}));
  const auto one = load_standing(site, ids[0]);
  REQUIRE(one);
  CHECK(one->recall == first.recall);
  CHECK(one->foremost == Outcome::conflicts);
  CHECK(one->comparisons.numbers == std::array<std::int64_t, 5>{0, 1, 1, 0, 1});
  CHECK(one->intentions == 1);
  // An agreement in a circle counts as no more than compatible.
  CHECK(load_standing(site, ids[1])->foremost == Outcome::compatible);
  std::vector<ClaimStanding> all;
  for_each_standing(site, [&](const ClaimStanding& standing) { all.push_back(standing); });
  CHECK(all == std::vector<ClaimStanding>{*one, standing_of(second)});
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("gaps, relations and evidence of every size come back") {
  SiteFile site = filled_site();
  const auto ids = claims_to_weigh(site);
  constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::max();
  Weighing weighing;
  weighing.claim = ids[0];
  int n = 0;
  for (const std::int64_t least : {std::int64_t{0}, std::int64_t{-1}, std::int64_t{63}, std::int64_t{64}, kFar, -kFar - 1})
    for (const auto most : {std::optional<std::int64_t>(), std::optional(least), std::optional(kFar), std::optional(-kFar)}) {
      Comparison comparison;
      comparison.claim = ids[0];
      comparison.entry = "entry " + std::to_string(n * 7919 % 300);
      comparison.outcome = static_cast<Outcome>(n % 5);
      comparison.intention = n % 2 == 1;
      comparison.circular = n % 3 == 1;
      comparison.relation.bits = static_cast<std::uint16_t>(n * 341 & 0x1FFF);
      comparison.gap = Distance{least, most};
      weighing.comparisons.push_back(comparison);
      ++n;
    }
  must(save_weighings(site, {weighing}));
  CHECK(load_weighing(site, ids[0]) == weighing);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("only what changed is weighed again: a corrected claim, or the claims whose grounds changed") {
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
  const Claim other = find_claim(site, ids[1])->claim;
  const auto weigh_all = [&] { must(save_weighings(site, {weighing_of(ids[0]), weighing_of(ids[1])})); };
  using enum GroundKind;
  Grounds grounds{{{rules, ""}, "a"}, {{place, "bridge"}, "a"}, {{interview, other.interview}, "a"}};
  settle_grounds(site, grounds);
  weigh_all();
  CHECK(settle_grounds(site, grounds) == 0);
  CHECK(claims_to_weigh(site).empty());
  grounds[{place, "bridge"}] = "b";
  CHECK(settle_grounds(site, grounds) == 1);
  CHECK(claims_to_weigh(site) == std::vector<Id>{ids[0]});
  weigh_all();
  grounds.erase({place, "bridge"});
  CHECK(settle_grounds(site, grounds) == 1);
  weigh_all();
  grounds[{subject, other.subject}] = "a";
  settle_grounds(site, grounds);
  CHECK(!load_weighing(site, ids[1]));
  weigh_all();
  grounds[{person, other.speaker}] = "a";
  settle_grounds(site, grounds);
  CHECK(!load_weighing(site, ids[1]));
  weigh_all();
  grounds[{rules, ""}] = "b";
  CHECK(settle_grounds(site, grounds) == 2);
  CHECK(claims_to_weigh(site) == ids);
}

TEST_CASE("what was weighed before changed evidence was looked at is looked at again") {
  SiteFile site = filled_site();
  const auto ids = claims_to_weigh(site);
  const std::string interview = find_claim(site, ids[0])->claim.interview;
  const Grounds grounds{{{GroundKind::rules, ""}, "r"}, {{GroundKind::interview, interview}, "a"}};
  settle_grounds(site, grounds);
  CHECK(!grounds_may_have_changed(site, "r"));
  CHECK(grounds_may_have_changed(site, "other"));
  must(save_weighings(site, {weighing_of(ids[0])}));
  Register more;
  NamedEvent event;
  event.key = "launch";
  event.name = "Launch";
  more.events = {event};
  must(save_register(site, more));
  CHECK(grounds_may_have_changed(site, "r"));
  must(save_weighings(site, {weighing_of(ids[0])}));
  CHECK(load_weighing(site, ids[0]));
  CHECK(settle_grounds(site, grounds) == 1);
  CHECK(!grounds_may_have_changed(site, "r"));
}

TEST_CASE("what a claim was compared with is verified, and damage to it is found") {
  const TemporaryFolder folder;
  const auto path = folder / "weighed.site";
  Id id;
  {
    SiteFile site = filled_site();
    const auto ids = claims_to_weigh(site);
    id = ids[0];
    must(save_weighings(site, {weighing_of(id)}));
    must(site.copy_to(path));
  }
  const auto after = [&](const char* sql) {
    const auto copy = folder / "altered.site";
    std::filesystem::copy_file(path, copy, std::filesystem::copy_options::overwrite_existing);
    CHECK(RawFile(copy).run(sql) == "ok");
    const auto found = findings(must(SiteFile::read(copy)));
    return found.size() == 1 ? found[0] : std::to_string(found.size()) + " findings";
  };
  const std::string where = "weighing " + to_string(id) + ": ";
  CHECK(after("UPDATE weighings SET agrees = 1") ==
        where + "how it stands is not what its comparisons give; weigh it anew");
  CHECK(after("UPDATE comparisons SET packed = substr(packed, 1, length(packed) - 1)") ==
        where + "what it was compared with cannot be read; weigh it anew");
  CHECK(after("UPDATE comparisons SET packed = x'0007'") ==
        where + "what it was compared with cannot be read; weigh it anew");
  CHECK(after("DELETE FROM comparisons") == where + "what it was compared with is missing; weigh it anew");
}

TEST_CASE("weighing a claim that is not there is refused whole") {
  SiteFile site = filled_site();
  const auto ids = claims_to_weigh(site);
  const auto events = count_events(site);
  CHECK(!save_weighings(site, {weighing_of(ids[0]), weighing_of(Id{})}).ok());
  CHECK(!load_weighing(site, ids[0]));
  CHECK(count_events(site) == events);
}
