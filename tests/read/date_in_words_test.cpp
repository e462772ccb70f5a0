// Habits of dating in registers and catalogues: common practice, no source. What is advised is checked by the
// EDTF reader.
#include "read/tables/date_in_words.h"

#include <doctest/doctest.h>

#include "witnessmark/time/edtf.h"

using namespace witnessmark;

TEST_CASE("dates in words are told in EDTF") {
  struct Row {
    const char *cell, *edtf;
  };
  for (const Row& row : {Row{"spring 1957", "1957-21"},
                         Row{"in the Spring of 1957", "1957-21"},
                         Row{"1957 autumn", "1957-23"},
                         Row{"fall 1957", "1957-23"},
                         Row{"c. 1957", "1957~"},
                         Row{"c1957", "1957~"},
                         Row{"ca.1957", "1957~"},
                         Row{"about 1957", "1957~"},
                         Row{"about May 1957", "1957-05~"},
                         Row{"circa winter 1957", "1957-24~"},
                         Row{"probably 1957", "1957?"},
                         Row{"May 1957?", "1957-05?"},
                         Row{"c. 1957?", "1957%"},
                         Row{"195-", "195X"},
                         Row{"195?", "195X"},
                         Row{"19--", "19XX"},
                         Row{"the 1950s", "195X"},
                         Row{"c. 1950s", "195X~"},
                         Row{"1957-59", "1957/1959"},
                         Row{"1957\u201359", "1957/1959"},
                         Row{"1957 - 1959", "1957/1959"},
                         Row{"1957 to 1959", "1957/1959"},
                         Row{"from spring 1957 to autumn 1959", "1957-21/1959-23"},
                         Row{"between 1957 and 1959", "[1957..1959]"},
                         Row{"1957 or 1958", "[1957,1958]"},
                         Row{"either May 1957 or 1958", "[1957-05,1958]"},
                         Row{"before 1957", "[..1956]"},
                         Row{"after 1957", "[1958..]"},
                         Row{"by May 1957", "[..1957-05]"},
                         Row{"since 1957", "1957/.."},
                         Row{"until 1957", "../1957"}}) {
    CAPTURE(row.cell);
    CHECK(date_in_words(row.cell).value_or("nothing") == row.edtf);
    CHECK(parse_edtf(row.edtf));
    CHECK_FALSE(parse_edtf(row.cell));
  }
}

TEST_CASE("what is not surely meant is not guessed") {
  for (const char* cell : {"", "spring", "57", "1959-57", "1957 to", "before spring 1957", "after the war",
                           "early 1957", "1957 1958", "spring 1957 summer", "c.", "?", "-", "Foo 1957",
                           "1957 lamps", "5-", "12345", "1957ss", "195-6-7"}) {
    CAPTURE(cell);
    CHECK_FALSE(date_in_words(cell));
  }
}
