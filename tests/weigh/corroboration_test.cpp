#include "witnessmark/weigh/corroboration.h"

#include <doctest/doctest.h>

#include "corroboration_script.h"

using namespace witnessmark;

// Every case is worked by hand from the rule it names. Independence is that of Langlois and Seignobos,
// Introduction to the Study of History, book II chapter 8: the same author twice, copies, and witnesses under
// the same conditions do not count separately. That corroboration needs another kind is common practice, no
// source.

TEST_CASE("a log and a narrator are two sources of two kinds") {
  CHECK(ask("source log log\n"
            "interview i1 abel\n"
            "entry e1 log ends 1963-04-29\n"
            "told i1 abel ends 1963-04\n"
            "ask ends 1963-04") == "corroborated (for 2 of 2, against 0 of 0): e1 | abel");
}

TEST_CASE("two narrators are of one kind, and so are two logs") {
  CHECK(ask("interview i1 abel\n"
            "interview i2 bram\n"
            "told i1 abel ends 1963\n"
            "told i2 bram ends 1963\n"
            "ask ends 1963") == "supported (for 2 of 1, against 0 of 0): abel | bram");
  CHECK(ask("source deck log\nsource engine log\n"
            "entry e1 deck ends 1963-04-29\n"
            "entry e2 engine ends 1963-04-29\n"
            "ask ends 1963") == "supported (for 2 of 1, against 0 of 0): e1 | e2");
}

TEST_CASE("a narrator's sessions count once") {
  CHECK(ask("interview i1 abel\ninterview i2 abel\n"
            "told i1 abel ends 1963\n"
            "told i2 abel ends 1963-05\n"
            "ask ends 1963") == "single source (for 1 of 1, against 0 of 0): abel+abel");
}

TEST_CASE("a narrator who says both counts on neither side") {
  CHECK(ask("interview i1 abel\ninterview i2 abel\n"
            "told i1 abel ends 1962\n"
            "told i2 abel ends 1963\n"
            "ask ends 1962") == "unknown (for 0 of 0, against 0 of 0): [abel] / [abel]");
}

TEST_CASE("a narrator who passes on what another said does not say both") {
  const std::string site =
      "source log log\ninterview i1 abel\nentry e1 log ends 1957-03-12\n"
      "told i1 abel ends 1957-03\ntold i1 abel present 1959 told=bosun\n";
  CHECK(ask(site + "ask ends 1957-03") ==
        "corroborated (for 2 of 2, against 0 of 0 +1 second hand): e1 | abel / abel (second hand)");
  CHECK(ask(site + "ask present 1959") ==
        "contradicted (for 0 of 0 +1 second hand, against 2 of 2): abel (second hand) / e1 | abel");
}

TEST_CASE("narrators interviewed together are one, whatever interview it is in that they say it") {
  const std::string together = "interview i1 abel,bram\ninterview i2 abel\n";
  CHECK(ask(together + "told i1 abel ends 1963\ntold i1 bram ends 1963\nask ends 1963") ==
        "single source (for 1 of 1, against 0 of 0): abel+bram");
  CHECK(ask(together + "told i2 abel ends 1963\ntold i1 bram ends 1963\nask ends 1963") ==
        "single source (for 1 of 1, against 0 of 0): abel+bram");
  CHECK(links(together + "told i1 abel ends 1963\ntold i1 bram ends 1963\nask ends 1963") ==
        "bram was interviewed together with abel (i1)");
}

TEST_CASE("narrators interviewed together who disagree are one on either side") {
  CHECK(ask("interview i1 abel,bram\n"
            "told i1 abel ends 1963\n"
            "told i1 bram ends 1965\n"
            "ask ends 1963") == "contested (for 1 of 1, against 1 of 1): abel / bram");
}

TEST_CASE("books that rest on an interview add nothing to it, through any number of steps") {
  const std::string site =
      "source book publication\nsource leaflet publication\nsource te testimony interview=i1\n"
      "interview i1 abel\n"
      "derives book i1 retells\nderives leaflet book copies\n"
      "entry e1 book ends 1962\nentry e2 leaflet ends 1962\nentry e3 te ends 1962\n";
  CHECK(ask(site + "told i1 abel ends 1962\nask ends 1962") ==
        "single source (for 1 of 1, against 0 of 0): e1+e2+e3+abel");
  CHECK(ask(site + "ask ends 1962") == "single source (for 1 of 1, against 0 of 0): e1+e2+e3");
  CHECK(
      links(site + "told i1 abel ends 1962\nask ends 1962")
          .starts_with(
              "book derives from i1 (retells); i1 was narrated by abel; leaflet derives from book (copies)"));
}

