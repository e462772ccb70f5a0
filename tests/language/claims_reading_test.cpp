// The whole of a reading: speakers, lists with several meanings, positions, order, and the data files behind
// it.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "claims_table.h"
#include "witnessmark/base/code_point_index.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

struct Site {
  TermFinder places;
  TermFinder equipment;
  Interview interview;
  std::vector<Person> persons;
  std::vector<std::vector<std::string>> locations;

  Site(std::vector<Term> place_terms, std::vector<Term> equipment_terms)
      : places(AuthorityList(AuthorityList::Kind::places, std::move(place_terms)), english()),
        equipment(AuthorityList(AuthorityList::Kind::equipment, std::move(equipment_terms)), english()) {
    interview.key = "i-1";
    interview.narrators = {"ada"};
    interview.interviewers = {"ben"};
    interview.date.value = parse_edtf("1990-05-04").value();
    Person ada;
    ada.key = "ada";
    ada.name = "Ada Marsh";
    Person ben;
    ben.key = "ben";
    ben.name = "Ben Holt";
    persons = {ada, ben};
  }

  ReadingContext context() const {
    ReadingContext made;
    made.language = &english();
    made.places = &places;
    made.equipment = &equipment;
    made.interview = &interview;
    made.persons = persons;
    made.locations = locations;
    made.by_weights = false;
    return made;
  }
};

Term term(std::string key, std::string name, std::vector<std::string> spoken = {}) {
  Term made;
  made.key = std::move(key);
  made.name = std::move(name);
  made.spoken = std::move(spoken);
  return made;
}

Site small_site() {
  return Site(
      {term("loft", "Loft"), term("cellar", "Cellar")},
      {term("hand-hoist", "Hand hoist", {"the hoist"}), term("steam-hoist", "Steam hoist", {"the hoist"}),
       term("vat", "Vat"), term("agitator", "Agitator")});
}

Transcript talk(const std::vector<std::pair<std::string, std::string>>& turns) {
  Transcript transcript;
  for (const auto& [label, words] : turns) {
    const std::int64_t begin = CodePointIndex(transcript.reading_text).size().value;
    transcript.reading_text += words;
    const std::int64_t end = CodePointIndex(transcript.reading_text).size().value;
    transcript.reading_text += "\n\n";
    transcript.utterances.push_back({label, {{begin}, {end}}, std::nullopt, Timing::none});
  }
  return transcript;
}

Proposals read(const ReadingContext& context, const Transcript& transcript) {
  return read_claims(context, transcript, split_sentences(transcript, english().abbreviations()));
}

/// Files in memory, on top of the real language folder.
class ChangedFiles final : public FileReader {
 public:
  std::map<std::string, std::string> changed;
  Result<std::string> read(const std::filesystem::path& path) const override {
    const auto found = changed.find(path.filename().string());
    return found == changed.end() ? system_.read(path) : Result<std::string>(found->second);
  }
  bool exists(const std::filesystem::path& path) const override { return system_.exists(path); }

 private:
  SystemFileReader system_;
};

}  // namespace

TEST_CASE("names made once for a site read every interview like names made for each") {
  Site site = small_site();
  site.locations = {{"Tolbeck", "the town"}, {"Scarrow"}, {"TOLBECK", "up the hill"}};
  const Transcript talks[] = {
      talk({{"Ada Marsh", "They took the hoist out of the loft in 1931. The hoist was old."}}),
      talk({{"Ada Marsh", "We lived up the hill. I went to the town in 1931."}}),
      talk({{"Ben Holt", "Was the vat in the cellar?"}, {"Ada Marsh", "It was. The hoist was in the loft."}}),
  };
  const SiteNames names(site.context());
  for (const Transcript& transcript : talks) {
    ReadingContext context = site.context();
    const Proposals alone = read(context, transcript);
    CHECK_FALSE(alone.claims.empty());
    context.names = &names;
    const Proposals prepared = read(context, transcript);
    CHECK(prepared.claims == alone.claims);
    CHECK(prepared.mentions == alone.mentions);
  }
  // Locations of one name are one, with all they are called.
  const Proposals somewhere = read(site.context(), talks[1]);
  CHECK(std::count_if(somewhere.mentions.begin(), somewhere.mentions.end(), [](const Mention& mention) {
          return mention.kind == MentionKind::place && mention.value == "Tolbeck";
        }) == 2);
  const Site other = small_site();
  ReadingContext mixed = other.context();
  mixed.names = &names;
  CHECK_THROWS(read(mixed, talks[0]));
}

