// What the sentence on a claim and an entry says of how the claim was told: how firmly, by whom supplied, what is carried over
// from the talk before, and how wide its date is.
#include <doctest/doctest.h>
#include <fmt/core.h>

#include "witnessmark/weigh/agreement.h"
#include "witnessmark/weigh/statement_words.h"

using namespace witnessmark;

namespace {

Term term(const char* key, const char* name) {
  Term made;
  made.key = key;
  made.name = name;
  return made;
}

const AuthorityLists kLists{AuthorityList(AuthorityList::Kind::places, {term("foredeck", "Foredeck"), term("stores", "Stores")}),
                            AuthorityList(AuthorityList::Kind::equipment, {term("crane", "Deck crane")})};

/// A log that has the crane fitted on 2 July 1952, and the site and a deckhand at places.
Register log_of_1952() {
  Register evidence;
  Source& log = evidence.sources.emplace_back();
  log.key = "log";
  log.kind = SourceKind::log;
  log.title = "Deck log";
  Entry& entry = evidence.entries.emplace_back();
  entry.key = "e1";
  entry.source = "log";
  entry.statement = Statement::begins;
  entry.subject = "crane";
  entry.place = "foredeck";
  entry.when.value = parse_edtf("1952-07-02").value();
  Stay& stay = evidence.itinerary.emplace_back();
  stay.key = "st1";
  stay.source = "log";
  stay.party = "hand";
  stay.locations = {"Infirmary"};
  stay.when.value = parse_edtf("1958-11").value();
  return evidence;
}

Claim told(Statement statement, const char* edtf, const char* written = "") {
  Claim claim;
  claim.interview = "i1";
  claim.speaker = "hand";
  claim.statement = statement;
  if (statement != Statement::located) claim.subject = "crane";
  claim.when.dated.written = written;
  claim.when.dated.value = parse_edtf(edtf).value();
  claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
  return claim;
}

/// The sentence from "the narrator" on.
std::string said(const Claim& claim) {
  const Register evidence = log_of_1952();
  const RegisterIndex index(evidence, kLists, default_date_policy());
  const std::string text = explain(claim, "", Interview{}, compare(claim, Interview{}, index).at(0), index);
  return text.substr(text.find("the narrator"));
}

}  // namespace

TEST_CASE("a date with a sign is as wide as the policy makes it, and the days it then means are said") {
  // EDTF gives no width to ~ (Library of Congress, EDTF specification of 2019); a year is the setting's.
  CHECK(said(told(Statement::begins, "1953", "nineteen fifty-three")) ==
        "the narrator has Deck crane fitted, “nineteen fifty-three” (1953): they conflict, 183 to 547 days apart.");
  CHECK(said(told(Statement::begins, "1953~", "about nineteen fifty-three")) ==
        "the narrator has Deck crane fitted, “about nineteen fifty-three” (some time from 1952 to 1954): both can be right.");
  CHECK(said(told(Statement::begins, "1954~", "about fifty-four")) ==
        "the narrator has Deck crane fitted, “about fifty-four” (some time from 1953 to 1955): they conflict, 183 to 1277 "
        "days apart.");
}

TEST_CASE("what is hedged or guessed is not given as if it were firm") {
  Claim claim = told(Statement::begins, "1952");
  CHECK(said(claim) == "the narrator has Deck crane fitted, 1952: they agree.");
  claim.firmness = Firmness::hedged;
  CHECK(said(claim) == "the narrator has, hedged, Deck crane fitted, 1952: they agree.");
  claim.firmness = Firmness::guess;
  CHECK(said(claim) == "the narrator has, as a guess, Deck crane fitted, 1952: they agree.");
  claim.polarity = Polarity::denied;
  CHECK(said(claim) == "the narrator denies, as a guess, Deck crane fitted, 1952: they conflict.");
}

TEST_CASE("two that conflict on one and the same day are no days apart") {
  Claim claim = told(Statement::begins, "1952");
  claim.polarity = Polarity::denied;
  CHECK(said(claim) == "the narrator denies Deck crane fitted, 1952: they conflict.");
  CHECK(said(told(Statement::absent, "1952")) == "the narrator has Deck crane not there, 1952: they conflict.");
}

