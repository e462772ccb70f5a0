#pragma once
#include <array>
#include <cstdint>
#include <numeric>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/time/relations.h"

namespace witnessmark {

enum class Outcome { agrees, compatible, conflicts, cannot_tell, silent };
std::string_view to_string(Outcome outcome);
std::optional<Outcome> parse_outcome(std::string_view text);

/// A claim held against one entry, or against the silence of the register (entry empty).
struct Comparison {
  Id claim;
  std::string entry;                 ///< Key of an entry or a stay; empty for silent.
  Outcome outcome = Outcome::silent;
  bool intention = false;            ///< The entry is an intention: at best "consistent with an intention".
  bool circular = false;             ///< The entry's date or identification rests on what is claimed, or the narrator was shown it.
  AllenSet relation;                 ///< Possible relations of the claim's period to the entry's.
  std::optional<Distance> gap;       ///< Days, for conflicts.
  std::string explanation;           ///< One plain sentence.
  std::string noted;  ///< The letter-figure note on the entry, where it has one; made when read.
  bool operator==(const Comparison&) const = default;
};

std::string dump(const Comparison& comparison);

/// A claim counts under the outcome that matters most to a curator among its comparisons: conflicts, agrees, compatible,
/// cannot tell, silent, in this order. An agreement that is no independent one (circular) counts as compatible.
Outcome foremost(const std::vector<Comparison>& comparisons);

/// How many comparisons came out how.
struct OutcomeTally {
  std::array<std::int64_t, 5> numbers{};
  std::int64_t& operator[](Outcome outcome) { return numbers[static_cast<std::size_t>(outcome)]; }
  std::int64_t operator[](Outcome outcome) const { return numbers[static_cast<std::size_t>(outcome)]; }
  std::int64_t total() const { return std::accumulate(numbers.begin(), numbers.end(), std::int64_t{0}); }
  bool operator==(const OutcomeTally&) const = default;
};

/// Facts about the telling, shown beside a claim and never folded into one score.
struct Recall {
  std::optional<YearRange> age_at_interview;
  std::optional<YearRange> age_at_event;
  /// Completed years from event to interview. Below zero when the event is surely dated after the interview
  /// (a slip in one of the dates, or something expected): that is no distance, see dated_after_interview.
  std::optional<YearRange> recall_distance;
  /// Was the narrator in service when it happened? `partly` shows as cannot_tell with the periods named.
  Answer in_service = Answer::cannot_tell;
  bool partly_in_service = false;
  bool operator==(const Recall&) const = default;
};

/// Whether what is told of is surely dated after the interview, so that no recall distance can be stated.
bool dated_after_interview(const Recall& recall);

std::string dump(const Recall& recall);

}  // namespace witnessmark