TEST_CASE("a name with two meanings gives two claims") {
  const Site site = small_site();
  const auto proposals =
      read(site.context(), talk({{"Ada Marsh", "They took the hoist out of the loft in 1931."}}));
  REQUIRE(proposals.claims.size() == 2);
  CHECK(proposals.claims[0].subject == "hand-hoist");
  CHECK(proposals.claims[1].subject == "steam-hoist");
  CHECK(proposals.claims[0].ordinal == 0);
  CHECK(proposals.claims[1].ordinal == 1);
}

TEST_CASE("a likely misspelling is offered and says so") {
  const Site site = small_site();
  const auto proposals = read(site.context(), talk({{"Ada Marsh", "There was an agitatr in the loft."}}));
  REQUIRE(proposals.claims.size() == 1);
  CHECK(proposals.claims[0].subject == "agitator");
  CHECK(proposals.claims[0].reason.find("likely misspelling") != std::string::npos);
  CHECK(proposals.claims[0].mentions[0].near_match);
  const auto sure = read(site.context(), talk({{"Ada Marsh", "There was an agitator in the loft."}}));
  CHECK(sure.claims[0].rank < proposals.claims[0].rank);
}

TEST_CASE("a state said of the whole of a stretch holds throughout it") {
  const Site site = small_site();
  for (const char* words :
       {"The vat was in the cellar throughout 1957.", "The vat was in the cellar all through 1957.",
        "The vat stood in the cellar the whole of 1957."}) {
    const auto proposals = read(site.context(), talk({{"Ada Marsh", words}}));
    REQUIRE(proposals.claims.size() == 1);
    CHECK(reading_of(proposals.claims[0]) == Reading::throughout);
  }
  const auto some_time = read(site.context(), talk({{"Ada Marsh", "The vat was in the cellar in 1957."}}));
  REQUIRE(some_time.claims.size() == 1);
  CHECK(reading_of(some_time.claims[0]) == Reading::within);
}

TEST_CASE("an interviewer's words make no claims of their own") {
  const Site site = small_site();
  const auto proposals =
      read(site.context(),
           talk({{"Ben Holt", "I read that there was a vat in the loft."}, {"Ada Marsh", "Lovely day."}}));
  CHECK(proposals.claims.empty());
  CHECK_FALSE(proposals.mentions.empty());
}

TEST_CASE("speakers are known by the table, by name, part of a name, initials, or as the only narrator") {
  const Site site = small_site();
  std::vector<Speaker> speakers{{"i-1", "X", "ben", SpeakerRole::interviewer},
                                {"i-2", "Y", "ben", SpeakerRole::interviewer}};
  ReadingContext context = site.context();
  context.speakers = speakers;
  const auto role = [&](std::string_view label) { return identify_speaker(context, label).role; };
  CHECK(role("X") == SpeakerRole::interviewer);
  CHECK(role("Y") == SpeakerRole::narrator);
  CHECK(role("BEN HOLT") == SpeakerRole::interviewer);
  CHECK(role("Holt") == SpeakerRole::interviewer);
  CHECK(role("BH") == SpeakerRole::interviewer);
  CHECK(role("Interviewer") == SpeakerRole::interviewer);
  CHECK(role("Q") == SpeakerRole::interviewer);
  CHECK(role("MARSH") == SpeakerRole::narrator);
  CHECK(identify_speaker(context, "").person == "ada");
  Site two = small_site();
  two.interview.narrators = {"ada", "ben"};
  CHECK(identify_speaker(two.context(), "somebody").role == SpeakerRole::unknown);
}

