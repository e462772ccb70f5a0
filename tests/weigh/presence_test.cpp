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

TEST_CASE("a coming before which something happened to it is a return, and the answer says so with its reasons") {
  const StaySite site(
      "e1 correspondence:l1 happened crane@foredeck 1963-01-26\n"
      "e2 log:l2 begins crane@foredeck 1963-08-19\n");
  const std::string reason =
      "taken to have come again 19 August 1963, for it was there before (26 January 1963) and no entry shows it "
      "gone between";
  const std::pair<const char*, std::string> rows[] = {
      {"1962", "cannot tell [e2 e1] first known there 26 January 1963, nothing says when it came; " + reason},
      {"1963-01-26", "attested there [e1]"},
      {"1963-05-01", "cannot tell [e2 e1] went between 26 January 1963 and 19 August 1963; " + reason},
      {"1963-08-19", "attested there [e2]"},
      {"1964-01-01", "cannot tell [e2] not gone before 19 August 1963, nothing says when it went"},
      {"1963", "changed [e2 e1] first known there 26 January 1963, nothing says when it came; went between 26 "
               "January 1963 and 19 August 1963; came again on 19 August 1963; not gone before 19 August 1963, "
               "nothing says when it went; " +
                   reason},
  };
  for (const auto& [day, answer] : rows) {
    INFO(day);
    CHECK(dump(site, on(site, day)) == answer);
  }
}

TEST_CASE("what makes a coming a return, and what does not") {
  // What something happened to, what was counted, had a colour or was painted, was there; later accounts show no
  // return. Common practice, no source.
  struct Row {
    const char* why;
    const char* before;
    bool is_return;
    Presence before_it = Presence::inferred_absent;
  };
  const Row rows[] = {
      {"seen", "e1 photograph:p present crane@foredeck 1959-07", true},
      {"counted", "e1 object-record:o count crane@foredeck 1953-09-29 n=3", true},
      {"of some colour", "e1 photograph:p attribute crane@foredeck 1959-07 a=colour:green", true},
      {"painted", "e1 log:a begins crane@foredeck 1959-07 a=colour:green", true},
      {"something happened to it", "e1 log:a happened crane@foredeck 1959-07-04", true},
      {"seen in parts of the place",
       "e1 photograph:p present crane@hatch 1959-07\ne2 photograph:q present crane@rail 1960", true},
      {"seen, and then not there",
       "e1 photograph:p present crane@foredeck 1959-07\ne2 photograph:q absent crane@foredeck 1961-02", true},
      {"seen without a place, which is the one the register has",
       "e1 photograph:p present crane 1959-07", true},
      {"not there before: the first coming", "e1 photograph:p absent crane@foredeck 1959-07", false},
      {"none counted", "e1 object-record:o count crane@foredeck 1953-09-29 n=0", false},
      {"seen only after it came", "e1 photograph:p present crane@foredeck 1964-07", false},
      {"on the very day it came", "e1 log:a happened crane@foredeck 1963-08-19", false},
      {"perhaps after it came", "e1 photograph:p present crane@foredeck 1960/1965", false},
      {"no date", "e1 photograph:p present crane@foredeck -", false},
      {"meant to be there", "e1 order:o present crane@foredeck 1959 intended", false},
      {"meant to happen", "e1 order:o happened crane@foredeck 1959 intended", false},
      {"perhaps of another site", "e1 photograph:p present crane@foredeck 1959-07 probable", false},
      {"an event, perhaps of another site", "e1 photograph:p happened crane@foredeck 1959-07 probable", false},
      {"dated by the thing itself", "e1 photograph:p happened crane@foredeck 1959-07 rests=crane", false},
      {"at another place", "e1 log:a happened crane@afterdeck 1959-07-04", false},
      {"on its way, perhaps: the event names no place", "e1 log:a happened crane 1959-07-04", false},
      {"by the object's own record, a maker's plate, say",
       "e1 object-record:o attribute crane@foredeck 1959 a=maker:Orrick", false,
       Presence::cannot_tell},
      {"happened, by the object's own record", "e1 object-record:o happened crane@foredeck 1959", false},
      {"in a later account", "e1 publication:b happened crane@foredeck 1959-07-04", false},
      {"dated by an interview", "e1 photograph:p happened crane@foredeck 1959-07 rests=i1", false},
      {"told, and reviewed", "c1 reviewed happened crane@foredeck 1959-07", false},
  };
  for (const Row& row : rows) {
    INFO(std::string(row.why));
    const StaySite site(std::string(row.before) + "\ne9 log:z begins crane@foredeck 1963-08-19\n");
    const PresenceAnswer answer = on(site, "1955-01-01");
    const bool says_so = answer.why.find("taken to have come again 19 August 1963") != std::string::npos;
    CHECK(says_so == row.is_return);
    CHECK(answer.presence == (row.is_return ? Presence::cannot_tell : row.before_it));
  }
}

TEST_CASE("two records of a coming, or a later account of it, are no return: they contradict") {
  const StaySite two(
      "e1 log:a begins crane@foredeck 1950-05-01\n"
      "e2 correspondence:b begins crane@foredeck 1956-12-11\n");
  const std::string open = "cannot tell [e2] statements that contradict one another leave it open";
  CHECK(dump(two, on(two, "1953-01-01")) == open);
  const StaySite later(
      "e1 photograph:p present crane@foredeck 1958-06-01\n"
      "e2 publication:b begins crane@foredeck 1960\n");
  CHECK(dump(later, on(later, "1959-01-01")) == open);
}

TEST_CASE("what happened to it while it is concluded not to have been there is named, and settles nothing") {
  const StaySite site(
      "e1 log:a begins crane@foredeck 1950-05-01\ne2 log:b ends crane@foredeck 1956-12-11\n"
      "e3 log:c begins crane@foredeck 1960-03-01\ne4 publication:p happened crane@foredeck 1948\n"
      "e5 log:d happened crane@foredeck 1958\ne6 log:e happened crane@foredeck 1954\n"
      "e7 log:f happened crane@afterdeck 1949\ne8 photograph:q happened crane@foredeck 1949 probable\n"
      "c1 reviewed happened crane@foredeck 1949\nc2 proposed happened crane@foredeck 1947\n"
      "c3 reviewed happened crane@foredeck 1946 denied\n");
  const auto yet = [&](const char* day, bool preview = false) {
    return site.names(on(site, day, preview).yet);
  };
  CHECK(on(site, "1949-06-01").presence == Presence::inferred_absent);
  CHECK(yet("1949-06-01") == "e4 c1");
  CHECK(yet("1949-06-01", true) == "e4 c1 c2");
  CHECK(yet("1957-06-01") == "e5");
  CHECK(yet("1954-06-01").empty());
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
