#include <algorithm>
#include <cmath>

#include "witnessmark/weigh/coder_agreement.h"

namespace witnessmark {

std::vector<bool> boundaries_of(const std::vector<Stretch>& stretches, std::int64_t length) {
  std::vector<bool> boundaries(static_cast<std::size_t>(std::max<std::int64_t>(length, 0) + 1), false);
  for (auto [first, past] : stretches) {
    first = std::clamp<std::int64_t>(first, 0, length);
    past = std::clamp<std::int64_t>(past, 0, length);
    if (first >= past) continue;
    boundaries[static_cast<std::size_t>(first)] = true;
    boundaries[static_cast<std::size_t>(past)] = true;
  }
  return boundaries;
}

std::optional<double> BoundaryDifference::share() const {
  if (windows == 0) return std::nullopt;
  return static_cast<double>(misses) / static_cast<double>(windows);
}

BoundaryDifference window_difference(const std::vector<bool>& a, const std::vector<bool>& b,
                                     std::int64_t width) {
  BoundaryDifference difference;
  if (width < 1 || a.size() != b.size() || a.size() < static_cast<std::size_t>(width)) return difference;
  const auto reach = static_cast<std::size_t>(width);
  std::int64_t surplus = 0;  // boundaries of a in the window less those of b
  for (std::size_t i = 0; i < a.size(); ++i) {
    surplus += static_cast<int>(a[i]) - static_cast<int>(b[i]);
    if (i + 1 < reach) continue;
    if (i >= reach) surplus -= static_cast<int>(a[i - reach]) - static_cast<int>(b[i - reach]);
    ++difference.windows;
    difference.misses += surplus != 0;
  }
  return difference;
}

std::int64_t customary_width(const std::vector<bool>& boundaries) {
  const auto marked = std::count(boundaries.begin(), boundaries.end(), true);
  const double segments = static_cast<double>(marked) + 1;
  return std::max<std::int64_t>(2, std::llround(static_cast<double>(boundaries.size()) / segments / 2));
}

}  // namespace witnessmark
