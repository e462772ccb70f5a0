#include "witnessmark/store/undo.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"
#include "witnessmark/store/claim_acts.h"
#include "witnessmark/store/entry_links.h"
#include "witnessmark/store/notes.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/quote_checks.h"
#include "witnessmark/store/restricted_passages.h"
#include "witnessmark/store/review_rows.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

std::string words_of(const Result<std::optional<CoderAct>>& done) {
  if (!done) return to_string(done.error());
  return *done ? (*done)->words : "nothing";
}

Claim decided(const SiteFile& site, std::size_t n, ClaimStatus status) {
  Claim claim = load_claims(site)[n].claim;
  claim.status = status;
  return claim;
}

}  // namespace

TEST_CASE("undo takes back one act after the other, redo does them again, a new act ends redoing") {
  SiteFile site = filled_site();
  const auto before = load_claims(site);
  CHECK(words_of(undo(site)) == "nothing");
  must(decide_claim(site, decided(site, 0, ClaimStatus::said_so), "heard"));
  Claim other = decided(site, 0, ClaimStatus::misread);
  other.subject = "derrick";
  must(decide_claim(site, other, "not a crane"));
  const auto after = load_claims(site);
  CHECK(next_undo(site)->words == "decision in aske-1");
  CHECK(words_of(undo(site)) == "decision in aske-1");
  CHECK(load_claims(site)[0].claim.subject == "crane");
  CHECK(words_of(undo(site)) == "decision in aske-1");
  CHECK(load_claims(site) == before);
  CHECK(words_of(undo(site)) == "nothing");
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(words_of(redo(site)) == "decision in aske-1");
  CHECK(words_of(redo(site)) == "decision in aske-1");
  CHECK(words_of(redo(site)) == "nothing");
  CHECK(load_claims(site) == after);
  CHECK(words_of(undo(site)) == "decision in aske-1");
  must(decide_claim(site, decided(site, 1, ClaimStatus::set_aside), ""));
  CHECK(words_of(redo(site)) == "nothing");
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("what was done in one go is undone in one go") {
  SiteFile site = filled_site();
  const auto before = load_claims(site);
  Claim part = before[0].claim;
  part.subject = "winch";
  part.ordinal = 1;
  const Id id = must(split_claim(site, decided(site, 0, ClaimStatus::said_so), part, "two things"));
  CHECK(origins_of_claim(site, id) ==
        std::vector<ClaimOrigin>{{id, ClaimRelation::split_from, before[0].claim.id, "aske-1"}});
  CHECK(load_claims(site).size() == 3);
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(words_of(undo(site)) == "claim split in aske-1");
  CHECK(load_claims(site) == before);
  CHECK(origins_of_claim(site, id).empty());
  must(merge_claims(site, decided(site, 0, ClaimStatus::said_so), before[1].claim.id, "the same"));
  CHECK(find_claim(site, before[1].claim.id)->claim.status == ClaimStatus::set_aside);
  CHECK(words_of(undo(site)) == "claims merged in aske-1");
  CHECK(load_claims(site) == before);
  must(decide_many(site, {decided(site, 0, ClaimStatus::misread), decided(site, 1, ClaimStatus::misread)},
                   "noise"));
  CHECK(words_of(undo(site)) == "decision on 2 claims in aske-1");
  CHECK(load_claims(site) == before);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("notes, links, checks, passages read and restricted are kept, undone and redone") {
  SiteFile site = filled_site();
  const Id claim = load_claims(site)[0].claim.id;
  const Id note = must(add_note(site, {{}, "aske-1", claim, 0, {}, "she means the derrick", "", ""}));
  must(edit_note(site, note, "she may mean the derrick"));
  must(link_entry(site, {claim, "e1", "", LinkVerdict::ruled_out, "another crane", ""}));
  must(check_quote(site, claim, "as transcribed"));
  must(mark_read(site, "aske-1", {CodePoint{0}, CodePoint{20}}));
  must(mark_read(site, "aske-1", {CodePoint{20}, CodePoint{40}}));
  must(mark_passage(
      site, {"aske-1", "", range_of(kTalk, "brass"), {Access::closed, std::nullopt, ""}, "hers"}, ""));
  CHECK(notes_on_claim(site, claim)[0].text == "she may mean the derrick");
  CHECK(links_of_claim(site, claim)[0].verdict == LinkVerdict::ruled_out);
  CHECK(quote_checks(site, claim)[0].coder == "A. Coder");
  CHECK(passages_read(site, "aske-1")[0].ranges.size() == 1);
  CHECK(access_file(site, "aske-1").passages.size() == 2);
  CHECK(findings(site) == std::vector<std::string>{});
  const auto access = load_interviews(site).passages;
  for (const char* words : {"passage restricted in aske-1", "passage read in aske-1",
                            "passage read in aske-1", "check against the recording in aske-1",
                            "entry ruled out in aske-1", "note in aske-1", "note in aske-1"})
    CHECK(words_of(undo(site)) == words);
  CHECK(words_of(undo(site)) == "nothing");
  CHECK(notes_of_interview(site, "aske-1").empty());
  CHECK(links_of_entry(site, "e1").empty());
  CHECK(load_interviews(site).passages.size() == 1);
  CHECK(findings(site) == std::vector<std::string>{});
  for (int i = 0; i < 7; ++i) CHECK(words_of(redo(site)) != "nothing");
  CHECK(load_interviews(site).passages == access);
  CHECK(notes_on_claim(site, claim)[0].text == "she may mean the derrick");
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("two coders at one file: each undoes their own, and not what the other changed since") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  must(filled_site().copy_to(path));
  const auto with = [&](const std::string& name, std::uint64_t seed, auto work) {
    SiteFile site = must(SiteFile::edit(path, editor(name, seed)));
    work(site);
    CHECK(findings(site) == std::vector<std::string>{});
  };
  with("A. Coder", 21, [](SiteFile& site) {
    must(decide_claim(site, decided(site, 0, ClaimStatus::said_so), "heard"));
    must(decide_claim(site, decided(site, 1, ClaimStatus::said_so), "heard"));
  });
  with("B. Other", 22, [](SiteFile& site) {
    CHECK(words_of(undo(site)) == "nothing");
    must(decide_claim(site, decided(site, 1, ClaimStatus::misread), "not so"));
  });
  with("A. Coder", 23, [](SiteFile& site) {
    const auto refused = undo(site);
    REQUIRE(!refused.ok());
    CHECK(refused.error().message.ends_with("B. Other changed it since (decided)"));
    CHECK(load_claims(site)[1].claim.status == ClaimStatus::misread);
  });
  with("B. Other", 24, [](SiteFile& site) { CHECK(words_of(undo(site)) == "decision in aske-1"); });
  // What stood in the way is undone: now it goes, in another session than the one it was done in.
  with("A. Coder", 25, [](SiteFile& site) {
    CHECK(words_of(undo(site)) == "decision in aske-1");
    CHECK(words_of(undo(site)) == "decision in aske-1");
    CHECK(words_of(undo(site)) == "nothing");
    CHECK(load_claims(site)[0].claim.status == ClaimStatus::proposed);
  });
}

TEST_CASE("proposing again between a decision and its undoing breaks neither") {
  SiteFile site = filled_site();
  must(decide_claim(site, decided(site, 0, ClaimStatus::said_so), "heard"));
  must(replace_proposals(site, "aske-1", {claim("aske-1", kTalk, "The lamp was brass")}));
  CHECK(load_claims(site)[0].gone);
  CHECK(words_of(undo(site)) == "decision in aske-1");
  CHECK(load_claims(site).size() == 1);
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(words_of(redo(site)) == "decision in aske-1");
  CHECK(load_claims(site)[0].gone);
  CHECK(load_claims(site)[0].claim.status == ClaimStatus::said_so);
  CHECK(findings(site) == std::vector<std::string>{});
  must(replace_proposals(site, "aske-1", {claim("aske-1", kTalk, "We had the crane")}));
  CHECK(!load_claims(site)[0].gone);
  CHECK(words_of(undo(site)) == "decision in aske-1");
  CHECK(load_claims(site)[0].claim.status == ClaimStatus::proposed);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("review rows come in pages in review order, narrowed by what is asked for") {
  SiteFile site = filled_site();
  must(decide_claim(site, decided(site, 1, ClaimStatus::said_so), "heard"));
  const auto rows = review_rows(site, {});
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].first < rows[1].first);
  ReviewRequest request;
  request.limit = 1;
  CHECK(review_rows(site, request) == std::vector<ReviewRow>{rows[0]});
  request.after = rows[0];
  CHECK(review_rows(site, request) == std::vector<ReviewRow>{rows[1]});
  request.after.reset();
  request.before = rows[1];
  CHECK(review_rows(site, request) == std::vector<ReviewRow>{rows[0]});
  CHECK(rows_before(site, {}, rows[1]) == 1);
  ReviewRequest said;
  said.status = ClaimStatus::said_so;
  said.speakers = {"aske"};
  said.subjects = {"crane", "derrick"};
  said.places = {"foredeck"};
  said.statement = Statement::ends;
  said.interview = "aske-1";
  CHECK(review_rows(site, said) == std::vector<ReviewRow>{rows[1]});
  CHECK(count_review_rows(site, said) == 1);
}
