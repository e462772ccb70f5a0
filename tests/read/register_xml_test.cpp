#include "witnessmark/read/register_xml.h"

#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>

#include "memory_files.h"
#include "read/tables/column_description.h"
#include "witnessmark/base/embedded_schema.h"

using namespace witnessmark;

namespace {

const std::string kFolder = WITNESSMARK_SOURCE_DIR "/tests/read/files/";

AuthorityLists xml_lists() {
  const auto named = [](const char* key, const char* name) {
    Term term;
    term.key = key;
    term.name = name;
    return term;
  };
  return {
      AuthorityList(AuthorityList::Kind::places, {named("forecastle", "fo'c'sle")}),
      AuthorityList(AuthorityList::Kind::equipment, {named("fog-bell", "Fog bell"), named("lamp", "Lamp")})};
}

std::string reader_faults(const std::string& body) {
  const AuthorityLists both = xml_lists();
  return faults(read_register_xml("<register version=\"1\">\n" + body + "\n</register>", "r.xml", &both));
}

/// Runs xmllint; nothing when it is not installed.
std::optional<bool> is_valid(const std::string& path) {
  if (std::system("command -v xmllint > /dev/null 2>&1") != 0) {
    std::puts("skipped: xmllint is not installed");
    return std::nullopt;
  }
  const std::string schema = WITNESSMARK_SOURCE_DIR "/schemas/register.rng";
  return std::system(
             ("xmllint --noout --relaxng '" + schema + "' '" + path + "' > /dev/null 2>&1").c_str()) == 0;
}

}  // namespace

TEST_CASE("a register in XML gives what the same register in CSV gives") {
  const AuthorityLists both = xml_lists();
  const std::string text = *SystemFileReader().read(kFolder + "register.xml");
  CHECK(looks_like_xml(text));
  const RegisterReading xml = read_register_xml(text, "register.xml", &both);
  CHECK(faults(xml) ==
        "note: register.xml:13:5: the element \"weather\" is not known and is kept in the notes\n");
  const RegisterReading csv = read_register_files(
      MemoryFiles(
          {{"entries.csv",
            "entry,source,statement,subject,place,when,when_written,number,date_rests_on,observation\n"
            "e1,log-55,begins,Fog bell,fo'c'sle,1955-02-04,4 Feb. 1955,,,Bell hung <again>\n"
            "e2,dr-2,count,lamp,,1949-03,,4,e1|fog-bell,\n"},
           {"sources.csv",
            "source,kind,title,date,repository,weather\nlog-55,log,\"Deck log, 1954 to "
            "1955\",1954/1955,Varrow Archive,\n"
            "ph-9,photograph,Launch of the tender's boat & crew,,,overcast\ndr-2,drawing,Upper "
            "deck,1949-03,,\n"},
           {"derives.csv", "source,derives_from,how\ndr-2,ph-9,traced from\n"},
           {"itinerary.csv",
            "stay,source,location,when\ns1,log-55,Pellhaven|Lantern Quay,1955-02-05/1955-02-27\n"},
           {"named-events.csv",
            "event,name,spoken,when,source\nyard,The yard period,the yard|the "
            "refit,1955-01-10/1955-02-04,log-55\n"}}),
      "entries.csv", &both);
  REQUIRE(csv.ok);
  REQUIRE(xml.ok);
  CHECK(xml.evidence.sources == csv.evidence.sources);
  CHECK(xml.evidence.derivations == csv.evidence.derivations);
  CHECK(xml.evidence.entries == csv.evidence.entries);
  CHECK(xml.evidence.itinerary == csv.evidence.itinerary);
  CHECK(xml.evidence.events == csv.evidence.events);
  CHECK(xml.evidence.sources[1].notes == "weather: overcast");
}

