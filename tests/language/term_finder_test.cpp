#include "witnessmark/language/term_finder.h"

#include <doctest/doctest.h>

#include "claims_table.h"
#include "witnessmark/base/code_point_index.h"

using namespace witnessmark;
using witnessmark::testing::english;

namespace {

Term term(std::string key, std::string name, std::vector<std::string> spoken = {}, std::string number = "") {
  Term made;
  made.key = std::move(key);
  made.name = std::move(name);
  made.spoken = std::move(spoken);
  made.number = std::move(number);
  return made;
}

AuthorityList sample() {
  Term hold = term("hold-2", "No. 2 hold", {"the well"});
  hold.former_names.push_back({"Stores flat", {}});
  return AuthorityList(
      AuthorityList::Kind::places,
      {hold, term("pump", "Two-inch pump"), term("lamp", "300 mm lamp"), term("wheelhouse", "Wheelhouse"),
       term("chart-room", "Chart room"), term("winch-1", "Capstan", {"the donkey"}),
       term("boiler-1", "Donkey boiler", {"donkey"}), term("davits", "Radial davits"),
       term("battery", "Battery"), term("shelf", "Shelf"), term("windlass", "Electric windlass"),
       term("propeller", "Propeller"), term("cabin", "Mate's cabin", {}, "01-38-1-L"),
       term("office", "Office", {}, "207"), term("old", "Magazine", {}, "C-207-A"),
       term("engine", "Number one turbine")});
}

std::string found(const std::string& text) {
  const AuthorityList list = sample();
  const TermFinder finder(list, english());
  const CodePointIndex index(text);
  std::string line;
  for (const TermMention& mention : finder.find(text)) {
    std::string keys;
    for (const std::uint32_t t : mention.terms) keys += (keys.empty() ? "" : "|") + list.terms()[t].key;
    line += (line.empty() ? "" : "; ") + keys + " '" + std::string(index.slice(mention.range)) + "'" +
            (mention.plural ? " plural" : "") + (mention.near_match ? " near" : "");
  }
  return line;
}

}  // namespace

TEST_CASE("terms are found however they are said or spelt") {
  struct Row {
    std::string text, expected;
  };
  const Row rows[] = {
      // preferred, former and spoken names
      {"in the Chart Room", "chart-room 'Chart Room'"},
      {"down in the stores flat", "hold-2 'stores flat'"},
      // plural and possessive
      {"both batteries and the shelves", "battery 'batteries' plural; shelf 'shelves' plural"},
      {"the battery's lid", "battery 'battery's'"},
      {"one radial davit", "davits 'radial davit'"},
      {"the radial davits", "davits 'radial davits' plural"},
      // number words
      {"number two hold", "hold-2 'number two hold'"},
      {"hold number 2", "hold-2 'hold number 2'"},
      {"no. 2 hold", "hold-2 'no. 2 hold'"},
      {"the 2-inch pump, the two inch pump", "pump '2-inch pump'; pump 'two inch pump'"},
      {"the three hundred millimetre lamp", "lamp 'three hundred millimetre lamp'"},
      {"a 300mm lamp", "lamp '300mm lamp'"},
      {"number 1 turbine", "engine 'number 1 turbine'"},
      // compounds
      {"the wheel house", "wheelhouse 'wheel house'"},
      {"a chartroom, the chart-room", "chart-room 'chartroom'; chart-room 'chart-room'"},
      // the longest name wins; a name with two meanings gives both
      {"the donkey boiler", "boiler-1 'donkey boiler'"},
      {"the donkey", "winch-1|boiler-1 'donkey'"},
      // an article that is part of the name, where the bare word means something else
      {"Well, I was in the well.", "hold-2 'the well'"},
      // compartment numbers
      {"in 01-38-1-L there", "cabin '01-38-1-L'"},
      {"C-207-A", "old 'C-207-A'"},
      {"compartment 207 or 207 men", "office '207'"},
      // near matches are told apart
      {"the electrc windlass", "windlass 'electrc windlass' near"},
      {"a propellor", "propeller 'propellor' near"},
      {"a better shelv", ""},
      {"nothing here", ""},
      {"", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(found(row.text) == row.expected);
  }
}

TEST_CASE("a term mention is one line for tests") {
  const AuthorityList list = sample();
  const TermFinder finder(list, english());
  const auto mentions = finder.find("the donkeys");
  REQUIRE(mentions.size() == 1);
  CHECK(dump(mentions[0], list) == "4-11 winch-1|boiler-1 plural");
}
