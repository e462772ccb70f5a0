// Hand-worked bounds. What a document, a photograph or a trace does for the earliest and the latest day a
// thing can have come and gone (terminus post quem, terminus ante quem) is common practice, no source.
#include "witnessmark/weigh/bounds.h"

#include <doctest/doctest.h>

#include <random>

#include "stay_site.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

std::string dump(const StaySite& site, const Bound& bound) {
  if (!bound.day) return "";
  return fmt::format("{}<{}>", to_string(*bound.day), site.names(bound.from));
}

/// "came 1956-12-11<e1>..1956-12-11<e1> gone 1957-02-19<e2>..".
std::string dump(const StaySite& site, const Bounds& bounds) {
  std::string text = bounds.state == BoundsState::known ? "" : std::string(to_string(bounds.state));
  if (bounds.state == BoundsState::none) return text;
  for (const StayBounds& stay : bounds.stays)
    text += fmt::format("{}came {}..{} gone {}..{}", text.empty() ? "" : " ", dump(site, stay.came_earliest),
                        dump(site, stay.came_latest), dump(site, stay.went_earliest),
                        dump(site, stay.went_latest));
  return text;
}

FixtureBounds of(const StaySite& site, std::string_view subject, std::string_view place) {
  for (const FixtureBounds& bounds : find_bounds(site.evidence()))
    if (bounds.subject == subject && bounds.place == place) return bounds;
  FAIL("no such fixture");
  return {};
}

struct Row {
  const char* why;
  const char* statements;
  const char* bounds;
};

}  // namespace

