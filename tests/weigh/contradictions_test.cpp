#include "witnessmark/weigh/contradictions.h"

#include <doctest/doctest.h>

#include "stay_site.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

std::string days(const std::optional<std::int64_t>& number) {
  return number ? std::to_string(*number) : "-";
}

/// "crane@foredeck: e1+e3 e2+e3 | identification e2 | episode | dates e1 437/- … | aside e3 | sources …".
std::string dump(const StaySite& site, const Dispute& dispute) {
  std::string text = fmt::format("{}@{}:", dispute.subject, dispute.place);
  for (const auto& set : dispute.sets) {
    std::string names = site.names(set);
    std::replace(names.begin(), names.end(), ' ', '+');
    text += " " + names;
  }
  const Resolution resolution = resolve(dispute, site.evidence(), site.claims());
  for (const auto& one : resolution.wrong_identification)
    text += " | identification " + site.name(one.statement);
  if (resolution.another_episode) text += " | episode";
  for (const auto& one : resolution.misdating)
    text += fmt::format(" | dates {} {}/{}", site.name(one.statement), days(one.earlier), days(one.later));
  for (const auto& one : resolution.mishearing)
    text += fmt::format(" | hear {}{}", site.name(one.statement),
                        one.other_date.empty() ? "" : " " + one.other_date);
  if (!resolution.set_aside.empty()) text += " | aside " + site.names(resolution.set_aside);
  for (const auto& source : resolution.set_aside_sources) text += " | source " + source;
  return text;
}

std::string all(const StaySite& site) {
  std::string text;
  for (const Dispute& dispute :
       disputes(find_contradictions(site.evidence(), site.claims()), site.evidence()))
    text += (text.empty() ? "" : "\n") + dump(site, dispute);
  return text;
}

struct Row {
  const char* why;
  const char* statements;
  const char* found;
};

}  // namespace

TEST_CASE("what cannot all be true, and what would resolve it") {
  const Row rows[] = {
      {"a claim against a photograph: 76 days from 30 November 1962 to 14 February 1963",
       "e1 photograph present crane@foredeck 1963-02-14\nc1 reviewed ends crane ../1962-23",
       "crane@foredeck: e1+c1 | identification e1 | episode | dates e1 76/- | dates c1 -/76 | hear c1 | "
       "aside e1 c1"},
      {"three that cannot all be true though any two can: come, gone, and not there between",
       "e1 log:a begins crane@foredeck 1950-05-01\ne2 log:b ends crane@foredeck 1960-05-01\n"
       "e3 photograph absent crane@foredeck 1955-05-01",
       "crane@foredeck: e1+e2+e3 | identification e3 | episode | dates e1 -/1826 | dates e2 1827/- | "
       "dates e3 1826/1827 | aside e1 e2 e3"},
      {"an order, an uncertain picture and an unseen spot contradict nobody",
       "e1 order begins crane@foredeck 1950 intended\ne2 photograph:p absent crane@foredeck 1955-05-01 "
       "hidden\n"
       "e3 photograph:q present crane@foredeck 1940 probable\ne4 log begins crane@foredeck 1954-05-01\n"
       "e5 photograph:r present crane@foredeck 1956",
       ""},
      {"another reading of the claim's date resolves it, and is named",
       "e1 log begins crane@foredeck 1956-12-11\nc1 proposed begins crane 1965 or=1956",
       "crane@foredeck: e1+c1 | episode | dates e1 -/2943 | dates c1 2943/- | hear c1 1956 | aside e1 c1"},
      {"three goings in three years: the middle one would have to move both ways, so no other date of it "
       "will do",
       "e1 log begins winch@deck 1950\ne2 log ends crane@deck 1963-04-29\n"
       "e3 publication:book ends crane@deck 1962\ne4 publication:notes ends crane@deck 1961",
       "crane@deck: e2+e4 e2+e3 e4+e3 | dates e2 484/- | dates e4 -/484"},
      {"the register shows a return: gone in between contradicts nothing",
       "e1 log:a ends crane@foredeck 1955-03-01\ne2 log:b begins crane@foredeck 1956-12-11\n"
       "e3 photograph absent crane@foredeck 1956-01-01\ne4 photograph:q present crane@foredeck 1950",
       ""},
      {"a coming after something happened to it is a return: what was told must be of one of the two",
       "e1 correspondence happened crane@foredeck 1963-01-26\ne2 log begins crane@foredeck 1963-08-19\n"
       "c1 reviewed begins crane 1898\nc2 reviewed present crane 1950",
       ""},
      {"of neither; setting aside what shows the return does not help, for then there is but one stay",
       "e1 correspondence happened crane@foredeck 1963-01-26\ne2 log begins crane@foredeck 1963-08-19\n"
       "c1 reviewed begins crane 1963-05-01",
       "crane@foredeck: e2+e1+c1 | episode | dates e2 110/- | dates e1 -/95 | dates c1 95/110 | hear c1 | aside "
       "e2 c1"},
      {"colours at one time",
       "e1 physical-trace attribute crane@foredeck 1938/1966 throughout a=colour:buff\n"
       "c1 reviewed attribute crane 1964 a=colour:red",
       "crane@foredeck: e1+c1 | identification e1 | dates e1 731/9497 | dates c1 9497/731 | hear c1 | aside "
       "e1 c1"},
      {"numbers on one day, but not at different places",
       "e1 log:a count bell@foredeck 1959-03-31 n=24\ne2 log:b count bell@foredeck 1959-03-31 n=20\n"
       "e3 log:c count bell@bridge 1959-03-31 n=2",
       "bell@foredeck: e1+e2 | dates e1 1/1 | dates e2 1/1 | aside e1 e2"},
      {"gone from the ship contradicts there on the foredeck; gone from a part of it does not",
       "e1 log:a ends crane@ship 1955-01-01\ne2 log:b present crane@foredeck 1960-01-01\n"
       "e3 log:c present crane@bridge 1950-01-01\ne4 log:d ends crane@hatch 1953-01-01\ne5 log:e present "
       "crane@rail 1951-01-01",
       "crane@foredeck: e1+e2 | episode | dates e1 -/1826 | dates e2 1826/- | aside e1 e2"},
  };
  for (const Row& row : rows) {
    INFO(row.why);
    const StaySite site(row.statements);
    CHECK(all(site) == row.found);
  }
}