TEST_CASE("a book that rests on two narrators does not make the two one") {
  const std::string site =
      "source book publication\ninterview i1 abel\ninterview i2 bram\n"
      "derives book i1\nderives book i2\n"
      "entry e1 book ends 1962\n";
  CHECK(ask(site + "told i1 abel ends 1962\ntold i2 bram ends 1962\nask ends 1962") ==
        "supported (for 2 of 1, against 0 of 0): e1+abel | bram");
}

TEST_CASE("a tracing and its original, or two copies of something that does not speak, are one") {
  CHECK(ask("source a drawing\nsource b drawing\nderives b a traced\n"
            "entry e1 a present 1951\nentry e2 b present 1951\n"
            "ask present 1951") == "single source (for 1 of 1, against 0 of 0): e1+e2");
  CHECK(ask("source a drawing\nsource b publication\nderives a lost\nderives b lost\n"
            "entry e1 a present 1951\nentry e2 b present 1951\n"
            "ask present 1951") == "single source (for 1 of 1, against 0 of 0): e1+e2");
}

TEST_CASE("circles of derivation end") {
  CHECK(ask("source a publication\nsource b publication\nderives a b\nderives b a\n"
            "entry e1 a ends 1951\nentry e2 b ends 1951\n"
            "ask ends 1951") == "single source (for 1 of 1, against 0 of 0): e1+e2");
}

TEST_CASE("a photograph dated by a log is no independent witness beside it") {
  const std::string site = "source log log\nsource ph photograph\nsource diary correspondence\n";
  CHECK(ask(site + "entry e1 log present 1963-02-14\n"
                   "entry e2 ph present 1963-02-14 date=log\n"
                   "ask present 1963-02-14") == "single source (for 1 of 1, against 0 of 0): e1+e2");
  CHECK(ask(site + "entry e1 log present 1963-02-14\n"
                   "entry e2 ph present 1963-02-14 date=log\n"
                   "entry e3 diary present 1963-02-14\n"
                   "ask present 1963-02-14") == "corroborated (for 2 of 2, against 0 of 0): e3 | e1+e2");
}

TEST_CASE("two photographs dated by one log that does not speak itself are one") {
  CHECK(ask("source log log\nsource p1 photograph\nsource p2 photograph\n"
            "entry e1 p1 present 1963-02-14 date=log\n"
            "entry e2 p2 present 1963-02-14 date=log\n"
            "ask present 1963-02-14") == "single source (for 1 of 1, against 0 of 0): e1+e2");
}

TEST_CASE("a photograph dated by the thing itself says nothing of it") {
  CHECK(ask("source ph photograph\ninterview i1 abel\n"
            "entry e1 ph present 1957 date=lamp\n"
            "told i1 abel present 1957\n"
            "ask present 1957") == "single source (for 1 of 1, against 0 of 0): abel");
}

TEST_CASE("a photograph with its caption from a narrator adds nothing to that narrator") {
  CHECK(ask("source ph photograph\ninterview i1 abel\n"
            "entry e1 ph present 1957 caption=i1\n"
            "told i1 abel present 1957\n"
            "ask present 1957") == "single source (for 1 of 1, against 0 of 0): e1+abel");
}

TEST_CASE("a narrator shown the photograph beforehand only reads it out") {
  const std::string site = "source ph photograph\ninterview i1 abel shown=ph\n";
  CHECK(ask(site + "entry e1 ph present 1961-07\ntold i1 abel present 1961-07\nask present 1961-07") ==
        "single source (for 1 of 1, against 0 of 0): e1+abel");
  // Of what the photograph does not show the narrator is a witness like any other.
  CHECK(ask(site + "source log log\nentry e1 log present 1961-07\ntold i1 abel present 1961-07\nask present "
                   "1961-07") == "corroborated (for 2 of 2, against 0 of 0): e1 | abel");
}

TEST_CASE("two narrators shown one photograph are one") {
  CHECK(ask("source ph photograph\ninterview i1 abel shown=ph\ninterview i2 bram shown=ph\n"
            "entry e1 ph present 1961-07\n"
            "told i1 abel present 1961\ntold i2 bram present 1961\n"
            "ask present 1961") == "single source (for 1 of 1, against 0 of 0): e1+abel+bram");
}

TEST_CASE("a narrator shown a book that rests on another's interview is one with that other") {
  CHECK(ask("source book publication\nderives book i1\ninterview i1 abel\ninterview i2 bram shown=book\n"
            "told i1 abel ends 1962\ntold i2 bram ends 1962\n"
            "ask ends 1962") == "single source (for 1 of 1, against 0 of 0): abel+bram");
}

