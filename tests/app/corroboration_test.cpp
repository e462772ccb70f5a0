#include "witnessmark/app/corroboration.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <tuple>

#include "whole_job.h"
#include "witnessmark/store/claims.h"

using namespace witnessmark;

namespace {

const Day kToday = to_day({2026, 1, 15});

std::filesystem::path demo() {
  return source_tree() / "corpus-demo";
}

/// A coder finds that the narrator did say so.
void accept(SiteFile& site, const std::string& interview, const std::string& subject, const std::string& edtf,
            Statement statement) {
  for (const StoredClaim& stored : load_claims(site, {.interviews = {interview}})) {
    Claim claim = stored.claim;
    if (claim.subject != subject || claim.statement != statement || to_string(claim.when.dated) != edtf)
      continue;
    claim.status = ClaimStatus::said_so;
    REQUIRE(decide_claim(site, claim, ""));
    return;
  }
  FAIL("no such claim in ", interview);
}

const ShownQuestion* find(const std::vector<ShownQuestion>& questions, const std::string& dumped) {
  const auto at = std::find_if(questions.begin(), questions.end(), [&](const ShownQuestion& shown) {
    return dump(shown.answer).starts_with(dumped + ":");
  });
  return at == questions.end() ? nullptr : &*at;
}

std::string answer(const std::vector<ShownQuestion>& questions, const std::string& dumped) {
  const ShownQuestion* found = find(questions, dumped);
  return found != nullptr ? dump(found->answer).substr(dumped.size() + 2) : "no such question";
}

/// Every question, written out.
struct Questions {
  std::vector<ShownQuestion> reviewed, preview;
  std::string withheld;
};
Questions questions_of(const SiteFile& site, const Surroundings& around) {
  Questions all;
  all.withheld = for_each_question(site, around, [&](const ShownQuestion& shown, bool preview) {
                   (preview ? all.preview : all.reviewed).push_back(shown);
                 }).value();
  return all;
}

}  // namespace

TEST_CASE("grades rest on reviewed claims; what proposals would add is a preview") {
  const SystemFileReader files;
  SiteFile site = whole_job(files, demo(), kToday);
  const auto around = surroundings_of(files, kToday);
  const std::string windlass = "ends steam-windlass@forecastle 1962-10";
  auto account = questions_of(site, around);
  CHECK(answer(account.reviewed, windlass) == "no such question");
  CHECK(answer(account.preview, windlass).starts_with("corroborated (for 2 of 2 +1 intended"));
  accept(site, "lc-2001", "steam-windlass", "1962-10", Statement::ends);
  account = questions_of(site, around);
  CHECK(answer(account.reviewed, windlass).starts_with("corroborated (for 2 of 2 +1 intended"));
  const ShownQuestion& shown = *find(account.reviewed, windlass);
  CHECK(shown.question ==
        "Steam windlass (Forecastle deck) taken away, “October nineteen sixty-two” (October 1962)");
  const auto castray = std::find_if(shown.voices.begin(), shown.voices.end(),
                                    [](const ShownVoice& voice) { return !voice.voice.claim.is_nil(); });
  REQUIRE(castray != shown.voices.end());
  CHECK(castray->who.starts_with("Lowen Castray (lc-2001, at "));
  CHECK(castray->words == "The steam windlass was taken off in October nineteen sixty-two.");
  CHECK_FALSE(castray->proposed);
}

TEST_CASE("a story told by many, in books too, stays one against the log, the photograph and the letter") {
  const SystemFileReader files;
  SiteFile site = whole_job(files, demo(), kToday);
  accept(site, "wt-1994", "arc-searchlight", "[..1962-23]", Statement::ends);
  const auto account = questions_of(site, surroundings_of(files, kToday));
  const std::string gone = "ends arc-searchlight@wheelhouse-top [..1962-23]";
  CHECK(answer(account.reviewed, gone).starts_with("contradicted (for 1 of 1"));
  const ShownQuestion& shown = *find(account.reviewed, gone);
  const LineageGroup& story = shown.answer.groups.front();
  CHECK(story.kinds == std::vector<SourceKind>{SourceKind::testimony});
  CHECK(story.voices.size() == 4);  // two books, the entry of the interview, the narrator
}

