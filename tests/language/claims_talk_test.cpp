// What a sentence takes from the talk around it and what it leaves to it: limits of the date talk is of,
// corrections, things that only say where something stood. Common practice, no source, unless a row names
// one.
#include <doctest/doctest.h>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

const ClaimTable& lists() {
  static const ClaimTable table =
      lists_of({"winch", "stove", "boiler", "crane", "lamp"}, {"galley", "hold", "store", "mess room"});
  return table;
}

}  // namespace

TEST_CASE("before that and after that limit the date talk is of") {
  // ISO 8601-2:2019: "../1950" is open before, "1950/.." after; "[..1950]" is one date of those.
  check_rows(
      {
          {"The winch was painted green in 1950. Before that it was red.",
           "begins winch 1950 {colour: green}; attribute winch ../1950 {colour: red}"},
          {"They took the stove out in 1950. After that there was a boiler in the galley.",
           "ends stove 1950; present boiler@galley 1950/.."},
          {"The crane came in 1951. Until then we had a winch in the hold.",
           "begins crane 1951; present winch@hold ../1951 first-hand"},
          {"They took the stove out in 1950. After that they put a boiler in.",
           "ends stove 1950; begins boiler [1950..]"},
          {"The crane came in 1951. Before that they took the winch out.",
           "begins crane 1951; ends winch [..1951]"},
          // Of something, not of the date.
          {"The crane came in 1951. Before that winter the stove was in the galley.",
           "begins crane 1951; present stove@galley ../1951-11-30"},
      },
      lists());
}

TEST_CASE("a sentence that says nothing but when says it of the one before, more closely") {
  check_rows(
      {
          {"They took the old stove out of the galley in 1954. In the spring.", "ends stove@galley 1954-21"},
          {"They took the old stove out of the galley in 1954. In 1956.", "ends stove@galley 1954"},
          {"They took the old stove out of the galley in 1954. In the spring we painted.",
           "ends stove@galley 1954"},
      },
      lists());
}

TEST_CASE("a number said again takes the first back") {
  check_rows(
      {
          {"There were two lamps in the hold. No, I tell a lie, three.",
           "count lamp@hold n=2 withdrawn; count lamp@hold n=3"},
          {"There were two lamps in the hold. No, wait, three.",
           "count lamp@hold n=2 withdrawn; count lamp@hold n=3"},
          {"There were two lamps in the hold. I tell a lie.", "count lamp@hold n=2"},
          {"The winch came in 1950. No, I tell a lie, three.", "begins winch 1950"},
      },
      lists());
}

TEST_CASE("what only says where something stood is not what is spoken of") {
  check_rows(
      {
          {"The winch stood in the hold, where the crane had been. It was put in in 1950.",
           "present winch@hold; begins winch 1950"},
          {"Q: Was there a winch? | A: There was, in the hold, where the crane had been. It went in 1950.",
           "present winch led; present crane@hold; ends winch 1950"},
          {"The stove was in the galley. It was put in in 1950.", "present stove@galley; begins stove 1950"},
      },
      lists());
}

TEST_CASE("a verb said once is of all that follow with dates of their own") {
  check_rows(
      {
          {"The winch came in 1946 and the stove in 1948.", "begins winch 1946; begins stove 1948"},
          {"The winch came in 1946, the stove in 1948 and the crane in 1951.",
           "begins winch 1946; begins stove 1948; begins crane 1951"},
          {"They put the winch in in 1946 and the stove in 1948.", "begins winch 1946; begins stove 1948"},
          {"The winch came in 1946 and the stove was in the galley in 1948.",
           "begins winch 1946; present stove@galley 1948"},
      },
      lists());
}

TEST_CASE("a clause behind before or after has a subject of its own") {
  check_rows(
      {
          {"There was a boiler in the galley before the store was built.",
           "present boiler@galley; begins @store"},
          {"There was a boiler in the galley before it was taken out in 1950.",
           "present boiler@galley 1950; ends boiler@galley 1950"},
      },
      lists());
}