TEST_CASE("a narrator who had read it adds nothing to what is written") {
  CHECK(ask("source log log\nsource book publication\ninterview i1 abel\n"
            "entry e1 log ends 1963\nentry e2 book ends 1963\n"
            "told i1 abel ends 1963 read\n"
            "ask ends 1963") == "corroborated (for 2 of 2, against 0 of 0): e2+abel (second hand) | e1");
}

TEST_CASE("what was told by a narrator who can be named is that narrator's") {
  const std::string site = "interview i1 abel\ninterview i2 bram\nsource log log\n";
  CHECK(ask(site + "told i1 abel ends 1967 told=bram\ntold i2 bram ends 1967\nask ends 1967") ==
        "single source (for 1 of 1, against 0 of 0): abel (second hand)+bram");
  CHECK(ask(site + "told i1 abel ends 1967 told=bram\nentry e1 log ends 1967-04-12\nask ends 1967") ==
        "single source (for 1 of 1 +1 second hand, against 0 of 0): e1 | abel (second hand)");
}

TEST_CASE("one hearsay against a log and a photograph is dissent, not a contest") {
  const std::string site =
      "source log log\nsource ph photograph\ninterview i1 abel\n"
      "entry e1 log ends 1957-03-12\nentry e2 ph absent 1958-06-01\n"
      "told i1 abel present 1957-10/1959 throughout told=bosun\n";
  CHECK(ask(site + "ask absent 1958-06-01") ==
        "corroborated (for 2 of 2, against 0 of 0 +1 second hand): e1 | e2 / abel (second hand)");
  CHECK(ask(site + "ask present 1957-10/1959 throughout") ==
        "contradicted (for 0 of 0 +1 second hand, against 2 of 2): abel (second hand) / e1 | e2");
  CHECK(ask("source log log\ninterview i1 abel\nentry e1 log ends 1957-03-12\n"
            "told i1 abel present 1959 told=bosun\nask present 1959") ==
        "contested (for 0 of 0 +1 second hand, against 1 of 1): abel (second hand) / e1");
}

TEST_CASE(
    "sources of two kinds on either side contest, one against two of a kind contests, two kinds contradict "
    "one") {
  const std::string site =
      "source log log\nsource ph photograph\nsource letter correspondence\ninterview i1 abel\ninterview i2 "
      "bram\n";
  CHECK(ask(site + "entry e1 log ends 1963-04-29\nentry e2 ph present 1963-02-14\n"
                   "entry e3 letter ends 1962-10-02\ntold i1 abel ends 1962-10\n"
                   "ask ends 1962-10") == "contested (for 2 of 2, against 2 of 2): e3 | abel / e1 | e2");
  CHECK(ask(site +
            "entry e1 log ends 1963-04-29\ntold i1 abel ends 1962\ntold i2 bram ends 1962\nask ends 1962") ==
        "contested (for 2 of 1, against 1 of 1): abel | bram / e1");
  CHECK(ask(site + "entry e1 log ends 1963-04-29\nentry e2 ph present 1963-02-14\ntold i1 abel ends 1962\n"
                   "ask ends 1962") == "contradicted (for 1 of 1, against 2 of 2): abel / e1 | e2");
}

TEST_CASE("an order is an intention, whatever else is said of it") {
  const std::string site = "source order order\nsource log log\ninterview i1 abel\n";
  CHECK(ask(site + "entry e1 order ends 1958-06/1958-09 intended\nask ends 1958-06/1958-09") ==
        "intention only (for 0 of 0 +1 intended, against 0 of 0): e1 (intention)");
  CHECK(ask(site + "entry e1 order ends 1958-06/1958-09 intended\nentry e2 log present 1961\n"
                   "ask ends 1958-06/1958-09") ==
        "intention only (for 0 of 0 +1 intended, against 1 of 1): e1 (intention) / e2");
  CHECK(ask(site +
            "entry e1 order ends 1958-06/1958-09 intended\ntold i1 abel ends 1958-22\nask ends 1958-22") ==
        "single source (for 1 of 1 +1 intended, against 0 of 0): e1 (intention) | abel");
}

