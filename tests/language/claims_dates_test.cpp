// When a claim holds: services that came twice, leaving, dates said in two steps, and values that every
// reader of EDTF takes.
#include <doctest/doctest.h>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

/// A keeper's daughter, born in 1930, who served twice; her services stand in the list as given.
struct Keeper {
  TermFinder places{list_of_names(AuthorityList::Kind::places, {"oil store", "lamp room"}), english()};
  TermFinder equipment{list_of_names(AuthorityList::Kind::equipment, {"lamp", "winch", "fog horn"}),
                       english()};
  Interview interview;
  std::vector<Person> persons{1};
  std::vector<NamedEvent> events;
  std::vector<Speaker> speakers{{"i-1", "Q", "", SpeakerRole::interviewer},
                                {"i-1", "A", "ann", SpeakerRole::narrator}};

  explicit Keeper(const std::vector<std::string>& services) {
    interview.key = "i-1";
    interview.narrators = {"ann"};
    interview.date.value = parse_edtf("1990-05-04").value();
    Person& person = persons.front();
    person.key = "ann";
    person.name = "Ann Corrie";
    person.birth.value = parse_edtf("1930").value();
    for (const std::string& when : services) {
      ServicePeriod period;
      period.person = "ann";
      period.when.value = parse_edtf(when).value();
      person.service.push_back(period);
    }
  }

  std::vector<Claim> read(const std::string& text, bool by_weights = false) const {
    ReadingContext context;
    context.language = &english();
    context.places = &places;
    context.equipment = &equipment;
    context.interview = &interview;
    context.persons = persons;
    context.events = events;
    context.speakers = speakers;
    context.by_weights = by_weights;
    const Transcript transcript = transcript_of(text);
    return read_claims(context, transcript, split_sentences(transcript, english().abbreviations())).claims;
  }

  /// "statement when" of each claim.
  std::string dates(const std::string& text) const {
    std::string line;
    for (const Claim& claim : read(text)) {
      line += (line.empty() ? "" : "; ") + std::string(to_string(claim.statement)) + " " +
              (claim.when.dated.value ? to_string(*claim.when.dated.value) : "-");
    }
    return line;
  }
};

}  // namespace

TEST_CASE("of two services the first coming is meant, unless talk has reached the second") {
  const Keeper keeper({"1948/1955", "1960/1971"});
  CHECK(keeper.dates("The lamp was in the oil store when I came.") == "present 1948");
  CHECK(keeper.dates("The lamp was in the oil store when I started.") == "present 1948");
  CHECK(keeper.dates("They fitted the winch in 1962. The lamp was in the oil store when I came.") ==
        "begins 1962; present 1960");
  CHECK(keeper.dates("The winch was taken off before my time.") == "ends [..1948]");
  CHECK(keeper.dates("They took off the winch in 1899, before my time.") == "ends 1899");
  CHECK(keeper.dates("They took the fog horn out when I retired.") == "ends 1971");
  // Who tells of the first service has the second before him.
  CHECK(keeper.dates("They fitted the winch in 1950. The lamp was in the oil store when I left.") ==
        "begins 1950; present 1971");
}

TEST_CASE("a time of its own keeps the date of the talk before away") {
  const Keeper keeper({});
  CHECK(keeper.dates("They fitted the winch in 1950. The fog horn came after the war.") ==
        "begins 1950; begins [1945..]");
  CHECK(keeper.dates("They fitted the winch in 1950. The fog horn came with it.") == "begins 1950");
}

TEST_CASE("the day talk is of stays when only its month or year is said") {
  Keeper keeper({});
  NamedEvent fire;
  fire.key = "fire";
  fire.name = "The fire";
  fire.spoken = {"the fire"};
  fire.when.value = parse_edtf("1947-03-12").value();
  keeper.events = {fire};
  CHECK(keeper.dates("The winch came in with the fire.") == "begins 1947-03-12");
  CHECK(keeper.dates("Q: Tell me about the fire. | A: It was March, a cold one. They took the winch out.") ==
        "ends 1947-03-12");
  CHECK(
      keeper.dates("Q: Tell me about the fire. | A: In 1950 it was all changed. They took the winch out.") ==
      "ends 1950");
}

