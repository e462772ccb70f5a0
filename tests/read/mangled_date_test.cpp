// What spreadsheets make of dates: common practice, no source. Day counts: 1 is 1900-01-01 with a 29 February
// 1900 that never was, so that from March 1900 on the count is days since 1899-12-30 (ECMA-376 Part
// 1, 18.17.4.1); 1904-01-01 is 0 in the other.
#include "read/tables/mangled_date.h"

#include <doctest/doctest.h>

#include <string>

#include "witnessmark/time/edtf.h"

using namespace witnessmark;

TEST_CASE("dates that a spreadsheet or habit has written are told with what to write") {
  struct Row {
    const char* cell;
    const char* advice;
  };
  const Row rows[] = {
      {"12/03/1958", "write 1958-03-12 or 1958-12-03, whichever the source says"},
      {"13/03/1958", "write 1958-03-13"},
      {"3/13/1958", "write 1958-03-13"},
      {"3.3.1958", "write 1958-03-03"},
      {"03-12-58",
       "write 1958-12-03 or 1958-03-12, whichever the source says (in the century it belongs to)"},
      {"1958/12/03", "write 1958-12-03"},
      {"12/03/1958 00:00", "write 1958-03-12 or 1958-12-03, whichever the source says"},
      {"1958-12-03 00:00:00", "write 1958-12-03"},
      {"3-Dec-58", "write 1958-12-03 (in the century it belongs to)"},
      {"Dec-58", "write 1958-12, or the day it stands for (in the century it belongs to)"},
      {"3 December 1958", "write 1958-12-03"},
      {"Dec 3, 1958", "write 1958-12-03"},
      {"December 1958", "write 1958-12"},
      {"Sept 1958", "write 1958-09"},
      {"1958.0", "write 1958"},
      {"03/1958", "write 1958-03"},
      {"1958-1960", "write 1958/1960"},
      {"21522",
       "as a spreadsheet's day count it is 1958-12-03, or 1962-12-04 in a file that counts from 1904; write "
       "the date the "
       "source gives, as 1958-12-03"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.cell);
    const auto mangled = mangled_date(row.cell);
    REQUIRE(mangled);
    CHECK(mangled->advice.substr(0, std::string(row.advice).size()) == row.advice);
    CHECK(!parse_edtf(row.cell).ok());
  }
}

TEST_CASE("other texts are left to the EDTF reader") {
  for (const char* cell : {"", "1958", "1958-12", "1958-12-03", "1958/1960", "1958-XX", "195X", "1958S2",
                           "Y17E7", "about 1958", "99/99/1958", "12/13/14/15", "Foo-58",
                           "1958-12-03T00:00:00", "[1958, 1960]", "5", "123456", "3-Smarch-58"}) {
    CAPTURE(cell);
    CHECK(!mangled_date(cell));
  }
}
