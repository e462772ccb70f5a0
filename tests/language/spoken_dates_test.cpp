#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "language/date_settings.h"

using namespace date_testing;

namespace {

struct Row {
  int line = 0;
  std::string setting, text, expected;
};

std::vector<Row> table(const std::string& name) {
  std::ifstream file(std::string(WITNESSMARK_SOURCE_DIR) + "/tests/language/tables/" + name);
  REQUIRE(file.good());
  std::vector<Row> rows;
  std::string line;
  for (int number = 1; std::getline(file, line); ++number) {
    if (line.empty() || line[0] == '#') continue;
    Row row;
    row.line = number;
    std::istringstream cells(line);
    std::getline(cells, row.setting, '\t');
    std::getline(cells, row.text, '\t');
    std::getline(cells, row.expected, '\t');
    rows.push_back(row);
  }
  return rows;
}

}  // namespace

TEST_CASE("Spoken dates have exactly the values the table gives") {
  const auto lexicon = english();
  const auto rows = table("spoken-dates.tsv");
  CHECK(rows.size() >= 300);
  for (const auto& row : rows) {
    CAPTURE(row.line);
    const auto reading = read_dates(row.text, lexicon, setting(row.setting));
    for (const auto& e : reading.expressions)  // The period is always the value's.
      if (e.edtf) CHECK(e.period == to_period(*e.edtf, setting(row.setting).policy));
    const auto found = in_short(reading);
    CHECK(row.text + " => " + (found.empty() ? "-" : found) == row.text + " => " + row.expected);
  }
}

TEST_CASE("Traps give no date") {
  const auto lexicon = english();
  const auto rows = table("date-traps.tsv");
  CHECK(rows.size() >= 50);
  for (const auto& row : rows) {
    CAPTURE(row.line);
    CHECK(row.text + " => " + in_short(read_dates(row.text, lexicon, setting(row.setting))) ==
          row.text + " => ");
  }
}

TEST_CASE("Spoken dates in capitals, without capitals and with typographic signs read alike") {
  const auto lexicon = english();
  const auto values = [&](const std::string& text) {
    std::string all;
    for (const auto& e : read_dates(text, lexicon, setting("tender")).expressions) all += e.timex3 + " ";
    return all;
  };
  CHECK(values("late sixty-two or early sixty-three") == values("LATE SIXTY-TWO OR EARLY SIXTY-THREE"));
  CHECK(values("on the fourth of october nineteen fifty six") == "1956-10-04 ");
  CHECK(values("in '57") == values("in \xE2\x80\x99"
                                   "57"));
  CHECK(values("from 1957-1960") == values("from 1957\xE2\x80\x93"
                                           "1960"));
  CHECK(values("New Year's Day 1958") == values("New Year\xE2\x80\x99s Day 1958"));
}
