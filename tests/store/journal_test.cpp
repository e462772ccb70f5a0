#include "witnessmark/store/journal.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"

using namespace witnessmark;
using namespace witnessmark::sample;

TEST_CASE("the journal can only grow") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  {
    SiteFile site = must(SiteFile::create(path, {{}, "Tender Guillemot", "", ""}, editor()));
    must(save_interviews(site, interview_file()));
  }
  RawFile raw(path);
  for (const char* sql :
       {"UPDATE journal SET kind = 'x'", "DELETE FROM journal", "DELETE FROM journal WHERE event = 1",
        "UPDATE journal_content SET why = 'x'", "DELETE FROM journal_content",
        "UPDATE journal_follows SET follows = 1 WHERE event = 3", "DELETE FROM journal_follows",
        "UPDATE sessions SET actor = 'x'", "DELETE FROM sessions",
        "INSERT OR REPLACE INTO journal SELECT * FROM journal WHERE event = 1",
        "INSERT OR REPLACE INTO journal_content SELECT * FROM journal_content",
        "INSERT OR REPLACE INTO sessions SELECT session, id, 'x' FROM sessions"}) {
    CAPTURE(sql);
    CHECK(raw.run(sql) == "the journal is append-only");
  }
}

TEST_CASE("content goes only with the erasure of its interview, and the chain stays whole") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  {
    SiteFile site = must(SiteFile::create(path, {{}, "Tender Guillemot", "", ""}, editor()));
    InterviewFile file = interview_file();
    must(save_interviews(site, file));
    file.interviews[1].notes = "to be erased";
    must(save_interviews(site, file));
  }
  RawFile raw(path);
  CHECK(raw.run("INSERT INTO erasures VALUES ('interview', 'aske-2', '2032-01-01', 1)") == "ok");
  CHECK(raw.run("DELETE FROM journal_content WHERE event IN (SELECT event FROM journal WHERE interview = "
                "'aske-1')") == "the journal is append-only");
  CHECK(
      raw.run(
          "DELETE FROM journal_content WHERE event IN (SELECT event FROM journal WHERE interview = 'aske-2');"
          "DELETE FROM interview_people WHERE interview = 'aske-2';"
          "DELETE FROM interviews WHERE key = 'aske-2'") == "ok");
  CHECK(raw.run("DELETE FROM erasures") == "an erasure stays on record");

  SiteFile site = must(SiteFile::edit(path, editor("B. Other", 2)));
  CHECK(findings(site) == std::vector<std::string>{});
  CHECK(access_file(site, "aske-2").withdrawn);
  CHECK(
      save_interviews(site, interview_file()).error().message.starts_with("interview \"aske-2\" was erased"));
  std::size_t erased = 0;
  for_each_event(site, [&erased](const JournalEvent& event) { erased += event.erased ? 1 : 0; });
  CHECK(erased == 2);
}

TEST_CASE("events name their session, follow one another and say who did what") {
  SiteFile site = filled_site();
  std::vector<JournalEvent> events;
  for_each_event(site, [&events](const JournalEvent& event) { events.push_back(event); });
  REQUIRE(events.size() == static_cast<std::size_t>(count_events(site)));
  CHECK(events[0].kind == "created");
  CHECK(events[0].follows.empty());
  for (std::size_t i = 1; i < events.size(); ++i) {
    CHECK(events[i].id == EventId{events[0].id.session, static_cast<std::int64_t>(i) + 1});
    CHECK(events[i].follows == std::vector<EventId>{events[i - 1].id});
    CHECK(events[i].actor == "A. Coder");
    CHECK(events[i].wall_time == "2031-05-04T10:00:00Z");
  }
  CHECK(journal_heads(site) == std::vector<EventId>{events.back().id});
  CHECK(events_on(site, "interview", "aske-1").size() == 3);
}

TEST_CASE("an event id is read back from its text, and nothing else is") {
  const EventId id{*parse_id("00112233445566778899aabbccddeeff"), 42};
  CHECK(to_string(id) == "00112233445566778899aabbccddeeff:42");
  CHECK(parse_event_id(to_string(id)) == id);
  for (const char* text : {"", ":", "00112233445566778899aabbccddeeff",
                           "00112233445566778899aabbccddeeff:", "00112233445566778899aabbccddeeff:0",
                           "00112233445566778899aabbccddeeff:4x", "x0112233445566778899aabbccddeeff:4"}) {
    CAPTURE(text);
    CHECK(!parse_event_id(text));
  }
}
