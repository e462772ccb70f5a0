#include "witnessmark/read/list_files.h"

#include <doctest/doctest.h>

#include "memory_files.h"

using namespace witnessmark;

namespace {

constexpr auto kPlaces = AuthorityList::Kind::places;
constexpr auto kEquipment = AuthorityList::Kind::equipment;

/// "key name <broader #number (spoken) [former when] @place notes"
std::string dump(const ListReading& reading) {
  std::string out;
  for (const Term& term : reading.terms) {
    out += term.key + " \"" + term.name + "\"";
    if (!term.broader.empty()) out += " <" + term.broader;
    if (!term.number.empty()) out += " #" + term.number;
    for (const std::string& spoken : term.spoken) out += " (" + spoken + ")";
    for (const FormerName& former : term.former_names)
      out += " [" + former.name + " " + to_string(former.when) + "]";
    if (!term.place.empty()) out += " @" + term.place;
    if (!term.notes.empty()) out += " -- " + term.notes;
    out += "\n";
  }
  return out + faults(reading);
}

std::string skos(const std::string& body) {
  return "<?xml version=\"1.0\"?>\n<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\" "
         "xmlns:s=\"http://www.w3.org/2004/02/skos/core#\" xml:base=\"http://example.org/list/\">\n" +
         body + "\n</rdf:RDF>\n";
}

}  // namespace

TEST_CASE("lists come from CSV with numbers as text and former names dated") {
  CHECK(dump(read_list("place,name,within,number,number_scheme,former_names,spoken,notes\n"
                       "tender,The tender,,,,,the Annis|the old girl,\n"
                       "mess,Crew mess,tender,01,local,\"Mess No. 2 [1938/1949]|Boys' mess\",,Aft\n",
                       "places.csv", kPlaces)) ==
        "tender \"The tender\" (the Annis) (the old girl)\n"
        "mess \"Crew mess\" <tender #01 [Mess No. 2 1938/1949] [Boys' mess -] -- Aft\n");
  CHECK(dump(read_list("equipment,name,place\nbell,Fog bell,forecastle\n", "equipment.csv", kEquipment)) ==
        "bell \"Fog bell\" @forecastle\n"
        "unresolved: equipment.csv:2:15: \"forecastle\" in cell C2 (place) is not the key of a place (add "
        "it, or correct the key)\n");
}

