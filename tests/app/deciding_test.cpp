// What a coder decides at the desk.
#include <doctest/doctest.h>

#include "store/sample_site.h"
#include "whole_job.h"
#include "witnessmark/app/coding_desk.h"
#include "witnessmark/app/journal_words.h"
#include "witnessmark/store/journal.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

Claim without_value(Statement statement) {
  Claim claim = sample::claim("aske-1", kTalk, "The lamp was brass", statement);
  claim.quantity.reset();
  claim.attribute = "";
  return claim;
}

/// A count without its number, an attribute without its property, and an ending that needs neither.
struct Desk {
  Desk() : site(site_in_memory()) {
    must(save_interviews(site, interview_file()));
    must(save_transcript(site, transcript_file("aske-1", kTalk)));
    must(replace_proposals(site, "aske-1",
                           {without_value(Statement::count), without_value(Statement::attribute),
                            sample::claim("aske-1", kTalk, "We had the crane")}));
    for (const StoredClaim& stored : load_claims(site)) by_statement[stored.claim.statement] = stored.claim;
    desk = std::make_unique<CodingDesk>(must(CodingDesk::at(std::move(site), around)));
  }
  const Claim& of(Statement statement) const { return by_statement.at(statement); }
  ClaimStatus status(Statement statement) const { return now(statement).status; }
  Claim now(Statement statement) const { return find_claim(desk->site(), of(statement).id).value().claim; }

  SystemFileReader files;
  Surroundings around = surroundings_of(files, to_day({2036, 1, 15}));
  SiteFile site;
  std::map<Statement, Claim> by_statement;
  std::unique_ptr<CodingDesk> desk;
};

}  // namespace

TEST_CASE("a count without its number and an attribute without its property cannot be said so") {
  Desk held;
  for (const Statement statement : {Statement::count, Statement::attribute}) {
    CAPTURE(to_string(statement));
    const auto refused = held.desk->decide({held.of(statement).id}, ClaimStatus::said_so, "");
    REQUIRE_FALSE(refused);
    CHECK(refused.error().message == what_it_needs(held.of(statement)));
    CHECK_FALSE(held.desk->correct(held.of(statement), ""));
    Claim own = without_value(statement);
    own.quotes = {range_of(kTalk, "the lamp")};
    CHECK_FALSE(held.desk->add(own, ""));
    CHECK_FALSE(held.desk->requote(held.of(statement).id, range_of(kTalk, "the lamp")));
    CHECK(held.status(statement) == ClaimStatus::proposed);
  }
  Claim given = held.of(Statement::attribute);
  given.attribute = "material: brass";
  CHECK(held.desk->correct(given, ""));
  given = held.of(Statement::count);
  given.quantity = Quantity{1, 1, "one"};
  CHECK(held.desk->correct(given, ""));
  CHECK(held.status(Statement::count) == ClaimStatus::said_so);
}

TEST_CASE("what lacks its number or property may be misread or set aside") {
  Desk held;
  CHECK(held.desk->decide({held.of(Statement::count).id}, ClaimStatus::misread, "no count"));
  CHECK(held.desk->decide({held.of(Statement::attribute).id}, ClaimStatus::set_aside, ""));
}

TEST_CASE("of many said so, those that lack their number or property stay as they were") {
  Desk held;
  std::vector<Id> all;
  for (const auto& [statement, claim] : held.by_statement) all.push_back(claim.id);
  CHECK(must(held.desk->decide(all, ClaimStatus::said_so, "")) == 1);
  CHECK(held.status(Statement::ends) == ClaimStatus::said_so);
  CHECK(held.status(Statement::count) == ClaimStatus::proposed);
  CHECK(held.status(Statement::attribute) == ClaimStatus::proposed);
  CHECK(must(held.desk->decide(all, ClaimStatus::set_aside, "")) == 3);
}

TEST_CASE("a date that a coder types has no other words beside it") {
  Desk held;
  Claim claim = held.of(Statement::ends);
  REQUIRE(claim.when.dated.written == "in sixty-two");
  for (const char* text : {"1963", "late in sixty-three"}) {
    CAPTURE(text);
    const TypedDate date = must(held.desk->typed_date(text, claim));
    CHECK(date.when.dated.written.empty());
    CHECK(date.when.rule == std::string("coder: ") + text);
  }
}