TEST_CASE("what each kind of statement does for the bounds of the crane on the foredeck") {
  const Row rows[] = {
      {"a log that has it come gives both limits of its coming, and it went no earlier",
       "e1 log begins crane@foredeck 1956-12-11",
       "came 1956-12-11<e1>..1956-12-11<e1> gone 1956-12-11<e1>.."},
      {"a dated photograph of it: come by that day, not gone before",
       "e1 photograph present crane@foredeck 1957-02-19", "came ..1957-02-19<e1> gone 1957-02-19<e1>.."},
      {"a photograph of some day in a summer gives the summer's end and beginning",
       "e1 photograph present crane@foredeck 1957-22", "came ..1957-08-31<e1> gone 1957-06-01<e1>.."},
      {"there throughout a summer: come by its beginning, not gone before its end",
       "e1 log present crane@foredeck 1957-22 throughout", "came ..1957-06-01<e1> gone 1957-08-31<e1>.."},
      {"two photographs: the first gives the coming, the last the going",
       "e1 photograph:p1 present crane@foredeck 1957-02-19\ne2 photograph:p2 present crane@foredeck "
       "1961-07-22",
       "came ..1957-02-19<e1> gone 1961-07-22<e2>.."},
      {"the empty spot before and after it was seen: the three together limit both days",
       "e1 photograph:p1 absent crane@foredeck 1955-05-01\ne2 photograph:p2 present crane@foredeck "
       "1957-02-19\n"
       "e3 photograph:p3 absent crane@foredeck 1963-04-29",
       "came 1955-05-01<e1 e2>..1957-02-19<e2> gone 1957-02-19<e2>..1963-04-29<e2 e3>"},
      {"one empty spot alone does not tell before from after",
       "e1 photograph absent crane@foredeck 1955-05-01", "none"},
      {"a spot that is not in the picture is no absence",
       "e1 photograph absent crane@foredeck 1955-05-01 hidden\ne2 log present crane@foredeck 1957-02-19",
       "came ..1957-02-19<e2> gone 1957-02-19<e2>.."},
      {"an order is no evidence that it was done", "e1 order begins crane@foredeck 1956-09 intended", "none"},
      {"nor is a picture that may show another site",
       "e1 photograph present crane@foredeck 1957 probable\ne2 log begins crane@foredeck 1958-03-01",
       "came 1958-03-01<e2>..1958-03-01<e2> gone 1958-03-01<e2>.."},
      {"a picture dated by the crane cannot date the crane",
       "e1 photograph present crane@foredeck 1957/1958 rests=crane", "none"},
      {"one of two years: from the beginning of the first to the end of the last",
       "e1 log begins crane@foredeck [1956,1958]",
       "came 1956-01-01<e1>..1958-12-31<e1> gone 1956-01-01<e1>.."},
      {"one of two years, and seen between them: the first",
       "e1 log:l1 begins crane@foredeck [1956,1958]\ne2 log:l2 present crane@foredeck 1957-02-19",
       "came 1956-01-01<e1>..1956-12-31<e1 e2> gone 1957-02-19<e2>.."},
      {"about 1957 is a year either side (the setting of the policy)", "e1 log begins crane@foredeck 1957~",
       "came 1956-01-01<e1>..1958-12-31<e1> gone 1956-01-01<e1>.."},
      {"gone by an autumn: nothing says how long before", "e1 publication ends crane@foredeck ../1962-23",
       "came ..1962-11-30<e1> gone ..1962-11-30<e1>"},
      {"gone from one of two parts of the foredeck is only there till then; gone from the ship around it is "
       "gone",
       "e1 log:l1 ends crane@hatch 1960-05-01\ne2 log:l2 present crane@foredeck 1957-01-01\n"
       "e3 log:l3 present crane@rail 1958-01-01\ne4 log:l4 ends crane@ship 1962-08-01\n"
       "e5 log:l5 begins crane@afterdeck 1950-01-01",
       "came ..1957-01-01<e2> gone 1960-05-01<e1>..1962-08-01<e4>"},
      {"an entry without place is of the only place the register knows",
       "e1 log:l1 present crane@foredeck 1957-01-01\ne2 log:l2 ends crane 1962-08-01",
       "came ..1957-01-01<e1> gone 1962-08-01<e2>..1962-08-01<e2>"},
      {"landed and shipped again: two stays, and the photograph after the second is of the second",
       "e1 log:l1 begins crane@foredeck 1950-01-01\ne2 log:l2 ends crane@foredeck 1955-03-01\n"
       "e3 log:l3 begins crane@foredeck 1956-12-11\ne4 photograph present crane@foredeck 1961-07-22",
       "came 1950-01-01<e1 e2>..1950-01-01<e1> gone 1955-03-01<e2>..1955-03-01<e2> "
       "came 1956-12-11<e3>..1956-12-11<e3> gone 1961-07-22<e4>.."},
      {"something happened to it before it came: two stays, of which no entry shows the going",
       "e1 correspondence happened crane@foredeck 1963-01-26\ne2 log begins crane@foredeck 1963-08-19",
       "came ..1963-01-26<e1> gone 1963-01-26<e1>..1963-08-19<e2> "
       "came 1963-08-19<e2>..1963-08-19<e2> gone 1963-08-19<e2>.."},
      {"seen, gone by an entry, and come again: the entry tells when it went",
       "e1 photograph present crane@foredeck 1950\ne2 log:a ends crane@foredeck 1952-05-01\n"
       "e3 log:b begins crane@foredeck 1953-06-01",
       "came ..1950-12-31<e1> gone 1952-05-01<e2>..1952-05-01<e2> "
       "came 1953-06-01<e3>..1953-06-01<e3> gone 1953-06-01<e3>.."},
      {"out and in on one day, entered twice, are two stays as well",
       "e1 log:l1 ends crane@foredeck 1961-05-30\ne2 log:l2 begins crane@foredeck 1961-05-30\n"
       "e3 correspondence:l3 ends crane@foredeck 1961-05-30",
       "came ..1961-05-30<e1> gone 1961-05-30<e1>..1961-05-30<e1> came 1961-05-30<e1>..1961-05-30<e2> gone "
       "1961-05-30<e1>.."},
      {"out and in on one day are two stays",
       "e1 log:l1 ends crane@foredeck 1961-05-30\ne2 log:l2 begins crane@foredeck 1961-05-30",
       "came ..1961-05-30<e1> gone 1961-05-30<e1>..1961-05-30<e1> came 1961-05-30<e1>..1961-05-30<e2> gone "
       "1961-05-30<e1>.."},
      {"two logs that cannot both be right: all that is left is what neither touches",
       "e1 log:l1 ends crane@foredeck 1960-01-01\ne2 log:l2 ends crane@foredeck 1962-01-01\n"
       "e3 log:l3 present crane@foredeck 1957-01-01",
       "contradicted came ..1957-01-01<e3> gone 1957-01-01<e3>.."},
  };
  for (const Row& row : rows) {
    INFO(row.why);
    const StaySite site(row.statements);
    CHECK(dump(site, of(site, "crane", "foredeck").from_register) == row.bounds);
  }
}