TEST_CASE("a date that is not of the claim's own words is said to be so where another date would help") {
  const std::pair<const char*, const char*> rows[] = {
      {"", ""}, {" date-carried", "its date is taken from earlier in the talk"}, {" led", "the interviewer supplied it"}};
  for (const auto& [word, how] : rows) {
    const StaySite site(std::string("e1 log begins crane@foredeck 1956-12-11\nc1 reviewed begins crane 1957") + word);
    const auto found = disputes(find_contradictions(site.evidence(), site.claims()), site.evidence());
    REQUIRE(found.size() == 1);
    const auto misdating = resolve(found[0], site.evidence(), site.claims()).misdating;
    REQUIRE(misdating.size() == 2);
    CHECK(misdating[0].how.empty());
    CHECK(misdating[1].how == how);
  }
}

TEST_CASE("what rests on one interview is set aside together") {
  const StaySite site(
      "e1 log:l ends crane@foredeck 1963-04-29\n"
      "e2 publication:book ends crane@foredeck ../1962-23\n"
      "e3 publication:notes ends crane@foredeck 1962-23\n",
      "book i1 notes i1");
  CHECK(
      all(site) ==
      "crane@foredeck: e1+e3 e1+e2 | episode | dates e1 150/- | dates e3 -/150 | dates e2 -/150 | aside e1");
  const StaySite more(
      "e1 log:l ends crane@foredeck 1963-04-29\n"
      "e4 photograph:p present crane@foredeck 1963-02-14\n"
      "e2 publication:book ends crane@foredeck ../1962-23\n"
      "e3 publication:notes ends crane@foredeck 1962-23\n",
      "book i1 notes i1");
  CHECK(all(more).ends_with(" | source i1"));
}

TEST_CASE("where there are more sets than are looked for, how far the search went is said") {
  // Two logs that cannot both be right, and a hundred statements each of one of two years: the sets of three
  // and four are some four million.
  std::string lines =
      "e0 log:s0 begins crane@foredeck 1940-01-01\ne1 log:s1 begins crane@foredeck 1945-01-01\n";
  for (int i = 0; i < 100; ++i)
    lines += fmt::format("x{} log:x{} present crane@foredeck [1950,1952]\n", i, i);
  const StaySite site(lines);
  const Contradictions found = find_contradictions(site.evidence(), site.claims());
  REQUIRE(found.sets.size() == 1);
  CHECK(site.names(found.sets[0].statements) == "e0 e1");
  REQUIRE(found.limits.size() == 1);
  CHECK(found.limits[0].subject == "crane");
  CHECK(found.limits[0].place == "foredeck");
  CHECK(found.limits[0].searched_to >= 2);  // all pairs are looked for, always
  CHECK(found.limits[0].searched_to < 102);
}

TEST_CASE("sets without proposals come first, and a set with one is a preview") {
  const StaySite site(
      "e1 log:a ends crane@foredeck 1955-01-01\ne2 log:b present crane@foredeck 1960-01-01\n"
      "c1 proposed present crane 1970\nc2 proposed present bell@deck 1970\nc3 proposed:i2 ends bell@deck "
      "1960\n");
  const auto found = disputes(find_contradictions(site.evidence(), site.claims()), site.evidence());
  REQUIRE(found.size() == 3);
  CHECK(found[0].footing == Footing::evidence);
  CHECK(site.names(found[0].statements) == "e1 e2");
  CHECK(found[1].footing == Footing::proposed);
  CHECK(found[2].footing == Footing::proposed);
}

TEST_CASE("statements are presented by kind of source, identification, how it is known and recall distance") {
  const StaySite site(
      "e1 publication present crane@foredeck 1950\ne2 physical-trace present crane@foredeck 1950\n"
      "e3 photograph present crane@foredeck 1950\ne4 log present crane@foredeck 1950\n"
      "e5 photograph:p present crane@foredeck 1949 probable\n"
      "c1 proposed present crane 1950\nc2 reviewed present crane 1950 told\nc3 reviewed present crane "
      "1950\n");
  std::string order;
  for (const FixtureStatement& one : site.evidence().statements()) order += site.name(one.key) + " ";
  CHECK(order == "e4 e3 e5 e2 e1 c3 c2 c1 ");
}
