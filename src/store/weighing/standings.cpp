#include "store/weighing/standings.h"

#include "store/record/words.h"

namespace witnessmark {
namespace {

std::optional<YearRange> years_from(const SqlStatement& row, int column) {
  if (row.is_null(column)) return std::nullopt;
  return YearRange{row.integer(column), row.integer(column + 1)};
}

}  // namespace

const char* const kStandingColumns =
    "claims.id, age_at_interview_least, age_at_interview_most, age_at_event_least, age_at_event_most, "
    "recall_distance_least, recall_distance_most, in_service, partly_in_service, foremost, agrees, compatible, "
    "conflicts, cannot_tell, silent, intentions";

ClaimStanding standing_from(const SqlStatement& row) {
  ClaimStanding standing;
  standing.claim = row.id(0);
  standing.recall.age_at_interview = years_from(row, 1);
  standing.recall.age_at_event = years_from(row, 3);
  standing.recall.recall_distance = years_from(row, 5);
  standing.recall.in_service = value_for<Answer>(row.text_view(7));
  standing.recall.partly_in_service = row.flag(8);
  standing.foremost = static_cast<Outcome>(row.integer(9));
  for (int outcome = 0; outcome < 5; ++outcome)
    standing.comparisons.numbers[static_cast<std::size_t>(outcome)] = row.integer(10 + outcome);
  standing.intentions = row.integer(15);
  return standing;
}

}  // namespace witnessmark
