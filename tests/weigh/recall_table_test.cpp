#include "witnessmark/weigh/recall_table.h"

#include <doctest/doctest.h>
#include <fmt/core.h>

using namespace witnessmark;

namespace {

RecallCase told(std::optional<YearRange> distance, Basis basis, Outcome outcome, Answer there = Answer::yes) {
  RecallCase one;
  one.recall.recall_distance = distance;
  one.recall.in_service = there;
  one.basis = basis;
  one.outcome = outcome;
  return one;
}

std::string dump(const std::vector<OutcomeRow>& rows) {
  std::string text;
  for (const OutcomeRow& row : rows) {
    text += fmt::format("{}: {} of {} agree; ", row.name,
                        row.by_outcome.contains(Outcome::agrees) ? row.by_outcome.at(Outcome::agrees) : 0,
                        row.claims);
  }
  return text;
}

}  // namespace

TEST_CASE("every row says of how many, and a distance that may lie in two rows lies in neither") {
  const RecallTable table = tabulate_recall({
      told(YearRange{38, 39}, Basis::first_hand, Outcome::agrees),
      told(YearRange{30, 30}, Basis::told, Outcome::conflicts, Answer::no),
      told(YearRange{39, 40}, Basis::first_hand, Outcome::agrees),
      told(YearRange{68, 68}, Basis::unstated, Outcome::agrees),
      told(std::nullopt, Basis::unstated, Outcome::silent, Answer::cannot_tell),
      told(YearRange{-80, -80}, Basis::told, Outcome::agrees),
  });
  CHECK(dump(table.by_distance) ==
        "30 to 39 years: 1 of 2 agree; 60 to 69 years: 1 of 1 agree; in one or another of these rows: 1 of 1 "
        "agree; "
        "not known: 0 of 1 agree; dated after the interview: 1 of 1 agree; ");
  CHECK(dump(table.by_basis) == "unstated: 1 of 2 agree; first-hand: 2 of 2 agree; told: 1 of 2 agree; ");
  CHECK(dump(table.by_presence) ==
        "in service then: 4 of 4 agree; not in service then: 0 of 1 agree; not known: 0 of 1 agree; ");
  CHECK(table.all.claims == 6);
}

TEST_CASE("the table comes with what it cannot show") {
  const std::string caution = kRecallTableCaution;
  CHECK(caution.find("no date is corrected") != std::string::npos);
}
