#include "witnessmark/store/claims.h"

#include <doctest/doctest.h>

#include <set>

#include "store/sample_site.h"
#include "witnessmark/store/journal.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

SiteFile site_with_talk() {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  return site;
}

std::vector<Claim> proposals() {
  Claim lamp = claim("aske-1", kTalk, "The lamp was brass", Statement::attribute);
  lamp.subject = "lamp";
  lamp.place = "";
  lamp.quantity.reset();
  lamp.when = {};
  lamp.quotes.resize(1);
  lamp.mentions.clear();
  Claim second = claim("aske-1", kTalk, "We had the crane");
  second.ordinal = 1;
  second.subject = "boom";
  return {claim("aske-1", kTalk, "We had the crane"), second, lamp};
}

std::vector<Id> ids(const SiteFile& site) {
  std::vector<Id> found;
  for (const StoredClaim& stored : load_claims(site)) found.push_back(stored.claim.id);
  return found;
}

}  // namespace

TEST_CASE("claims come back with every field") {
  SiteFile site = site_with_talk();
  const std::vector<Claim> proposed = proposals();
  CHECK(must(replace_proposals(site, "aske-1", proposed)) == ProposalChanges{3, 0, 0, 0, 0});
  std::vector<Claim> loaded;
  for (StoredClaim& stored : load_claims(site)) {
    CHECK(stored.version == 1);
    CHECK(!stored.decided);
    CHECK(find_claim(site, stored.claim.id) == stored);
    stored.claim.id = {};
    loaded.push_back(stored.claim);
  }
  CHECK(loaded == proposed);
}

TEST_CASE("proposing twice keeps every id and writes nothing") {
  SiteFile site = site_with_talk();
  must(replace_proposals(site, "aske-1", proposals()));
  const auto before = ids(site);
  const auto events = count_events(site);
  CHECK(must(replace_proposals(site, "aske-1", proposals())) == ProposalChanges{0, 0, 0, 0, 3});
  CHECK(ids(site) == before);
  CHECK(std::set<Id>(before.begin(), before.end()).size() == 3);
  CHECK(count_events(site) == events);
}

