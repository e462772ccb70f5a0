#include "witnessmark/base/display_width.h"

#include <doctest/doctest.h>

using namespace witnessmark;

// Widths by Unicode Standard Annex #11 (East Asian Width); clusters by Annex #29.
TEST_CASE("columns follow the Unicode tables") {
  struct Row {
    const char* text;
    int columns;
  };
  const Row rows[] = {
      {"", 0},
      {"lamp", 4},
      {"Brännhöjd", 9},
      {"e\u0301", 1},                // e with a combining acute accent
      {"\u706F\u53F0", 4},           // wide ideographs
      {"\uFF21", 2},                 // fullwidth A
      {"\uFF71", 1},                 // halfwidth katakana
      {"\u05D0\u05D1", 2},           // Hebrew letters
      {"\u05D0\u05B8", 1},           // with a vowel point
      {"\u1112\u1161\u11AB", 2},     // one Hangul syllable in three parts
      {"a\u200Db", 2},               // zero width joiner
      {"\u2026", 1},
      {"\U0001F44D", 2},
      {"\u2764\uFE0F", 2},           // picture form asked for
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(display_width(row.text) == row.columns);
  }
}

TEST_CASE("a text is cut between characters and never wider than asked") {
  CHECK(fit_columns("lamp", 2) == "la");
  CHECK(fit_columns("\u706F\u53F0", 3) == "\u706F");
  CHECK(fit_columns("e\u0301a", 1) == "e\u0301");
  CHECK(pad_columns("lamp", 6) == "lamp  ");
  CHECK(pad_columns("lamp room", 6) == "lamp …");
  CHECK(pad_columns("\u706F\u53F0\u706F", 4) == "\u706F… ");
  CHECK(pad_columns("lamp", 0) == "");
  const char* texts[] = {"lamp room", "\u706F\u53F0\u706F\u53F0", "e\u0301e\u0301e\u0301", "\u05D0\u05B8 crane"};
  for (const char* text : texts)
    for (int columns = 1; columns < 12; ++columns) CHECK(display_width(pad_columns(text, columns)) == columns);
}
