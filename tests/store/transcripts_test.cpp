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

namespace {

/// What became of decided claims of these words when the text was revised: their words and mentions there.
std::vector<std::string> carried(const std::string& before, const std::vector<std::string>& revisions,
                                 const std::vector<std::string>& quotes, const std::string& mention = "") {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", before)));
  std::vector<Claim> claims;
  for (const std::string& quote : quotes) {
    Claim made = claim("aske-1", kTalk, "The lamp was brass");
    made.quotes = {range_of(before, quote)};
    made.mentions.resize(1);
    made.mentions[0].range = mention.empty() ? made.quotes[0] : range_of(before, mention);
    claims.push_back(std::move(made));
  }
  must(replace_proposals(site, "aske-1", claims));
  for (StoredClaim stored : load_claims(site)) {
    stored.claim.status = ClaimStatus::said_so;
    must(decide_claim(site, stored.claim, ""));
  }
  for (const std::string& revision : revisions)
    must(save_transcript(site, transcript_file("aske-1", revision)));
  std::vector<std::string> lines;
  const CodePointIndex now(revisions.back());
  for (const StoredClaim& stored : load_claims(site)) {
    std::string line = stored.lost ? "lost" : std::string(now.slice(stored.claim.quotes[0]));
    for (const Mention& one : stored.claim.mentions)
      if (!mention.empty() && !stored.lost) line += " | " + std::string(now.slice(one.range));
    lines.push_back(line);
  }
  CHECK(findings(site) == std::vector<std::string>{});
  return lines;
}

}  // namespace

TEST_CASE("a decision stays with its words when only marks, spaces, capitals or apostrophes are revised") {
  using Lines = std::vector<std::string>;
  const std::string quote = "The Peaks are there yet for all I know.";
  const auto told = [](const std::string& words) {
    return "Were they sold?\n" + words + " The bosun’s lamp wasn't there.\nAnd then?\nNothing more, no.\n";
  };
  for (const char* words :
       {"The Peaks are there yet, for all I know.", "the peaks are there yet for all I know!",
        "The Peaks are  there yet -- for all I know.", "The “Peaks” are there yet\nfor all I know."}) {
    CAPTURE(words);
    CHECK(carried(told(quote), {told(words)}, {quote}) == Lines{words});
  }
  CHECK(carried(told(quote), {told("The Peaks are there yet, for all I know.")}, {quote}, "for all I know") ==
        Lines{"The Peaks are there yet, for all I know. | for all I know"});
  CHECK(carried(told(quote), {told("The “Peaks” are there yet for all I know.")}, {quote}, "Peaks are") ==
        Lines{"The “Peaks” are there yet for all I know. | Peaks” are"});
  // Apostrophes within, and words that are no longer the same.
  CHECK(carried("The bosun's lamp wasn't there.\nNo.\n", {"The bosun’s lamp wasn’t there.\nNo.\n"},
                {"The bosun's lamp wasn't there."}) == Lines{"The bosun’s lamp wasn’t there."});
  CHECK(carried(told(quote), {told("The Peaks were there yet for all I know.")}, {quote}) == Lines{"lost"});
  // Another number is another statement.
  CHECK(carried("It was 1.5 feet.\nNo.\n", {"It was 15 feet.\nNo.\n"}, {"It was 1.5 feet."}) ==
        Lines{"lost"});
  // A word is not found within another.
  CHECK(carried("Ale.\nNo.\n", {"Females.\nNo.\n"}, {"Ale."}) == Lines{"lost"});
}

TEST_CASE("of two places the one whose surroundings fit is taken, and none where both fit equally") {
  using Lines = std::vector<std::string>;
  const std::string twice = "It was red. Then the mate came.\nAnd later?\nIt was red. Then we left.\n";
  CHECK(carried(twice, {"It was, red. Then the mate came.\nAnd later?\nIt was red. Then we left.\n"},
                {"It was red."}) == Lines{"It was, red."});
  CHECK(carried("It was red. So.\n", {"It was, red. So. It was red; so.\n"}, {"It was red."}) ==
        Lines{"lost"});
}

TEST_CASE(
    "a decision that is not found in one version is found again in a later one, and is not proposed twice") {
  const std::string sentence = "The lamp was brass",
                    without = std::string(kTalk).replace(std::string(kTalk).find(sentence), sentence.size(),
                                                         "The lamp was never seen");
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  const auto proposed = [&](const std::string& text) {
    Claim made = claim("aske-1", text, sentence);
    made.quotes.resize(1);
    made.mentions.clear();
    return std::vector<Claim>{made};
  };
  must(replace_proposals(site, "aske-1", proposed(kTalk)));
  StoredClaim decided = load_claims(site)[0];
  decided.claim.status = ClaimStatus::said_so;
  must(decide_claim(site, decided.claim, "heard it"));
  const Id id = decided.claim.id;

  must(save_transcript(site, transcript_file("aske-1", without)));
  must(replace_proposals(site, "aske-1", {}));
  CHECK(find_claim(site, id)->lost);
  // Offered afresh in between, as the program did when it was read from other words.
  const std::string again = std::string(kTalk) + "Yes.\n";
  must(save_transcript(site, transcript_file("aske-1", again)));
  CHECK_FALSE(find_claim(site, id)->lost);
  CHECK(find_claim(site, id)->version == 3);
  CHECK(findings(site) == std::vector<std::string>{});
  const auto changes = must(replace_proposals(site, "aske-1", proposed(again)));
  CHECK(changes.added == 0);
  REQUIRE(load_claims(site).size() == 1);
  CHECK_FALSE(load_claims(site)[0].gone);
  CHECK(load_claims(site)[0].claim.status == ClaimStatus::said_so);
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(events_on(site, "claim", to_string(id)).back().kind == "carried");
}

TEST_CASE("what was proposed afresh while a decision was not found goes when it is found") {
  const std::string once = "It was red. So.\n", twice = "It was, red. So. It was red; so.\n";
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", once)));
  const auto proposed = [](const std::string& text, const std::string& words) {
    Claim made = claim("aske-1", kTalk, "The lamp was brass");
    made.quotes = {range_of(text, words)};
    made.mentions.clear();
    return std::vector<Claim>{made};
  };
  must(replace_proposals(site, "aske-1", proposed(once, "It was red.")));
  StoredClaim decided = load_claims(site)[0];
  decided.claim.status = ClaimStatus::said_so;
  must(decide_claim(site, decided.claim, ""));
  must(save_transcript(site, transcript_file("aske-1", twice)));
  must(replace_proposals(site, "aske-1", proposed(twice, "It was, red.")));
  CHECK(load_claims(site).size() == 2);
  must(save_transcript(site, transcript_file("aske-1", once + "No.\n")));
  REQUIRE(load_claims(site).size() == 1);
  CHECK(load_claims(site)[0].claim.id == decided.claim.id);
  CHECK_FALSE(load_claims(site)[0].lost);
  CHECK_FALSE(load_claims(site)[0].gone);
  CHECK(findings(site) == std::vector<std::string>{});
}
