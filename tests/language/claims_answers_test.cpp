// Questions with their answers: what an answer denies, what it says of a question put in the negative, which
// words of the question it goes along with. Common practice, no source, unless a row names one.
#include <doctest/doctest.h>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

const ClaimTable& lists() {
  static const ClaimTable table =
      lists_of({"stove", "winch", "steam hammer", "gas engine", "weighbridge", "kiln", "tram"},
               {"galley", "smithy", "hold", "adit", "Coldwick"});
  return table;
}

using Row = ShortRow;

template <std::size_t N>
void check(const Row (&rows)[N]) {
  check_rows(rows, lists());
}

}  // namespace

TEST_CASE("words that say nothing do not answer with the next sentence's words") {
  const Row rows[] = {
      {"Q: Was there a stove? | A: Well. No, we had a cold winter.", "absent stove first-hand"},
      {"Q: Was there a stove? | A: Well. We had a cold winter.", ""},
  };
  check(rows);
  const std::string text = "Q: Was there a stove? | A: Well. No, we had a cold winter.";
  const auto claims = claims_of(text, lists());
  REQUIRE(claims.size() == 1);
  const std::string reading = transcript_of(text).reading_text;
  const CodePointRange quote = claims[0].quotes[0];
  CHECK(reading.substr(static_cast<std::size_t>(quote.begin.value),
                       static_cast<std::size_t>(quote.length())) == "No, we had a cold winter.");
}

TEST_CASE("a number that is a name, a size or of people counts no things") {
  const Row rows[] = {
      {"Q: How many stoves were there? | A: In number two, four.", "count stove n=4"},
      {"Q: How many stoves were there? | A: Number two had four.", "count stove n=4"},
      {"Q: How many stoves were there? | A: Four of us looked after them.", ""},
      {"Q: How many stoves were there? | A: Four men looked after them.", ""},
      {"Q: How many stoves were there? | A: Four, four feet high.", "count stove n=4"},
      {"There were six, seven trams in the adit.", "count tram@adit n=6..7 hedged"},
  };
  check(rows);
}

TEST_CASE("a negative before the date, the place or the number rules it out") {
  const Row rows[] = {
      {"Q: Where was the stove? | A: Not in the galley.", "absent stove@galley"},
      {"Q: Where was the stove? | A: In the hold, not in the galley.",
       "absent stove@galley; present stove@hold"},
      {"Q: Where was the stove? | A: Not in the galley. In the hold.",
       "absent stove@galley; present stove@hold"},
      {"Q: When was it fitted, the stove? | A: Not in 1950.", "begins stove 1950 denied"},
      {"Q: When was the stove fitted? | A: Not in 1950, in 1951.",
       "begins stove 1950 denied; begins stove 1951"},
      {"Q: When was the stove fitted? | A: Not in 1950 but in 1951.",
       "begins stove 1950 denied; begins stove 1951"},
      {"Q: When was the stove fitted? | A: Not in 1950. 1951.",
       "begins stove 1950 denied; begins stove 1951"},
      {"Q: When was the stove fitted? | A: Never in 1950.", "begins stove 1950 denied"},
      {"Q: When was the stove fitted? | A: Not until 1950.", "begins stove 1950"},
      {"Q: When was the stove fitted? | A: Not fifty-three.", "begins stove 1953 denied"},
      {"Q: How many stoves were there? | A: Not four.", "count stove n=4 denied"},
      {"Q: How many stoves were there? | A: Four, not three.", "count stove n=4"},
      {"Q: How many stoves were there? | A: Not more than four.", "count stove n=4"},
      // Of somebody's leaving the date alone is denied: he left at another time.
      {"Q: When did you leave? | A: Not in 1950.", ""},
      {"Q: When did you leave? | A: Not fifty-three.", ""},
      {"Q: When did you leave? | A: Not in 1950, it was 1951.", "located  ../1951 first-hand"},
      {"Q: Where did you go? | A: Not to Coldwick.", "located @Coldwick first-hand denied"},
  };
  check(rows);
}

