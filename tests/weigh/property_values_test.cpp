// Hand-worked: the stays of the values of a property, which exclude one another at one place.
#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "stay_site.h"
#include "witnessmark/weigh/bounds.h"
#include "witnessmark/weigh/contradictions.h"
#include "witnessmark/weigh/presence.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

std::string dump(const StaySite& site, const Bound& bound) {
  return bound.day ? fmt::format("{}<{}>", to_string(*bound.day), site.names(bound.from)) : "";
}

/// "colour:buff came ..1938-12-31<e1> gone …" of each value of the crane, in order of their names.
std::string values(const StaySite& site) {
  std::string text;
  for (const FixtureBounds& found : find_bounds(site.evidence())) {
    if (found.property.empty()) continue;
    text += found.property;
    const Bounds& bounds = found.from_register;
    if (bounds.state != BoundsState::known) text += fmt::format(" {}", to_string(bounds.state));
    if (bounds.state != BoundsState::none)
      for (const StayBounds& stay : bounds.stays)
        text += fmt::format(" came {}..{} gone {}..{}", dump(site, stay.came_earliest),
                            dump(site, stay.came_latest), dump(site, stay.went_earliest),
                            dump(site, stay.went_latest));
    text += "\n";
  }
  return text;
}

std::string sets(const StaySite& site) {
  std::string text;
  for (const Contradiction& set : find_contradictions(site.evidence(), site.claims()).sets)
    text += fmt::format("{} {}: {}\n", to_string(set.kind), set.property, site.names(set.statements));
  return text;
}

std::string on(const StaySite& site, const std::string& edtf) {
  const Period period = to_period(parse_edtf(edtf).value(), default_date_policy());
  std::string text;
  for (const StayGroup& group : site.evidence().groups())
    for (const FixturePresence& found :
         presence(site.evidence(), group, *period.earliest(), *period.past_latest() - 1))
      if (!found.property.empty())
        text += fmt::format("{} {} [{}]; ", found.property, to_string(found.settled.presence),
                            site.names(found.settled.on_whose_word));
  return text;
}

struct Row {
  const char* why;
  const char* statements;
  const char* values;
};

}  // namespace

TEST_CASE("when each value of a property can have come and gone") {
  const Row rows[] = {
      {"coats of buff until 1966, and the log of the day it was painted red: the one ended when the other "
       "began",
       "e1 physical-trace attribute crane@foredeck 1938-01-01/1965-12-31 throughout a=colour:buff\n"
       "e2 log begins crane@foredeck 1966-05-16 a=colour:red",
       "colour:buff came ..1938-01-01<e1> gone 1965-12-31<e1>..1966-05-16<e2 e1>\n"
       "colour:red came 1966-05-16<e2>..1966-05-16<e2> gone 1966-05-16<e2>..\n"},
      {"seen so on one day: nothing says how long before or after",
       "e1 photograph attribute crane@foredeck 1963-02-14 a=colour:buff",
       "colour:buff came ..1963-02-14<e1> gone 1963-02-14<e1>..\n"},
      {"two values seen: the change lies between",
       "e1 photograph:p1 attribute crane@foredeck 1963-02-14 a=colour:buff\n"
       "e2 photograph:p2 attribute crane@foredeck 1966-08-01 a=colour:red",
       "colour:buff came ..1963-02-14<e1> gone 1963-02-14<e1>..1966-08-01<e1 e2>\n"
       "colour:red came 1963-02-14<e1 e2>..1966-08-01<e2> gone 1966-08-01<e2>..\n"},
      {"buff, red and buff again by the register: two stays of buff",
       "e1 photograph:p1 attribute crane@foredeck 1950-06-01 a=colour:buff\n"
       "e2 photograph:p2 attribute crane@foredeck 1955-06-01 a=colour:red\n"
       "e3 photograph:p3 attribute crane@foredeck 1960-06-01 a=colour:buff",
       "colour:buff came ..1950-06-01<e1> gone 1950-06-01<e1>..1955-06-01<e1 e2> "
       "came 1955-06-01<e2 e3>..1960-06-01<e3> gone 1960-06-01<e3>..\n"
       "colour:red came 1950-06-01<e1 e2>..1955-06-01<e2> gone 1955-06-01<e2>..1960-06-01<e2 e3>\n"},
      {"painted buff by the log though seen buff before: painted so twice",
       "e1 photograph attribute crane@foredeck 1950-06-01 a=colour:buff\n"
       "e2 log begins crane@foredeck 1960-05-01 a=colour:buff",
       "colour:buff came ..1950-06-01<e1> gone 1950-06-01<e1>..1960-05-01<e2> came "
       "1960-05-01<e2>..1960-05-01<e2> "
       "gone 1960-05-01<e2>..\n"},
      {"one value told more and less fully is one",
       "e1 photograph:p1 attribute crane@foredeck 1966-08-01 a=colour:red\n"
       "e2 log begins crane@foredeck 1966-05-16 a=colour:red_band\n",
       "colour:red band came 1966-05-16<e2>..1966-05-16<e2> gone 1966-08-01<e1>..\n"},
      {"a coat over another, without a date: the lower had gone when the upper came",
       "e1 physical-trace:t attribute crane@foredeck - a=colour:brown\n"
       "e2 physical-trace:t attribute crane@foredeck - a=colour:cream over=e1\n"
       "e3 photograph:p1 attribute crane@foredeck 1957-06-01 a=colour:cream",
       "colour:brown came ..1957-06-01<e3 e2 e1> gone ..1957-06-01<e3 e2 e1>\n"
       "colour:cream came ..1957-06-01<e3> gone 1957-06-01<e3>..\n"},
      {"what may show another site limits nothing",
       "e1 photograph attribute crane@foredeck 1963-02-14 a=colour:buff probable", "colour:buff none\n"},
      {"other properties stand beside one another",
       "e1 photograph:p1 attribute crane@foredeck 1963-02-14 a=colour:buff\n"
       "e2 photograph:p1 attribute crane@foredeck 1963-02-14 a=type:steam",
       "colour:buff came ..1963-02-14<e1> gone 1963-02-14<e1>..\n"
       "type:steam came ..1963-02-14<e2> gone 1963-02-14<e2>..\n"},
  };
  for (const Row& row : rows) {
    INFO(row.why);
    const StaySite site(row.statements);
    CHECK(values(site) == row.values);
  }
}