TEST_CASE("the journal says what a correction changed, and from what") {
  Desk held;
  const AuthorityLists lists{places(), {}};
  Claim claim = held.of(Statement::ends);
  const auto last = [&] { return events_on(held.desk->site(), "claim", to_string(claim.id)).back(); };
  claim.when = must(held.desk->typed_date("1963", claim)).when;
  claim.place = "ship";
  must(held.desk->correct(claim, ""));
  CHECK(event_words(last()) == "decided on a claim in aske-1");
  CHECK(target_words(last()) == to_string(claim.id));
  CHECK(change_words(last(), lists) ==
        "status proposed → said so; place Foredeck → The tender; when 1962 (“in sixty-two”) → 1963");
  claim = held.now(Statement::ends);
  claim.place = claim.place_words = "";
  claim.subject = "";
  claim.subject_words = "the boom";
  claim.quantity = Quantity{10, 14, "a dozen or so"};
  claim.led = false;
  claim.attribute = "";
  must(held.desk->correct(claim, ""));
  CHECK(change_words(last(), lists) ==
        "equipment “the crane” → “the boom”; place The tender → none; number 1 to 2 → 10 to 14; attribute "
        "colour: buff → none; supplied by the interviewer yes → no");
  must(held.desk->undo());
  CHECK(event_words(last()) == "undid what was done on a claim in aske-1");
  CHECK(change_words(last(), lists).find("number 10 to 14 → 1 to 2") != std::string::npos);
}

TEST_CASE("a term that stayed is not said to have changed with the words beside it") {
  Desk held;
  const AuthorityLists lists{places(), {}};
  Claim claim = held.of(Statement::ends);
  const auto last = [&] { return events_on(held.desk->site(), "claim", to_string(claim.id)).back(); };
  claim.place_words = "up forward";
  must(held.desk->correct(claim, ""));
  CHECK(change_words(last(), lists) == "status proposed → said so");
  claim.place_words = "xyz";
  must(held.desk->correct(claim, ""));
  CHECK(change_words(last(), lists).empty());
  claim.place = "ship";
  claim.place_words = "The tender";
  must(held.desk->correct(claim, ""));
  CHECK(change_words(last(), lists) == "place Foredeck → The tender");
}

TEST_CASE("every kind of event is said in words") {
  JournalEvent event;
  struct Row {
    const char *kind, *target_kind, *target, *interview, *words;
  };
  for (const Row& row :
       {Row{"proposed", "interview", "aske-1", "aske-1", "proposed claims of aske-1"},
        Row{"taken-in", "list", "places", "", "took in the list of places"},
        Row{"taken-in", "person", "aske", "", "took in the person aske"},
        Row{"changed", "named-event", "yard", "", "changed the named event yard"},
        Row{"changed", "release", "aske-1", "aske-1", "changed a release of aske-1"},
        Row{"weighed", "site", "0123", "", "weighed the claims"},
        Row{"read", "passages-read", "aske-1/1 anna", "aske-1", "marked a passage as read in aske-1"},
        Row{"settled", "claim", "0123", "aske-1", "settled a difference on a claim in aske-1"}}) {
    CAPTURE(row.words);
    event.kind = row.kind;
    event.target_kind = row.target_kind;
    event.target = row.target;
    event.interview = row.interview;
    CHECK(event_words(event) == row.words);
    CHECK(change_words(event, {}).empty());
  }
}

TEST_CASE("what two copies have otherwise is told in words, without what follows from it") {
  AuthorityLists lists;
  Term quay;
  quay.key = "quay", quay.name = "Holm quay";
  lists.places = AuthorityList(AuthorityList::Kind::places, {quay});
  DoubleDecision both;
  both.target_kind = "claim";
  both.here.state =
      R"({"status":"said-so","place":"quay","dated":{"edtf":"1958","written":"1958"},"rule":"year",)"
      R"("period":[["known",-4383,-4019],["known",-4382,-4018]],"anchor":"a"})";
  both.there.state =
      R"({"status":"misread","place":"","dated":{"edtf":"1959","written":"1959"},"rule":"year-digits",)"
      R"("period":[["known",-4018,-3654],["known",-4017,-3653]],"anchor":"b"})";
  CHECK(difference_words(both, lists) == std::vector<std::string>{"status: here said so, there misread",
                                                                  "place: here Holm quay, there none",
                                                                  "when: here 1958, there 1959"});
  both.there.state = "";
  CHECK(difference_words(both, lists) == std::vector<std::string>{"there left undecided or taken away"});
}