TEST_CASE("what makes words no statement, or denies them, does so in an answer too") {
  const Row rows[] = {
      {"Q: When was the stove fitted? | A: If only in 1950.", ""},
      {"Q: Where was the stove? | A: I wish in the galley.", ""},
      {"Q: When was the stove fitted? | A: I don't think in 1950.", "begins stove 1950 hedged denied"},
      {"Q: Where was the stove? | A: I don't think in the galley.", "absent stove@galley hedged"},
      {"Q: When was the stove fitted? | A: They told me in 1950.", "begins stove 1950 told"},
      {"Q: When was the stove fitted? | A: In 1950, I don't remember exactly.", "begins stove 1950 hedged"},
      {"Q: How many stoves were there, and where? | A: About thirty.", "count stove n=28..32 hedged"},
      // Of several ways of knowing the weightiest counts, wherever it stands.
      {"Q: Was the winch taken off? | A: Yes, they told me, and I saw it myself.",
       "ends winch first-hand led"},
  };
  check(rows);
  const auto claims = claims_of("Q: When was the stove fitted? | A: They can't have, not in 1950.", lists());
  REQUIRE(claims.size() == 1);
  const std::string& reason = claims[0].reason;
  REQUIRE(reason.find("can't have") != std::string::npos);
  CHECK(reason.find("can't have") == reason.rfind("can't have"));
}

TEST_CASE("yes and no answer the state, not the form of the question") {
  const Row rows[] = {
      {"Q: The stove wasn't in the galley, was it? | A: No, it wasn't.", "absent stove@galley led"},
      {"Q: The stove wasn't in the galley, was it? | A: No.", "absent stove@galley led"},
      {"Q: The stove wasn't in the galley, was it? | A: It wasn't.", "absent stove@galley led"},
      {"Q: The stove wasn't in the galley, was it? | A: Yes, it was.", "present stove@galley"},
      {"Q: The stove wasn't in the galley, was it? | A: It was.", "present stove@galley"},
      {"Q: There was no stove in the galley? | A: No, there was.", "present stove@galley"},
      {"Q: There was no stove in the galley? | A: That's right.", "absent stove@galley led"},
      {"Q: There was no stove in the galley? | A: I suppose not.", "absent stove@galley hedged led"},
      // A bare yes to that may say either; what follows may tell.
      {"Q: The stove wasn't in the galley? | A: Yes.", ""},
      {"Q: The stove wasn't in the galley? | A: Yes. It was.", "present stove@galley"},
      {"Q: They didn't take off the winch in 1962? | A: No.", "ends winch 1962 denied led"},
      // The date is the interviewer's all the same.
      {"Q: They didn't take off the winch in 1962? | A: They did.", "ends winch 1962 led"},
      {"Q: They never took off the winch, did they? | A: No, they didn't.", "ends winch denied led"},
      {"Q: I don't suppose there was a stove in the galley? | A: No.", "absent stove@galley led"},
      // Asked the other way about, yes is what is expected.
      {"Q: Wasn't the stove in the galley? | A: Yes.", "present stove@galley led"},
      {"Q: Wasn't the stove in the galley? | A: No.", "absent stove@galley"},
      {"Q: Wasn't the winch taken off in 1962? | A: Yes.", "ends winch 1962 led"},
      {"Q: Wasn't the winch taken off in 1962? | A: No.", "ends winch 1962 denied"},
      {"Q: Wasn't there a stove in the galley? | A: Yes.", "present stove@galley led"},
      {"Q: Was there not a stove in the galley? | A: There was.", "present stove@galley led"},
      {"Q: Didn't they take off the winch in 1962? | A: Yes.", "ends winch 1962 led"},
      {"Q: And when you came, wasn't the winch taken off? | A: Yes.", "ends winch led"},
      {"Q: You weren't in Coldwick in 1950? | A: No.", "located @Coldwick 1950 denied led"},
      {"Q: You weren't in Coldwick in 1950? | A: Yes.", ""},
      {"Q: Weren't you in Coldwick in 1950? | A: I was.", "located @Coldwick 1950 led"},
      // Said of what was so.
      {"Q: Was there a stove in the galley? | A: I don't think so.", "absent stove@galley hedged"},
      {"Q: Was there a stove in the galley? | A: Probably not.", "absent stove@galley hedged"},
      {"Q: Was there a stove in the galley? | A: No, there was no stove.", "absent stove@galley"},
  };
  check(rows);
}
TEST_CASE("a sentence that only denies is of what was said, or of what the narrator did") {
  const Row rows[] = {
      {"They took off the winch in 1962 and everyone was pleased. I wasn't.", "ends winch 1962"},
      {"They took off the winch in 1962. We didn't.", "ends winch 1962"},
      {"There was a stove in the galley. I never did.", "present stove@galley"},
      {"They took off the winch in 1962. They didn't.", "ends winch 1962 denied"},
      {"The winch was taken off in 1962. It wasn't.", "ends winch 1962 denied"},
      {"We took off the winch in 1962. We didn't.", "ends winch 1962 first-hand denied"},
      {"We took off the winch in 1962. We never did.", "ends winch 1962 first-hand denied"},
  };
  check(rows);
}
TEST_CASE("there was not, not that I saw, never: no") {
  const Row rows[] = {
      {"Q: There was a steam hammer in the smithy, wasn't there? | A: There was not. Not that I ever saw. "
       "People say "
       "there was a steam hammer.",
       "absent steam hammer@smithy; present steam hammer told"},
      {"Q: Was there a steam hammer in the smithy? | A: There wasn't.", "absent steam hammer@smithy"},
      {"Q: Was there a steam hammer in the smithy? | A: Never.", "absent steam hammer@smithy"},
      {"Q: Were there any trams? | A: There were none.", "absent tram"},
      {"Q: Was there a steam hammer in the smithy? | A: Not that I ever saw.",
       "absent steam hammer@smithy first-hand"},
      {"Q: Was there a steam hammer in the smithy? | A: Not that I know of.",
       "absent steam hammer@smithy hedged"},
      {"Q: Was there a steam hammer in the smithy? | A: Not that I remember.", ""},
      {"Q: Was there a steam hammer in the smithy? | A: No, I don't remember one.", ""},
      {"Q: Was there a steam hammer in the smithy? | A: Could be, I couldn't tell you.", ""},
      {"Q: Was the winch taken off? | A: Not that I know of.", "ends winch hedged denied"},
      {"Q: When was the winch taken off? | A: Never, that I know of.", ""},
  };
  check(rows);
}

