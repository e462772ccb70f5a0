// Every row of collected test cases of three EDTF libraries is decided as the specification decides. Where a
// library decides otherwise the row stands in tests/reference/edtf-differences.tsv with the clause that
// settles it; a row there that no longer differs is a fault too. The collection is looked for in the folder
// named by WITNESSMARK_DATASETS.
#include <doctest/doctest.h>

#include <cctype>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <set>
#include <tuple>
#include <vector>

#include "witnessmark/time/period.h"

using namespace witnessmark;

namespace {

using Row = std::vector<std::string>;
/// Source, expression, what (verdict, level or days), theirs, ours.
using Difference = std::tuple<std::string, std::string, std::string, std::string, std::string>;

std::vector<Row> read_rows(const std::string& path) {
  std::ifstream file(path);
  REQUIRE_MESSAGE(file.good(), path);
  std::vector<Row> rows;
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    if (line.empty()) continue;
    Row row(1);
    for (const char c : line) {
      if (c == '\t')
        row.emplace_back();
      else
        row.back() += c;
    }
    row.resize(std::max<std::size_t>(row.size(), 6));
    rows.push_back(std::move(row));
  }
  return rows;
}

/// No widening; the seasons are the quarters of the year, as one of the libraries has them, or those built
/// in.
DatePolicy plain_policy(bool quarters) {
  DatePolicy policy;
  if (quarters) policy.season_begins = {1, 4, 7, 10};
  return policy;
}

std::string days(const Edtf& value, const DatePolicy& policy) {
  const Period period = to_period(value, policy);
  std::string text = period.earliest() ? to_string(*period.earliest()) : "";
  text += "..";
  return text + (period.past_latest() ? to_string(*period.past_latest() - 1) : "");
}

/// "-001985-04-12T00:00:00.000Z" as "-1985-04-12", no limit as "", no value as "none".
std::string plain_day(std::string text) {
  if (text.find("inf") != std::string::npos || text.find("Inf") != std::string::npos) return "";
  if (text == "NaN" || text == "ERR") return "none";
  text = text.substr(0, text.find('T'));
  if (text.empty() || std::isdigit(static_cast<unsigned char>(text[0])) != 0) return text;
  const std::string sign = text[0] == '-' ? "-" : "";
  text.erase(0, 1);
  while (text.find('-') > 4 && text[0] == '0') text.erase(0, 1);
  return sign + text;
}

struct Source {
  const char* name;
  int first_day_column;  ///< 0: the source has no days.
  bool quarters;
};

constexpr Source kSources[] = {{"unt_edtf_validate", 0, false},
                               {"edtf_js_parser", 0, false},
                               {"python_edtf", 3, false},
                               {"edtf_js_reference_minmax", 4, true}};

void compare(const Source& source, const Row& row, std::set<Difference>& found) {
  const std::string& text = row[0];
  const auto value = parse_edtf(text);
  const std::string verdict = value ? "valid" : "invalid";
  const auto note = [&](const char* what, const std::string& theirs, const std::string& ours) {
    if (theirs != ours) found.emplace(source.name, text, what, theirs, ours);
  };
  note("verdict", row[1], verdict);
  if (!value || row[1] != "valid") return;
  if (!row[2].empty()) note("level", row[2], std::to_string(edtf_level(*value)));
  if (source.first_day_column == 0) return;
  const auto column = static_cast<std::size_t>(source.first_day_column);
  if (source.name == std::string("python_edtf") && row[column].empty()) return;
  note("days", plain_day(row[column]) + ".." + plain_day(row[column + 1]),
       days(*value, plain_policy(source.quarters)));
}

std::string in_words(const Difference& difference) {
  const auto& [source, text, what, theirs, ours] = difference;
  return source + " " + text + " " + what + ": theirs " + theirs + ", ours " + ours;
}

std::vector<Row> listed_rows() {
  return read_rows(WITNESSMARK_SOURCE_DIR "/tests/reference/edtf-differences.tsv");
}

}  // namespace

TEST_CASE("listed differences from EDTF libraries are decided as listed, each by a clause") {
  const auto rows = listed_rows();
  CHECK(rows.size() > 100);
  for (const Row& row : rows) {
    INFO(row[0], " ", row[1]);
    const auto value = parse_edtf(row[1]);
    if (row[2] == "verdict") {
      CHECK((value ? "valid" : "invalid") == row[4]);
    } else {
      REQUIRE(value.ok());
      if (row[2] == "level") CHECK(std::to_string(edtf_level(*value)) == row[4]);
      if (row[2] == "days") CHECK(days(*value, plain_policy(row[0] == "edtf_js_reference_minmax")) == row[4]);
    }
    const bool by_clause = row[5].rfind("Level ", 0) == 0 || row[5].rfind("Extended format", 0) == 0;
    CHECK(by_clause);
  }
}

TEST_CASE("every row of the collected EDTF cases is decided as the standard decides") {
  const char* folder = std::getenv("WITNESSMARK_DATASETS");
  if (folder == nullptr) {
    std::puts("skipped: no data sets (WITNESSMARK_DATASETS names no folder)");
    return;
  }
  std::set<Difference> found;
  std::size_t count = 0;
  for (const Source& source : kSources) {
    for (const Row& row : read_rows(std::string(folder) + "/edtf/" + source.name + ".tsv")) {
      compare(source, row, found);
      ++count;
    }
  }
  std::set<Difference> listed;
  for (const Row& row : listed_rows()) listed.emplace(row[0], row[1], row[2], row[3], row[4]);
  std::printf("%zu rows decided, %zu differences from libraries, all listed with their clause\n", count,
              found.size());
  for (const Difference& difference : found) {
    INFO(in_words(difference));
    CHECK(listed.contains(difference));
  }
  for (const Difference& difference : listed) {
    INFO("listed but not met: ", in_words(difference));
    CHECK(found.contains(difference));
  }
}