TEST_CASE("values that cannot all be true of one property") {
  const StaySite one_time(
      "e1 physical-trace attribute crane@foredeck 1938-01-01/1965-12-31 throughout a=colour:buff\n"
      "c1 reviewed attribute crane@foredeck 1964 a=colour:red\n");
  CHECK(sets(one_time) == "property : e1 c1\n");  // once, not again for the stays of each value
  const StaySite before(
      "e1 log begins crane@foredeck 1966-05-16 a=colour:red\n"
      "c1 reviewed attribute crane@foredeck 1964 a=colour:red\n");
  CHECK(sets(before) == "property colour:red: e1 c1\n");
  const StaySite between(
      "e1 photograph:p1 attribute crane@foredeck 1950-06-01 a=colour:buff\n"
      "c1 reviewed attribute crane@foredeck 1955 a=colour:red\n"
      "e3 photograph:p3 attribute crane@foredeck 1960-06-01 a=colour:buff\n");
  CHECK(sets(between) == "property colour:buff: e1 e3 c1\n");  // unless it was painted buff again
  const auto found = disputes(find_contradictions(between.evidence(), between.claims()), between.evidence());
  REQUIRE(found.size() == 1);
  const Resolution resolution = resolve(found.front(), between.evidence(), between.claims());
  CHECK(resolution.another_episode);
  CHECK(between.names(resolution.set_aside) == "e1 e3 c1");
}

TEST_CASE("words in which a thing was described stand beside one another") {
  const StaySite site(
      "c1 reviewed attribute crane@foredeck 1964 a=is:under_the_wheelhouse\n"
      "c2 reviewed attribute crane@foredeck 1964-05-01 a=is:cold_to_lean_on\n"
      "c3 reviewed attribute crane@foredeck 1964-05-01 a=as_told:knocked\n"
      "c4 reviewed attribute crane@foredeck 1964-05-01 a=as_told:stuck_out\n");
  CHECK(sets(site).empty());
  CHECK(values(site).empty());
}

TEST_CASE("what a thing was like on a day") {
  const StaySite site(
      "e1 physical-trace attribute crane@foredeck 1938-01-01/1965-12-31 throughout a=colour:buff\n"
      "e2 log begins crane@foredeck 1966-05-16 a=colour:red\n");
  CHECK(on(site, "1950-01-01") == "colour:red attested absent [e1]; colour:buff attested there [e1]; ");
  CHECK(on(site, "1970-01-01") == "colour:red cannot tell [e2]; colour:buff inferred absent [e2 e1]; ");
}