TEST_CASE("what the narrator never saw there was not") {
  const Row rows[] = {
      {"I never saw a steam hammer in the smithy.", "absent steam hammer@smithy first-hand"},
      {"We never saw any stoves there.", "absent stove first-hand"},
      {"I never saw a stove in 1950.", "absent stove 1950 first-hand"},
      {"I never saw a stove, and the winch was taken off.", "absent stove first-hand; ends winch"},
      {"Q: Was there a steam hammer in the smithy? | A: I never saw one.",
       "absent steam hammer@smithy first-hand"},
      {"Q: Was there a steam hammer in the smithy? | A: No, I never saw one there.",
       "absent steam hammer@smithy first-hand"},
      {"Q: Was there a steam hammer in the smithy? | A: Never saw one.",
       "absent steam hammer@smithy first-hand"},
      {"Q: You never saw a stove in the galley? | A: No.", "absent stove@galley led"},
      // Of one that is known, of what it did or was like, of others, or not until then: there may be one.
      {"I never saw the steam hammer.", ""},
      {"I never saw it.", ""},
      {"I never saw a stove like it.", ""},
      {"I never saw a stove in the galley before.", ""},
      {"I'd never seen a stove in the galley.", ""},
      {"He never saw a stove in the galley.", ""},
      {"I didn't see a stove in the galley.", ""},
      {"I never saw two stoves.", ""},
      // What was never seen done was not done.
      {"I never saw them take off the winch.", "ends winch first-hand denied"},
      {"I never saw the winch painted.", "happened winch {painted} first-hand denied"},
      {"I never saw the winch used.", ""},
      {"I never saw how they took off the winch.", "ends winch first-hand"},
  };
  check(rows);
}
TEST_CASE("a date that is the fact and stands in the question alone is led") {
  const Row rows[] = {
      {"Q: The gas engine was sold in June 1952? | A: Well, it may have been sold then.",
       "ends gas engine 1952-06 guess led"},
      {"Q: And the weighbridge was sold in 1962. | A: It was sold, yes.", "ends weighbridge 1962 led"},
      {"Q: And the weighbridge was sold in 1962. | A: It was sold, in sixty-three.", "ends weighbridge 1963"},
      {"Q: Where did they fit the stove in 1962? | A: In the galley.", "begins stove@galley 1962 led"},
      {"Q: Go on to 1962. | A: They took off the winch. In 1963 they fitted a stove.",
       "ends winch 1962; begins stove 1963"},
      // How things were then is the narrator's to say.
      {"Q: Where was the stove in 1962? | A: In the galley.", "present stove@galley 1962"},
      {"Q: You were there in 1962. | A: The stove stood in the galley.", "present stove@galley 1962"},
      // Who does not know when does not say so.
      {"Q: And the weighbridge was sold in 1962. | A: I don't know what year. It was sold, yes.",
       "ends weighbridge"},
      {"Q: And the weighbridge was sold in 1962. | A: I couldn't tell you when. It was a good one. It was "
       "sold.",
       "ends weighbridge"},
      {"Q: And the weighbridge was sold in 1962. | A: It was, I couldn't tell you what year.",
       "ends weighbridge led"},
      {"Q: And the weighbridge was sold in 1962. | A: I forget the year, but it was sold.",
       "ends weighbridge"},
      {"Q: The kiln was sold in 1962. | A: I forget the year. In 1950 the winch was there. The stove was "
       "sold.",
       "present winch 1950; ends stove 1950"},
  };
  check(rows);
  const auto claims = claims_of("Q: And the weighbridge was sold in 1962. | A: It was sold, yes.", lists());
  REQUIRE(claims.size() == 1);
  CHECK(claims[0].reason.find("the interviewer gave the date") != std::string::npos);
  CHECK(claims[0].reason.find("the narrator agreed") == std::string::npos);
}