TEST_CASE("CIDOC CRM P81 and P82: the outer dates hold all of it, the inner those it was surely there") {
  // The property definitions' own example: the development of the CRM, P81 ongoing throughout 1996-2002, P82
  // at some time within 1992-infinity (CIDOC CRM, definitions of P81 and P82).
  const StaySite crm(
      "e1 log:l1 begins crane@foredeck 1992/..\n"
      "e2 log:l2 present crane@foredeck 1996/2002 throughout");
  const StayBounds stay = of(crm, "crane", "foredeck").from_register.stays.front();
  CHECK(dump(crm, stay.came_earliest) == "1992-01-01<e1>");
  CHECK_FALSE(stay.went_latest.day);
  // "1996/2002" begins some time in 1996 and ends some time in 2002 (EDTF level 0): sure from the last day of
  // 1996 on.
  CHECK(dump(crm, stay.came_latest) == "1996-12-31<e2>");
  CHECK(dump(crm, stay.went_earliest) == "2002-01-01<e2>");
  const StaySite days("e1 log present crane@foredeck 1996-01-01/2002-12-31 throughout");
  const StayBounds exact = of(days, "crane", "foredeck").from_register.stays.front();
  CHECK(dump(days, exact.came_latest) == "1996-01-01<e1>");
  CHECK(dump(days, exact.went_earliest) == "2002-12-31<e1>");
}

TEST_CASE("layered traces tie two fixtures of one spot") {
  const StaySite site(
      "e1 physical-trace:t present crane@foredeck -\n"
      "e2 physical-trace:t present winch@foredeck - over=e1\n"
      "e3 log:l begins winch@foredeck 1963-05-07\n"
      "e4 photograph:p present crane@foredeck 1963-02-14\n");
  const FixtureBounds crane = of(site, "crane", "foredeck");
  CHECK(dump(site, crane.from_register) == "came ..1963-02-14<e4> gone 1963-02-14<e4>..1963-05-07<e3 e1 e2>");
  CHECK(dump(site, of(site, "winch", "foredeck").from_register) ==
        "came 1963-05-07<e3>..1963-05-07<e3> gone 1963-05-07<e3>..");
  // On another spot the lower had only come before the upper was made.
  const StaySite apart(
      "e1 physical-trace:t present crane@foredeck -\n"
      "e2 physical-trace:t present winch@afterdeck - over=e1\n"
      "e3 log:l begins winch@afterdeck 1963-05-07\n");
  CHECK(dump(apart, of(apart, "crane", "foredeck").from_register) == "came ..1963-05-07<e3 e1 e2> gone ..");
}

