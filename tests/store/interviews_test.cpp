#include "witnessmark/store/interviews.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/restricted_passages.h"
#include "witnessmark/store/undo.h"

using namespace witnessmark;
using namespace witnessmark::sample;

TEST_CASE("interviews come back as they were taken in") {
  SiteFile site = site_in_memory();
  InterviewFile file = interview_file();
  must(save_interviews(site, file));
  InterviewFile loaded = load_interviews(site);
  for (Interview& interview : loaded.interviews) {
    CHECK(!interview.id.is_nil());
    interview.id = {};
  }
  for (Person& person : loaded.persons) {
    CHECK(!person.id.is_nil());
    person.id = {};
  }
  CHECK(loaded.interviews == file.interviews);
  CHECK(loaded.persons == file.persons);
  CHECK(loaded.speakers == file.speakers);
  CHECK(loaded.releases == file.releases);
  CHECK(loaded.passages == file.passages);
  CHECK(find_interview(site, "aske-2")->session == 2);
  CHECK(!find_interview(site, "aske-3"));
}

TEST_CASE("the same rows again change nothing, not even the journal") {
  SiteFile site = site_in_memory();
  const InterviewChanges first = must(save_interviews(site, interview_file()));
  CHECK(first.interviews == RowCounts{2, 0, 0});
  CHECK(first.persons == RowCounts{2, 0, 0});
  CHECK(first.service == RowCounts{1, 0, 0});
  const InterviewFile before = load_interviews(site);
  const auto events = count_events(site);
  const InterviewChanges second = must(save_interviews(site, interview_file()));
  CHECK(!second.any());
  CHECK(second.interviews == RowCounts{0, 0, 2});
  CHECK(second.service == RowCounts{0, 0, 1});
  CHECK(count_events(site) == events);
  CHECK(load_interviews(site).persons == before.persons);
}

TEST_CASE("service periods are counted with their persons") {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  InterviewFile file;
  file.persons = {interview_file().persons[0]};
  file.persons[0].service[0].role = "mate";
  file.persons[0].service.push_back({"aske", dated("1960"), "master", ""});
  CHECK(must(save_interviews(site, file)).service == RowCounts{1, 1, 0});
  CHECK(must(save_interviews(site, file)).service == RowCounts{0, 0, 2});
}