TEST_CASE(
    "what was led, inferred or guessed is shown and not counted; what happened in the narrator's absence is "
    "second hand") {
  const std::string site = "interview i1 abel\n";
  CHECK(ask(site + "told i1 abel ends 1963 led\nask ends 1963") ==
        "unknown (for 0 of 0, against 0 of 0): abel (led)");
  CHECK(ask(site + "told i1 abel ends 1963 inferred\nask ends 1963") ==
        "unknown (for 0 of 0, against 0 of 0): abel (inferred)");
  CHECK(ask(site + "told i1 abel ends 1963 guess\nask ends 1963") ==
        "unknown (for 0 of 0, against 0 of 0): abel (guess)");
  CHECK(ask(site + "told i1 abel ends 1963 away\nask ends 1963") ==
        "single source (for 0 of 0 +1 second hand, against 0 of 0): abel (second hand)");
}

TEST_CASE("a photograph that may show another site counts neither way") {
  CHECK(ask("source ph photograph\ninterview i1 abel\n"
            "entry e1 ph present 1953 possible\ntold i1 abel present 1953\n"
            "ask present 1953") == "single source (for 1 of 1, against 0 of 0): abel");
}

TEST_CASE("a denial is for the denial and against what it denies") {
  const std::string site = "source log log\ninterview i1 abel\ninterview i2 bram\n";
  CHECK(ask(site + "told i1 abel ends 1958 denied\ntold i2 bram ends 1958-06\nask ends 1958-06") ==
        "contested (for 1 of 1, against 1 of 1): bram / abel");
  CHECK(ask(site + "told i1 abel ends 1958 denied\ntold i2 bram ends 1958-06\nask ends 1958 denied") ==
        "contested (for 1 of 1, against 1 of 1): abel / bram");
  CHECK(
      ask(site + "told i1 abel present 1958 denied\nentry e1 log absent 1958 throughout\nask absent 1958") ==
      "corroborated (for 2 of 2, against 0 of 0): e1 | abel");
}

TEST_CASE(
    "the same day is told more and less exactly: the exact bears out the wide, not the other way about") {
  const std::string site =
      "source log log\ninterview i1 abel\nentry e1 log ends 1963-04-29\ntold i1 abel ends 1963\n";
  CHECK(ask(site + "ask ends 1963") == "corroborated (for 2 of 2, against 0 of 0): e1 | abel");
  CHECK(ask(site + "ask ends 1963-04-29") == "single source (for 1 of 1, against 0 of 0): e1");
}

TEST_CASE("a story told by two of where the vessel lay is held against the log and against one another") {
  const std::string site =
      "source log log\nsource paper publication\ninterview i1 abel\ninterview i2 bram\ninterview i3 abel\n"
      "stay s1 log Ostrey 1955-01-10/1955-02-04\nstay s2 paper Ostrey 1955-01-22/1955-01-23\n"
      "at i1 abel Bank 1955-01-22\nat i2 bram Bank 1955-01-22\n";
  CHECK(ask(site + "ask at Bank 1955-01-22") ==
        "contradicted (for 2 of 1, against 2 of 2): abel | bram / s1 | s2");
  // Abel takes it back in a later session: he now speaks on both sides.
  CHECK(ask(site + "at i3 abel Ostrey 1955-01-22\nask at Bank 1955-01-22") ==
        "contradicted (for 1 of 1, against 2 of 2): [abel] | bram / s1 | s2 | [abel]");
  CHECK(ask(site + "at i3 abel Ostrey 1955-01-22\nask at Ostrey 1955-01-22") ==
        "corroborated (for 2 of 2, against 1 of 1): s1 | s2 | [abel] / [abel] | bram");
}

TEST_CASE("numbers agree when they are the same at the same time") {
  const std::string site = "source book log\ninterview i1 abel\n";
  CHECK(ask(site +
            "entry e1 book count 1959-03-31 n=24\ntold i1 abel count 1959-03 n=24\nask count 1959-03 n=24") ==
        "corroborated (for 2 of 2, against 0 of 0): e1 | abel");
  CHECK(ask(site +
            "entry e1 book count 1959-03-31 n=20\ntold i1 abel count 1959-03 n=24\nask count 1959-03 n=24") ==
        "contested (for 1 of 1, against 1 of 1): abel / e1");
}

TEST_CASE("a book is of the kind of what it retells") {
  // The interview it rests on has not been reviewed, or is withheld, and does not speak itself.
  CHECK(ask("source book publication\nderives book i1 retells\ninterview i1 abel\ninterview i2 bram\n"
            "entry e1 book ends 1962\ntold i2 bram ends 1962\n"
            "ask ends 1962") == "supported (for 2 of 1, against 0 of 0): e1 | bram");
  CHECK(ask("source report publication\nsource log log\nderives report log\ninterview i2 bram\n"
            "entry e1 report ends 1962\ntold i2 bram ends 1962\n"
            "ask ends 1962") == "corroborated (for 2 of 2, against 0 of 0): e1 | bram");
}
