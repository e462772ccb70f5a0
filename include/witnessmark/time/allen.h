#pragma once
#include <cstdint>
#include <string>
#include <string_view>

#include "witnessmark/base/result.h"
#include "witnessmark/time/day.h"

namespace witnessmark {

/// The 13 relations between two proper intervals (Allen, Maintaining Knowledge about Temporal Intervals, CACM 26(11),
/// 1983), in the order p m o F D s e S d f O M P.
enum class Allen : std::uint8_t {
  precedes, meets, overlaps, finished_by, contains, starts, equals, started_by, during, finishes, overlapped_by, met_by,
  preceded_by
};

/// A set of basic relations, as 13 bits.
struct AllenSet {
  std::uint16_t bits = 0;

  static constexpr AllenSet of(Allen relation) { return {static_cast<std::uint16_t>(1U << static_cast<int>(relation))}; }
  static constexpr AllenSet full() { return {0x1FFF}; }
  bool has(Allen relation) const { return (bits >> static_cast<int>(relation)) & 1U; }
  bool empty() const { return bits == 0; }
  int size() const;
  /// Exactly one relation is left.
  bool certain() const { return size() == 1; }

  friend constexpr AllenSet operator|(AllenSet a, AllenSet b) { return {static_cast<std::uint16_t>(a.bits | b.bits)}; }
  friend constexpr AllenSet operator&(AllenSet a, AllenSet b) { return {static_cast<std::uint16_t>(a.bits & b.bits)}; }
  friend constexpr AllenSet operator~(AllenSet a) { return {static_cast<std::uint16_t>(~a.bits & 0x1FFF)}; }
  bool operator==(const AllenSet&) const = default;
};

/// The relation of [a_begin, a_end) to [b_begin, b_end); both must have at least one day.
Allen relation_of(Day a_begin, Day a_end, Day b_begin, Day b_end);

AllenSet converse(AllenSet set);

/// All relations x to z can have when x stands to y in one of a and y to z in one of b.
AllenSet compose(AllenSet a, AllenSet b);

/// "(pmo)"; "()" for the empty set.
std::string to_string(AllenSet set);
Result<AllenSet> parse_allen(std::string_view text);

/// "before", "meets", "overlaps" … in words.
std::string_view in_words(Allen relation);

}  // namespace witnessmark
