// What two imprecise periods can be to each other. Each basic relation puts the four boundaries in one order;
// whether days can be found for it is asked boundary by boundary, which is exact for whole days.
#include "witnessmark/time/relations.h"

#include <algorithm>
#include <array>
#include <limits>

#include <fmt/format.h>

namespace witnessmark {
namespace {

constexpr std::int64_t kNoLimit = std::numeric_limits<std::int64_t>::max();

/// The order in which a basic relation puts the four boundaries.
struct Step {
  std::size_t boundary;      ///< 0 and 1 those of a, 2 and 3 those of b.
  bool with_the_one_before;  ///< At the same moment; otherwise after it.
};
using Order = std::array<Step, 4>;
constexpr Order kOrders[] = {
    {{{0, false}, {1, false}, {2, false}, {3, false}}},  // precedes
    {{{0, false}, {1, false}, {2, true}, {3, false}}},   // meets
    {{{0, false}, {2, false}, {1, false}, {3, false}}},  // overlaps
    {{{0, false}, {2, false}, {1, false}, {3, true}}},   // finished by
    {{{0, false}, {2, false}, {3, false}, {1, false}}},  // contains
    {{{0, false}, {2, true}, {1, false}, {3, false}}},   // starts
    {{{0, false}, {2, true}, {1, false}, {3, true}}},    // equals
    {{{0, false}, {2, true}, {3, false}, {1, false}}},   // started by
    {{{2, false}, {0, false}, {1, false}, {3, false}}},  // during
    {{{2, false}, {0, false}, {1, false}, {3, true}}},   // finishes
    {{{2, false}, {0, false}, {3, false}, {1, false}}},  // overlapped by
    {{{2, false}, {0, false}, {3, true}, {1, false}}},   // met by
    {{{2, false}, {3, false}, {0, false}, {1, false}}},  // preceded by
};

struct Limits {
  std::int64_t low, high;
};

Limits limits_of(const Boundary& boundary) {
  return {boundary.earliest ? boundary.earliest->value : -kNoLimit,
          boundary.latest ? boundary.latest->value : kNoLimit};
}

/// Whether days can be found in that order: each boundary is put as early as the ones before it allow, which
/// leaves the most room to the ones after it.
bool can_stand(const Order& order, const std::array<Limits, 4>& limits) {
  std::int64_t last = -kNoLimit;
  for (std::size_t i = 0; i < order.size();) {
    Limits here = limits[order[i].boundary];
    if (i > 0) here.low = std::max(here.low, last + 1);
    for (++i; i < order.size() && order[i].with_the_one_before; ++i) {
      const Limits& too = limits[order[i].boundary];
      here = {std::max(here.low, too.low), std::min(here.high, too.high)};
    }
    if (here.low > here.high) return false;
    last = here.low;
  }
  return true;
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
  const std::array<Limits, 4> limits = {limits_of(a.begin), limits_of(a.end), limits_of(b.begin),
                                        limits_of(b.end)};
  AllenSet possible;
  for (std::size_t i = 0; i < std::size(kOrders); ++i)
    if (can_stand(kOrders[i], limits)) possible = possible | AllenSet::of(static_cast<Allen>(i));
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
