#include "witnessmark/model/comparison.h"

#include <fmt/format.h>

#include "model/names.h"

namespace witnessmark {
namespace {

constexpr std::pair<Outcome, std::string_view> kOutcomes[] = {
    {Outcome::agrees, "agrees"},       {Outcome::compatible, "compatible"},
    {Outcome::conflicts, "conflicts"}, {Outcome::cannot_tell, "cannot-tell"},
    {Outcome::silent, "silent"},
};

std::string range_or_dash(const std::optional<YearRange>& range) {
  return range ? to_string(*range) : "-";
}

}  // namespace

std::string_view to_string(Outcome outcome) {
  return word_of(kOutcomes, outcome);
}
std::optional<Outcome> parse_outcome(std::string_view text) {
  return value_of(kOutcomes, text);
}

Outcome foremost(const std::vector<Comparison>& comparisons) {
  constexpr Outcome kOrder[] = {Outcome::conflicts, Outcome::agrees, Outcome::compatible,
                                Outcome::cannot_tell};
  OutcomeTally tally;
  for (const Comparison& comparison : comparisons) {
    const bool circle = comparison.outcome == Outcome::agrees && comparison.circular;
    ++tally[circle ? Outcome::compatible : comparison.outcome];
  }
  for (const Outcome outcome : kOrder)
    if (tally[outcome] > 0) return outcome;
  return Outcome::silent;
}

std::string dump(const Comparison& comparison) {
  std::string line(to_string(comparison.outcome));
  line += " " + (comparison.entry.empty() ? std::string("-") : comparison.entry);
  if (comparison.intention) line += " intention";
  if (comparison.circular) line += " circular";
  if (!comparison.relation.empty()) line += " " + to_string(comparison.relation);
  if (comparison.gap) {
    const std::string most = comparison.gap->most ? fmt::format("{}", *comparison.gap->most) : "..";
    line += fmt::format(" gap {}..{}", comparison.gap->least, most);
  }
  return line;
}

bool dated_after_interview(const Recall& recall) {
  return recall.recall_distance && recall.recall_distance->least < 0;
}

std::string dump(const Recall& recall) {
  return fmt::format("age-at-interview {} age-at-event {} distance {} in-service {}{}",
                     range_or_dash(recall.age_at_interview), range_or_dash(recall.age_at_event),
                     range_or_dash(recall.recall_distance), to_string(recall.in_service),
                     recall.partly_in_service ? " partly" : "");
}

}  // namespace witnessmark
