#include "witnessmark/store/merge.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"
#include "witnessmark/store/conclusions.h"
#include "witnessmark/store/entry_links.h"
#include "witnessmark/store/erasure.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/notes.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/undo.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

/// One site file and a copy of it, each with its coder.
struct TwoCoders {
  TemporaryFolder folder;
  SiteFile first = make(folder / "a.site");
  SiteFile second = copy(folder / "b.site");

  static SiteFile make(const std::filesystem::path& path) {
    SiteFile site =
        must(SiteFile::create(path, {{}, "Tender Guillemot", "2031", "built-in"}, editor("Setup", 9)));
    must(save_interviews(site, interview_file()));
    must(save_transcript(site, transcript_file("aske-1", kTalk)));
    must(save_register(site, evidence()));
    must(save_list(site, places()));
    must(replace_proposals(
        site, "aske-1",
        {claim("aske-1", kTalk, "We had the crane"), claim("aske-1", kTalk, "The lamp was brass"),
         claim("aske-1", kTalk, "it went over the side"), claim("aske-1", kTalk, "the yard took it off")}));
    return must(SiteFile::edit(
        [&] {
          SiteFile closed = std::move(site);
          return path;
        }(),
        editor("A. Coder", 11)));
  }
  SiteFile copy(const std::filesystem::path& to) const {
    must(first.copy_to(to));
    return must(SiteFile::edit(to, editor("B. Other", 12)));
  }
  MergeReport bring_second() { return must(merge_site_file(first, second)); }
};

void decide(SiteFile& site, std::size_t n, ClaimStatus status, const std::string& subject = "") {
  Claim claim = load_claims(site)[n].claim;
  claim.status = status;
  if (!subject.empty()) claim.subject = subject;
  must(decide_claim(site, claim, "why " + std::to_string(n)));
}

std::vector<std::string> not_taken(const MergeReport& report) {
  std::vector<std::string> lines;
  for (const NotTaken& each : report.not_taken)
    lines.push_back(each.what + " " + each.which + ": " + each.why);
  return lines;
}

}  // namespace

TEST_CASE(
    "two coders: what one did is taken, what both did alike is noted, what differs is settled by a person") {
  TwoCoders site;
  const auto ids = load_claims(site.first);
  decide(site.first, 0, ClaimStatus::said_so);
  decide(site.first, 1, ClaimStatus::said_so, "lamp");
  decide(site.second, 0, ClaimStatus::said_so);
  decide(site.second, 1, ClaimStatus::misread);
  decide(site.second, 2, ClaimStatus::set_aside);
  must(add_note(site.second, {{}, "aske-1", ids[2].claim.id, 0, {}, "only hers", "", ""}));
  must(mark_read(site.first, "aske-1", {CodePoint{0}, CodePoint{30}}));
  must(mark_read(site.second, "aske-1", {CodePoint{0}, CodePoint{50}}));
  must(link_entry(site.first, {ids[0].claim.id, "e1", "", LinkVerdict::linked, "same crane", ""}));
  must(link_entry(site.second, {ids[0].claim.id, "e1", "", LinkVerdict::linked, "it is that crane", ""}));

  const MergeReport report = site.bring_second();
  CHECK(report.events == 6);
  CHECK(report.taken == 3);
  CHECK(report.alike == 2);
  CHECK(report.differences == 1);
  CHECK(not_taken(report).empty());
  CHECK(findings(site.first) == std::vector<std::string>{});
  CHECK(load_claims(site.first)[2].claim.status == ClaimStatus::set_aside);
  CHECK(load_claims(site.first)[1].claim.subject == "lamp");
  CHECK(notes_on_claim(site.first, ids[2].claim.id)[0].author == "B. Other");
  CHECK(passages_read(site.first, "aske-1").size() == 2);
  CHECK(site.bring_second() == MergeReport{});

  const auto open = open_differences(site.first);
  REQUIRE(open.size() == 1);
  CHECK(open[0].here.who == "A. Coder");
  CHECK(open[0].there.who == "B. Other");
  CHECK(open[0].there.why == "why 1");
  CHECK(open[0].there.state.find("misread") != std::string::npos);
  must(settle_difference(site.first, open[0].number, Side::there, "listened again"));
  CHECK(load_claims(site.first)[1].claim.status == ClaimStatus::misread);
  CHECK(open_differences(site.first).empty());
  CHECK(double_decisions(site.first).size() == 3);
  CHECK(findings(site.first) == std::vector<std::string>{});
  // Settling is an act like any other.
  CHECK(must(undo(site.first))->words == "difference settled in aske-1");
  CHECK(open_differences(site.first).size() == 1);
  CHECK(load_claims(site.first)[1].claim.subject == "lamp");
  must(redo(site.first));
  CHECK(open_differences(site.first).empty());
  CHECK(findings(site.first) == std::vector<std::string>{});
  CHECK(settle_difference(site.first, open[0].number, Side::here, "")
            .error()
            .message.starts_with("there is no open"));

  // The other coder brings that in: settled there too, nothing to ask.
  const MergeReport back = must(merge_site_file(site.second, site.first));
  CHECK(back.differences == 0);
  CHECK(open_differences(site.second).empty());
  CHECK(load_claims(site.second)[1].claim.status == ClaimStatus::misread);
  CHECK(findings(site.second) == std::vector<std::string>{});
}