TEST_CASE("the bounds with one claim added name it where they are its") {
  const StaySite site(
      "e1 log:l1 begins crane@foredeck 1956-12-11\n"
      "c1 reviewed present crane@foredeck 1958-03-01\n"
      "c2 proposed:i2 ends crane@foredeck 1962-10-09\n");
  const auto bounds = find_bounds(site.evidence());
  REQUIRE(bounds.size() == 1);
  std::string text;
  for (const ClaimEffect& effect : bounds.front().claims) {
    REQUIRE(effect.with.size() == 1);
    text += fmt::format("{}: gone {}..{}; ", site.name(effect.claim),
                        dump(site, effect.with[0].went_earliest), dump(site, effect.with[0].went_latest));
  }
  CHECK(text == "c1: gone 1958-03-01<c1>..; c2: gone 1962-10-09<c2>..1962-10-09<c2>; ");
}

namespace {

/// Days 1 to 9 of January 1960, as the statements use them.
std::string day_text(int day) {
  return fmt::format("1960-01-{:02}", day);
}

struct Told {
  int value = 0;
  enum class Kind { within, throughout, begins, ends } kind = Kind::within;
  int first = 1, last = 1;

  std::string line(int number) const {
    const bool change = kind == Kind::begins || kind == Kind::ends;
    return fmt::format("e{} log:l{} {} crane@foredeck {}/{} a=colour:{}{}\n", number, number,
                       kind == Kind::begins ? "begins"
                       : kind == Kind::ends ? "ends"
                                            : "attribute",
                       day_text(first), day_text(last), value == 0 ? "buff" : "red",
                       change || kind == Kind::within ? "" : " throughout");
  }
  bool holds(int came, int went) const {
    switch (kind) {
      case Kind::within:
        return came <= last && went >= first;
      case Kind::throughout:
        return came <= first && went >= last;
      case Kind::begins:
        return first <= came && came <= last;
      case Kind::ends:
        return first <= went && went <= last;
    }
    return false;
  }
};

/// Least and most day, over all ways the two values can have followed one another.
struct Hull {
  int came_low = 99, came_high = -99, went_low = 99, went_high = -99;
  void add(int came, int went) {
    came_low = std::min(came_low, came), came_high = std::max(came_high, came);
    went_low = std::min(went_low, went), went_high = std::max(went_high, went);
  }
};

bool holds_all(const std::vector<Told>& told, int value, int came, int went) {
  return std::all_of(told.begin(), told.end(),
                     [&](const Told& one) { return one.value != value || one.holds(came, went); });
}

/// Every pair of stays of two values that share no more than the day of the change.
std::vector<Hull> every_way(const std::vector<Told>& told) {
  constexpr int kFirst = -2, kLast = 12;
  std::vector<std::pair<int, int>> stays[2];
  for (int value = 0; value < 2; ++value)
    for (int came = kFirst; came <= kLast; ++came)
      for (int went = came; went <= kLast; ++went)
        if (holds_all(told, value, came, went)) stays[value].emplace_back(came, went);
  std::vector<Hull> hulls(2);
  for (const auto& [came, went] : stays[0])
    for (const auto& [other_came, other_went] : stays[1])
      if (went <= other_came || other_went <= came)
        hulls[0].add(came, went), hulls[1].add(other_came, other_went);
  return hulls;
}

}  // namespace

TEST_CASE("bounds of two values hold every way in which they can have followed one another") {
  std::mt19937 random(7);
  const auto number = [&](int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(random);
  };
  const Day zero = to_day({1959, 12, 31});
  int compared = 0;
  for (int round = 0; round < 1500; ++round) {
    std::vector<Told> told;
    std::string lines;
    for (int i = 0; i < 4; ++i) {
      Told one{i % 2, static_cast<Told::Kind>(number(0, 3)), number(1, 9), 0};
      one.last = number(one.first, std::min(9, one.first + 2));
      lines += one.line(i);
      told.push_back(one);
    }
    INFO(lines);
    const auto hulls = every_way(told);
    if (hulls[0].came_low == 99) continue;  // not with one stay of each
    const StaySite site(lines);
    for (const FixtureBounds& found : find_bounds(site.evidence())) {
      if (found.property.empty() || found.from_register.stays.size() != 1) continue;
      CHECK(found.from_register.state == BoundsState::known);
      const Hull& hull = hulls[found.property == "colour:buff" ? 0 : 1];
      const StayBounds& stay = found.from_register.stays.front();
      CHECK((!stay.came_earliest.day || *stay.came_earliest.day <= zero + hull.came_low));
      CHECK((!stay.came_latest.day || *stay.came_latest.day >= zero + hull.came_high));
      CHECK((!stay.went_earliest.day || *stay.went_earliest.day <= zero + hull.went_low));
      CHECK((!stay.went_latest.day || *stay.went_latest.day >= zero + hull.went_high));
      ++compared;
    }
  }
  CHECK(compared > 300);
}