TEST_CASE("faults of a register in XML name the element") {
  struct Row {
    const char* body;
    const char* faults;
  };
  const Row rows[] = {
      {"<source key=\"a\"><kind>log</kind><title>A</title><date>12/03/1958</date></source>",
       "error: r.xml:2:49: \"12/03/1958\" in element date looks like a date changed by a spreadsheet (write "
       "1958-03-12 or 1958-12-03, "
       "whichever the source says; format the column as text before typing)\n"},
      {"<source><kind>log</kind></source>",
       "error: r.xml:2:1: element source is empty (it must hold: Stable text id of the source)\n"
       "error: r.xml:2:1: element title is empty (it must hold: Title or description)\n"},
      {"<sorce key=\"a\"/>",
       "error: r.xml:2:1: the element sorce is not known here (did you mean source?)\n"},
      {"<source key=\"a\"><kind>log</kind><kind>order</kind><title>A</title></source>",
       "error: r.xml:2:33: kind stands twice in one source (keep one of them)\n"},
      {"<source key=\"a\"><kind>log</kind><title>A <b>bold</b></title></source>",
       "error: r.xml:2:42: title holds an element, where text is wanted (write plain text)\n"
       "error: r.xml:2:1: element title is empty (it must hold: Title or description)\n"},
      {"<source key=\"a\" id=\"b\"><kind>log</kind><tittle>x</tittle><title>A</title></source>words",
       "error: r.xml:2:1: the attribute id is not known here (all but the key stands in elements)\n"
       "error: r.xml:2:40: the element \"tittle\" is not known (did you mean title? If it is one of your "
       "own, "
       "give it a name less like it)\n"
       "error: r.xml:2:83: text stands outside any element of the register (take it out)\n"},
      {"<event key=\"y\"><name>Y</name><spoken>a|b</spoken><when>1955</when></event>",
       "error: r.xml:2:30: spoken holds | (repeat the element spoken for each value)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.body);
    CHECK(reader_faults(row.body) == row.faults);
  }
  CHECK(faults(read_register_xml("<register/>", "r.xml", nullptr)) ==
        "error: r.xml:1:1: the register's version is \"\" (this program reads version=\"1\")\n");
  CHECK(faults(read_register_xml("<r/>", "r.xml", nullptr)) ==
        "error: r.xml:1:1: the outermost element is r, not register (schemas/register.rng describes the "
        "file)\n");
}

TEST_CASE("the RELAX NG schema takes what the reader takes") {
  const std::string text = *SystemFileReader().read(kFolder + "register.xml");
  const std::string path =
      (std::filesystem::temp_directory_path() / "witnessmark-register-test.xml").string();
  const auto check = [&](const std::string& xml, bool valid) {
    std::ofstream(path, std::ios::binary) << xml;
    const auto result = is_valid(path);
    std::filesystem::remove(path);
    if (result) CHECK(*result == valid);
  };
  std::string strict = text;
  const std::string extra = "    <weather>overcast</weather>\n";
  strict.erase(strict.find(extra), extra.size());
  check(strict, true);
  check(text, false);  // what the reader keeps in the notes, the schema does not name
  std::string wrong = strict;
  wrong.replace(wrong.find("<kind>log</kind>"), 16, "<kind>lgo</kind>");
  check(wrong, false);
}

TEST_CASE("the RELAX NG schema names every column of the register's CSV files") {
  const std::string_view schema = *embedded_schema("register.rng");
  for (const char* table : {"sources", "derives", "entries", "itinerary", "named-events"}) {
    for (const ColumnDescription& column : column_descriptions(table)) {
      CAPTURE(column.name);
      CHECK(schema.find("<element name=\"" + column.name + "\">") != schema.npos);
      for (const std::string& value : column.values)
        CHECK(schema.find("<value>" + value + "</value>") != schema.npos);
    }
  }
}

TEST_CASE("XML is told from CSV in any encoding") {
  using namespace std::string_literals;
  for (const std::string& text :
       {"<r/>"s, " \n<r/>"s, "\xEF\xBB\xBF<r/>"s, "\xFF\xFE<\0r\0"s, "\xFE\xFF\0<\0r"s})
    CHECK(looks_like_xml(text));
  for (const std::string& text : {""s, "entry,source"s, "\"<r>\""s}) CHECK(!looks_like_xml(text));
}