TEST_CASE("what the interviewer supplied is no independent testimony, whether it agrees, conflicts or can be right") {
  const std::string led = "; the interviewer supplied it, so that it is no independent testimony.";
  const std::pair<const char*, std::string> rows[] = {
      {"1952", "they agree" + led}, {"1950", "they conflict, 549 to 913 days apart" + led}, {"1952/1953", "both can be right" + led}};
  for (const auto& [when, ending] : rows) {
    Claim claim = told(Statement::begins, when);
    CHECK_FALSE(said(claim).ends_with(led));
    claim.led = true;
    CHECK(said(claim).ends_with(": " + ending));
  }
}

TEST_CASE("what is taken from earlier in the talk is said where it makes the two agree or conflict") {
  struct Row {
    bool subject, date;
    const char* when;
    const char* ending;
  };
  const Row rows[] = {
      {true, false, "1952", ": they agree; that it is about Deck crane is taken from earlier in the talk."},
      {false, true, "1952", ": they agree; its date is taken from earlier in the talk."},
      {true, true, "1950",
       ": they conflict, 549 to 913 days apart; that it is about Deck crane, and its date, are taken from earlier in the talk."},
      {true, true, "1952/1953", ": both can be right."}};
  for (const Row& row : rows) {
    Claim claim = told(Statement::begins, row.when);
    claim.subject_carried = row.subject;
    claim.when.carried = row.date;
    CHECK(said(claim).ends_with(row.ending));
  }
}

TEST_CASE("a state told of some time within a stretch is not said to have lasted through it") {
  CHECK(said(told(Statement::present, "../1957-06-08", "Whitsun")) ==
        "the narrator has Deck crane there, “Whitsun” (some time up to 8 June 1957): they agree.");
  Claim claim = told(Statement::present, "1946-08/1960-03", "in my time");
  claim.when.rule = "service";
  CHECK(said(claim) ==
        "the narrator has Deck crane there, “in my time” (some time from August 1946 to March 1960): they agree.");
  claim.when.rule = kThroughout;
  claim.when.reading = Reading::throughout;
  CHECK(said(claim) ==
        "the narrator has Deck crane there, “in my time” (beginning August 1946, ending March 1960): they conflict.");
  CHECK(said(told(Statement::begins, "1952-06", "June 1952")) ==
        "the narrator has Deck crane fitted, June 1952: they conflict, 2 to 31 days apart.");
}

TEST_CASE("whereabouts name who was where: the narrator is not called I") {
  const auto located = [](const char* subject, const char* words, const char* place) {
    Claim claim = told(Statement::located, "1958-11");
    claim.subject = subject;
    claim.subject_words = words;
    claim.place_words = place;
    return claim;
  };
  CHECK(said(located("hand", "I", "infirmary")) == "the narrator at Infirmary, November 1958; the narrator has been at "
                                                   "infirmary, November 1958: they agree.");
  Claim denied = located("hand", "I", "infirmary");
  denied.polarity = Polarity::denied;
  CHECK(said(denied).ends_with("the narrator denies having been at infirmary, November 1958: they conflict."));
  Claim guess = located("hand", "me", "Stores");
  guess.firmness = Firmness::guess;
  CHECK(said(guess).ends_with("the narrator has been, as a guess, at Stores, November 1958: they conflict."));
  CHECK(said(located("", "", "Pellhaven")) == "the narrator has the site at Pellhaven, November 1958.");
  CHECK(said(located("mate", "the mate", "")) == "the narrator has the mate: no place named, November 1958.");
  // What no list has may be no name of a place at all.
  CHECK(said(located("mate", "the mate", "at Pellhaven")) ==
        "the narrator has the mate: “at Pellhaven”, November 1958.");
  CHECK(said(located("hand", "you", "leave"))
            .ends_with("the narrator speaks of where they were, “leave”, November 1958: they conflict."));
  CHECK(said(located("hand", "I", "")) ==
        "the narrator speaks of where they were, no place named, November 1958.");
  Claim doubted = located("hand", "I", "ashore");
  doubted.polarity = Polarity::denied;
  doubted.firmness = Firmness::hedged;
  CHECK(said(doubted).ends_with(
      "the narrator speaks of where they were not, hedged, “ashore”, November 1958: they agree."));
}