TEST_CASE("the time of service is the same in whatever order the list has it") {
  const std::string said = "The lamp was in the oil store in my time.";
  CHECK(Keeper({"1948/1955", "1960/1971"}).dates(said) == "present 1948/1971");
  CHECK(Keeper({"1960/1971", "1948/1955"}).dates(said) == "present 1948/1971");
  CHECK(Keeper({"1948/1971", "1950/1955"}).dates(said) == "present 1948/1971");
  CHECK(Keeper({"1960/1971", "1948/1955"}).dates("The lamp was in the oil store when I came.") ==
        "present 1948");
}

TEST_CASE("leaving is the end of a stay, in the narrator's words or the interviewer's") {
  const Keeper keeper({"1948/1971"});
  CHECK(keeper.dates("Q: When did you leave the lamp room? | A: October of sixty-six.") ==
        "located ../1966-10");
  CHECK(keeper.dates("Q: When did you come to the lamp room? | A: October of sixty-six.") ==
        "located 1966-10");
}

TEST_CASE("a sentence that says only when narrows the date before it") {
  const Keeper keeper({"1948/1971"});
  const std::vector<Claim> claims =
      keeper.read("Q: When did you leave the lamp room? | A: Fifty-nine. It was the February.");
  REQUIRE(claims.size() == 1);
  CHECK(to_string(*claims[0].when.dated.value) == "../1959-02");
  CHECK(claims[0].when.dated.written == "Fifty-nine, February");
  CHECK(claims[0].quotes.front().length() == 32);
  CHECK(keeper.dates("Q: When did you leave the lamp room? | A: Fifty-nine. It was raining.") ==
        "located ../1959");
}

TEST_CASE("what is denied of a date is not claimed of it") {
  const Keeper keeper({});
  const auto first = [&](const std::string& text) {
    const std::vector<Claim> claims = keeper.read(text);
    return claims.empty() ? std::string()
                          : std::string(to_string(claims[0].statement)) + " " +
                                std::string(to_string(claims[0].polarity));
  };
  CHECK(first("The winch was not gone in 1950.") == "ends denied");
  CHECK(first("The winch was never gone.") == "ends denied");
  CHECK(first("The winch was not 1954.") == "begins denied");
  CHECK(first("The winch was gone in 1950.") == "ends affirmed");
}

TEST_CASE("a part said after a date has it, wherever the sentence stands") {
  const Keeper keeper({});
  const auto last = [&](const std::string& text) {
    const std::vector<Claim> claims = keeper.read(text);
    return claims.empty() || !claims.back().when.dated.value ? std::string()
                                                             : to_string(*claims.back().when.dated.value);
  };
  CHECK(last("In 1937 the winch had a brass handle.") == "1937");
  CHECK(last("It was cold. In 1937 the winch had a brass handle.") == "1937");
}

TEST_CASE("every date of a claim is EDTF, whatever is done to it") {
  const Keeper keeper({"1948/1971"});
  std::size_t dated = 0;
  for (const char* date :
       {"in the fifties", "in the late fifties", "in the seventeenth century", "in 1950", "about 1950",
        "in March", "in March 1950", "on the third of March 1950",
        "at ten in the morning on the third of March 1950", "in the winter of 1950", "at Christmas",
        "in 1950 or 1951", "between 1950 and 1953", "by 1950", "before 1950", "after the fifties",
        "one day in March 1950", "when I was nineteen", "when I left"}) {
    for (const char* frame :
         {"The winch was gone @.", "By then, @, the lamp was in the oil store.",
          "The lamp stood in the oil store until @.", "I left the lamp room @.",
          "The fog horn came @, or was it the year after?", "Since @ the lamp was in the oil store.",
          "The winch was there from @ on.", "Q: When did you leave the lamp room? | A: It was @."}) {
      std::string text = frame;
      text.replace(text.find('@'), 1, date);
      for (const Claim& claim : keeper.read(text)) {
        if (!claim.when.dated.value) continue;
        ++dated;
        CAPTURE(text);
        const std::string written = to_string(*claim.when.dated.value);
        CAPTURE(written);
        const auto again = parse_edtf(written);
        REQUIRE(again);
        CHECK(to_string(*again) == written);
      }
    }
  }
  CHECK(dated > 100);
}

