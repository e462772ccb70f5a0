#include "witnessmark/read/register_files.h"

#include <doctest/doctest.h>

#include "memory_files.h"

using namespace witnessmark;

namespace {

Term term(std::string key, std::string name, std::string broader, std::vector<std::string> spoken = {}) {
  Term made;
  made.key = std::move(key);
  made.name = std::move(name);
  made.broader = std::move(broader);
  made.spoken = std::move(spoken);
  return made;
}

AuthorityLists lists() {
  return {AuthorityList(
              AuthorityList::Kind::places,
              {term("tender", "The tender", ""), term("forecastle", "Forecastle", "tender", {"fo'c'sle"}),
               term("mess-1", "Mess", "tender"), term("mess-2", "Mess", "tender")}),
          AuthorityList(AuthorityList::Kind::equipment,
                        {term("fog-bell", "Fog bell", "", {"the bell"}), term("lamp", "Lamp", "")})};
}

const char* kSources =
    "source,kind,title\nlog,log,Deck log\ndr,drawing,Upper deck\nord,Order,Order of May\ntr,physical "
    "trace,Bulkhead\n";

RegisterReading read_entries(const std::string& entries, std::map<std::string, std::string> others = {},
                             bool with_lists = true) {
  others.emplace("in/entries.csv", entries);
  others.emplace("in/sources.csv", kSources);
  const AuthorityLists both = lists();
  return read_register_files(MemoryFiles(std::move(others)), "in/entries.csv", with_lists ? &both : nullptr);
}

}  // namespace

TEST_CASE("entries come out with terms as keys and what is empty filled in") {
  const auto reading = read_entries(
      "entry,source,statement,subject,place,when,when_written,calendar,reading,number,attribute,over\n"
      "1,log,begins,The Bell,Fo'c'sle,1955-02-04,4 Feb.,,,,,\n"
      "2,dr,count,lamp,,1949,,,throughout,4,,\n"
      "3,ord,ends,fog-bell,forecastle,1962-08,,,,,,\n"
      "4,log,located,tender,Pellhaven,1955-02,,,,,,\n"
      "5,tr,attribute,fog-bell,,,25 Oct. 1917,julian,,,colour: buff,1\n"
      "6,log,happened,,forecastle,1956-11-05,,,,,burned,\n");
  CHECK(faults(reading) == "");
  REQUIRE(reading.ok);
  std::string dumped;
  for (const Entry& entry : reading.evidence.entries) {
    dumped += dump(entry) + " " + std::string(to_string(entry.nature)) + " \"" + entry.when.written + "\"\n";
  }
  CHECK(dumped ==
        "begins fog-bell@forecastle 1955-02-04 (log) done \"4 Feb.\"\n"
        "count lamp 1949 n=4 intended (dr) intended \"1949\"\n"
        "ends fog-bell@forecastle 1962-08 intended (ord) intended \"1962-08\"\n"
        "located -@Pellhaven 1955-02 (log) done \"1955-02\"\n"
        "attribute fog-bell - {colour: buff} (tr) done \"25 Oct. 1917\"\n"
        "happened -@forecastle 1956-11-05 {burned} (log) done \"1956-11-05\"\n");
  CHECK(reading.evidence.entries[1].reading == Reading::throughout);
  CHECK(reading.evidence.entries[4].when.calendar == Calendar::julian);
}

