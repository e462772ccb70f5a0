// What two imprecise periods can be to each other. Each basic relation is a handful of differences between
// the four boundaries; whether it can hold is a shortest-path question on five points (the origin and the
// boundaries), which is exact for whole days.
#include "witnessmark/time/relations.h"

#include <algorithm>
#include <array>
#include <limits>

#include <fmt/format.h>

namespace witnessmark {
namespace {

constexpr std::size_t kOrigin = 0;
constexpr std::size_t kABegin = 1;
constexpr std::size_t kAEnd = 2;
constexpr std::size_t kBBegin = 3;
constexpr std::size_t kBEnd = 4;
constexpr std::size_t kPoints = 5;
constexpr std::int64_t kNoLimit = std::numeric_limits<std::int64_t>::max();

/// most[i][j] is the largest j - i.
class BoundaryNetwork {
 public:
  BoundaryNetwork() {
    for (auto& row : most_) row.fill(kNoLimit);
    for (std::size_t i = 0; i < kPoints; ++i) most_[i][i] = 0;
  }

  void limit(std::size_t from, std::size_t to, std::int64_t days) {
    most_[from][to] = std::min(most_[from][to], days);
  }
  void less(std::size_t a, std::size_t b) { limit(b, a, -1); }
  void equal(std::size_t a, std::size_t b) {
    limit(a, b, 0);
    limit(b, a, 0);
  }
  void bound(std::size_t point, const Boundary& boundary) {
    if (boundary.latest) limit(kOrigin, point, boundary.latest->value);
    if (boundary.earliest) limit(point, kOrigin, -boundary.earliest->value);
  }

  /// Tightens everything; false when it cannot hold.
  bool close() {
    for (std::size_t k = 0; k < kPoints; ++k) {
      for (std::size_t i = 0; i < kPoints; ++i) {
        for (std::size_t j = 0; j < kPoints; ++j) {
          if (most_[i][k] == kNoLimit || most_[k][j] == kNoLimit) continue;
          most_[i][j] = std::min(most_[i][j], most_[i][k] + most_[k][j]);
        }
      }
    }
    for (std::size_t i = 0; i < kPoints; ++i) {
      if (most_[i][i] < 0) return false;
    }
    return true;
  }

  std::optional<Day> latest(std::size_t point) const { return value(most_[kOrigin][point], 1); }
  std::optional<Day> earliest(std::size_t point) const { return value(most_[point][kOrigin], -1); }

 private:
  static std::optional<Day> value(std::int64_t days, int sign) {
    return days == kNoLimit ? std::nullopt : std::optional(Day{sign * days});
  }
  std::array<std::array<std::int64_t, kPoints>, kPoints> most_{};
};

BoundaryNetwork network_of(const Period& a, const Period& b) {
  BoundaryNetwork network;
  network.bound(kABegin, a.begin);
  network.bound(kAEnd, a.end);
  network.bound(kBBegin, b.begin);
  network.bound(kBEnd, b.end);
  network.less(kABegin, kAEnd);
  network.less(kBBegin, kBEnd);
  return network;
}

/// Signs of a.begin - b.begin and a.end - b.end, and of the two crosswise where they decide.
void require(BoundaryNetwork& network, Allen relation) {
  switch (relation) {
    case Allen::precedes:
      network.less(kAEnd, kBBegin);
      return;
    case Allen::meets:
      network.equal(kAEnd, kBBegin);
      return;
    case Allen::overlaps:
      network.less(kABegin, kBBegin);
      network.less(kBBegin, kAEnd);
      network.less(kAEnd, kBEnd);
      return;
    case Allen::finished_by:
      network.less(kABegin, kBBegin);
      network.equal(kAEnd, kBEnd);
      return;
    case Allen::contains:
      network.less(kABegin, kBBegin);
      network.less(kBEnd, kAEnd);
      return;
    case Allen::starts:
      network.equal(kABegin, kBBegin);
      network.less(kAEnd, kBEnd);
      return;
    case Allen::equals:
      network.equal(kABegin, kBBegin);
      network.equal(kAEnd, kBEnd);
      return;
    case Allen::started_by:
      network.equal(kABegin, kBBegin);
      network.less(kBEnd, kAEnd);
      return;
    case Allen::during:
      network.less(kBBegin, kABegin);
      network.less(kAEnd, kBEnd);
      return;
    case Allen::finishes:
      network.less(kBBegin, kABegin);
      network.equal(kAEnd, kBEnd);
      return;
    case Allen::overlapped_by:
      network.less(kBBegin, kABegin);
      network.less(kABegin, kBEnd);
      network.less(kBEnd, kAEnd);
      return;
    case Allen::met_by:
      network.equal(kBEnd, kABegin);
      return;
    case Allen::preceded_by:
      network.less(kBEnd, kABegin);
      return;
  }
}

constexpr AllenSet set_of(std::initializer_list<Allen> relations) {
  AllenSet set;
  for (const Allen relation : relations) set = set | AllenSet::of(relation);
  return set;
}

Answer answer(AllenSet possible, AllenSet asked) {
  if (possible.empty()) return Answer::cannot_tell;
  if ((possible & asked).empty()) return Answer::no;
  return (possible & ~asked).empty() ? Answer::yes : Answer::cannot_tell;
}

}  // namespace

std::string_view to_string(Answer answer) {
  switch (answer) {
    case Answer::yes:
      return "yes";
    case Answer::no:
      return "no";
    case Answer::cannot_tell:
      return "cannot tell";
  }
  return "";
}

AllenSet possible_relations(const Period& a, const Period& b) {
  const BoundaryNetwork known = network_of(a, b);
  AllenSet possible;
  for (int i = 0; i < 13; ++i) {
    BoundaryNetwork network = known;
    require(network, static_cast<Allen>(i));
    if (network.close()) possible = possible | AllenSet::of(static_cast<Allen>(i));
  }
  return possible;
}

Answer before(const Period& a, const Period& b) {
  return answer(possible_relations(a, b), set_of({Allen::precedes, Allen::meets}));
}

Answer overlap(const Period& a, const Period& b) {
  return answer(possible_relations(a, b),
                ~set_of({Allen::precedes, Allen::meets, Allen::met_by, Allen::preceded_by}));
}

Answer within(const Period& a, const Period& b) {
  return answer(possible_relations(a, b),
                set_of({Allen::starts, Allen::during, Allen::finishes, Allen::equals}));
}

}  // namespace witnessmark