TEST_CASE(
    "a difference that is open in one copy is open in the other, and settled with other values in both") {
  TwoCoders site;
  decide(site.first, 1, ClaimStatus::said_so, "lamp");
  decide(site.second, 1, ClaimStatus::misread);
  site.bring_second();
  const MergeReport report = must(merge_site_file(site.second, site.first));
  CHECK(report.differences == 1);
  CHECK(report.taken == 0);
  CHECK(load_claims(site.second)[1].claim.status == ClaimStatus::misread);
  CHECK(open_differences(site.second)[0].here.who == "B. Other");
  Claim values = load_claims(site.second)[1].claim;
  values.subject = "bell";
  must(settle_difference(site.second, open_differences(site.second)[0].number, values, "neither"));
  CHECK(findings(site.second) == std::vector<std::string>{});
  site.bring_second();
  CHECK(load_claims(site.first)[1].claim.subject == "bell");
  CHECK(open_differences(site.first).empty());
  CHECK(findings(site.first) == std::vector<std::string>{});
}

TEST_CASE("undo leaves alone what others did, and says who when they changed the same since") {
  TwoCoders site;
  decide(site.second, 3, ClaimStatus::misread);
  decide(site.first, 0, ClaimStatus::said_so);
  site.bring_second();
  CHECK(must(undo(site.first))->targets[0].target == to_string(load_claims(site.first)[0].claim.id));
  CHECK(!must(undo(site.first)));

  decide(site.first, 0, ClaimStatus::said_so);
  { SiteFile closed = std::move(site.second); }
  must(site.first.copy_to(site.folder / "c.site"));
  SiteFile third = must(SiteFile::edit(site.folder / "c.site", editor("C. Third", 13)));
  CHECK(!must(undo(third)));
  decide(third, 0, ClaimStatus::set_aside);
  must(merge_site_file(site.first, third));
  const auto refused = undo(site.first);
  REQUIRE(!refused.ok());
  CHECK(refused.error().message.find("brought in another copy’s decision") != std::string::npos);
  CHECK(load_claims(site.first)[0].claim.status == ClaimStatus::set_aside);
}

TEST_CASE("rows, transcripts and proposals that only the other copy has are taken; what differs is said") {
  TwoCoders site;
  InterviewFile more = interview_file();
  more.persons[1].name = "Ole Brandt the elder";
  Interview third = more.interviews[0];
  third.key = "aske-3";
  more.interviews.push_back(third);
  must(save_interviews(site.second, more));
  must(save_transcript(site.second, transcript_file("aske-3", kTalk)));
  must(replace_proposals(site.second, "aske-3", {claim("aske-3", kTalk, "We had the crane")}));
  Register changed = evidence();
  changed.sources[0].title = "Album of the crew";
  changed.entries[0].notes = "seen again";
  must(save_register(site.second, changed));
  Register own = evidence();
  own.sources[0].title = "The crew's album";
  must(save_register(site.first, own));
  ConclusionFile concluded;
  concluded.conclusions.emplace_back().key = "c1";
  concluded.conclusions[0].wording = "The crane was gone by 1962.";
  must(save_conclusions(site.second, concluded));
  const auto at = [](const SiteFile& file) { return load_claims(file, {.interviews = {"aske-3"}}); };
  Claim decided = at(site.second)[0].claim;
  decided.status = ClaimStatus::said_so;
  must(decide_claim(site.second, decided, "heard"));

  const MergeReport report = site.bring_second();
  CHECK(report.transcripts == 1);
  CHECK(report.proposals == 1);
  CHECK(report.taken == 1);
  CHECK(not_taken(report) == std::vector<std::string>{"source album: it differs here, in title"});
  CHECK(at(site.first)[0].claim == at(site.second)[0].claim);
  CHECK(load_conclusions(site.first).conclusions == load_conclusions(site.second).conclusions);
  CHECK(load_register(site.first).entries[0].notes == "seen again");
  CHECK(load_interviews(site.first).persons[1].name == "Ole Brandt the elder");
  CHECK(findings(site.first) == std::vector<std::string>{});
}