TEST_CASE("proposing otherwise shows what is new, gone and changed, and touches no decision") {
  SiteFile site = site_with_talk();
  must(replace_proposals(site, "aske-1", proposals()));
  std::vector<StoredClaim> before = load_claims(site);
  Claim said = before[0].claim;
  said.status = ClaimStatus::said_so;
  said.subject = "derrick";
  must(decide_claim(site, said, "she says derrick on the tape"));
  Claim misread = before[2].claim;
  misread.status = ClaimStatus::misread;
  must(decide_claim(site, misread, ""));

  std::vector<Claim> otherwise = proposals();
  otherwise[0].firmness = Firmness::guess;                         // decided on: its values stay
  otherwise[1].firmness = Firmness::guess;                         // not decided on: takes the new value
  otherwise[2] = claim("aske-1", kTalk, "it went over the side");  // the lamp goes, this one comes
  CHECK(must(replace_proposals(site, "aske-1", otherwise)) == ProposalChanges{1, 1, 1, 2, 0});

  const auto first = find_claim(site, said.id);
  REQUIRE(first);
  CHECK(first->claim == said);
  CHECK(first->decided);
  CHECK(first->proposed_otherwise);
  CHECK(find_claim(site, before[1].claim.id)->claim.firmness == Firmness::guess);
  const auto lamp = find_claim(site, misread.id);
  REQUIRE(lamp);
  CHECK(lamp->gone);
  CHECK(lamp->claim == misread);
  CHECK(load_claims(site).size() == 4);
  CHECK(findings(site) == std::vector<std::string>{});

  // And back: the same claims under the same ids.
  const ProposalChanges back = must(replace_proposals(site, "aske-1", proposals()));
  CHECK(back == ProposalChanges{0, 1, 0, 3, 0});
  CHECK(!find_claim(site, misread.id)->gone);
  CHECK(!find_claim(site, said.id)->proposed_otherwise);
  CHECK(ids(site) == std::vector<Id>{before[0].claim.id, before[1].claim.id, before[2].claim.id});
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("a decision is in the journal with who, before, after and why") {
  SiteFile site = site_with_talk();
  must(replace_proposals(site, "aske-1", proposals()));
  Claim decided = load_claims(site)[0].claim;
  decided.status = ClaimStatus::set_aside;
  must(decide_claim(site, decided, "beside the point"));
  decided.knower = "";
  must(decide_claim(site, decided, ""));
  const auto events = events_on(site, "claim", to_string(decided.id));
  REQUIRE(events.size() == 2);
  CHECK(events[0].actor == "A. Coder");
  CHECK(events[0].why == "beside the point");
  CHECK(events[0].before.find("\"subject\":\"crane\"") != std::string::npos);
  CHECK(events[0].after == R"({"status":"set-aside"})");
  CHECK(events[1].before == R"({"knower":"the bosun"})");
  CHECK(events[1].after == R"({"knower":null})");
  CHECK(find_claim(site, decided.id)->claim == decided);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("a coder's own claim outlives any proposing") {
  SiteFile site = site_with_talk();
  Claim own = proposals()[2];
  own.status = ClaimStatus::said_so;
  const Id id = must(add_claim(site, own, "overlooked"));
  own.id = id;
  must(replace_proposals(site, "aske-1", proposals()));
  must(replace_proposals(site, "aske-1", {}));
  const auto left = load_claims(site);
  REQUIRE(left.size() == 1);
  CHECK(left[0].claim == own);
  CHECK(left[0].by_coder);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("filters narrow") {
  SiteFile site = site_with_talk();
  must(replace_proposals(site, "aske-1", proposals()));
  const auto subjects = [&site](const ClaimFilter& filter) {
    std::string found;
    for_each_claim(site, filter,
                   [&found](const StoredClaim& stored) { found += stored.claim.subject + " "; });
    return found;
  };
  const Id lamp = load_claims(site)[2].claim.id;
  CHECK(subjects({}) == "crane boom lamp ");
  CHECK(subjects({.interviews = {"aske-2"}}) == "");
  CHECK(subjects({.subjects = {"lamp", "boom"}}) == "boom lamp ");
  CHECK(subjects({.subjects = {"lamp"}, .places = {"foredeck"}}) == "");
  CHECK(subjects({.subjects = {"lamp"}, .places = {"foredeck"}, .subject_or_place = true}) ==
        "crane boom lamp ");
  CHECK(subjects({.places = {"foredeck", "it's \"quoted\""}}) == "crane boom ");
  CHECK(subjects({.ids = {lamp}}) == "lamp ");
  CHECK(subjects({.statuses = {ClaimStatus::misread}}) == "");
  CHECK(subjects({.reviewed_only = true}) == "");
  Claim said = find_claim(site, lamp)->claim;
  said.status = ClaimStatus::said_so;
  must(decide_claim(site, said, ""));
  CHECK(subjects({.reviewed_only = true}) == "lamp ");
  CHECK(count_claims(site).size() == 2);
}

TEST_CASE("what cannot be proposed is refused") {
  struct Row {
    const char* part;
    void (*spoil)(std::vector<Claim>&);
  };
  for (const Row& row :
       {Row{"another interview", [](std::vector<Claim>& c) { c[0].interview = "aske-2"; }},
        Row{"no quote", [](std::vector<Claim>& c) { c[0].quotes.clear(); }},
        Row{"outside", [](std::vector<Claim>& c) { c[0].quotes[1].end.value = 9999; }},
        Row{"outside", [](std::vector<Claim>& c) { c[0].mentions[0].range.begin.value = -1; }},
        Row{"the same quote", [](std::vector<Claim>& c) { c[1].ordinal = 0; }}}) {
    SiteFile site = site_with_talk();
    auto claims = proposals();
    row.spoil(claims);
    const auto result = replace_proposals(site, "aske-1", claims);
    REQUIRE(!result.ok());
    CHECK(result.error().message.find(row.part) != std::string::npos);
    CHECK(load_claims(site).empty());
  }
  SiteFile site = site_with_talk();
  CHECK(!replace_proposals(site, "aske-2", {}).ok());
  CHECK(!decide_claim(site, proposals()[0], "").ok());
  CHECK(!add_claim(site, claim("aske-1", kTalk, "The lamp was brass"), "\xff").ok());
}