TEST_CASE("claims narrow, add nothing or contradict; reviewed ones count before proposals") {
  const StaySite site(
      "e1 log:l begins crane@foredeck 1956-12-11\n"
      "c1 reviewed present crane@foredeck 1958\n"
      "c2 proposed:i2 ends crane 1962-23\n"
      "c3 proposed:i2 present crane@foredeck 1955\n"
      "c4 proposed present crane@foredeck 1957 denied\n");
  const FixtureBounds bounds = of(site, "crane", "foredeck");
  CHECK(dump(site, bounds.from_register) == "came 1956-12-11<e1>..1956-12-11<e1> gone 1956-12-11<e1>..");
  CHECK(dump(site, bounds.with_reviewed) == "came 1956-12-11<e1>..1956-12-11<e1> gone 1958-01-01<c1>..");
  CHECK(dump(site, bounds.preview) ==
        "contradicted came 1956-12-11<e1>..1956-12-11<e1> gone 1958-01-01<c1>..");
  // Fitted in 1956 and not there in 1957 it cannot have gone in 1962: c4 and c2 are both proposals.
  CHECK(site.names(bounds.preview.left_out) == "c3 c4 c2");
  std::string effects;
  for (const ClaimEffect& effect : bounds.claims)
    effects += fmt::format("{}: {}; ", site.name(effect.claim), to_string(effect.kind));
  CHECK(effects == "c1: narrows; c3: contradicts; c4: narrows; c2: narrows; ");
}

TEST_CASE("a source is left out with all that rests on it") {
  const StaySite site(
      "e1 log:l1 ends crane@foredeck 1963-04-29\n"
      "e2 publication:book ends crane@foredeck ../1962-23\n"
      "e3 publication:notes ends crane@foredeck 1962-23\n"
      "e4 photograph:p present crane@foredeck 1963-02-14 rests=l1\n",
      "book i1 notes book");
  const FixtureBounds bounds = of(site, "crane", "foredeck");
  CHECK(bounds.from_register.state == BoundsState::contradicted);
  std::string without;
  for (const BoundsWithout& one : bounds.without)
    without += fmt::format("{} ({}): {}\n", one.source, site.names(one.left_out), dump(site, one.bounds));
  // Leaving out the interview or the book leaves out the notes as well; leaving out the log takes the
  // photograph it dates.
  CHECK(without ==
        "book (e3 e2): came ..1963-02-14<e4> gone 1963-04-29<e1>..1963-04-29<e1>\n"
        "l1 (e1 e4): came ..1962-11-30<e3> gone 1962-09-01<e3>..1962-11-30<e3>\n");
}

TEST_CASE("a coming taken for a return is named with what shows it, and is none without that") {
  const StaySite site(
      "e1 correspondence:l1 happened crane@foredeck 1962-12-30\n"
      "e2 photograph:p present crane@foredeck 1963-01-26\n"
      "e3 log:l2 begins crane@foredeck 1963-08-19\n");
  const FixtureBounds bounds = of(site, "crane", "foredeck");
  REQUIRE(bounds.renewals.size() == 1);
  CHECK(bounds.renewals[0].episode == 1);
  CHECK(site.names({bounds.renewals[0].there, bounds.renewals[0].come}) == "e2 e3");
  CHECK(dump(site, bounds.from_register) ==
        "came ..1962-12-30<e1> gone 1963-01-26<e2>..1963-08-19<e3> "
        "came 1963-08-19<e3>..1963-08-19<e3> gone 1963-08-19<e3>..");
  std::string without;
  for (const BoundsWithout& one : bounds.without)
    without += fmt::format("{}: {}\n", one.source, dump(site, one.bounds));
  CHECK(without ==
        "l1: came ..1963-01-26<e2> gone 1963-01-26<e2>..1963-08-19<e3> "
        "came 1963-08-19<e3>..1963-08-19<e3> gone 1963-08-19<e3>..\n"
        "l2: came ..1963-01-26<e2> gone 1963-01-26<e2>..\n"  // the event alone limits nothing
        "p: came ..1962-12-30<e1> gone 1962-12-30<e1>..1963-08-19<e3> "
        "came 1963-08-19<e3>..1963-08-19<e3> gone 1963-08-19<e3>..\n");
  const StaySite alone(
      "e1 correspondence:l1 happened crane@foredeck 1962-12-30\ne3 log:l2 begins crane@foredeck 1963-08-19\n");
  const FixtureBounds one_stay = of(alone, "crane", "foredeck");
  REQUIRE(one_stay.without.size() == 2);
  CHECK(dump(alone, one_stay.without[0].bounds) == "came 1963-08-19<e3>..1963-08-19<e3> gone 1963-08-19<e3>..");
  CHECK(dump(alone, one_stay.without[1].bounds) == "none");
}