TEST_CASE("a changed row keeps its id, and the journal has it before and after") {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  const Person before = load_interviews(site).persons[0];
  InterviewFile file;
  Person changed = interview_file().persons[0];
  changed.birth = dated("1930");
  changed.service.clear();  // the file brings none: the former ones stay
  file.persons = {changed};
  const InterviewChanges changes = must(save_interviews(site, file));
  CHECK(changes.persons == RowCounts{0, 1, 0});
  CHECK(changes.changed == std::vector<ChangedRow>{{"person", "aske", {"birth"}}});
  const Person after = load_interviews(site).persons[0];
  CHECK(after.id == before.id);
  CHECK(after.service == before.service);
  CHECK(to_string(after.birth) == "1930");
  const auto events = events_on(site, "person", "aske");
  REQUIRE(events.size() == 2);
  CHECK(events[1].kind == "changed");
  CHECK(events[1].before.find("1931") != std::string::npos);
  CHECK(events[1].after.find("1930") != std::string::npos);
  CHECK(load_interviews(site).interviews.size() == 2);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("rows that refer to nothing, or come twice, are refused and leave the site file as it was") {
  struct Row {
    const char* message;
    void (*spoil)(InterviewFile&);
  };
  for (const Row& row : {Row{"interview \"aske-1\" names person \"nobody\", which is not known",
                             [](InterviewFile& f) { f.interviews[0].narrators = {"nobody"}; }},
                         Row{"speaker \"AT\" names interview \"none\", which is not known",
                             [](InterviewFile& f) { f.speakers[0].interview = "none"; }},
                         Row{"release \"aske-1\" names person \"nobody\", which is not known",
                             [](InterviewFile& f) { f.releases[0].person = "nobody"; }},
                         Row{"person \"aske\" occurs twice", [](InterviewFile& f) {
                               f.persons[1] = f.persons[0];
                               f.interviews.clear();
                               f.speakers.clear();
                               f.releases.clear();
                               f.passages.clear();
                             }}}) {
    SiteFile site = site_in_memory();
    InterviewFile file = interview_file();
    row.spoil(file);
    const auto result = save_interviews(site, file);
    REQUIRE(!result.ok());
    CHECK(result.error().message == row.message);
    CHECK(load_interviews(site).persons.empty());
    CHECK(count_events(site) == 1);
  }
}

TEST_CASE("a restricted passage covers the whole text until its words are found, and when they are lost") {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  const CodePointRange crane = range_of(kTalk, "the crane");
  const Day today = to_day({2041, 1, 1});
  CHECK(judge(access_file(site, "aske-1"), crane, today) == Withheld::restricted);

  auto passages = load_interviews(site).passages;
  passages[0].range = range_of(kTalk, passages[0].quote);
  must(place_passages(site, "aske-1", passages));
  CHECK(load_interviews(site).passages[0].range == passages[0].range);
  CHECK(judge(access_file(site, "aske-1"), crane, today) == Withheld::none);
  CHECK(judge(access_file(site, "aske-1"), passages[0].range, today) == Withheld::restricted);
  CHECK(access_files(site).at("aske-1").passages == access_file(site, "aske-1").passages);

  std::string revised = kTalk;
  revised.replace(revised.find("mate was drunk"), 14, "mate had drunk");
  const auto changes = must(save_transcript(site, transcript_file("aske-1", revised)));
  REQUIRE(changes.lost.size() == 1);
  CHECK(changes.lost[0].quote == "the mate was drunk");
  CHECK(judge(access_file(site, "aske-1"), crane, today) == Withheld::restricted);

  passages[0].range = {CodePoint{0}, CodePoint{99999}};
  CHECK(!place_passages(site, "aske-1", passages).ok());
  passages[0].quote = "never said";
  CHECK(!place_passages(site, "aske-1", passages).ok());
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("an interview nobody knows is judged as withdrawn") {
  const SiteFile site = site_in_memory();
  CHECK(access_file(site, "nobody").withdrawn);
}

TEST_CASE("a restricted passage whose words were lost in a revision gets its place again, and loses it when that is undone") {
  SiteFile site = site_in_memory();
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  auto passages = load_interviews(site).passages;
  const std::string words = passages.at(0).quote;
  passages[0].range = range_of(kTalk, words);
  must(place_passages(site, "aske-1", passages));
  // What is said twice cannot be carried over: it may be either, so all is withheld.
  const std::string revised = words + ". Then she said again that " + words + ".\n";
  REQUIRE(must(save_transcript(site, transcript_file("aske-1", revised))).lost.size() == 1);
  const Day today = to_day({2041, 1, 1});
  const CodePointRange between = range_of(revised, "Then she");
  const auto second = static_cast<std::int64_t>(revised.rfind(words));
  RestrictedPassage again = load_interviews(site).passages.at(0);
  again.range = {CodePoint{second}, CodePoint{second + static_cast<std::int64_t>(words.size())}};
  CHECK(judge(access_file(site, "aske-1"), between, today) == Withheld::restricted);

  must(mark_passage(site, again, "the second time"));
  CHECK(load_interviews(site).passages.at(0).range == again.range);
  CHECK(judge(access_file(site, "aske-1"), between, today) == Withheld::none);
  CHECK(judge(access_file(site, "aske-1"), again.range, today) == Withheld::restricted);
  const auto events = count_events(site);
  must(mark_passage(site, again, "once more"));   // stands so: nothing is written
  CHECK(count_events(site) == events);
  CHECK(findings(site) == std::vector<std::string>{});

  must(undo(site));
  CHECK(judge(access_file(site, "aske-1"), between, today) == Withheld::restricted);
  CHECK(findings(site) == std::vector<std::string>{});
  must(redo(site));
  CHECK(load_interviews(site).passages.at(0).range == again.range);

  // Other conditions leave it where it is.
  again.conditions = {Access::closed, std::nullopt, "her death"};
  must(mark_passage(site, again, ""));
  must(undo(site));
  CHECK(load_interviews(site).passages.at(0).range == again.range);
  CHECK(load_interviews(site).passages.at(0).conditions.access == passages[0].conditions.access);
  CHECK(findings(site) == std::vector<std::string>{});
}

TEST_CASE("what two coders have read is counted once") {
  SiteFile site = filled_site();
  must(mark_read(site, "aske-1", {CodePoint{0}, CodePoint{20}}));
  const TemporaryFolder folder;
  must(site.copy_to(folder / "read.site"));
  SiteFile other = must(SiteFile::edit(folder / "read.site", editor("B. Coder", 9)));
  must(mark_read(other, "aske-1", {CodePoint{10}, CodePoint{30}}));
  CHECK(passages_read(other, "aske-1").size() == 2);
  CHECK(ranges_read(other, "aske-1", 1) == std::vector<CodePointRange>{{CodePoint{0}, CodePoint{30}}});
}
