// Hand-worked answers to "was it there that day?".
#include "witnessmark/weigh/presence.h"

#include <doctest/doctest.h>

#include "stay_site.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

PresenceAnswer on(const StaySite& site, const std::string& edtf, bool preview = false) {
  const Period period = to_period(parse_edtf(edtf).value(), default_date_policy());
  for (const StayGroup& group : site.evidence().groups())
    for (const FixturePresence& found :
         presence(site.evidence(), group, *period.earliest(), *period.past_latest() - 1))
      if (found.subject == "crane" && found.place == "foredeck")
        return preview ? found.preview : found.settled;
  FAIL("no such fixture");
  return {};
}

std::string dump(const StaySite& site, const PresenceAnswer& answer) {
  std::string text = fmt::format("{} [{}]", to_string(answer.presence), site.names(answer.on_whose_word));
  if (!answer.against.empty()) text += fmt::format(" against [{}]", site.names(answer.against));
  return text + (answer.why.empty() ? "" : " " + answer.why);
}

constexpr const char* kCrane =
    "e1 log:l1 begins crane@foredeck 1956-12-11\n"
    "e2 photograph:p1 present crane@foredeck 1961-07-22\n"
    "e3 photograph:p2 absent crane@foredeck 1964-06-10\n";

}  // namespace

TEST_CASE("a fixture between its dates, before them, after them and in between") {
  const StaySite site(kCrane);
  const std::pair<const char*, const char*> rows[] = {
      {"1956-12-10", "inferred absent [e1] not come before 11 December 1956"},
      {"1956-12-11", "attested there [e1]"},
      {"1958-05-01", "inferred there [e1 e2] come by 11 December 1956, not gone before 22 July 1961"},
      {"1961-07-22", "attested there [e2]"},
      {"1963-02-14", "cannot tell [e1 e2 e3] went between 22 July 1961 and 10 June 1964"},
      {"1964-06-10", "cannot tell [e1 e2 e3] went between 22 July 1961 and 10 June 1964"},
      {"1964-06-11", "inferred absent [e1 e3] gone by 10 June 1964"},
      {"1956-12", "changed [e1] came on 11 December 1956"},
      {"1957", "inferred there [e1 e2] come by 11 December 1956, not gone before 22 July 1961"},
      {"1950/1970",
       "changed [e1 e2 e3] came on 11 December 1956; went between 22 July 1961 and 10 June 1964"},
  };
  for (const auto& [day, answer] : rows) {
    INFO(day);
    CHECK(dump(site, on(site, day)) == answer);
  }
}

TEST_CASE("between two stays it was not there") {
  const StaySite site(
      "e1 log:l1 begins crane@foredeck 1950-01-01\n"
      "e2 log:l2 ends crane@foredeck 1955-03-01\n"
      "e3 log:l3 begins crane@foredeck 1956-12-11\n"
      "e4 photograph:p present crane@foredeck 1961-07-22\n");
  CHECK(on(site, "1952-06-01").presence == Presence::inferred_there);
  CHECK(dump(site, on(site, "1956-01-01")) ==
        "inferred absent [e2 e3] gone by 1 March 1955, not come before 11 December 1956");
  CHECK(on(site, "1960-01-01").presence == Presence::inferred_there);
  CHECK(on(site, "1970-01-01").presence == Presence::cannot_tell);
}

TEST_CASE("statements that contradict one another settle only what follows whichever is right") {
  const StaySite site(
      "e1 log:l1 ends crane@foredeck 1957-03-12\n"
      "e2 photograph:p present crane@foredeck 1956-08-01\n"
      "e3 publication:b ends crane@foredeck 1955\n"
      "e4 log:l2 begins crane@foredeck 1938-04-20\n");
  // Whether the log or the book is right, it was there in 1950 and gone in 1960.
  CHECK(on(site, "1950-01-01").presence == Presence::inferred_there);
  CHECK(on(site, "1960-01-01").presence == Presence::inferred_absent);
  const PresenceAnswer disputed = on(site, "1956-12-01");
  CHECK(disputed.presence == Presence::contradicted);
  CHECK(site.names(disputed.against) == "e3");
  CHECK(site.names(disputed.on_whose_word) == "e4 e1");
}

TEST_CASE("proposals never settle anything, they only make a preview; no statement is no evidence") {
  const StaySite site(
      "c1 proposed begins crane@foredeck 1956-12-11\nc2 proposed present crane@foredeck 1961\n");
  CHECK(on(site, "1958-01-01").presence == Presence::no_evidence);
  CHECK(on(site, "1958-01-01", true).presence == Presence::inferred_there);
  const StaySite reviewed(
      "c1 reviewed begins crane@foredeck 1956-12-11\nc2 reviewed present crane@foredeck 1961\n");
  CHECK(on(reviewed, "1958-01-01").presence == Presence::inferred_there);
}