TEST_CASE("typographic apostrophes propose what straight ones do") {
  const Keeper keeper({"1948/1971"});
  std::string straight =
      "I'd the lamp in the oil store and it wasn't any bigger than that. They'd painted the winch green, "
      "hadn't "
      "they. It's gone now, the fog horn, they couldn't keep it. We've the old one's handle, and it didn't "
      "fit.";
  std::string curly = straight;
  for (std::size_t at = 0; (at = curly.find('\'', at)) != std::string::npos;) curly.replace(at, 1, "\u2019");
  const std::vector<Claim> a = keeper.read(straight, true), b = keeper.read(curly, true);
  REQUIRE(a.size() == b.size());
  CHECK(!a.empty());
  for (std::size_t i = 0; i < a.size(); ++i) {
    CHECK(a[i].statement == b[i].statement);
    CHECK(a[i].subject == b[i].subject);
    CHECK(a[i].quotes == b[i].quotes);
    CHECK(a[i].rank == b[i].rank);
  }
}

TEST_CASE("what date of the talk before holds for what is said next") {
  const Keeper keeper({"1948/1971"});
  // Of lives: nothing else.
  CHECK(keeper.dates("They fitted the winch in 1950. My wife died in sixty-three. The lamp was in the oil "
                     "store.") == "begins 1950; present 1950");
  CHECK(keeper.dates(
            "They fitted the winch in 1950. He joined in fifty-five. The lamp was in the oil store.") ==
        "begins 1950; present 1950");
  CHECK(keeper.dates(
            "They fitted the winch in 1950. He took the lamp out in fifty-five. The fog horn was in the "
            "oil store.") == "begins 1950; ends 1955; present 1955");
  // The age of a thing.
  CHECK(keeper.dates("They fitted the winch in 1950. The book was there, from 1862. The lamp was in the oil "
                     "store.") == "begins 1950; present 1950");
  // Up to it, where it was so before.
  CHECK(keeper.dates("They fitted the winch in 1950. There used to be a lamp in the oil store.") ==
        "begins 1950; present ../1950");
  CHECK(keeper.dates("They fitted the winch in 1950. A lamp had been in the oil store.") ==
        "begins 1950; present ../1950");
  CHECK(keeper.dates("When I came the winch was there. We used to keep the lamp in the oil store.") ==
        "present 1948; present 1948");
  CHECK(keeper.dates(
            "They fitted the winch in 1950. The lamp was where the fog horn had been, in the oil store.") ==
        "begins 1950; present 1950");
  // The war dates what is said to be in it.
  CHECK(keeper.dates("They fitted the winch in 1950. The fog horn came in the war. The lamp was in the oil "
                     "store.") == "begins 1950; begins 1939/1945; present 1950");
}

TEST_CASE("a date behind another verb is of that verb") {
  const Keeper keeper({"1948/1971"});
  CHECK(keeper.dates(
            "Amos said there'd been a lamp in the oil store when he came, and he came in 1909, and it went "
            "before the war.") == "present 1909; ends [..1939]");
  CHECK(keeper.dates("The winch came in 1899, and the lamp was taken out before 1914.") ==
        "begins 1899; ends [..1913]");
}

TEST_CASE("a war with days of its own at the site is the one meant there") {
  Keeper keeper({"1935/1960"});
  CHECK(keeper.dates("They took the winch off after the war.") == "ends [1945..]");
  NamedEvent war;
  war.key = "war";
  war.name = "the war";
  war.when.value = parse_edtf("1941-12-08/1945-09-02").value();
  keeper.events = {war};
  CHECK(keeper.dates("They took the winch off after the war.") == "ends [1945-09-02..]");
}
