// The rules meant are those of RFC 4180, section 2.
#include "witnessmark/base/csv.h"

#include <doctest/doctest.h>

#include <random>

using namespace witnessmark;

namespace {

/// "[a|b][c|d]" with line breaks in cells as "~", or the error.
std::string dump(std::string_view text) {
  const auto file = parse_csv(text, "log.csv");
  if (!file) return to_string(file.error());
  std::string rows;
  for (const CsvRow& row : file->rows) {
    rows += '[';
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      if (i > 0) rows += '|';
      for (const char byte : row.cells[i].text) rows += byte == '\n' ? '~' : byte == '\r' ? '^' : byte;
    }
    rows += ']';
  }
  return rows;
}

struct Row {
  const char* text;
  const char* dump;
};

template <std::size_t count>
void check(const Row (&rows)[count]) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(dump(row.text) == row.dump);
  }
}

}  // namespace

TEST_CASE("rule 1: each record stands on a line of its own") {
  check({{"aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "[aaa|bbb|ccc][zzz|yyy|xxx]"},
         {"aaa,bbb,ccc\nzzz,yyy,xxx\n", "[aaa|bbb|ccc][zzz|yyy|xxx]"}});
}

TEST_CASE("rule 2: the last record may lack its line break") {
  check({{"aaa,bbb,ccc\r\nzzz,yyy,xxx", "[aaa|bbb|ccc][zzz|yyy|xxx]"}, {"aaa", "[aaa]"}, {"aaa,", "[aaa|]"}});
}

TEST_CASE("rule 3: a header line is a row like the others, and there must be one") {
  check({{"field_name,field_name,field_name\r\naaa,bbb,ccc\r\n",
          "[field_name|field_name|field_name][aaa|bbb|ccc]"},
         {"", "log.csv:1:1: the file holds no line (its first line must name the columns)"},
         {"\n\r\n", "log.csv:1:1: the file holds no line (its first line must name the columns)"}});
}

TEST_CASE("rule 4: fields are separated by commas and spaces belong to them") {
  check({{"aaa,bbb,ccc", "[aaa|bbb|ccc]"}, {" aaa , bbb", "[ aaa | bbb]"}, {"a,,c\n,x,\n", "[a||c][|x|]"}});
}

TEST_CASE("rule 5: fields may be quoted, and bare ones hold no quotation mark") {
  check({{"\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "[aaa|bbb|ccc][zzz|yyy|xxx]"},
         {"\"\",\"\"", "[|]"},
         {"h\na\"b,c",
          "log.csv:2:2: a quotation mark inside a cell that does not start with one (put the whole cell in "
          "quotation "
          "marks and double those inside it)"},
         {"h,i\n\u00e9\u00e9, \"b\"",
          "log.csv:2:5: a quotation mark inside a cell that does not start with one (put the whole cell in "
          "quotation "
          "marks and double those inside it)"}});
}

TEST_CASE("rule 6: line breaks, quotation marks and commas may stand in quoted fields") {
  check({{"\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "[aaa|b^~bb|ccc][zzz|yyy|xxx]"},
         {"\"a,b\",\"c;d\"", "[a,b|c;d]"},
         {"\"a\n\n\",b", "[a~~|b]"}});
}

TEST_CASE("rule 7: a quotation mark in a quoted field is doubled") {
  check({{"\"aaa\",\"b\"\"bb\",\"ccc\"", "[aaa|b\"bb|ccc]"},
         {"\"\"\"\"", "[\"]"},
         {"a,b\nx,\"never\nclosed",
          "log.csv:2:3: a quotation mark that opens here is never closed (close the cell with a quotation "
          "mark; one "
          "that belongs to the text is doubled)"},
         {"a,b\nx,\"y\ny\"z",
          "log.csv:3:3: text after the quotation mark that closes the cell (double a quotation mark that "
          "belongs to "
          "the text, or take out what follows it)"},
         {"\"a\" ,b",
          "log.csv:1:4: text after the quotation mark that closes the cell (double a quotation mark that "
          "belongs to "
          "the text, or take out what follows it)"}});
}

TEST_CASE("lines of nothing or of separators only are left out, and rows may differ in length") {
  check({{"\n\na,b\n\n,\nc\nd,e,f\n\n", "[a|b][c][d|e|f]"},
         {"a\n\"\"\nb", "[a][][b]"},
         {"a;b\n;;\n", "[a|b]"}});
}

TEST_CASE("the separator is the one the header line has more of outside quotation marks") {
  struct SeparatorRow {
    const char* text;
    char separator;
  };
  const SeparatorRow rows[] = {{"a,b\n", ','},
                               {"a;b\n", ';'},
                               {"a\n", ','},
                               {"a;b,c\n", ','},
                               {"a;b;c,d\n1,2,3,4\n", ';'},
                               {"\"a,b,c\";d\n", ';'},
                               {"\"a\n,,,\";d\n", ';'},
                               {"\n\na;b\n", ';'}};
  for (const SeparatorRow& row : rows) {
    CAPTURE(row.text);
    const auto file = parse_csv(row.text, "log.csv");
    REQUIRE(file);
    CHECK(file->separator == row.separator);
  }
}

TEST_CASE("every cell knows its line and column, counted in code points") {
  const auto file = parse_csv("id,\u00e9t\u00e9,\"two\nlines\",x\r\n\r\n\"q\",r\n", "log.csv");
  REQUIRE(file);
  std::string places;
  for (const CsvRow& row : file->rows) {
    places += "row " + std::to_string(row.line) + ":";
    for (const CsvCell& cell : row.cells) {
      places += ' ' + std::to_string(cell.line) + ',' + std::to_string(cell.column);
    }
    places += '\n';
  }
  CHECK(places == "row 1: 1,1 1,4 1,8 2,8\nrow 4: 4,1 4,5\n");
}

TEST_CASE("a cell is quoted when it holds separator, quotation mark or line break") {
  CHECK(csv_cell("oil store") == "oil store");
  CHECK(csv_cell("") == "");
  CHECK(csv_cell("port, aft") == "\"port, aft\"");
  CHECK(csv_cell("port; aft") == "port; aft");
  CHECK(csv_cell("port; aft", ';') == "\"port; aft\"");
  CHECK(csv_cell("port, aft", ';') == "port, aft");
  CHECK(csv_cell("the \"glory hole\"") == "\"the \"\"glory hole\"\"\"");
  CHECK(csv_cell("a\nb") == "\"a\nb\"");
  CHECK(csv_cell("a\r\nb") == "\"a\r\nb\"");
}

TEST_CASE("what is written as cells is read back the same") {
  std::mt19937 generator(5);
  const std::string_view kPieces[] = {"a", "\"", ",", ";", "\n", "\r\n", " ", "\u00e9", "\"\""};
  for (const char separator : {',', ';'}) {
    for (int round = 0; round < 500; ++round) {
      std::vector<std::string> cells = {"head"};
      const std::size_t count = 1 + generator() % 4;
      for (std::size_t i = 0; i < count; ++i) {
        std::string cell = "x";
        for (std::size_t pieces = generator() % 6; pieces > 0; --pieces)
          cell += kPieces[generator() % std::size(kPieces)];
        cells.push_back(cell);
      }
      std::string text = std::string("h") + separator + "i\n";
      for (std::size_t i = 0; i < cells.size(); ++i)
        text += (i > 0 ? std::string(1, separator) : "") + csv_cell(cells[i], separator);
      const auto file = parse_csv(text, "log.csv");
      REQUIRE(file);
      REQUIRE(file->rows.size() == 2);
      std::vector<std::string> read;
      for (const CsvCell& cell : file->rows[1].cells) read.push_back(cell.text);
      CHECK(read == cells);
    }
  }
}
