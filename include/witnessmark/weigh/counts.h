#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/weigh/corroboration.h"

namespace witnessmark {

/// A number from least to most; without most there is no limit.
struct NumberRange {
  std::int64_t least = 0;
  std::optional<std::int64_t> most;
  bool operator==(const NumberRange&) const = default;
};
/// "20", "20 to 22", "20 or more".
std::string to_string(const NumberRange& range);

/// One statement of how many, by an entry or a claim.
struct NumberStatement {
  Id claim;             ///< Nil for an entry.
  std::string entry;    ///< Empty for a claim.
  NumberRange number;
  bool reviewed = true; ///< False for a claim nobody has reviewed.
};

/// What is known of one position, or of one part of what is counted, on the date: all readings of all statements of it.
struct CountedPosition {
  std::string subject, place;
  NumberRange number;
  std::vector<NumberStatement> statements;
};

/// A total reported for a date, held against what is known position by position on that date.
struct CountComparison {
  std::string subject, place;
  Dated when;
  std::optional<Period> period;
  NumberRange total;
  NumberStatement reported;                 ///< Who reports the total.
  std::vector<CountedPosition> positions;   ///< By place, then subject.
  std::vector<std::string> nothing_said;    ///< Places that hold the thing at some other time, and of which nothing is said on this date.
  NumberRange sum;                          ///< Of the positions.
  NumberRange unaccounted;                  ///< By how much the total is more than the sum; 0 where it is not.
  NumberRange excess;                       ///< By how much the sum is more than the total.

  /// Whether total and sum cannot be the same.
  bool differ() const { return unaccounted.least > 0 || excess.least > 0; }
};
/// "gas-cylinders@gas-store 1959-03-31: 24 = 20 + 4 unaccounted", for tests.
std::string dump(const CountComparison& comparison);

/// Every total for which something is known by position on the date: the places that lie in its place, and the things that
/// are parts of what it counts. A statement is of the date when its time lies within the total's, or the total's within its own. A
/// position in another that is stated itself is left out, so that nothing counts twice. "There" is at least one, "not there" none;
/// several statements of one position are several readings, from the least to the most. Intentions and what is only possibly
/// of this site do not count. By subject, place and date.
std::vector<CountComparison> compare_counts(const RegisterIndex& evidence, const std::vector<Testimony>& testimony);

}  // namespace witnessmark
