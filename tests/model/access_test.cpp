// Access rules are common practice, no source; the table is the rule.
#include "witnessmark/model/access.h"

#include <doctest/doctest.h>

#include <string>

using namespace witnessmark;

namespace {

const Day kToday = to_day({2025, 6, 30});

std::optional<Edtf> date(std::string_view text) {
  if (text.empty()) return std::nullopt;
  return parse_edtf(text).value();
}

NarratorRelease signed_by(std::string person) {
  NarratorRelease release;
  release.person = std::move(person);
  release.release = Release::signed_release;
  return release;
}

AccessFile open_file() {
  AccessFile file;
  file.interview.access = Access::open;
  file.narrators = {"ada", "ben"};
  file.releases = {signed_by("ada"), signed_by("ben")};
  return file;
}

}  // namespace

TEST_CASE("conditions of access are judged on the day given") {
  struct Row {
    Access access;
    std::string_view until, event, expected;
  };
  const Row rows[] = {
      {Access::open, "", "", "none"},
      {Access::restricted, "", "", "restricted"},
      {Access::closed, "", "", "closed"},
      {Access::closed, "2025-06-29", "", "none"},
      {Access::closed, "2025-06-30", "", "closed"},
      {Access::closed, "2025", "", "closed"},
      {Access::closed, "2024", "", "none"},
      {Access::open, "2025-07", "", "closed"},
      {Access::open, "2025-05", "", "none"},
      {Access::open, "", "death of the narrator", "closed until an event"},
      {Access::closed, "2024", "death of the narrator", "closed until an event"},
      {Access::restricted, "2024", "", "restricted"},
      {Access::closed, "2024/..", "", "closed"},
      // About 2024 may run into 2025 under the delivered policy (one year more), so it still binds.
      {Access::closed, "2024~", "", "closed"},
      {Access::closed, "2023~", "", "none"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.until);
    CAPTURE(row.event);
    AccessConditions conditions;
    conditions.access = row.access;
    conditions.closed_until = date(row.until);
    conditions.closed_until_event = row.event;
    CHECK(to_string(judge(conditions, kToday)) == row.expected);
  }
}

TEST_CASE("only a signed release whose closing has passed lets a narrator's words out") {
  struct Row {
    Release release;
    std::string_view until, event, expected;
  };
  const Row rows[] = {
      {Release::none, "", "", "no release"},
      {Release::withdrawn, "", "", "release withdrawn"},
      {Release::signed_release, "", "", "none"},
      {Release::signed_release, "2030", "", "closed"},
      {Release::signed_release, "2020", "", "none"},
      {Release::signed_release, "", "death", "closed until an event"},
      {Release::withdrawn, "2030", "", "release withdrawn"},
  };
  for (const Row& row : rows) {
    NarratorRelease release;
    release.release = row.release;
    release.closed_until = date(row.until);
    release.closed_until_event = row.event;
    CHECK(to_string(judge(release, kToday)) == row.expected);
  }
}

TEST_CASE("an interview goes out only when every narrator in it has released it") {
  AccessFile file = open_file();
  CHECK(judge(file, kToday) == Withheld::none);
  file.releases.pop_back();
  CHECK(judge(file, kToday) == Withheld::no_release);
  file = open_file();
  file.releases[1].release = Release::withdrawn;
  CHECK(judge(file, kToday) == Withheld::release_withdrawn);
  file = open_file();
  file.narrators.clear();
  CHECK(judge(file, kToday) == Withheld::no_release);
  file = open_file();
  file.withdrawn = true;
  file.interview.access = Access::closed;
  CHECK(judge(file, kToday) == Withheld::interview_withdrawn);
}

TEST_CASE("a passage under conditions of its own is withheld wherever a range touches it") {
  AccessFile file = open_file();
  RestrictedPassage passage;
  passage.range = {{100}, {200}};
  passage.conditions.access = Access::restricted;
  file.passages.push_back(passage);
  CHECK(judge(file, {{0}, {100}}, kToday) == Withheld::none);
  CHECK(judge(file, {{0}, {101}}, kToday) == Withheld::restricted);
  CHECK(judge(file, {{199}, {300}}, kToday) == Withheld::restricted);
  CHECK(judge(file, {{200}, {300}}, kToday) == Withheld::none);
  // The whole interview's reason comes first.
  file.interview.access = Access::closed;
  CHECK(judge(file, {{0}, {101}}, kToday) == Withheld::closed);
}
