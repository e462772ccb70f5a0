#include "witnessmark/app/open_questions.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "whole_job.h"
#include "witnessmark/app/take_in.h"
#include "witnessmark/store/claims.h"

using namespace witnessmark;

TEST_CASE("a repeated story the log contradicts, what was looked for, and a label to correct are all named") {
  const SystemFileReader files;
  const auto folder = source_tree() / "corpus-demo";
  const Day today = to_day({2026, 1, 15});
  SiteFile site = whole_job(files, folder, today);
  const auto around = surroundings_of(files, today);
  REQUIRE(take_in_conclusions(
              site, {.conclusions = folder / "conclusions.csv", .enquiries = {}, .searches = {}}, around)
              .done);
  const OpenQuestions open = open_questions(site, around).value();
  const auto find = [&](OpenBecause because, const std::string& words) {
    return std::find_if(open.questions.begin(), open.questions.end(), [&](const OpenQuestion& one) {
      return one.because == because && one.question.find(words) != std::string::npos;
    });
  };
  const auto story = find(OpenBecause::contradicted_story, "Widow Bank");
  REQUIRE(story != open.questions.end());
  CHECK(story->told_by == 2);
  CHECK(story->preview);
  CHECK(std::find(story->entries.begin(), story->entries.end(), "st-03") != story->entries.end());
  // The bell told as landed in the summer of 1958, and in that year: one question.
  const auto bell = find(OpenBecause::contradicted_story, "Fog bell (Forecastle deck) taken away");
  REQUIRE(bell != open.questions.end());
  CHECK(bell->told_by == 3);
  CHECK(!bell->also_told.empty());
  CHECK(std::count_if(open.questions.begin(), open.questions.end(), [](const OpenQuestion& one) {
          return one.question.starts_with("Fog bell (Forecastle deck) taken away");
        }) == 1);
  const auto harmonium = find(OpenBecause::silent, "Harmonium (Crew mess) there, “nineteen fifty-one”");
  REQUIRE(harmonium != open.questions.end());
  CHECK(harmonium->looked_at.front().find("found nothing") != std::string::npos);
  REQUIRE(open.to_correct.size() == 1);
  CHECK(open.to_correct[0].conclusion.key == "con-1");
  CHECK(open.to_correct[0].answers.size() == 1);
  // Nothing of what is withheld puts or answers a question.
  for (const OpenQuestion& one : open.questions) {
    for (const Id& claim : one.claims) {
      const std::string interview = find_claim(site, claim)->claim.interview;
      CHECK(interview != "ag-1998");
      CHECK(interview != "eb-2015");
    }
  }
}

TEST_CASE("where a narrator was is asked under the name the release allows, and never of I") {
  const auto folder = source_tree() / "corpus-demo";
  const MemoryFiles files = files_of(folder, [](const std::string& name, std::string text) {
    const auto put = [&](const std::string& words, const std::string& other) {
      const auto at = text.find(words);
      REQUIRE(at != std::string::npos);
      text.replace(at, words.size(), other);
    };
    if (name == "persons.csv") put("Lowen Castray,,", "Lowen Castray,Operator B,");
    if (name == "releases.csv")
      put("lc-2001,castray,signed,\"research, display, publication\",name,", "lc-2001,castray,signed,,pseudonym,");
    return text;
  });
  const Day today = to_day({2026, 1, 15});
  const SiteFile site = whole_job(files, folder, today);
  const OpenQuestions open = open_questions(site, surroundings_of(files, today)).value();
  std::int64_t under_pseudonym = 0, by_name = 0;
  for (const OpenQuestion& one : open.questions) {
    INFO(one.question);
    CHECK(one.question.find("Castray") == std::string::npos);
    CHECK(one.question.find("castray") == std::string::npos);
    CHECK_FALSE(one.question.starts_with("at "));
    CHECK_FALSE(one.question.starts_with("I at "));
    under_pseudonym += one.question.starts_with("Operator B at ");
    by_name += one.question.starts_with("Wilf Tarrock at ");
  }
  CHECK(under_pseudonym > 0);
  CHECK(by_name > 0);
}
