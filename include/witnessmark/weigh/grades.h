#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/result.h"

namespace witnessmark {

/// What speaks for a statement and what against it, counted. Sources that go back to one another are one group. The kinds
/// of a side are the most different kinds that as many of its groups can bring, one each: a log and a book drawn from it are
/// one group and one kind.
struct Tally {
  std::int64_t groups_for = 0;
  std::int64_t kinds_for = 0;
  std::int64_t groups_against = 0;
  std::int64_t kinds_against = 0;
  std::int64_t second_hand_for = 0;       ///< Groups that speak at second hand only.
  std::int64_t second_hand_against = 0;
  std::int64_t intentions_for = 0;        ///< Groups that show no more than that it was meant.
  bool operator==(const Tally&) const = default;
};

/// "for 2 groups of 2 kinds (1 at second hand, 1 intention), against 1 of 1".
std::string dump(const Tally& tally);

/// One row of the table: the grade given where every number lies within its limits.
struct GradeRule {
  struct Limits {
    std::int64_t least = 0;
    std::optional<std::int64_t> most;
    bool operator==(const Limits&) const = default;
  };
  std::string grade;
  std::array<Limits, 7> limits;   ///< In the order of Tally's numbers.
  std::string meaning;            ///< For people.
};

/// The rules by which an institution names how well a statement stands. It is data: shared/grades.csv, or the institution's
/// own. The default asks for independent sources of two kinds (common practice, no source; the insistence on different
/// documents and different conditions is Langlois and Seignobos's, Introduction to the Study of History).
class GradeTable {
 public:
  /// Rules in order; the first that fits gives the grade. The last must fit everything.
  explicit GradeTable(std::vector<GradeRule> rules) : rules_(std::move(rules)) {}

  const GradeRule& grade(const Tally& tally) const;
  const std::vector<GradeRule>& rules() const { return rules_; }

 private:
  std::vector<GradeRule> rules_;
};

/// Reads the table from CSV (RFC 4180) with the columns grade, groups_for, kinds_for, groups_against, kinds_against,
/// second_hand_for, second_hand_against, intentions_for, meaning. A cell of a number is empty (any), "2" (just so many),
/// "2+" (at least) or "0..1". An Error with line and column for an unknown or missing column, a cell that is none of
/// these, a row without grade, or a last row that does not fit everything.
Result<GradeTable> parse_grade_table(std::string_view text, std::string_view source);

}  // namespace witnessmark
