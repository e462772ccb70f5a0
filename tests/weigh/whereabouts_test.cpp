#include "witnessmark/weigh/whereabouts.h"

#include <doctest/doctest.h>

using namespace witnessmark;

namespace {

Stay stay(std::string key, std::string where, std::string when, std::string party = "") {
  Stay made;
  made.key = std::move(key);
  made.locations = {std::move(where)};
  made.party = std::move(party);
  made.when.value = parse_edtf(when).value();
  return made;
}

Claim at(std::string where, std::string when, std::string subject = "") {
  Claim claim;
  claim.statement = Statement::located;
  claim.subject = std::move(subject);
  claim.place_words = std::move(where);
  claim.when.dated.value = parse_edtf(when).value();
  claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
  return claim;
}

std::string outcomes(const Claim& claim, const std::vector<ServicePeriod>& service = {}) {
  Register evidence;
  evidence.itinerary = {stay("s1", "Holm Sound", "1958-03-01/1958-05-31"), stay("s2", "Varde", "1958-06-01/1958-08-31"),
                        stay("s3", "Varde", "1958-07-01/1958-07-31", "abel")};
  const AuthorityLists lists;
  const RegisterIndex index(evidence, lists, default_date_policy());
  std::string text;
  for (const Comparison& comparison : compare_whereabouts(claim, index, service))
    text += comparison.entry + " " + std::string(to_string(comparison.outcome)) + "; ";
  return text;
}

}  // namespace

TEST_CASE("a stay at the place told of agrees, one elsewhere through all of the time conflicts") {
  CHECK(outcomes(at("holm sound", "1958-04")) == "s1 agrees; ");
  CHECK(outcomes(at("Holm Sound", "1958-07-04")) == "s2 conflicts; ");
  CHECK(outcomes(at("Varde", "1958")) == "s2 agrees; ");
}

TEST_CASE("a time the itinerary does not cover is left to silence") {
  CHECK(outcomes(at("Varde", "1959-02")) == "");
  CHECK(outcomes(at("Holm Sound", "1958-05/1958-07")) == "s1 agrees; ");
}

TEST_CASE("the vessel's stays do not place a person") {
  CHECK(outcomes(at("Varde", "1958-07-10", "abel")) == "s2 cannot-tell; s3 agrees; ");
}

TEST_CASE("service places a person where the site was, and nowhere else") {
  const auto served = [](const char* when) {
    ServicePeriod period;
    period.person = "brandt";
    period.when.value = parse_edtf(when).value();
    return std::vector<ServicePeriod>{period};
  };
  const Claim there = at("Varde", "1958-07-10", "brandt");
  CHECK(outcomes(there) == "s2 cannot-tell; ");  // nothing is known of his service
  CHECK(outcomes(there, served("1957/1959")) == "s2 compatible; ");
  CHECK(outcomes(there, served("1960/1961")) == "");  // the site without him
  CHECK(outcomes(there, served("1958~/1960")) == "s2 cannot-tell; ");  // it may have begun later
  // In service for a part of the time told of only.
  CHECK(outcomes(at("Varde", "1958-07", "brandt"), served("1955/1958-07-10")) == "s2 cannot-tell; ");
  // Elsewhere than the site, in service: on leave, or mistaken. A log does not say.
  const Claim elsewhere = at("Holm Sound", "1958-07-10", "brandt");
  CHECK(outcomes(elsewhere, served("1957/1959")) == "s2 cannot-tell; ");
  Claim denied = there;
  denied.polarity = Polarity::denied;
  CHECK(outcomes(denied, served("1957/1959")) == "s2 cannot-tell; ");
  // A stay of the person's own says it, whatever the service.
  CHECK(outcomes(at("Varde", "1958-07-10", "abel"), served("1957/1959")) == "s2 compatible; s3 agrees; ");
  CHECK(outcomes(at("Varde", "1958-07-10", "abel"), served("1960/1961")) == "s3 agrees; ");
}

TEST_CASE("the end of a name stands for the one location that has it") {
  CHECK(outcomes(at("sound", "1958-04")) == "s1 agrees; ");
  Register evidence;
  evidence.itinerary = {stay("s1", "Holm Sound", "1958-03-01/1958-05-31"),
                        stay("s2", "Skarr Sound", "1958-06-01/1958-08-31")};
  const AuthorityLists lists;
  const RegisterIndex index(evidence, lists, default_date_policy());
  CHECK(index.location_names("Sound") == std::vector<std::string>{"sound"});  // either of two
  CHECK(index.location_names("HOLM SOUND") == std::vector<std::string>{"holm sound"});
}

TEST_CASE("the gap of a contradicted story runs to the nearest stay at the place told of") {
  Register evidence;
  evidence.itinerary = {stay("s1", "Holm Sound", "1958-03-01/1958-05-31"), stay("s2", "Varde", "1958-06-01/1958-08-31")};
  const AuthorityLists lists;
  const RegisterIndex index(evidence, lists, default_date_policy());
  const auto comparisons = compare_whereabouts(at("Holm Sound", "1958-07-04"), index);
  REQUIRE(comparisons.size() == 1);
  REQUIRE(comparisons[0].gap);
  CHECK(comparisons[0].gap->least == 34);
}