TEST_CASE("what is withheld has no part in any grade, is not named, and is counted") {
  const SystemFileReader files;
  const SiteFile site = whole_job(files, demo(), kToday);
  const auto account = questions_of(site, surroundings_of(files, kToday));
  CHECK(account.withheld.starts_with("withheld: "));
  for (const auto* questions : {&account.reviewed, &account.preview}) {
    for (const ShownQuestion& shown : *questions) {
      for (const Voice& voice : shown.answer.voices) {
        CHECK(voice.interview != "ag-1998");
        CHECK(voice.interview != "eb-2015");
        CHECK(voice.origin.key != "greel");
      }
    }
  }
}

TEST_CASE("entries of a withheld interview are withheld with it") {
  const auto folder = demo();
  const MemoryFiles files = files_of(folder, [](const std::string& name, std::string text) {
    if (name == "sources.csv") text += "te-greel,testimony,Greel on tape,,1998,,,ag-1998,\n";
    if (name == "entries.csv")
      text += "e-900,te-greel,,ends,steam-windlass,forecastle,1962-10-09,,,,,,,,,,,,,,,,,\n";
    return text;
  });
  const SiteFile site = whole_job(files, folder, kToday);
  const auto account = questions_of(site, surroundings_of(files, kToday));
  for (const ShownQuestion& shown : account.reviewed)
    for (const Voice& voice : shown.answer.voices) CHECK(voice.entry != "e-900");
}

TEST_CASE("an institution's own grades are used as they stand") {
  const auto folder = demo();
  MemoryFiles files = files_of(folder);
  const auto path = source_tree() / "shared" / "grades.csv";
  files.files[path.string()] =
      "grade,groups_for,kinds_for,groups_against,kinds_against,second_hand_for,second_hand_against,"
      "intentions_for,meaning\n"
      "three or more,3+,,,,,,,\nfewer,,,,,,,,\n";
  const SiteFile site = whole_job(files, folder, kToday);
  const auto counts = count_grades(site, surroundings_of(files, kToday)).value();
  for (const auto& [grade, count] : counts.preview) CHECK((grade == "three or more" || grade == "fewer"));
  CHECK(counts.preview.at("fewer") > 0);
  files.files[path.string()] = "grade,meaning\nx,\n";
  const auto refused = count_grades(site, surroundings_of(files, kToday));
  REQUIRE_FALSE(refused);
  CHECK(refused.error().message == "the column groups_for is missing");
}

TEST_CASE("the report by grade has every question once, and writes out no more than asked for") {
  const SystemFileReader files;
  SiteFile site = whole_job(files, demo(), kToday);
  const auto around = surroundings_of(files, kToday);
  accept(site, "lc-2001", "steam-windlass", "1962-10", Statement::ends);
  const Questions all = questions_of(site, around);
  const GradeCounts counts = count_grades(site, around).value();
  const auto account = corroboration_account(site, 2, around).value();
  const std::tuple<const std::vector<GradedQuestions>*, const std::vector<ShownQuestion>*,
                   const std::map<std::string, std::int64_t>*>
      parts[] = {{&account.reviewed, &all.reviewed, &counts.reviewed},
                 {&account.preview, &all.preview, &counts.preview}};
  for (const auto& [grades, questions, counted] : parts) {
    std::size_t total = 0;
    for (const GradedQuestions& graded : *grades) {
      CAPTURE(graded.grade);
      const auto of_grade = [&](const ShownQuestion& shown) { return shown.answer.grade == graded.grade; };
      CHECK(graded.total == std::count_if(questions->begin(), questions->end(), of_grade));
      CHECK(graded.total == (counted->contains(graded.grade) ? counted->at(graded.grade) : 0));
      const auto written_out = static_cast<std::int64_t>(graded.shown.size());
      CHECK(written_out == std::min<std::int64_t>(2, graded.total - graded.put_by_one_entry));
      total += static_cast<std::size_t>(graded.total);
    }
    CHECK(total == questions->size());
  }
}
