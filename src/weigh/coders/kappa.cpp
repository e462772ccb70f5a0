#include <algorithm>
#include <numeric>

#include "witnessmark/weigh/coder_agreement.h"

namespace witnessmark {
namespace {

using Table = std::vector<std::vector<std::int64_t>>;

/// Rows of the given length, without negative numbers.
Undefined malformed(const Table& table, std::size_t columns) {
  for (const auto& row : table) {
    if (row.size() != columns) return Undefined::uneven;
    if (std::any_of(row.begin(), row.end(), [](std::int64_t count) { return count < 0; }))
      return Undefined::negative;
  }
  return Undefined::defined;
}

std::int64_t sum(const std::vector<std::int64_t>& counts) {
  return std::accumulate(counts.begin(), counts.end(), std::int64_t{0});
}

std::vector<std::int64_t> column_sums(const Table& table) {
  std::vector<std::int64_t> sums(table.empty() ? 0 : table.front().size());
  for (const auto& row : table) {
    for (std::size_t i = 0; i < row.size(); ++i) sums[i] += row[i];
  }
  return sums;
}

}  // namespace

std::string_view to_string(Undefined why) {
  switch (why) {
    case Undefined::defined:
      return "";
    case Undefined::no_pairs:
      return "nothing was coded by two";
    case Undefined::no_variation:
      return "every value is the same";
    case Undefined::uneven:
      return "not every row has the same number of values";
    case Undefined::negative:
      return "a number of ratings is below zero";
  }
  return "";
}

Coefficient cohen_kappa(const Table& table) {
  if (const auto why = malformed(table, table.size()); why != Undefined::defined) return {std::nullopt, why};
  std::int64_t units = 0;
  std::int64_t same = 0;
  double by_chance = 0;
  const auto second = column_sums(table);
  for (std::size_t i = 0; i < table.size(); ++i) {
    const std::int64_t first = sum(table[i]);
    units += first;
    same += table[i][i];
    by_chance += static_cast<double>(first) * static_cast<double>(second[i]);
  }
  if (units == 0) return {std::nullopt, Undefined::no_pairs};
  // Multiplied by the square of the units all numbers are whole, so that "no variation" is exact.
  const double square = static_cast<double>(units) * static_cast<double>(units);
  if (by_chance == square) return {std::nullopt, Undefined::no_variation};
  const double observed = static_cast<double>(same) * static_cast<double>(units);
  return {(observed - by_chance) / (square - by_chance), Undefined::defined};
}

Coefficient fleiss_kappa(const Table& ratings) {
  if (ratings.empty()) return {std::nullopt, Undefined::no_pairs};
  if (const auto why = malformed(ratings, ratings.front().size()); why != Undefined::defined)
    return {std::nullopt, why};
  const std::int64_t raters = sum(ratings.front());
  if (raters < 2) return {std::nullopt, Undefined::no_pairs};
  double pairs = 0;  // of raters who agree on a unit, in order
  for (const auto& unit : ratings) {
    if (sum(unit) != raters) return {std::nullopt, Undefined::uneven};
    for (const std::int64_t count : unit)
      pairs += static_cast<double>(count) * static_cast<double>(count - 1);
  }
  const double values = static_cast<double>(ratings.size()) * static_cast<double>(raters);
  const double observed = pairs / (values * static_cast<double>(raters - 1));
  double by_chance = 0;
  for (const std::int64_t count : column_sums(ratings)) {
    if (static_cast<double>(count) == values) return {std::nullopt, Undefined::no_variation};
    const double share = static_cast<double>(count) / values;
    by_chance += share * share;
  }
  return {(observed - by_chance) / (1 - by_chance), Undefined::defined};
}

}  // namespace witnessmark
