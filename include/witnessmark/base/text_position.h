#pragma once
#include <algorithm>
#include <compare>
#include <cstddef>
#include <cstdint>

namespace witnessmark {

/// Positions of three kinds that do not mix. All are counted from 0.
struct ByteOffset {
  std::int64_t value = 0;
  auto operator<=>(const ByteOffset&) const = default;
};

/// A Unicode code point position in one version of a reading text.
struct CodePoint {
  std::int64_t value = 0;
  auto operator<=>(const CodePoint&) const = default;
};

/// A time in a recording, in milliseconds from its start.
struct Millisecond {
  std::int64_t value = 0;
  auto operator<=>(const Millisecond&) const = default;
};

/// Half-open: begin is in, end is out.
template <typename Position>
struct Range {
  Position begin;
  Position end;

  std::int64_t length() const { return end.value - begin.value; }
  bool empty() const { return end <= begin; }
  bool contains(Position position) const { return begin <= position && position < end; }
  bool overlaps(const Range& other) const { return begin < other.end && other.begin < end; }
  /// Positions in common over positions in either (Jaccard index), 0 to 1.
  double shared_with(const Range& other) const {
    const std::int64_t common =
        std::min(end.value, other.end.value) - std::max(begin.value, other.begin.value);
    if (common <= 0) return 0;
    return static_cast<double>(common) / static_cast<double>(length() + other.length() - common);
  }
  auto operator<=>(const Range&) const = default;
};

using ByteRange = Range<ByteOffset>;
using CodePointRange = Range<CodePoint>;
using TimeRange = Range<Millisecond>;

/// From positions in a string.
inline ByteRange byte_range(std::size_t begin, std::size_t end) {
  return {{static_cast<std::int64_t>(begin)}, {static_cast<std::int64_t>(end)}};
}

}  // namespace witnessmark