TEST_CASE("a transcript revised in one copy carries the decisions of the other") {
  TwoCoders site;
  decide(site.first, 0, ClaimStatus::said_so);
  must(save_transcript(site.first, transcript_file("aske-1", "[revised]\n" + kTalk)));
  decide(site.second, 1, ClaimStatus::misread);
  const MergeReport report = site.bring_second();
  CHECK(report.taken == 1);
  const auto claims = load_claims(site.first);
  CHECK(claims[1].claim.status == ClaimStatus::misread);
  CHECK(claims[1].version == 2);
  CHECK(!claims[1].lost);
  CHECK(findings(site.first) == std::vector<std::string>{});
  must(merge_site_file(site.second, site.first));
  CHECK(load_claims(site.second)[1].version == 2);
  CHECK(load_claims(site.second)[0].claim.status == ClaimStatus::said_so);
  CHECK(findings(site.second) == std::vector<std::string>{});
}

TEST_CASE("what was erased here does not come back, and what was erased there is said") {
  TwoCoders site;
  decide(site.second, 0, ClaimStatus::said_so);
  must(add_note(site.second, {{}, "aske-1", {}, 0, {}, "a secret", "", ""}));
  decide(site.first, 1, ClaimStatus::said_so);
  must(erase_interview(site.first, "aske-1", "withdrawn"));
  CHECK(not_taken(site.bring_second()) == std::vector<std::string>{"interview aske-1: it was erased here"});
  CHECK(load_claims(site.first).empty());
  CHECK(notes_of_interview(site.first, "aske-1").empty());
  for_each_event(site.first, [](const JournalEvent& event) {
    if (event.interview == "aske-1") CHECK(event.after.empty());
  });
  CHECK(findings(site.first) == std::vector<std::string>{});

  CHECK(not_taken(must(merge_site_file(site.second, site.first))) ==
        std::vector<std::string>{
            "erasure aske-1: it was erased in the other copy: erase it here too, if so decided"});
  CHECK(load_claims(site.second).size() == 4);
  CHECK(findings(site.second) == std::vector<std::string>{});
}

TEST_CASE("a copy whose journal was altered is not brought in, and nothing has changed") {
  TwoCoders site;
  decide(site.second, 0, ClaimStatus::said_so);
  const auto events = count_events(site.first);
  { const SiteFile closed = std::move(site.second); }
  const auto path = site.folder / "b.site";
  CHECK(
      RawFile(path).run("PRAGMA writable_schema = ON; CREATE TEMP TABLE kept AS SELECT * FROM sqlite_schema; "
                        "DELETE FROM sqlite_schema WHERE type = 'trigger'; PRAGMA writable_schema = RESET; "
                        "UPDATE journal_content SET why = 'another reason' WHERE why = 'why 0'; "
                        "PRAGMA writable_schema = ON; INSERT INTO sqlite_schema SELECT * FROM kept "
                        "WHERE type = 'trigger'; PRAGMA writable_schema = RESET") == "ok");
  const auto refused = merge_site_file(site.first, must(SiteFile::read(path)));
  REQUIRE(!refused.ok());
  CHECK(refused.error().message.ends_with("is not what its hash says: this copy was altered"));
  CHECK(count_events(site.first) == events);
  CHECK(findings(site.first) == std::vector<std::string>{});
}

TEST_CASE("only another copy of the same site is brought in") {
  TwoCoders site;
  const SiteFile stranger = site_in_memory(77);
  CHECK(merge_site_file(site.first, stranger).error().message.starts_with("is no copy of this site file"));
  CHECK(merge_site_file(site.first, site.first).error().message == "is this site file itself");
}