TEST_CASE("a faulty entry says what is wrong and what to do") {
  struct Row {
    const char* cells;
    const char* faults;
  };
  // entry,source,statement,subject,place,when,number,attribute,date_rests_on
  const Row rows[] = {
      {"1,log,present,fog-bel,,1955,,,",
       "error: in/entries.csv:2:15: cell D2 (subject) names \"fog-bel\", which is not in the list of "
       "equipment (did you mean "
       "fog-bell or Fog bell?)\n"},
      {"1,log,present,,mess,1955,,,",
       "error: in/entries.csv:2:16: cell E2 (place) names \"mess\", which several terms of the list of "
       "places bear (write the "
       "key: mess-1 or mess-2)\n"},
      {"1,log,present,,zzz,1955,,,",
       "error: in/entries.csv:2:16: cell E2 (place) names \"zzz\", which is not in the list of places (add "
       "it to the list, or "
       "correct it)\n"},
      {"1,log,was there,lamp,,1955,,,",
       "error: in/entries.csv:2:7: \"was there\" in cell C2 (statement) is not one of begins, ends, present, "
       "absent, count, "
       "attribute, happened or located\n"},
      {"1,log,count,lamp,,1955,,,",
       "error: in/entries.csv:2:24: cell G2 (number) is empty, and the statement is count (say how many, or "
       "choose another "
       "statement)\n"},
      {"1,log,attribute,lamp,,1955,,buff,",
       "error: in/entries.csv:2:29: cell H2 (attribute) has no colon (write the property as name: value, "
       "such as colour: buff)\n"},
      {"1,log,present,,,1955,,,",
       "error: in/entries.csv:2:15: cell D2 (subject) and place are empty, and the statement is present (say "
       "of what, or where)\n"},
      {"1,log,present,lamp,,1955,4,,",
       "warning: in/entries.csv:2:26: cell G2 (number) holds a number, but the statement is present (a "
       "number counts for count "
       "only)\n"},
      {"1,log,present,lamp,,1955,,,1",
       "error: in/entries.csv:2:28: cell I2 (date_rests_on) names the entry itself (name what it rests on or "
       "lies over)\n"},
      {"1,lgo,present,lamp,,1955,,,2|fog-bell",
       "unresolved: in/entries.csv:2:3: \"lgo\" in cell B2 (source) is not the key of a source (did you mean "
       "log?)\n"
       "unresolved: in/entries.csv:2:28: \"2\" in cell I2 (date_rests_on) is not the key of an entry, a "
       "source, an interview or a "
       "piece of equipment (did you mean 1?)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.cells);
    const std::string text = "entry,source,statement,subject,place,when,number,attribute,date_rests_on\n" +
                             std::string(row.cells) + "\n";
    CHECK(faults(read_entries(text)) == row.faults);
  }
}

TEST_CASE("without lists terms are kept and left to be looked for") {
  const auto reading = read_entries(
      "entry,source,statement,subject,place,when\n1,elsewhere,present,a bell,,1955\n", {}, false);
  CHECK(reading.ok);
  CHECK(faults(reading) ==
        "unresolved: in/entries.csv:2:3: \"elsewhere\" in cell B2 (source) is not the key of a source (add "
        "it, or correct the key)\n"
        "unresolved: in/entries.csv:2:21: \"a bell\" in cell D2 (subject) is not the key of a piece of "
        "equipment (add it, or correct "
        "the key)\n");
  CHECK(reading.nature_by_source == std::vector<std::size_t>{0});
  CHECK(reading.unresolved[1].may_be == std::vector<KeyKind>{KeyKind::equipment});
}

TEST_CASE("derivations, stays and events are read beside the entries") {
  const auto reading = read_entries(
      "entry,source,statement,subject,when\n1,log,present,lamp,1955\n",
      {{"in/derives.csv", "source,derives_from,how\nlog,dr,copies\nord,ord,\n"},
       {"in/itinerary.csv",
        "stay,source,party,location,when\ns1,log,,Pellhaven | Lantern Quay,1955-02/1955-03\n"},
       {"in/named-events.csv", "event,name,spoken,when,source\ny,The yard,the yard|the refit,1955,log\n"}});
  CHECK(faults(reading) ==
        "error: in/derives.csv:3:5: cell B3 (derives_from) lets the source rest on itself (name what it was "
        "copied, traced or told "
        "from)\n");
  REQUIRE(reading.evidence.derivations.size() == 1);
  REQUIRE(reading.evidence.itinerary.size() == 1);
  CHECK(reading.evidence.itinerary[0].locations == std::vector<std::string>{"Pellhaven", "Lantern Quay"});
  REQUIRE(reading.evidence.events.size() == 1);
  CHECK(reading.evidence.events[0].spoken == std::vector<std::string>{"the yard", "the refit"});
}