TEST_CASE("faults of a CSV list are told") {
  struct Row {
    const char* text;
    const char* faults;
  };
  const Row rows[] = {
      {"place,name,former_names\na,A,Old [12/03/1958]\n",
       "error: l.csv:2:5: \"12/03/1958\" in cell C2 (former_names) looks like a date changed by a "
       "spreadsheet (write 1958-03-12 or "
       "1958-12-03, whichever the source says; format the column as text before typing)\n"},
      {"place,name,former_names\na,A,Old [1958\n",
       "error: l.csv:2:5: \"Old [1958\" in cell C2 (former_names) opens a square bracket and does not close "
       "it (write Crew's Mess "
       "[1938/1951])\n"},
      {"place,name,within\na,A,b\nb,B,c\nc,C,a\nd,D,a\ne,E,e\n",
       "error: l.csv: terms lie within one another in a circle: a < b < c < a (let one of them lie in "
       "something else, or in "
       "nothing)\n"
       "error: l.csv: terms lie within one another in a circle: e < e (let one of them lie in something "
       "else, or in nothing)\n"},
      {"place,name,number,number_scheme\na,A,3-75-4,since-1949\nb,B,01,since-1949\nc,C,C-207 A,before-1949\n",
       nullptr},
      {"place,name,witihn\nmess,Mess,tender\ntender,Tender,\n",
       "error: l.csv:1:12: the column \"witihn\" is not known (did you mean within? If it is one of your "
       "own, "
       "give it a name less like it)\n"},
      {"equipment,name,place\nbell,Bell,mess\nlamp,Lamp,mess\n",
       "error: l.csv:1:1: the columns are those of the table equipment, not of places (take it in as "
       "equipment; "
       "the table places is wanted here)\n"},
      {"place,name,equipment\nmess,Mess,stove\ntender,Tender,\n",  // a column of one's own
       "note: l.csv:1:12: the column \"equipment\" is not known and is kept in the notes\n"},
      {"place,name,within\nmess,Mess,tendr\ntender,Tender,\n",
       "unresolved: l.csv:2:11: \"tendr\" in cell C2 (within) is not the key of a place (did you mean "
       "tender?)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const auto reading = read_list(row.text, "l.csv", kPlaces);
    if (row.faults) {
      CHECK(faults(reading) == row.faults);
    } else {
      REQUIRE(reading.diagnostics.size() == 1);
      CHECK(to_string(reading.diagnostics[0])
                .starts_with("warning: l.csv:2:5: cell C2 (number) holds \"3-75-4\", which does not read by "
                             "the scheme since-1949: "));
    }
  }
}

TEST_CASE("SKOS concepts become terms, whatever shape of RDF/XML they are written in") {
  // W3C: SKOS Reference, sections 5 to 8; RDF 1.1 XML Syntax, section 2.
  struct Row {
    const char* body;
    const char* dump;
  };
  const Row rows[] = {
      {"<s:Concept rdf:about=\"http://example.org/list/tender\"><s:prefLabel "
       "xml:lang=\"fr\">Baliseur</s:prefLabel>"
       "<s:prefLabel xml:lang=\"en-GB\">Tender</s:prefLabel><s:altLabel>the "
       "Annis</s:altLabel><s:hiddenLabel>Anis</s:hiddenLabel>"
       "<s:notation>01</s:notation><s:scopeNote>The ship.</s:scopeNote></s:Concept>",
       "tender \"Tender\" #01 (Baliseur) (the Annis) (Anis) -- The ship.\n"
       "note: l.rdf:3:1: tender has 2 preferred names; \"Tender\" (en-gb) is taken, the others as spoken "
       "forms\n"},
      {"<rdf:Description rdf:about=\"#mess\"><rdf:type "
       "rdf:resource=\"http://www.w3.org/2004/02/skos/core#Concept\"/>"
       "<s:prefLabel>Mess</s:prefLabel><s:broader rdf:resource=\"#tender\"/></rdf:Description>"
       "<s:Concept rdf:ID=\"tender\" s:prefLabel=\"Tender\"/>",
       "mess \"Mess\" <tender\ntender \"Tender\"\n"},
      {"<s:Concept rdf:about=\"tender\"><s:prefLabel>Tender</s:prefLabel><s:narrower><s:Concept "
       "rdf:about=\"mess\">"
       "<s:prefLabel>Mess</s:prefLabel></s:Concept></s:narrower></s:Concept>"
       "<s:ConceptScheme rdf:about=\"scheme\"><s:prefLabel>Places</s:prefLabel></s:ConceptScheme>",
       "tender \"Tender\"\nmess \"Mess\" <tender\n"},
      {"<s:Concept rdf:about=\"a\"><s:prefLabel>A</s:prefLabel><s:broader rdf:resource=\"b\"/><s:broader "
       "rdf:resource=\"c\"/></s:Concept>",
       "a \"A\" <b\n"
       "warning: l.rdf:3:1: a has 2 broader terms; b is taken (a term lies in one place of the hierarchy "
       "here)\n"
       "unresolved: l.rdf:3:1: a has the broader term b, which is not described (describe it, or take the "
       "link out)\n"},
      {"<s:Concept rdf:about=\"a\"/>", "error: l.rdf:3:1: the concept a has no prefLabel (give it one)\n"},
      {"<s:Concept><s:prefLabel>A</s:prefLabel></s:Concept>",
       "warning: l.rdf:3:1: a concept without address is left out (give it rdf:about)\n"
       "error: l.rdf:2:1: no skos:Concept is described (check that this is a SKOS list)\n"},
      {"<s:Concept rdf:about=\"x/a\" s:prefLabel=\"A\"/>\n<s:Concept rdf:about=\"y/a\" s:prefLabel=\"B\"/>",
       "a \"A\"\n"
       "error: l.rdf:4:1: the concepts http://example.org/list/x/a and http://example.org/list/y/a would "
       "both have the key a (the "
       "last part of an address is the key; give them different ones)\n"},
      {"", "error: l.rdf:2:1: no skos:Concept is described (check that this is a SKOS list)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.body);
    CHECK(dump(read_list(skos(row.body), "l.rdf", kPlaces)) == row.dump);
  }
}

TEST_CASE("hostile and broken XML is refused") {
  std::string deep;
  for (int i = 0; i < 100'000; ++i) deep += "<a>";
  std::string wide = "<a";
  for (int i = 0; i < 101; ++i) wide += " b" + std::to_string(i) + "=\"\"";
  struct Row {
    std::string text;
    const char* fault;
  };
  const Row rows[] = {
      {"<!DOCTYPE r [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><r>&x;</r>",
       "error: l.rdf: the XML declares entities of its own, which are not read (save it without them, every "
       "entity replaced by its "
       "text)\n"},
      {deep,
       "error: l.rdf:1:300000: the XML is not well formed: Start-end tags mismatch (mend it there or just "
       "before)\n"},
      {wide + "/>",
       "error: l.rdf:1:1: an element has more than 100 attributes (no such file comes from a list or "
       "register program)\n"},
      {"<r>\n<a></b></r>",
       "error: l.rdf:2:6: the XML is not well formed: Start-end tags mismatch (mend it there or just "
       "before)\n"},
      {"<r/><r/>", "error: l.rdf: the XML has more than one outermost element (put all in one)\n"},
      {"<list/>",
       "error: l.rdf:1:1: the outermost element is list, not rdf:RDF (a list in XML is SKOS in RDF/XML; "
       "other lists are read "
       "from CSV)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.fault);
    CHECK(faults(read_list(row.text, "l.rdf", kPlaces)) == row.fault);
  }
  std::string closed = deep;
  for (int i = 0; i < 100'000; ++i) closed += "</a>";
  CHECK(faults(read_list(closed, "l.rdf", kPlaces))
            .ends_with(
                "elements are nested deeper than 64 (no such file comes from a list or register program)\n"));
}