TEST_CASE("who says that he was not there is said not to have been") {
  check_rows(
      {
          {"I wasn't there in 1950.", "located  1950 first-hand denied"},
          {"I wasn't on watch, but the winch went in 1950.", "ends winch 1950; located  first-hand denied"},
          {"I wasn't there in 1950, I was in the hold.", "located @hold 1950 first-hand"},
          {"Q: Were you there? | A: I wasn't there, they told me the stove went in 1950.",
           "ends stove 1950 told; located  first-hand denied"},
      },
      lists());
}

TEST_CASE("a question for something of no list is of nothing that was spoken of") {
  check_rows(
      {
          {"Q: You said there was a winch. What colour was the lorry? | A: It was green.", ""},
          {"Q: You said there was a winch. What colour was it? | A: It was green.",
           "attribute winch {colour: green}"},
      },
      lists());
}

TEST_CASE("what never came back did not") {
  check_rows(
      {
          {"They never put the boiler back.", "begins boiler denied"},
          {"The boiler was put back in 1947.", "begins boiler 1947"},
          {"I put the lamps back.", "happened lamp {put} first-hand"},
          {"The winch didn't come till 1951.", "begins winch 1951"},
          {"They ordered the winch in 1949, but it didn't come till 1951.",
           "happened winch 1949 {ordered}; begins winch 1951"},
          {"It come in 1951, the winch.", "begins winch 1951"},
          {"It would come in 1951, the winch.", ""},
      },
      lists());
}

TEST_CASE("what is doubted of a question is denied") {
  check_rows(
      {
          {"Q: Did they take the winch out? | A: I don't think they did.", "ends winch hedged denied"},
          {"Q: Did they take the winch out? | A: I don't think they ever did.", "ends winch hedged denied"},
          {"Q: Was there a stove? | A: There was, later.", "present stove led"},
          {"Q: Was the stove in the galley? | A: I don't believe it was.", "absent stove@galley hedged"},
          {"Q: They didn't take the winch out? | A: I don't think they did.", "ends winch hedged denied led"},
      },
      lists());
}

TEST_CASE("no to how long is not no to whether") {
  check_rows(
      {
          {"Q: Was the stove there the whole time? | A: No.", ""},
          {"Q: Was the stove always in the galley? | A: No, it went in 1950.", "ends stove@galley 1950"},
          {"Q: Was the stove there? | A: No.", "absent stove"},
          {"Q: Were there two stoves? | A: There was never two.", "count stove n=2 denied"},
      },
      lists());
}

TEST_CASE("who thinks again takes back what he went along with") {
  check_rows(
      {
          {"Q: So they took out the stove? | A: Yep. Wait a minute now. No.", "ends stove led withdrawn"},
          {"Q: So they took out the stove? | A: Yep. They did. In 1950.", "ends stove led"},
      },
      lists());
}

TEST_CASE("no one is nobody, whatever the lists number") {
  ClaimTable numbered = lists();
  numbered.equipment.push_back("number one");
  check_rows(
      {
          {"We shouted and no one could hear.", ""},
          {"They took out number one in 1950.", "ends number one 1950"},
          {"They took out No. 1 in 1950.", "ends number one 1950"},
      },
      numbered);
}

TEST_CASE("a question for something else leaves the date behind that held before") {
  check_rows(
      {
          {"Q: You said the winch came in 1950. What about the stove? | A: It was in the galley.",
           "present stove@galley"},
          {"Q: You said the winch came in 1950. What colour was the winch? | A: It was green.",
           "attribute winch 1950 {colour: green}"},
      },
      lists());
}

TEST_CASE("what somebody would like is not what was") {
  check_rows(
      {
          {"Q: What would you put back? | A: I'd put the winch back.", ""},
          {"Q: What did you do then? | A: I'd put the winch back in the hold.",
           "begins winch@hold first-hand"},
      },
      lists());
}
