// Chains of days against every choice of days, one after the other.
#include "weigh/stays/stay_chain.h"

#include <doctest/doctest.h>

#include <random>

using namespace witnessmark;

namespace {

constexpr std::int64_t kLast = 6;

bool holds(const StayChain::Alternative& alternative, const std::vector<std::int64_t>& days) {
  for (const StayChain::Limit& limit : alternative)
    if (days[limit.day] < limit.low || days[limit.day] > limit.high) return false;
  return true;
}

bool all_hold(const std::vector<StayChain::Part>& parts, const std::vector<std::int64_t>& days) {
  for (const StayChain::Part& part : parts) {
    bool any = false;
    for (const auto& alternative : part) any = any || holds(alternative, days);
    if (!any) return false;
  }
  return true;
}

template <typename Visit>
void each_choice(std::size_t count, std::vector<std::int64_t>& so_far, const Visit& visit) {
  if (so_far.size() == count) return visit(so_far);
  for (std::int64_t day = so_far.empty() ? 0 : so_far.back(); day <= kLast; ++day) {
    so_far.push_back(day);
    each_choice(count, so_far, visit);
    so_far.pop_back();
  }
}

std::vector<const StayChain::Part*> pointers(const std::vector<StayChain::Part>& parts) {
  std::vector<const StayChain::Part*> all;
  for (const auto& part : parts) all.push_back(&part);
  return all;
}

}  // namespace

TEST_CASE("a chain of days holds, and reaches from and to, what every choice of days says") {
  std::mt19937 random(7);
  const auto number = [&](std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random);
  };
  int possible = 0, refuted = 0;
  for (int round = 0; round < 3000; ++round) {
    const auto count = static_cast<std::size_t>(2 * number(1, 2));
    std::vector<StayChain::Part> parts;
    StayChain chain(count);
    for (std::size_t day = 0; day < count; ++day) REQUIRE(chain.narrow(StayChain::Limit{day, 0, kLast}));
    for (std::int64_t i = number(1, 6); i > 0; --i) {
      StayChain::Part& part = parts.emplace_back();
      for (std::int64_t j = number(1, 3); j > 0; --j) {
        StayChain::Alternative& alternative = part.emplace_back();
        for (std::int64_t k = number(1, 2); k > 0; --k) {
          StayChain::Limit limit{static_cast<std::size_t>(number(0, static_cast<std::int64_t>(count) - 1))};
          if (number(0, 2) > 0) limit.low = number(0, kLast);
          if (number(0, 2) > 0) limit.high = number(0, kLast);
          alternative.push_back(limit);
        }
      }
    }
    std::vector<std::int64_t> low(count, kLast + 1), high(count, -1), so_far;
    bool any = false;
    each_choice(count, so_far, [&](const std::vector<std::int64_t>& days) {
      if (!all_hold(parts, days)) return;
      any = true;
      for (std::size_t day = 0; day < count; ++day) {
        low[day] = std::min(low[day], days[day]);
        high[day] = std::max(high[day], days[day]);
      }
    });
    ++(any ? possible : refuted);
    CHECK(StayChain::can_hold(chain, pointers(parts), 4096) == (any ? Answer::yes : Answer::no));
    const auto hull = StayChain::hull(chain, pointers(parts), 4096);
    CHECK(hull.consistent == (any ? Answer::yes : Answer::no));
    for (std::size_t day = 0; day < count; ++day) {
      REQUIRE(hull.days[day].has_value() == any);
      if (any) CHECK(*hull.days[day] == HullBounds{Day{low[day]}, Day{high[day]}});
    }
  }
  CHECK(possible > 500);
  CHECK(refuted > 500);
}

TEST_CASE("where choices run out nothing is concluded, save that one way found is proof enough") {
  // Before day 2 or after day 4, for either of two days: no way is found without choosing.
  const StayChain::Part first{{{0, StayChain::kNoLow, 2}}, {{0, 4, StayChain::kNoHigh}}};
  const StayChain::Part second{{{1, StayChain::kNoLow, 2}}, {{1, 4, StayChain::kNoHigh}}};
  const std::vector<const StayChain::Part*> parts{&first, &second};
  CHECK(StayChain::can_hold(StayChain(2), parts, 0) == Answer::cannot_tell);
  CHECK(StayChain::can_hold(StayChain(2), parts, 2) == Answer::yes);
  const auto hull = StayChain::hull(StayChain(2), parts, 2);
  CHECK(hull.consistent == Answer::yes);
  CHECK(!hull.days[0]);
}