TEST_CASE("more open readings than are tried: cannot tell, and said so") {
  // One of several dates, many times over: the ways multiply with each.
  // A layer ties the crane to another fixture, so that its days are no longer a chain of their own.
  std::string lines =
      "e0 log:s0 ends crane@foredeck 1900-01-01\ne1 log:s1 begins crane@foredeck 1901-01-01\n"
      "w1 physical-trace:w present winch@foredeck - \nw2 physical-trace:w present crane@foredeck - over=w1\n";
  for (int i = 0; i < 26; ++i)
    lines += fmt::format("x{} log:x{} present crane@foredeck [1880,1890,1905,1915]\n", i, i);
  const StaySite site(lines);
  CHECK(of(site, "crane", "foredeck").from_register.state == BoundsState::cannot_tell);
}

namespace {

/// Whether every limit of `inner` is at least as narrow as that of `outer`.
bool inside(const Bounds& inner, const Bounds& outer) {
  const auto no_lower = [](const Bound& a, const Bound& b) { return !b.day || (a.day && *a.day >= *b.day); };
  const auto no_higher = [](const Bound& a, const Bound& b) { return !b.day || (a.day && *a.day <= *b.day); };
  for (std::size_t i = 0; i < outer.stays.size(); ++i) {
    const StayBounds &a = inner.stays[i], &b = outer.stays[i];
    if (!no_lower(a.came_earliest, b.came_earliest) || !no_higher(a.came_latest, b.came_latest) ||
        !no_lower(a.went_earliest, b.went_earliest) || !no_higher(a.went_latest, b.went_latest))
      return false;
  }
  return true;
}

}  // namespace

TEST_CASE("adding claims never widens the bounds, leaving a source out never narrows them") {
  std::mt19937 random(1);
  const auto number = [&](int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(random);
  };
  const auto statement = [&](const std::string& head) {
    constexpr const char* kKinds[] = {"begins", "ends", "present", "present", "absent"};
    constexpr const char* kPlaces[] = {"crane@foredeck", "crane@foredeck", "crane", "crane@deck",
                                       "crane@hatch"};
    return fmt::format("{} {} {} {}\n", head, kKinds[number(0, 4)], kPlaces[number(0, 4)],
                       1950 + number(0, 14));
  };
  int narrowed = 0, widened = 0;
  for (int round = 0; round < 400; ++round) {
    std::string lines;
    for (int i = 0; i < 3; ++i) lines += statement(fmt::format("e{} log:l{}", i, i));
    for (int i = 0; i < 2; ++i) lines += statement(fmt::format("c{} reviewed", i));
    lines += statement("c9 proposed:i2");
    INFO(lines);
    const StaySite site(lines);
    for (const FixtureBounds& found : find_bounds(site.evidence())) {
      if (found.from_register.state == BoundsState::contradicted) continue;
      for (const BoundsWithout& without : found.without) {
        if (without.bounds.stays.size() != found.from_register.stays.size()) continue;  // it showed a return
        CHECK(inside(found.from_register, without.bounds));
        ++widened;
      }
      if (found.with_reviewed.state == BoundsState::contradicted) continue;
      CHECK(inside(found.with_reviewed, found.from_register));
      narrowed += found.with_reviewed.stays != found.from_register.stays;
      if (found.preview.state != BoundsState::contradicted) CHECK(inside(found.preview, found.with_reviewed));
    }
  }
  CHECK(narrowed > 50);
  CHECK(widened > 50);
}
