#include "witnessmark/weigh/recall.h"

#include <doctest/doctest.h>

using namespace witnessmark;

namespace {

Dated dated(const std::string& edtf) { return {edtf, parse_edtf(edtf).value(), Calendar::gregorian}; }

std::string recall(const std::string& event, const std::string& born, const std::string& told,
                   const std::vector<std::string>& service = {}, const std::string& anchor = "") {
  Interview interview;
  interview.date = dated(told);
  Person narrator;
  narrator.birth = dated(born);
  for (const std::string& when : service) narrator.service.push_back({"", dated(when), "", ""});
  const auto policy = default_date_policy();
  ClaimTime when;
  when.dated = dated(event);
  when.anchor = anchor;
  const Recall facts = recall_of(when, interview, narrator, policy);
  std::string text = "at interview " + (facts.age_at_interview ? to_string(*facts.age_at_interview) : "-") +
                     ", at event " + (facts.age_at_event ? to_string(*facts.age_at_event) : "-") + ", distance " +
                     (facts.recall_distance ? to_string(*facts.recall_distance) : "-") + ", in service " +
                     std::string(to_string(facts.in_service));
  return text + (facts.partly_in_service ? " partly" : "");
}

}  // namespace

TEST_CASE("ages and recall distance are ranges of completed years") {
  // Computed by hand: born 2 March 1932, interview 15 June 1998, event at some time in 1951.
  CHECK(recall("1951", "1932-03-02", "1998-06-15") ==
        "at interview 66, at event 18 to 19, distance 46 to 47, in service cannot tell");
  CHECK(recall("1951", "1932", "1998") ==
        "at interview 65 to 66, at event 18 to 19, distance 46 to 47, in service cannot tell");
}

TEST_CASE("of a time open to one side the date named counts") {
  CHECK(recall("[..1962-23]", "1928-03-14", "1994-06-07") ==
        "at interview 66, at event 34, distance 31, in service cannot tell");
}

TEST_CASE("a date reckoned from an age has that age, however widely the birth is known") {
  // "When I was nineteen": of one born in 1931, some day of 1950 or 1951 (check by hand: born 1 January 1931,
  // nineteen from 1 January 1950; born 31 December 1931, nineteen until 30 December 1951).
  CHECK(recall("1950/1951", "1931", "2003", {}, "birth 1931") ==
        "at interview 71 to 72, at event 19, distance 51 to 53, in service cannot tell");
  CHECK(recall("1948-03-14/1949-03-13", "1929-03-14", "1994-09-14", {}, "birth 1929-03-14")
            .find("at event 19,") != std::string::npos);
  CHECK(recall("1950/1951", "1931", "2003").find("at event 18 to 20,") !=
        std::string::npos);  // told by the year
}

TEST_CASE("service known to the month is of whole months, known to the year only it stays open") {
  CHECK(recall("1946-09/1961-03", "1931", "2003", {"1946-09/1961-03"}).ends_with("in service yes"));
  CHECK(recall("1961-04", "1931", "2003", {"1946-09/1961-03"}).ends_with("in service no"));
  CHECK(recall("1954", "1932", "1998", {"1950-03/1954"}).ends_with("in service cannot tell partly"));
}

TEST_CASE("an event is inside, outside or partly inside the narrator's service") {
  CHECK(recall("1951-05", "1932", "1998", {"1950-03/1954"}).ends_with("in service yes"));
  CHECK(recall("1949", "1932", "1998", {"1950-03/1954"}).ends_with("in service no"));
  CHECK(recall("1950", "1932", "1998", {"1950-03/1953-06"}).ends_with("in service cannot tell partly"));
  CHECK(recall("1952", "1932", "1998", {"1950-03/1951", "1953/1955"}).ends_with("in service no"));
}
