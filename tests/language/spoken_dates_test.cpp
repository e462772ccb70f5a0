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

namespace {

std::vector<std::string> split(const std::string& text, const std::string& sign) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  for (auto at = text.find(sign); at != std::string::npos; at = text.find(sign, begin)) {
    parts.push_back(text.substr(begin, at - begin));
    begin = at + sign.size();
  }
  parts.push_back(text.substr(begin));
  return parts;
}

/// 1946-24|1946/1947, 194X+END
bool has_value(const DateExpression& e, const std::string& forms) {
  for (const auto& form : split(forms, "|")) {
    const auto plus = form.find('+');
    const auto value = form.substr(0, plus);
    const bool mod = plus == std::string::npos || form.substr(plus + 1) == e.mod;
    if (mod && (e.timex3 == value || (e.edtf && to_string(*e.edtf) == value))) return true;
  }
  return false;
}

bool has_reading(const std::vector<DateExpression>& found, const std::string& reading) {
  const auto values = reading == "none" ? std::vector<std::string>() : split(reading, "; ");
  if (values.size() != found.size()) return false;
  for (std::size_t i = 0; i < values.size(); ++i)
    if (!has_value(found[i], values[i])) return false;
  return true;
}

}  // namespace

TEST_CASE(
    "Sentences written without knowledge of the program have the values expected of them, nineteen in "
    "twenty") {
  const auto lexicon = english();
  const auto rows = table("spoken-dates-independent.tsv");
  CHECK(rows.size() == 120);
  std::size_t right = 0;
  for (const auto& row : rows) {
    const auto reading = read_dates(row.text, lexicon, setting(row.setting));
    bool ok = false;
    for (const auto& expected : split(row.expected, "||")) ok |= has_reading(reading.expressions, expected);
    right += ok;
    if (!ok) MESSAGE(row.text << " => " << in_short(reading) << ", expected " << row.expected);
  }
  MESSAGE("independent sentences: " << right << " of " << rows.size());
  CHECK(right * 20 >= rows.size() * 19);
}

TEST_CASE("A talk read by one reader turn after turn is read as with the state handed on") {
  const auto lexicon = english();
  for (const char* who : {"tender", "mill", "late", "fresh", "prose"}) {
    DateReader reader(lexicon, setting(who));
    auto before = setting(who);
    std::vector<DateExpression> found;
    std::size_t expressions = 0;
    for (const auto& row : table("spoken-dates.tsv")) {
      CAPTURE(row.line);
      auto reading = read_dates(row.text, lexicon, before);
      reader.read(row.text, found);
      CHECK(found == reading.expressions);
      CHECK(reader.talk().reference == reading.after.reference);
      CHECK(reader.talk().day_talked_of == reading.after.day_talked_of);
      CHECK(reader.talk().reference_year == reading.after.reference_year);
      CHECK(reader.talk().decade == reading.after.decade);
      CHECK(reader.talk().told_coming == reading.after.told_coming);
      before = std::move(reading.after);
      expressions += found.size();
    }
    CHECK(expressions > 500);
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
