#include <doctest/doctest.h>

#include "language/date_settings.h"
#include "witnessmark/base/code_point_index.h"

using namespace date_testing;

namespace {

const char* kTalk =
    "I came aboard in nineteen fifty-one, the third of September. That winter we lay at Ostrey \xE2\x80\x94 "
    "two months, nearly. In "
    "fifty-five, the 22nd of January, the lightship broke adrift; the next day we found her. R\xC3\xA6"
    "dhusvik, Christmas 1957. ";

}  // namespace

TEST_CASE("Ranges are code points of the text, in order and apart") {
  const auto lexicon = english();
  const std::string text = kTalk;
  const auto reading = read_dates(text, lexicon, setting("tender"));
  REQUIRE(reading.expressions.size() >= 7);
  const CodePointIndex index(text);
  CodePoint last{0};
  for (const auto& e : reading.expressions) {
    CHECK(std::string(index.slice(e.range)) == e.text);
    CHECK(e.range.begin >= last);
    CHECK(e.range.end > e.range.begin);
    last = e.range.end;
  }
}

TEST_CASE("A line that ends within a year's words does not end the year; an empty line does") {
  const auto lexicon = english();
  const auto values = [&](const char* text) {
    std::string line;
    for (const auto& e : read_dates(text, lexicon, setting("tender")).expressions) line += e.timex3 + " ";
    return line;
  };
  CHECK(values("So that was June, nineteen\nthirty-seven.") == "1937-06 ");
  CHECK(values("We got her in March nineteen\ntwelve.") == "1912-03 ");
  CHECK(values("It was nineteen fifty\nfour.") == "1954 ");
  CHECK(values("The men were nineteen\n\nThirty-seven came.") == "");
}

TEST_CASE("Reading in pieces gives what reading at once gives") {
  const auto lexicon = english();
  const std::string first = "In 1957 we docked. ", second = "That summer it rained. ",
                    third = "Two years later she was sold.";
  auto talk = setting("tender");
  std::string pieces;
  for (const auto& part : {first, second, third}) {
    const auto reading = read_dates(part, lexicon, talk);
    for (const auto& e : reading.expressions) pieces += dump(e) + "\n";
    talk = reading.after;
  }
  std::string whole;
  for (const auto& e : read_dates(first + second + third, lexicon, setting("tender")).expressions)
    whole += dump(e) + "\n";
  CHECK(pieces == whole);
}

TEST_CASE("What stands before and after a long text does not change what is read") {
  // The token window moves over the text: expressions at every offset from its edge must come out whole.
  const auto lexicon = english();
  for (int words = 0; words < 2200; words += 37) {
    std::string text;
    for (int i = 0; i < words; ++i) text += "rope ";
    text += "It was late in 62 or early in 63, the fourth of October 1956 at the latest.";
    const auto reading = read_dates(text, lexicon, setting("tender"));
    CAPTURE(words);
    REQUIRE(reading.expressions.size() == 2);
    CHECK(reading.expressions[0].text == "late in 62 or early in 63");
    CHECK(reading.expressions[1].timex3 == "1956-10-04");
  }
}

TEST_CASE("A line of two megabytes is read to its end") {
  const auto lexicon = english();
  std::string text;
  while (text.size() < 2'000'000) text += "we lay there in 1957 and the crane was new ";
  const auto reading = read_dates(text, lexicon, setting("tender"));
  CHECK(reading.expressions.size() == text.size() / 43);
}

TEST_CASE("No value depends on anything but the arguments: nothing known, no year given") {
  const auto lexicon = english();
  for (const char* text :
       {"last year", "two years ago", "in August", "on the 7th of August", "Christmas", "today",
        "when I was nineteen", "my second year aboard", "that spring", "the following year"}) {
    CAPTURE(text);
    for (const auto& e : read_dates(text, lexicon, setting("fresh")).expressions) {
      CHECK_FALSE(e.edtf.has_value());
      CHECK(e.timex3.find("19") != 0);
      CHECK(e.timex3.find("20") != 0);
    }
  }
}

TEST_CASE("The state of talk is handed on") {
  const auto lexicon = english();
  const auto after = read_dates("In October 1957 we docked.", lexicon, setting("tender")).after;
  CHECK(after.reference == edtf("1957-10"));
  CHECK(after.reference_year == 1957);
  CHECK(after.decade == 1950);
  CHECK(after.speech_time == edtf("1998-06-15"));
}

TEST_CASE("A faulty lexicon names file, line and column") {
  struct Memory final : FileReader {
    std::string words = "class,word,value,note\nmonth,january,1,\n", days = "name,rule,note\n";
    Result<std::string> read(const std::filesystem::path& path) const override {
      if (path.filename() == "date-words.csv") return words;
      if (path.filename() == "named-days.csv") return days;
      return Error{path.string(), 0, 0, "missing", ""};
    }
    bool exists(const std::filesystem::path& path) const override {
      return path.filename() != "named-times.csv";
    }
  } files;
  CHECK(DateLexicon::load(files, "en").ok());
  files.words = "class,word,value,note\nmonth,january,13,\n";
  CHECK(to_string(DateLexicon::load(files, "en").error()).find("date-words.csv:2:15") != std::string::npos);
  files.words = "class,word,value,note\nmonht,january,1,\n";
  CHECK(DateLexicon::load(files, "en").error().line == 2);
  files.words = "class,word,value,note\n";
  files.days = "name,rule,note\nregatta,5 sunday of 6,\n";
  CHECK(DateLexicon::load(files, "en").error().message.find("5 sunday of 6") != std::string::npos);
}

TEST_CASE("A local feast and a nickname of a year are read once they are in the lists") {
  struct Extended final : FileReader {
    SystemFileReader real;
    Result<std::string> read(const std::filesystem::path& path) const override {
      auto bytes = real.read(path);
      if (!bytes) return bytes;
      if (path.filename() == "named-days.csv")
        return bytes.value() + "blessing of the buoys,1 sunday of 6,\n\xC3\x85sgard's night,02-13,\n";
      if (path.filename() == "named-times.csv") return bytes.value() + "the year of the big ice,1963,\n";
      return bytes;
    }
    bool exists(const std::filesystem::path& path) const override { return real.exists(path); }
  } files;
  const auto lexicon =
      DateLexicon::load(files, std::string(WITNESSMARK_SOURCE_DIR) + "/shared/language/en").value();
  CHECK(in_short(read_dates("at the Blessing of the Buoys 1957", lexicon, setting("tender"))) ==
        "Blessing of the Buoys 1957 | DATE 1957-06-02 | 1957-06-02");
  CHECK(in_short(read_dates("\xC3\x85sgard's Night 1957", lexicon, setting("tender"))) ==
        "\xC3\x85sgard's Night 1957 | DATE 1957-02-13 | 1957-02-13");
  CHECK(in_short(read_dates("that was the year of the big ice", lexicon, setting("tender"))) ==
        "the year of the big ice | DATE 1963 | 1963");
}
