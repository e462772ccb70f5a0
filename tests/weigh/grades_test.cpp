#include "witnessmark/weigh/grades.h"

#include <doctest/doctest.h>

using namespace witnessmark;

namespace {

const std::string kHeader =
    "grade,groups_for,kinds_for,groups_against,kinds_against,second_hand_for,second_hand_against,intentions_"
    "for,meaning\n";

std::string fault(const std::string& rows) {
  const auto table = parse_grade_table(rows, "grades.csv");
  return table ? "none" : to_string(table.error());
}

}  // namespace

TEST_CASE("the first rule whose numbers fit gives the grade, in the institution's own words") {
  const auto table = parse_grade_table(
      kHeader + "firm,3+,2+,0,,,,,three at least\nweak,1..2,,,,,,,one or two\nnothing,,,,,,,,\n", "own.csv");
  REQUIRE(table);
  CHECK(table->grade({3, 2, 0, 0, 0, 0, 0}).grade == "firm");
  CHECK(table->grade({3, 2, 1, 1, 0, 0, 0}).grade == "nothing");
  CHECK(table->grade({2, 2, 1, 1, 0, 0, 0}).grade == "weak");
  CHECK(table->grade({0, 0, 0, 0, 5, 0, 0}).grade == "nothing");
  CHECK(table->grade({2, 2, 1, 1, 0, 0, 0}).meaning == "one or two");
}

TEST_CASE("a table that cannot be used says where and why") {
  CHECK(fault(kHeader + "firm,two,,,,,,,\nnothing,,,,,,,,\n") ==
        "grades.csv:2:6: \"two\" is no number of groups or kinds (write 2 for just so many, 2+ for at least, "
        "0..1 for a range, "
        "or leave it empty)");
  CHECK(fault(kHeader + "firm,2..1,,,,,,,\nnothing,,,,,,,,\n")
            .starts_with("grades.csv:2:6: \"2..1\" is no number"));
  CHECK(fault(kHeader + "firm,2+,,,,,,,\n") ==
        "grades.csv:2:1: the last rule does not fit everything (end with a grade without conditions, such as "
        "\"unknown\")");
  CHECK(fault(kHeader) ==
        "grades.csv:1:1: the last rule does not fit everything (end with a grade without conditions, such as "
        "\"unknown\")");
  CHECK(fault("grade,groups\nx,1\n") ==
        "grades.csv:1:7: \"groups\" is no column of a grade table, or stands there twice (see "
        "shared/README.md for the columns)");
  CHECK(fault("grade,meaning\nx,\n") ==
        "grades.csv:1:1: the column groups_for is missing (add it; its cells may be empty)");
  CHECK(fault(kHeader + ",2+,,,,,,,\nnothing,,,,,,,,\n") ==
        "grades.csv:2:1: a rule without grade (name the grade)");
  CHECK(fault(kHeader + "firm,,,,,,,,,more\n") ==
        "grades.csv:2:14: a cell beyond the last column (remove it)");
}
