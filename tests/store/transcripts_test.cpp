#include "witnessmark/store/transcripts.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/search.h"

using namespace witnessmark;
using namespace witnessmark::sample;

using Kind = TranscriptChanges::Kind;

TEST_CASE("a transcript comes back whole, its original byte for byte") {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  TranscriptFile file = transcript_file("aske-1", kTalk);
  file.original += std::string("\0\xff\r\n", 4);
  file.transcript.utterances[1].time.reset();
  file.transcript.utterances[1].timing = Timing::none;
  file.transcript.remarks = {{range_of(kTalk, "brass")}};
  CHECK(must(save_transcript(site, file)).kind == Kind::first);

  const auto stored = load_transcript(site, "aske-1");
  REQUIRE(stored);
  CHECK(stored->transcript.reading_text == kTalk);
  CHECK(stored->transcript.utterances == file.transcript.utterances);
  CHECK(stored->transcript.marks == file.transcript.marks);
  CHECK(stored->transcript.remarks == file.transcript.remarks);
  CHECK(stored->sentences == file.sentences);
  CHECK(stored->transcript.reader == "text");
  CHECK(load_original(site, "aske-1") == file.original);
  CHECK(load_reading_text(site, "aske-1") == kTalk);
  CHECK(!load_transcript(site, "aske-2"));
  CHECK(!load_original(site, "aske-1", 2));
}

TEST_CASE("the same transcript again changes nothing; read otherwise it stays the same version") {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  TranscriptFile file = transcript_file("aske-1", kTalk);
  must(save_transcript(site, file));
  const auto events = count_events(site);
  CHECK(must(save_transcript(site, file)).kind == Kind::unchanged);
  CHECK(count_events(site) == events);

  file.transcript.utterances[0].speaker = "MARIT";
  CHECK(must(save_transcript(site, file)).kind == Kind::read_anew);
  CHECK(reading_versions(site, "aske-1").size() == 1);
  CHECK(load_transcript(site, "aske-1")->transcript.utterances[0].speaker == "MARIT");
  CHECK(search_talk(site, {"brass"}).size() == 1);

  file.original.erase(0, 3);
  CHECK(must(save_transcript(site, file)).kind == Kind::read_anew);
  CHECK(load_original(site, "aske-1") == file.original);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("a transcript that does not fit is refused") {
  struct Row {
    const char* message;
    void (*spoil)(TranscriptFile&);
  };
  const char* order = "turns or sentences lie outside the text or out of order";
  for (const Row& row :
       {Row{"interview \"none\" is not known", [](TranscriptFile& f) { f.interview = "none"; }},
        Row{order, [](TranscriptFile& f) { f.transcript.utterances.back().range.end.value += 9; }},
        Row{order, [](TranscriptFile& f) { std::swap(f.sentences[0], f.sentences[1]); }},
        Row{order, [](TranscriptFile& f) { f.sentences[0].utterance = 99; }},
        Row{order, [](TranscriptFile& f) { f.transcript.marks[0].at.value = -1; }},
        Row{"the reading text is not UTF-8, or holds NUL",
            [](TranscriptFile& f) { f.transcript.reading_text[3] = '\xff'; }}}) {
    SiteFile site = site_in_memory();
    must(save_interviews(site, interview_file()));
    TranscriptFile file = transcript_file("aske-1", kTalk);
    row.spoil(file);
    const auto result = save_transcript(site, file);
    REQUIRE(!result.ok());
    CHECK(result.error().message == row.message);
    CHECK(!load_transcript(site, "aske-1"));
  }
}

TEST_CASE(
    "claims go over to a revised transcript where their words stand once, and are marked where they do not") {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  Claim kept = claim("aske-1", kTalk, "We had the crane on the foredeck");
  kept.quotes.resize(1);
  Claim decided = claim("aske-1", kTalk, "it went over the side");
  decided.quotes.resize(1);
  Claim lost = claim("aske-1", kTalk, "The lamp was brass");
  lost.quotes.resize(1);
  lost.mentions.clear();
  must(replace_proposals(site, "aske-1", {kept, decided, lost}));
  StoredClaim to_decide = load_claims(site)[2];
  to_decide.claim.status = ClaimStatus::said_so;
  must(decide_claim(site, to_decide.claim, "heard it"));

  const std::string revised =
      "[recorded in the mess]\nWe had the crane on the foredeck until the yard took it off in sixty-two.\n"
      "And the lamp?\nThe lamp was bronze. It was dark and it went over the side. Then it went over the side "
      "again.\n"
      "Once the mate was drunk, and it went over the side.\n";
  const auto changes = must(save_transcript(site, transcript_file("aske-1", revised)));
  CHECK(changes.kind == Kind::revised);
  CHECK(changes.version == 2);
  CHECK(changes.carried == 2);
  REQUIRE(changes.lost.size() == 1);
  CHECK(changes.lost[0].quote == "The lamp was brass");
  CHECK(!changes.lost[0].decided);

  const CodePointIndex index(revised);
  std::vector<std::string> lines;
  for (const StoredClaim& stored : load_claims(site)) {
    const CodePointIndex own(stored.version == 2 ? revised : kTalk);
    std::string line = std::string(own.slice(stored.claim.quotes[0])) + (stored.lost ? " lost" : "");
    for (const Mention& mention : stored.claim.mentions)
      line += " | " + std::string(own.slice(mention.range));
    lines.push_back(line);
  }
  CHECK(lines == std::vector<std::string>{"We had the crane on the foredeck | crane | until",
                                          "The lamp was brass lost",
                                          "it went over the side | crane | until"});
  // The one decided on is found by the words around it: "drunk, and it went over the side".
  CHECK(load_claims(site)[2].claim.quotes[0].begin.value ==
        range_of(revised, "drunk, and it went").begin.value + 11);
  CHECK(reading_versions(site, "aske-1").size() == 2);
  CHECK(load_reading_text(site, "aske-1", 1) == kTalk);
  CHECK(load_transcript(site, "aske-1", 1)->transcript.utterances.size() == 4);
  CHECK(search_talk(site, {"brass"}).empty());
  CHECK(search_talk(site, {"bronze"}).size() == 1);
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(events_on(site, "claim", to_string(to_decide.claim.id)).back().kind == "carried");
}
