#pragma once
#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace witnessmark {

// How far coders who worked on the same material agree, beyond what chance would give. Plain arithmetic on numbers;
// categories are numbers, their meaning is the caller's.

/// Why a coefficient has no value.
enum class Undefined {
  defined,
  no_pairs,      ///< No unit was coded by two coders: there is nothing to compare.
  no_variation,  ///< Every value is the same. Chance alone would give full agreement: 0/0, neither 0 nor 1.
  uneven,        ///< The form asks for a square table, or for the same number of ratings a unit, and has not got it.
  negative       ///< A number of ratings is below zero.
};
/// "nothing was coded by two", "every value is the same" …; empty when defined.
std::string_view to_string(Undefined why);

/// 1 is perfect, 0 what chance would give, below 0 systematic disagreement (or too few units).
struct Coefficient {
  std::optional<double> value;
  Undefined why = Undefined::defined;
  bool operator==(const Coefficient&) const = default;
};

/// Cohen's kappa of two coders (Cohen, Educational and Psychological Measurement 20 (1960) 37-46): table[i][j] is how many
/// units the first coder put into category i and the second into j.
Coefficient cohen_kappa(const std::vector<std::vector<std::int64_t>>& table);

/// Fleiss' kappa (Fleiss, Psychological Bulletin 76 (1971) 378-382): ratings[unit][category] is how many raters put the
/// unit into the category; the same number, two or more, for every unit.
Coefficient fleiss_kappa(const std::vector<std::vector<std::int64_t>>& ratings);

/// How far apart two values are. Nominal: the same or not. Ordinal: by how many values lie between them in rank.
/// Interval: by their difference.
enum class Scale { nominal, ordinal, interval };

/// Krippendorff's alpha for any number of coders and with missing values (Krippendorff, "Computing Krippendorff's
/// Alpha-Reliability", 2011): values[coder][unit], rows of equal length. A unit with fewer than two values says nothing and
/// drops out.
Coefficient krippendorff_alpha(const std::vector<std::vector<std::optional<double>>>& values, Scale scale);

/// A stretch a coder marked, in units of the text (code points, words, sentences): [first, past).
using Stretch = std::pair<std::int64_t, std::int64_t>;

/// The places where a stretch begins or ends in a text of so many units, as a row of length + 1 gaps: gap g lies before
/// unit g. Stretches are cut to the text; empty ones mark nothing.
std::vector<bool> boundaries_of(const std::vector<Stretch>& stretches, std::int64_t length);

/// WindowDiff (Pevzner and Hearst, Computational Linguistics 28 (2002) 19-36): a window slides over two rows of
/// boundaries and is a miss where it holds more boundaries in one than in the other. What counts as the window differs between
/// programs and changes the result; here it is `width` consecutive places, so that there are n - width + 1 windows.
/// (Of a program that says k and compares k + 1 places, pass k + 1.)
struct BoundaryDifference {
  std::int64_t windows = 0;
  std::int64_t misses = 0;
  /// Share of misses, 0 when all boundaries are in the same windows. Nothing when there was no window.
  std::optional<double> share() const;
  bool operator==(const BoundaryDifference&) const = default;
};
/// Width at least 1. Without windows when the rows differ in length or are shorter than the width.
BoundaryDifference window_difference(const std::vector<bool>& a, const std::vector<bool>& b, std::int64_t width);

/// Half the mean distance between boundaries of a row, rounded, at least 2: the customary width (Pevzner and Hearst 2002).
std::int64_t customary_width(const std::vector<bool>& boundaries);

}  // namespace witnessmark
