#include <doctest/doctest.h>

#include <set>

#include "memory_files.h"
#include "read/tables/column_description.h"
#include "read/tables/table.h"
#include "witnessmark/base/embedded_schema.h"
#include "witnessmark/read/interview_files.h"
#include "witnessmark/read/list_files.h"
#include "witnessmark/read/register_files.h"

using namespace witnessmark;

TEST_CASE("every description of a table can be read and is complete") {
  int tables = 0;
  for (const EmbeddedSchema& schema : embedded_schemas()) {
    if (!schema.path.starts_with("csv/")) continue;
    const std::string name(schema.path.substr(4, schema.path.size() - 8));
    CAPTURE(name);
    const auto columns = column_descriptions(name);
    CHECK(columns.front().required);
    std::set<std::string> names;
    for (const ColumnDescription& column : columns) {
      CAPTURE(column.name);
      CHECK(names.insert(column.name).second);
      CHECK(!column.meaning.empty());
      CHECK((column.kind == ColumnDescription::Kind::choice) == !column.values.empty());
    }
    ++tables;
  }
  CHECK(tables == 16);
}

TEST_CASE("the sites that come with the program are read without a fault") {
  const SystemFileReader files;
  for (const char* name : {"/corpus-demo", "/tests/second-site"}) {
    const std::filesystem::path folder = std::string(WITNESSMARK_SOURCE_DIR) + name;
    if (!files.exists(folder / "entries.csv")) continue;
    CAPTURE(name);
    const auto places =
        read_list(*files.read(folder / "places.csv"), "places.csv", AuthorityList::Kind::places);
    const auto equipment =
        read_list(*files.read(folder / "equipment.csv"), "equipment.csv", AuthorityList::Kind::equipment);
    CHECK(places.ok);
    CHECK(equipment.ok);
    const AuthorityLists lists{{AuthorityList::Kind::places, places.terms},
                               {AuthorityList::Kind::equipment, equipment.terms}};
    const auto interviews = read_interview_files(files, folder / "interviews.csv");
    const auto evidence = read_register_files(files, folder / "entries.csv", &lists);
    CHECK(interviews.ok);
    CHECK(evidence.ok);
    // Every key used by one file is defined by another of the site.
    std::set<std::pair<KeyKind, std::string>> known;
    for (const auto& each : interviews.file.interviews) known.insert({KeyKind::interview, each.key});
    for (const auto& each : interviews.file.persons) known.insert({KeyKind::person, each.key});
    for (const auto& each : evidence.evidence.sources) known.insert({KeyKind::source, each.key});
    for (const auto& each : places.terms) known.insert({KeyKind::place, each.key});
    for (const auto* reading : {&interviews.unresolved, &evidence.unresolved, &equipment.unresolved}) {
      for (const UnresolvedKey& open : *reading) {
        CAPTURE(to_string(open.what));
        bool found = false;
        for (const KeyKind kind : open.may_be) found |= known.contains({kind, open.key});
        CHECK(found);
      }
    }
  }
}

TEST_CASE("spreadsheet cells are named as spreadsheets name them") {
  CHECK(sheet_cell(0, 1) == "A1");
  CHECK(sheet_cell(25, 7) == "Z7");
  CHECK(sheet_cell(26, 7) == "AA7");
  CHECK(sheet_cell(701, 10) == "ZZ10");
  CHECK(sheet_cell(702, 10) == "AAA10");
}
