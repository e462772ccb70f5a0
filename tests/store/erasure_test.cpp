#include "witnessmark/store/erasure.h"

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>

#include "store/random_coder.h"
#include "witnessmark/store/handing_on.h"
#include "witnessmark/store/search.h"
#include "witnessmark/store/undo.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

const std::string kSecret = "Quillfeather hid the ledger under the binnacle of the Guillemot.\nWho did?\n";

bool stands_in(const std::filesystem::path& path, const std::string& words) {
  std::ifstream file(path, std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(file), {}};
  return bytes.find(words) != std::string::npos;
}

/// Two interviews; all that can be kept of the second holds words of its own.
SiteFile site_with_secret(const std::filesystem::path& path) {
  SiteFile site =
      must(SiteFile::create(path, {{}, "Tender Guillemot", "2031", "built-in"}, editor(), {"", 0}));
  InterviewFile file = interview_file();
  file.interviews[1].notes = "Quillfeather's telephone";
  file.passages.push_back(
      {"aske-2", "Quillfeather hid", {}, {Access::restricted, std::nullopt, ""}, "a person"});
  must(save_interviews(site, file));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  TranscriptFile second = transcript_file("aske-2", kSecret);
  must(save_transcript(site, second));
  must(save_transcript(site, transcript_file("aske-2", "[revised]\n" + kSecret)));
  must(save_register(site, evidence()));
  must(replace_proposals(site, "aske-1", {claim("aske-1", kTalk, "We had the crane")}));
  const std::string text = "[revised]\n" + kSecret;
  Claim secret;
  secret.interview = "aske-2";
  secret.quotes = {range_of(text, "hid the ledger")};
  secret.subject_words = "Quillfeather's ledger";
  must(replace_proposals(site, "aske-2", {secret}));
  return site;
}

}  // namespace

TEST_CASE("an erased interview is gone from every page and the side file, and the rest is as it was") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  SiteFile site = site_with_secret(path);
  must(decide_claim(site, load_claims(site, {.interviews = {"aske-1"}})[0].claim, "heard"));
  Claim decided = load_claims(site, {.interviews = {"aske-2"}})[0].claim;
  decided.status = ClaimStatus::said_so;
  must(decide_claim(site, decided, "Quillfeather says so"));
  must(add_note(site, {{}, "aske-2", decided.id, 0, {}, "ask Quillfeather", "", ""}));
  must(link_entry(site, {decided.id, "e1", "", LinkVerdict::linked, "Quillfeather", ""}));
  must(check_quote(site, decided.id, "Quillfeather's words"));
  CHECK(findings(site) == std::vector<std::string>{});
  for (const char* words : {"Quillfeather", "quillfeather"}) {
    CHECK((stands_in(path, words) || stands_in(path.string() + "-wal", words)));
  }

  const ErasureAccount before = must(account_of_erasure(site, "aske-2"));
  const ErasureAccount account = must(erase_interview(site, "aske-2", "release withdrawn by letter"));
  CHECK(account.originals == 2);
  CHECK(account.reading_texts == 2);
  CHECK(account.claims == 1);
  CHECK(account.notes == 1);
  CHECK(account.events == before.events);
  CHECK(!account.in_side_file);
  for (const char* words : {"Quillfeather", "quillfeather", "binnacle", "ledger"}) {
    CAPTURE(words);
    CHECK(!stands_in(path, words));
    CHECK(!stands_in(path.string() + "-wal", words));
  }
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(access_file(site, "aske-2").withdrawn);
  CHECK(erased_interviews(site)[0].interview == "aske-2");
  CHECK(search_talk(site, {"crane"}).size() == 1);
  CHECK(search_talk(site, {"ledger"}).empty());
  CHECK(load_claims(site).size() == 1);

  // The coder's acts on it are nobody's to undo; those before it are.
  CHECK(must(undo(site))->targets[0].interview == "aske-1");
  CHECK(!must(undo(site)));
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(
      erase_interview(site, "aske-2", "").error().message.starts_with("interview \"aske-2\" was erased on"));
  CHECK(erase_interview(site, "aske-9", "").error().message == "there is no interview \"aske-9\"");
}

TEST_CASE("erasing while somebody reads says that the side file still holds former pages") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  SiteFile site = site_with_secret(path);
  {
    const SiteFile reader = must(SiteFile::read(path));
    bool erased = false;
    for_each_event(reader, [&](const JournalEvent&) {
      if (erased) return;
      erased = true;
      CHECK(must(erase_interview(site, "aske-2", "release withdrawn")).in_side_file);
    });
  }
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("what was handed on of an interview is known when it is to be called back, and after it was erased") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  SiteFile site = site_with_secret(path);
  HandedOn both;
  both.to = "/archive/claims.csv";
  both.format = "csv";
  both.sha256 = std::string(64, 'a');
  both.claims = 2;
  both.interviews = {"aske-1", "aske-2"};
  note_handing_on(site, both);
  HandedOn one = both;
  one.to.clear();
  one.claims = 1;
  one.interviews = {"aske-1"};
  note_handing_on(site, one);
  CHECK(handed_on_of(site, "aske-1").size() == 2);
  must(erase_interview(site, "aske-2", "release withdrawn"));
  const std::vector<HandedOn> found = handed_on_of(site, "aske-2");
  REQUIRE(found.size() == 1);
  CHECK(found[0].to == both.to);
  CHECK(found[0].sha256 == both.sha256);
  CHECK(found[0].claims == 2);
  CHECK_FALSE(found[0].by.empty());
  CHECK_FALSE(found[0].wall_time.empty());
  CHECK(verify(site).accepted());
}
