#include "witnessmark/weigh/recall_table.h"

#include <fmt/core.h>

#include <algorithm>

namespace witnessmark {
namespace {

void add(OutcomeRow& row, Outcome outcome) {
  ++row.claims;
  ++row.by_outcome[outcome];
}

std::vector<OutcomeRow> rows_of(std::map<std::int64_t, OutcomeRow> rows) {
  std::vector<OutcomeRow> made;
  for (auto& [place, row] : rows) made.push_back(std::move(row));
  return made;
}

/// The decade a distance surely lies in, from 0; below that the rows that come after: -1 when it is not known
/// in which of two or more, -2 when nothing is known, -3 when what is told of is dated after the interview.
std::int64_t decade_of(const Recall& recall) {
  if (dated_after_interview(recall)) return -3;
  const auto& distance = recall.recall_distance;
  if (!distance) return -2;
  return distance->least / 10 == distance->most / 10 ? distance->least / 10 : -1;
}

}  // namespace

const char* const kRecallTableCaution =
    "What this table cannot show: whether memory fails with time. The claims are no sample; each narrator "
    "told many of them, "
    "what is told long after is what was worth remembering, and the register speaks to some times and things "
    "more than to others. "
    "An outcome says how two statements stand, not which of them is right. Published findings on the dating "
    "of memories point in "
    "both directions (Janssen, Chessa and Murre 2006; Burt, Kemp and Conway 2001): no date is corrected by "
    "this, and no narrator "
    "is graded.";

RecallTable tabulate_recall(const std::vector<RecallCase>& cases) {
  constexpr std::int64_t kAfterDecades = 1'000'000;
  std::map<std::int64_t, OutcomeRow> distances, bases, presences;
  RecallTable table;
  table.all.name = "all";
  for (const RecallCase& one : cases) {
    add(table.all, one.outcome);
    const std::int64_t decade = decade_of(one.recall);
    OutcomeRow& distance = distances[decade >= 0 ? decade : kAfterDecades - decade];
    distance.name = decade >= 0    ? fmt::format("{} to {} years", decade * 10, decade * 10 + 9)
                    : decade == -1 ? "in one or another of these rows"
                    : decade == -2 ? "not known"
                                   : "dated after the interview";
    add(distance, one.outcome);
    OutcomeRow& basis = bases[static_cast<std::int64_t>(one.basis)];
    basis.name = to_string(one.basis);
    add(basis, one.outcome);
    const bool partly = one.recall.partly_in_service;
    const Answer inside = one.recall.in_service;
    OutcomeRow& presence = presences[partly ? 1 : inside == Answer::yes ? 0 : inside == Answer::no ? 2 : 3];
    presence.name = partly                  ? "in service for part of the time"
                    : inside == Answer::yes ? "in service then"
                    : inside == Answer::no  ? "not in service then"
                                            : "not known";
    add(presence, one.outcome);
  }
  table.by_distance = rows_of(std::move(distances));
  table.by_basis = rows_of(std::move(bases));
  table.by_presence = rows_of(std::move(presences));
  return table;
}

}  // namespace witnessmark
