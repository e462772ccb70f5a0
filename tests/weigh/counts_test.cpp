#include "witnessmark/weigh/counts.h"

#include <doctest/doctest.h>

#include <sstream>

using namespace witnessmark;

namespace {

Term term(std::string key, std::string broader = "") {
  Term made;
  made.key = key;
  made.name = std::move(key);
  made.broader = std::move(broader);
  return made;
}

AuthorityLists lists() {
  return {AuthorityList(AuthorityList::Kind::places,
                        {term("store"), term("port-rack", "store"), term("starboard-rack", "store"),
                         term("port-shelf", "port-rack"), term("deck"), term("davit", "deck")}),
          AuthorityList(AuthorityList::Kind::equipment,
                        {term("bottle"), term("boat"), term("gig", "boat"), term("cutter", "boat")})};
}

/// Lines "KEY STATEMENT SUBJECT PLACE DATE [N[..M]] [intended]".
std::string compared(const std::string& script) {
  Register evidence;
  std::istringstream lines(script);
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    std::string statement, when, number;
    Entry& entry = evidence.entries.emplace_back();
    words >> entry.key >> statement >> entry.subject >> entry.place >> when >> number;
    entry.statement = parse_statement(statement).value();
    entry.when = {when, parse_edtf(when).value(), Calendar::gregorian};
    entry.spot_visible = SpotVisible::yes;
    if (number == "intended")
      entry.nature = Nature::intended;
    else if (!number.empty())
      entry.number = std::stoll(number);
    if (const auto dots = number.find(".."); dots != std::string::npos)
      entry.number_most = std::stoll(number.substr(dots + 2));
  }
  const AuthorityLists held = ::lists();
  const RegisterIndex index(evidence, held, default_date_policy());
  std::string text;
  for (const CountComparison& comparison : compare_counts(index, {})) text += dump(comparison) + "\n";
  return text;
}

const std::string kRacks =
    "e1 count bottle store 1959-03-31 24\n"
    "e2 count bottle port-rack 1959-03-31 10\n"
    "e3 count bottle starboard-rack 1959-03-31 10\n";

}  // namespace

// Worked by hand.

TEST_CASE("what a total has more than its positions is unaccounted for") {
  CHECK(compared(kRacks) ==
        "bottle@store 1959-03-31: 24 = 10 (bottle@port-rack) + 10 (bottle@starboard-rack), unaccounted 4, "
        "excess 0\n");
}

TEST_CASE("what the positions have more than the total is excess") {
  CHECK(compared("e1 count bottle store 1959-03-31 18\n" + kRacks.substr(kRacks.find('\n') + 1)) ==
        "bottle@store 1959-03-31: 18 = 10 (bottle@port-rack) + 10 (bottle@starboard-rack), unaccounted 0, "
        "excess 2\n");
}

TEST_CASE("a position that may have held one or two gives a least and a most") {
  CHECK(compared("e1 count boat deck 1959-03-31 2\ne2 count boat davit 1959-03-31 1..2\n") ==
        "boat@deck 1959-03-31: 2 = 1 to 2 (boat@davit), unaccounted 0 to 1, excess 0\n");
  CHECK(compared("e1 count boat deck 1959-03-31 1\ne2 count boat davit 1959-03-31 1..2\n") ==
        "boat@deck 1959-03-31: 1 = 1 to 2 (boat@davit), unaccounted 0, excess 0 to 1\n");
}

TEST_CASE("two statements of one position are two readings of it") {
  CHECK(compared(kRacks + "e4 count bottle port-rack 1959-03-31 12\n") ==
        "bottle@store 1959-03-31: 24 = 10 to 12 (bottle@port-rack) + 10 (bottle@starboard-rack), unaccounted "
        "2 to 4, "
        "excess 0\n");
}

TEST_CASE("there is one or more, not there is none, and a number given says more than there") {
  CHECK(compared("e1 count bottle store 1959-03-31 12\ne2 present bottle port-rack 1959-03-31\n"
                 "e3 absent bottle starboard-rack 1959-03-31\n") ==
        "bottle@store 1959-03-31: 12 = 1 or more (bottle@port-rack) + 0 (bottle@starboard-rack), unaccounted "
        "0 to 11, "
        "excess 0 or more\n");
  CHECK(compared(kRacks + "e4 present bottle port-rack 1959-03-31\n").find("= 10 (bottle@port-rack)") !=
        std::string::npos);
}

TEST_CASE("a position within a position that is counted itself does not count twice") {
  CHECK(compared(kRacks + "e4 count bottle port-shelf 1959-03-31 6\n") ==
        "bottle@port-rack 1959-03-31: 10 = 6 (bottle@port-shelf), unaccounted 4, excess 0\n"
        "bottle@store 1959-03-31: 24 = 10 (bottle@port-rack) + 10 (bottle@starboard-rack), unaccounted 4, "
        "excess 0\n");
}

TEST_CASE("things that are parts of what is counted are positions too") {
  CHECK(compared("e1 count boat deck 1959-03-31 3\ne2 count gig deck 1959-03-31 1\ne3 count cutter davit "
                 "1959-03-31 1\n") ==
        "boat@deck 1959-03-31: 3 = 1 (cutter@davit) + 1 (gig@deck), unaccounted 1, excess 0\n");
}

TEST_CASE("another date does not count, and the place is named as one of which nothing is said") {
  CHECK(compared("e1 count bottle store 1959-03-31 24\ne2 count bottle port-rack 1959-03-31 10\n"
                 "e3 count bottle starboard-rack 1960-03-31 10\n") ==
        "bottle@store 1959-03-31: 24 = 10 (bottle@port-rack), unaccounted 14, excess 0, nothing of "
        "starboard-rack\n");
  // A month that holds the day is the same date as far as anybody can tell.
  CHECK(compared("e1 count bottle store 1959-03 24\ne2 count bottle port-rack 1959-03-31 10\n") ==
        "bottle@store 1959-03: 24 = 10 (bottle@port-rack), unaccounted 14, excess 0\n");
}

TEST_CASE("an intention is no number of what was there, and a total without positions is not compared") {
  CHECK(compared("e1 count bottle store 1959-03-31 24\ne2 count bottle port-rack 1959-03-31 intended\n")
            .empty());
  CHECK(compared("e1 count bottle store 1959-03-31 24\n").empty());
}
