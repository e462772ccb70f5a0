#include "witnessmark/store/search.h"

#include <doctest/doctest.h>

#include "store/sample_site.h"

using namespace witnessmark;
using namespace witnessmark::sample;

TEST_CASE(
    "words are found whatever their case, accents, marks and order, and nothing typed is a wrong query") {
  const SiteFile site = filled_site();
  struct Row {
    const char* text;
    const char* turns;
  };
  for (const Row& row : {Row{"crane", "0 "},
                         Row{"CRANE foredeck", "0 "},
                         Row{"foredeck crane", "0 "},
                         Row{"\"foredeck crane\"", ""},
                         Row{"\"on the foredeck\"", "0 "},
                         Row{"cran*", "0 "},
                         Row{"cran", ""},
                         Row{"lamp", "1 2 "},
                         Row{"cafe skagen's", "3 "},
                         Row{"CAF\u00c9", "3 "},
                         Row{"sixty-two", "0 "},
                         Row{"lamp AND crane", ""},
                         Row{"lamp NOT brass", ""},
                         Row{"words:lamp", ""},
                         Row{"lamp) OR (crane", ""},
                         Row{"NEAR(lamp, brass)", ""},
                         Row{"lamp\"", "1 2 "},
                         Row{"\"\"\"", ""},
                         Row{"*", ""},
                         Row{"^ - + ; '", ""},
                         Row{"", ""},
                         Row{"lamp'; DROP TABLE claims; --", ""}}) {
    CAPTURE(row.text);
    std::string turns;
    for (const SearchHit& hit : search_talk(site, {row.text})) turns += std::to_string(hit.utterance) + " ";
    CHECK(turns == row.turns);
  }
}

TEST_CASE("hits are paged, narrowed to an interview, and say where they stand") {
  const SiteFile site = filled_site();
  const auto first = search_talk(site, {.text = "lamp", .limit = 1});
  REQUIRE(first.size() == 1);
  CHECK(first[0].interview == "aske-1");
  CHECK(first[0].speaker == "OB");
  CHECK(first[0].range == range_of(kTalk, "And the lamp?"));
  CHECK(first[0].time->begin.value == 10000);
  const auto second = search_talk(site, {.text = "lamp", .after = first[0].number, .limit = 5});
  REQUIRE(second.size() == 1);
  CHECK(second[0].utterance == 2);
  CHECK(search_talk(site, {.text = "lamp", .interview = "aske-2"}).empty());
}
