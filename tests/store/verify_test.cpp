#include "witnessmark/store/verify.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/search.h"
#include "witnessmark/store/weighings.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

/// A site with something of everything, two decided claims among them.
void make_site(const std::filesystem::path& path) {
  SiteFile site = must(SiteFile::create(path, {{}, "Tender Guillemot", "2031", "built-in"}, editor()));
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  must(save_register(site, evidence()));
  must(save_list(site, places()));
  InterviewFile changed = interview_file();
  changed.persons[0].birth = dated("1930");
  must(save_interviews(site, changed));
  must(replace_proposals(
      site, "aske-1",
      {claim("aske-1", kTalk, "We had the crane"), claim("aske-1", kTalk, "The lamp was brass"),
       claim("aske-1", kTalk, "it went over the side")}));
  Claim decided = load_claims(site)[0].claim;
  decided.status = ClaimStatus::said_so;
  decided.subject = "derrick";
  must(decide_claim(site, decided, "heard"));
  Weighing weighing;
  weighing.claim = decided.id;
  must(save_weighings(site, {weighing}));
}

/// The first finding after an alteration behind the store's back.
std::string first_finding(const std::string& sql) {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  make_site(path);
  {
    RawFile raw(path);
    const std::string done = raw.run(sql);
    if (done != "ok") return "SQL: " + done;
  }
  const auto lines = findings(must(SiteFile::read(path)));
  return lines.empty() ? "accepted" : lines[0];
}

}  // namespace

TEST_CASE("a sound site file is accepted, and the report says how much was looked at") {
  const TemporaryFolder folder;
  make_site(folder / "a.site");
  const VerifyReport report = verify(must(SiteFile::read(folder / "a.site")));
  CHECK(report.accepted());
  CHECK(report.originals == 1);
  CHECK(report.reading_texts == 1);
  CHECK(report.utterances == 4);
  CHECK(report.claims == 3);
  CHECK(report.records == 17);
  CHECK(report.events >= 10);
}

TEST_CASE("what was altered behind the journal's back is found") {
  // Guards are taken down and put up again as they were, so that the structure is that of a site file.
  const std::string no_guards =
      "PRAGMA writable_schema = ON; CREATE TEMP TABLE kept AS SELECT * FROM sqlite_schema; "
      "DELETE FROM sqlite_schema WHERE type = 'trigger'; PRAGMA writable_schema = RESET; ";
  const std::string guards =
      "; PRAGMA writable_schema = ON; INSERT INTO sqlite_schema SELECT * FROM kept "
      "WHERE type = 'trigger'; PRAGMA writable_schema = RESET";
  struct Row {
    std::string sql;
    std::string finding;
  };
  const Row rows[] = {
      {"UPDATE site SET policy = 'x'", "site: its name"},
      {"UPDATE persons SET name = 'X' WHERE key = 'brandt'", "person brandt: its rows are not those"},
      {"UPDATE persons SET birth = '1929' WHERE key = 'aske'",
       "person aske: it is not what the journal says it was changed to"},
      {"DELETE FROM speakers", "interview aske-1: its rows"},
      {"UPDATE interviews SET access = 'open' WHERE key = 'aske-2'", "interview aske-2: its rows"},
      {"UPDATE releases SET release = 'signed', naming = 'name'", "interview aske-1: its rows"},
      {"DELETE FROM passages", "interview aske-1: its rows"},
      {"UPDATE entries SET nature = 'done' WHERE key = 'e2'", "evidence: its rows"},
      {"DELETE FROM named_events", "evidence: its rows"},
      {"UPDATE terms SET name = 'X' WHERE key = 'ship'", "list places: its rows"},
      {"UPDATE originals SET bytes = x'00'", "transcript aske-1: the original is not what its hash says"},
      {"UPDATE readings SET text = replace(text, 'brass', 'tin')",
       "transcript aske-1 version 1: the text is not what its hash says"},
      {"UPDATE utterances SET speaker = 'XX'", "transcript aske-1 version 1: turns, sentences or times"},
      {"UPDATE sentences SET time_begin = 5 WHERE n = 1",
       "transcript aske-1 version 1: turns, sentences or times"},
      {"UPDATE utterance_words SET words = 'x' WHERE turn % 1048576 = 1", "search: the full-text index"},
      {"INSERT INTO utterance_words VALUES (1, 'x'); INSERT INTO talk (rowid, words) VALUES (1, 'x')",
       "search: there are words"},
      {"INSERT INTO talk (talk) VALUES ('delete-all')", "search: the full-text index"},
      {"UPDATE claims SET first = 999999, past = 1000000 WHERE claim = 2", "claim "},
      {"UPDATE claims SET place = 'x' WHERE claim = 2", "claim aske-1: what is proposed"},
      {"PRAGMA foreign_keys = ON; DELETE FROM claims WHERE claim = 2", "claim aske-1: what is proposed"},
      {"UPDATE claim_mentions SET value = 'x' WHERE claim = 3", "claim aske-1: what is proposed"},
      {"UPDATE claims SET status = 'misread' WHERE decided", "claim "},
      {"UPDATE claims SET decided = 0 WHERE decided", "claim "},
      {"PRAGMA foreign_keys = ON; DELETE FROM claims WHERE decided", "claim "},
      {"PRAGMA foreign_keys = OFF; DELETE FROM sources WHERE key = 'album'", "file "},
      {"DELETE FROM journal_heads", "journal: its last events"},
      {no_guards + "UPDATE sessions SET actor = 'B. Other'" + guards, "journal "},
      {no_guards + "UPDATE journal_content SET why = 'misheard' WHERE why = 'heard'" + guards, "journal "},
      {no_guards + "DELETE FROM journal_content WHERE why = 'heard'" + guards, "journal "},
      {no_guards + "UPDATE journal SET wall_time = '' WHERE event = 4" + guards, "journal "},
  };
  for (const Row& row : rows) {
    CAPTURE(row.sql);
    const std::string found = first_finding(row.sql);
    CHECK_MESSAGE(found.starts_with(row.finding), found);
  }
  CHECK(first_finding(no_guards + guards) == "accepted");
}