TEST_CASE("a sentence that says only how the one before is known, or takes it back, is of that one") {
  const Row rows[] = {
      {"The stove was in the galley. So I was told.", "present stove@galley told"},
      {"The stove was in the galley. I think.", "present stove@galley hedged"},
      {"The stove was in the galley. I wouldn't swear to it.", "present stove@galley hedged"},
      {"The stove was in the galley, or that was what they told us.", "present stove@galley told"},
      {"The stove was in the galley. The winch, so I was told, was in the hold.",
       "present stove@galley; present winch@hold told"},
      {"The winch came in June of 1948. No, I tell a lie, it was the August.",
       "begins winch 1948-06 withdrawn; begins winch 1948-08"},
      {"The winch came in 1948. No, it was 1949.", "begins winch 1948 withdrawn; begins winch 1949"},
      {"The winch came in 1948. It was 1949 when it went.", "begins winch 1948; ends winch 1949"},
      {"The winch came in 1948. I think. No, it was 1949.",
       "begins winch 1948 hedged withdrawn; begins winch 1949"},
      {"The stove came in 1946 and the winch came in 1948. No, it was 1949.",
       "begins stove 1946; begins winch 1948 withdrawn; begins winch 1949"},
      {"The stove was in the galley and the winch was in the hold. So I was told.",
       "present stove@galley told; present winch@hold told"},
      {"Q: When was the winch fitted? | A: 1950, I don't remember exactly.", "begins winch 1950 hedged"},
      {"Q: How many trams were there? | A: Six, I couldn't tell you exactly.", "count tram n=6 hedged"},
  };
  check(rows);
}

TEST_CASE("the same said twice in one sentence is one claim") {
  const Row rows[] = {
      {"The stove was in the galley all the time, it was always in the galley.", "present stove@galley"},
      {"The stove was in the galley in 1950, and it was in the hold in 1960.",
       "present stove@galley 1950; present stove@hold 1960"},
  };
  check(rows);
}

TEST_CASE("what goes up a stair is not put up, what comes in the June is come") {
  const Row rows[] = {
      {"The winch went up the side of the smithy.", ""},
      {"The winch went up in 1950.", "begins winch 1950"},
      {"The winch came in the June of 1948.", "begins winch 1948-06"},
      {"The winch came out the winter of 1956.", "ends winch 1956-24"},
      {"The winch came off the side of the smithy in 1950.", "ends winch@smithy 1950"},
  };
  check(rows);
}