TEST_CASE("without labels a question is taken for the interviewer's") {
  const Site site = small_site();
  const auto proposals = read(
      site.context(), talk({{"", "When was the vat taken out? In 1931. There was a vat in the cellar."}}));
  REQUIRE(proposals.claims.size() == 2);
  CHECK(dump(proposals.claims[0]) == "ends vat 1931 unstated firm affirmed");
}

TEST_CASE("quotes and mentions are positions in the reading text") {
  const Site site = small_site();
  const Transcript transcript =
      talk({{"Ada Marsh", "\u00C9t\u00E9! They took the vat out of the loft in 1931."}});
  const auto proposals = read(site.context(), transcript);
  REQUIRE(proposals.claims.size() == 1);
  const CodePointIndex index(transcript.reading_text);
  CHECK(index.slice(proposals.claims[0].quotes[0]) == "They took the vat out of the loft in 1931.");
  CHECK(index.slice(proposals.claims[0].mentions[0].range) == "vat");
  bool date = false;
  for (const Mention& mention : proposals.mentions) {
    if (mention.kind == MentionKind::date) date = index.slice(mention.range) == "1931";
  }
  CHECK(date);
}

TEST_CASE("remarks of the transcriber are passed over") {
  const Site site = small_site();
  Transcript transcript =
      talk({{"Ada Marsh", "They took [sic: there was an agitator in the loft] the vat out in 1931."}});
  const auto past = static_cast<std::int64_t>(transcript.reading_text.find(']')) + 1;
  transcript.remarks = {{{{10}, {past}}}};
  const auto proposals = read(site.context(), transcript);
  REQUIRE(proposals.claims.size() == 1);
  CHECK(proposals.claims[0].subject == "vat");
}

TEST_CASE("a long sentence of several clauses gives each claim its own clause as quote") {
  const Site site = small_site();
  const Transcript transcript = talk({{"Ada Marsh",
                                       "They took the vat out of the loft in 1931, which I never understood, "
                                       "and then in the spring of 1932, when "
                                       "everybody was away, they put an agitator in the cellar."}});
  const auto proposals = read(site.context(), transcript);
  REQUIRE(proposals.claims.size() == 2);
  const CodePointIndex index(transcript.reading_text);
  CHECK(std::string(index.slice(proposals.claims[0].quotes[0])).find("agitator") == std::string::npos);
  CHECK(std::string(index.slice(proposals.claims[1].quotes[0])).find("vat") == std::string::npos);
}

TEST_CASE("reading twice gives the same") {
  const Site site = small_site();
  const Transcript transcript =
      talk({{"Ben Holt", "What was in the loft?"},
            {"Ada Marsh", "A vat. They took the hoist out in 1931, no, wait, 1932."}});
  const auto first = read(site.context(), transcript);
  const auto second = read(site.context(), transcript);
  CHECK(first.claims == second.claims);
  CHECK(first.mentions == second.mentions);
  for (const Claim& claim : first.claims) CHECK(claim.id.is_nil());
}

TEST_CASE("every claim has a subject or a place, a quote and a reason") {
  const ClaimTable table = read_claim_table(WITNESSMARK_SOURCE_DIR "/tests/language/tables/claims.tsv");
  int claims = 0;
  for (const ClaimRow& row : table.rows) {
    for (const Claim& claim : claims_of(row.text, table)) {
      ++claims;
      CHECK((!claim.subject.empty() || !claim.place.empty() || !claim.place_words.empty()));
      CHECK_FALSE(claim.quotes.empty());
      CHECK_FALSE(claim.reason.empty());
      CHECK(claim.speaker == "n");
    }
  }
  CHECK(claims > 200);
}

