#include "witnessmark/language/timeml.h"

#include <doctest/doctest.h>

#include "language/date_settings.h"

using namespace date_testing;

TEST_CASE("TimeML is read and written byte for byte around the tags") {
  const std::string file =
      "<?xml version=\"1.0\"?>\n<TimeML><DOCID>x</DOCID>\n<TEXT>\nIn <TIMEX3 tid=\"t1\" type=\"DATE\" "
      "value=\"1957\">1957</TIMEX3> Tusk &amp; "
      "Sons &lt;ashore&gt; built\n\nher &#233;&#x2014;.\n</TEXT>\n</TimeML>\n";
  const auto document = parse_timeml(file, "x.tml").value();
  CHECK(document.text == "\nIn 1957 Tusk & Sons <ashore> built\n\nher \xC3\xA9\xE2\x80\x94.\n");
  const auto reading = read_dates(document.text, english(), setting("prose"));
  CHECK(document.before + with_timex3(document.text, reading.expressions) + document.after ==
        "<?xml version=\"1.0\"?>\n<TimeML><DOCID>x</DOCID>\n<TEXT>\nIn <TIMEX3 tid=\"t1\" type=\"DATE\" "
        "value=\"1957\">1957</TIMEX3> Tusk &amp; "
        "Sons &lt;ashore&gt; built\n\nher \xC3\xA9\xE2\x80\x94.\n</TEXT>\n</TimeML>\n");
}

TEST_CASE("A range is tagged end by end") {
  const std::string text = "from 1957 until 1963";
  const auto reading = read_dates(text, english(), setting("tender"));
  CHECK(with_timex3(text, reading.expressions) ==
        "from <TIMEX3 tid=\"t1\" type=\"DATE\" value=\"1957\">1957</TIMEX3> until <TIMEX3 tid=\"t2\" "
        "type=\"DATE\" value=\"1963\">1963</TIMEX3>");
}

TEST_CASE("Faulty TimeML says where and why") {
  CHECK(to_string(parse_timeml("<TimeML></TimeML>", "a.tml").error()) ==
        "a.tml:1:1: no TEXT element (give a TimeML file, or a plain text without --timeml)");
  CHECK(parse_timeml("<TEXT>abc", "a.tml").error().message == "the TEXT element is not closed");
  const auto error = parse_timeml("<TEXT>\nab &nbsp; c</TEXT>", "a.tml").error();
  CHECK(error.line == 2);
  CHECK(error.column == 4);
  CHECK(parse_timeml("<TEXT>a <b</TEXT>", "a.tml").error().line == 1);
}