namespace {

/// Everything a site file tells, as text.
std::string contents(const SiteFile& site) {
  std::string text;
  for_each_event(site, [&text](const JournalEvent& event) {
    text += to_string(event.id) + event.kind + event.target + event.before + event.after + event.why + '\n';
  });
  const InterviewFile file = load_interviews(site);
  for (const Person& person : file.persons) text += person.key + person.name + to_string(person.birth) + '\n';
  for (const Interview& interview : file.interviews) text += interview.key + to_string(interview.date) + '\n';
  for (const NarratorRelease& release : file.releases)
    text += release.interview + release.person + release.uses + '\n';
  for (const RestrictedPassage& passage : file.passages) text += passage.interview + passage.quote + '\n';
  for (const Entry& entry : load_register(site).entries) text += dump(entry) + '\n';
  const AuthorityLists lists = load_lists(site);
  for (const Term& term : lists.places.terms()) text += term.key + term.name + '\n';
  for (const StoredClaim& stored : load_claims(site))
    text += to_string(stored.claim.id) + dump(stored.claim) + '\n';
  for_each_weighing(site, [&text](const Weighing& weighing) { text += to_string(weighing.claim) + '\n'; });
  for (const SearchHit& hit : search_talk(site, {"the"})) text += std::to_string(hit.number) + '\n';
  return text + *load_original(site, "aske-1") + *load_reading_text(site, "aske-1");
}

}  // namespace

TEST_CASE("pages damaged in any place are found, or nothing of the contents is damaged") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  make_site(path);
  const auto size = std::filesystem::file_size(path);
  const std::string sound = contents(must(SiteFile::read(path)));
  int found = 0;
  for (std::uintmax_t at = 4096 + 100; at < size; at += 4096) {
    const auto copy = folder / "damaged.site";
    std::filesystem::copy_file(path, copy, std::filesystem::copy_options::overwrite_existing);
    {
      std::FILE* file = std::fopen(copy.c_str(), "r+b");
      REQUIRE(file != nullptr);
      std::fseek(file, static_cast<long>(at), SEEK_SET);
      const std::string junk(3900, '\x5a');
      std::fwrite(junk.data(), 1, junk.size(), file);
      std::fclose(file);
    }
    auto opened = SiteFile::read(copy);
    CAPTURE(at / 4096);
    if (opened.ok() && verify(*opened).accepted()) {
      CHECK(contents(*opened) == sound);
    } else {
      ++found;
    }
  }
  CHECK(found > 20);
}