TEST_CASE("a reading context without language or finders is a broken invariant") {
  CHECK_THROWS(read_claims(ReadingContext{}, Transcript{}, {}));
}

TEST_CASE("faults in the language's files are named with line and column") {
  struct Row {
    std::string file, text, expected;
  };
  const Row rows[] = {
      {"words.csv", "phrase,class,note\nthe,determinerr,\n",
       "words.csv:2:5: class \"determinerr\" is not known"},
      {"cues.csv", "phrase,class,value\nperhaps,hedging,guess\n",
       "cues.csv:2:9: class \"hedging\" is not known"},
      {"cues.csv", "phrase,class,value\nperhaps,hedge,guess\ni forget,memory,block\n",
       "cues.csv:3:17: \"block\" is no value of class memory (did you mean blocks?)"},
      {"cues.csv", "phrase,class,value\nthe book says,read,hedged\n",
       "cues.csv:2:20: \"hedged\" is no value of class read (give nothing, alone or shown)"},
      {"cues.csv", "phrase,class,value\ni saw,first_hand,yes\n",
       "cues.csv:2:18: \"yes\" is no value of class first_hand (leave it empty)"},
      {"verbs.csv", "verb,forms,particle,statement,frame,needs\nfit,fit;fits,,begins,object,\n",
       "verbs.csv:2:5: five forms are wanted"},
      {"verbs.csv", "verb,forms,particle,statement,frame,needs\nfit,f;f;f;f;f,,starts,object,\n",
       "verbs.csv:2:16: statement \"starts\" is not known"},
      {"quantities.csv", "phrase,class,least,most\ntwo,unit,2,two\n",
       "quantities.csv:2:12: \"two\" is not a whole number"},
      {"equivalents.csv", "word,same_as\ngrey paint,gray\n",
       "equivalents.csv:2:1: \"grey paint\" and \"gray\" are not one word each"},
      {"abbreviations.csv", "abbreviation,class\nMr.,never\n",
       "abbreviations.csv:2:1: an abbreviation is wanted without its full stop"},
      {"words.csv", "phrase,kind\nthe,determiner\n", "words.csv:1:1: no column \"class\""},
      {"cues.csv", "phrase,class,value\n\"perhaps,hedge,guess\n", "cues.csv:2:"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    ChangedFiles files;
    files.changed[row.file] = row.text;
    const auto loaded = Language::load(files, WITNESSMARK_SOURCE_DIR "/shared/language/en");
    REQUIRE_FALSE(loaded.ok());
    CHECK(to_string(loaded.error()).find(row.expected) != std::string::npos);
    CHECK_FALSE(loaded.error().advice.empty());
  }
}

TEST_CASE("a folder of a user's own changes what is read") {
  ChangedFiles files;
  files.changed["verbs.csv"] =
      "verb,forms,particle,statement,frame,needs\nzork,zork;zorks;zorked;zorked;zorking,,begins,object,\n";
  const auto language = Language::load(files, WITNESSMARK_SOURCE_DIR "/shared/language/en");
  REQUIRE(language.ok());
  const TermFinder places(AuthorityList(AuthorityList::Kind::places, {term("loft", "Loft")}), *language);
  const TermFinder equipment(AuthorityList(AuthorityList::Kind::equipment, {term("vat", "Vat")}), *language);
  ReadingContext context;
  context.language = &*language;
  context.places = &places;
  context.equipment = &equipment;
  context.by_weights = false;
  const Transcript transcript = talk({{"", "They zorked the vat in the loft. They fitted the vat."}});
  const auto claims =
      propose_claims(context, transcript, split_sentences(transcript, language->abbreviations()));
  REQUIRE(claims.size() == 2);
  CHECK(dump(claims[0]) == "begins vat@loft - unstated firm affirmed");
  // A past form of no row is still something that was done.
  CHECK(dump(claims[1]) == "happened vat - {fitted} unstated firm affirmed");
}
