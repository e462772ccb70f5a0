// The worked story is that of Dechter, Meiri and Pearl, Temporal constraint networks, Artificial Intelligence
// 49 (1991) 61-95: John goes to work by car (30 to 40 minutes), Fred with a car pool (40 to 50); John left
// between 7:10 and 7:20, Fred arrived between 8:00 and 8:10, John arrived 10 to 20 minutes after Fred left.
// The story is given from memory, its minimal network was recomputed by hand. Minutes after 7:00 stand in for
// days.
#include "witnessmark/time/constraint_network.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "brute_force_network.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

/// least <= to - from <= most
std::vector<DifferenceConstraint> between(TimePoint from, TimePoint to, std::int64_t least,
                                          std::int64_t most) {
  return {{from, to, most, 0}, {to, from, -least, 0}};
}

enum Statement : StatementNumber {
  john_left = 1,
  john_drove,
  fred_went,
  fred_arrived,
  john_after_fred,
  john_by_739
};

ConstraintNetwork story(std::pair<std::int64_t, std::int64_t> john,
                        std::pair<std::int64_t, std::int64_t> fred) {
  ConstraintNetwork network;
  for (int i = 0; i < 4; ++i) network.add_point();
  network.add_statement(john_left, between(0, 1, 10, 20));
  network.add_statement(john_drove, between(1, 2, john.first, john.second));
  network.add_statement(fred_went, between(3, 4, fred.first, fred.second));
  network.add_statement(fred_arrived, between(0, 4, 60, 70));
  network.add_statement(john_after_fred, between(3, 2, 10, 20));
  return network;
}

constexpr std::pair<std::int64_t, std::int64_t> kCar{30, 40}, kBus{60, 1000}, kFredCar{20, 30},
    kCarPool{40, 50};

std::string dump(const ConstraintNetwork& network) {
  std::string text;
  for (TimePoint a = 0; static_cast<std::size_t>(a) < network.point_count(); ++a) {
    text += text.empty() ? "[" : " [";
    for (TimePoint b = 0; static_cast<std::size_t>(b) < network.point_count(); ++b) {
      const auto difference = network.difference(a, b);
      text += (b == 0 ? "" : ",") + (difference->most ? std::to_string(*difference->most) : "-");
    }
    text += "]";
  }
  return text;
}

}  // namespace

TEST_CASE("the story of John and Fred has the published minimal network") {
  const ConstraintNetwork network = story(kCar, kCarPool);
  REQUIRE(network.consistent());
  CHECK(network.conflict().empty());
  CHECK(network.point_count() == 5);
  CHECK(network.constraint_count() == 10);
  CHECK(dump(network) ==
        "[0,20,50,30,70] [-10,0,40,20,60] [-40,-30,0,-10,30] [-20,-10,20,0,50] [-60,-50,-20,-40,0]");
  const std::pair<std::int64_t, std::int64_t> bounds[] = {{0, 0}, {10, 20}, {40, 50}, {20, 30}, {60, 70}};
  for (TimePoint point = 0; point < 5; ++point) {
    const auto found = network.bounds(point);
    CHECK(found->earliest == Day{bounds[point].first});
    CHECK(found->latest == Day{bounds[point].second});
  }
  CHECK(*network.difference(2, 4) == ConstraintNetwork::Difference{20, 30});
}

TEST_CASE("of the four ways to go only bus and car pool contradict the story") {
  CHECK(story(kCar, kFredCar).consistent());
  CHECK(story(kCar, kCarPool).consistent());
  CHECK(story(kBus, kFredCar).consistent());
  CHECK_FALSE(story(kBus, kCarPool).consistent());
}

TEST_CASE("John there by 7:39 contradicts exactly that he left from 7:10 and drove half an hour") {
  ConstraintNetwork network = story(kCar, kCarPool);
  network.add_statement(john_by_739, {{0, 2, 39, 0}});
  CHECK_FALSE(network.consistent());
  CHECK(network.conflict() == std::vector<StatementNumber>{john_left, john_drove, john_by_739});
  CHECK_FALSE(network.bounds(1).has_value());
  CHECK_FALSE(network.difference(1, 2).has_value());
  for (const StatementNumber statement : network.conflict()) {
    ConstraintNetwork without = network;
    without.remove_statement(statement);
    CHECK(without.consistent());
    CHECK(network.bounds_without(statement).size() == 5);
  }
  CHECK(network.bounds_without(fred_arrived).empty());
  network.remove_statement(john_by_739);
  CHECK(dump(network) == dump(story(kCar, kCarPool)));
}

TEST_CASE("bounds name the statements they rest on") {
  const ConstraintNetwork network = story(kCar, kCarPool);
  // Fred left at 7:30 at the latest because he went 40 minutes and arrived by 8:10.
  CHECK(network.bounds(3)->latest_from == std::vector<StatementNumber>{fred_went, fred_arrived});
  // John arrived at 7:40 at the earliest because he left from 7:10 and drove 30 minutes.
  CHECK(network.bounds(2)->earliest_from == std::vector<StatementNumber>{john_drove, john_left});
  CHECK(network.bounds(0)->latest_from.empty());
}

TEST_CASE("a statement disbelieved leaves the bounds the others give") {
  const ConstraintNetwork network = story(kCar, kCarPool);
  const auto bounds = network.bounds_without(fred_arrived);
  CHECK(bounds[4].earliest ==
        Day{60});  // From John: 7:40 at the earliest, so Fred left from 7:20 and went 40 minutes.
  CHECK(bounds[4].latest == Day{100});
  CHECK(network.bounds(4)->latest == Day{70});
}

TEST_CASE("a point that nothing limits has no bounds, and one side alone may have one") {
  ConstraintNetwork network;
  const TimePoint lamp_fitted = network.add_point();
  CHECK(*network.bounds(lamp_fitted) == PointBounds{});
  network.add_statement(1, {{0, lamp_fitted, 100, 0}});
  CHECK_FALSE(network.bounds(lamp_fitted)->earliest.has_value());
  CHECK(network.bounds(lamp_fitted)->latest == Day{100});
}

TEST_CASE("statements that come after a contradiction count once it is taken out") {
  ConstraintNetwork network;
  const TimePoint a = network.add_point();
  const TimePoint b = network.add_point();
  network.add_statement(1, {{0, a, 10, 0}});
  network.add_statement(2, {{a, 0, -20, 0}});
  CHECK(network.conflict() == std::vector<StatementNumber>{1, 2});
  network.add_statement(3, {{a, b, 5, 0}});
  CHECK_FALSE(network.consistent());
  CHECK(network.constraint_count() == 3);
  network.remove_statement(2);
  CHECK(network.consistent());
  CHECK(network.bounds(b)->latest == Day{15});
}

TEST_CASE("a second contradiction shows once the first is taken out") {
  ConstraintNetwork network;
  const TimePoint a = network.add_point();
  network.add_statement(1, {{0, a, 10, 0}});
  network.add_statement(2, {{a, 0, -20, 0}});
  network.add_statement(3, {{a, 0, -30, 0}});
  network.remove_statement(2);
  CHECK(network.conflict() == std::vector<StatementNumber>{1, 3});
  network.remove_statement(1);
  CHECK(network.consistent());
  CHECK(network.bounds(a)->earliest == Day{30});
}

TEST_CASE("a statement that contradicts itself is a conflict of one") {
  ConstraintNetwork network;
  const TimePoint a = network.add_point();
  network.add_statement(1, {{0, a, 100, 0}});
  network.add_statement(2, {{0, a, 10, 0}, {a, 0, -20, 0}});
  CHECK(network.conflict() == std::vector<StatementNumber>{2});
  network.remove_statement(2);
  network.add_statement(3, {{a, a, -1, 0}});
  CHECK(network.conflict() == std::vector<StatementNumber>{3});
}

TEST_CASE("irreducible means by statement: one that brings two constraints can make another superfluous") {
  // The cycle first found goes through 1, 2 and 3, but 3 also says directly what 2 adds.
  ConstraintNetwork network;
  const TimePoint a = network.add_point();
  const TimePoint b = network.add_point();
  network.add_statement(1, {{0, a, 10, 0}});
  network.add_statement(2, {{a, b, 5, 0}});
  network.add_statement(3, {{b, 0, -20, 0}, {a, 0, -15, 0}});
  CHECK(network.conflict() == std::vector<StatementNumber>{1, 3});
}

TEST_CASE("adding to a statement that is there makes it one statement of both") {
  ConstraintNetwork network;
  const TimePoint a = network.add_point();
  network.add_statement(1, {{0, a, 10, 0}});
  network.add_statement(1, {{a, 0, -5, 0}});
  CHECK(network.bounds(a)->earliest == Day{5});
  network.remove_statement(1);
  CHECK(*network.bounds(a) == PointBounds{});
  network.remove_statement(1);
  CHECK(network.consistent());
}

TEST_CASE("a statement that comes in parts is in conflict as a whole") {
  ConstraintNetwork network;
  const TimePoint a = network.add_point();
  network.add_statement(1, {{0, a, 10, 0}});
  network.add_statement(2, {{a, 0, -20, 0}});
  CHECK(network.conflict() == std::vector<StatementNumber>{1, 2});
  network.add_statement(1, {{a, 0, -15, 0}});
  CHECK(network.conflict() == std::vector<StatementNumber>{1});
  network.remove_statement(1);
  CHECK(network.consistent());
  CHECK(network.bounds(a)->earliest == Day{20});
  network.add_statement(2, {{0, a, 5, 0}});
  CHECK(network.conflict() == std::vector<StatementNumber>{2});
}

TEST_CASE("a point that was never added is refused") {
  ConstraintNetwork network;
  CHECK_THROWS_AS(network.add_statement(1, {{0, 1, 5, 0}}), std::out_of_range);
  CHECK_THROWS_AS((void)network.bounds(-1), std::out_of_range);
  CHECK_THROWS_AS((void)network.difference(0, 3), std::out_of_range);
}

TEST_CASE("geological numbers of days do not overflow") {
  constexpr std::int64_t kHuge = 4'000'000'000'000'000'000;
  ConstraintNetwork network;
  std::vector<TimePoint> points{0};
  for (int i = 0; i < 20; ++i) {
    points.push_back(network.add_point());
    network.add_statement(i, {{points[points.size() - 2], points.back(), kHuge, 0},
                              {points.back(), points[points.size() - 2], -kHuge, 0}});
  }
  CHECK(network.consistent());
  CHECK(network.bounds(points[1])->latest == Day{kHuge});
  CHECK(network.bounds(points.back())->latest == Day{std::numeric_limits<std::int64_t>::max()});
  network.add_statement(99, {{0, points.back(), 0, 0}});
  CHECK(network.conflict().size() == 21);
}

TEST_CASE("random networks agree with Bellman-Ford and Floyd-Warshall while statements come and go") {
  for (std::uint32_t seed = 0; seed < 3000; ++seed) {
    CAPTURE(seed);
    const std::size_t points = 2 + seed % 6;
    RandomStatements random(seed, points);
    ConstraintNetwork network;
    while (network.point_count() < points) network.add_point();
    Statements believed;
    for (int step = 0; step < 14; ++step) {
      if (random.below(4) == 0 && !believed.empty()) {
        auto victim = std::next(believed.begin(), random.below(static_cast<int>(believed.size())));
        if (!network.consistent() && random.below(2) == 0) victim = believed.find(network.conflict().front());
        network.remove_statement(victim->first);
        believed.erase(victim);
      } else {
        const StatementNumber number = random.below(4) == 0 ? random.below(14) : 100 - step;
        const auto more = random.next(number);
        network.add_statement(number, more);
        auto& own = believed[number];
        own.insert(own.end(), more.begin(), more.end());
      }
      const auto constraints = constraints_of(believed);
      REQUIRE(network.constraint_count() == constraints.size());
      REQUIRE(network.consistent() == holds(points, constraints));
      if (!network.consistent()) {
        const std::vector<StatementNumber> numbers = network.conflict();
        REQUIRE(std::is_sorted(numbers.begin(), numbers.end()));
        Statements conflict;
        for (const StatementNumber number : numbers) conflict[number] = believed.at(number);
        REQUIRE_FALSE(holds(points, constraints_of(conflict)));
        for (const StatementNumber number : numbers) {
          Statements rest = conflict;
          rest.erase(number);
          REQUIRE(holds(points, constraints_of(rest)));
        }
        continue;
      }
      const Matrix most = minimal_network(points, constraints);
      for (std::size_t point = 0; point < points; ++point) {
        const auto bounds = network.bounds(static_cast<TimePoint>(point));
        REQUIRE(bounds->latest == as_day(most[0][point], 1));
        REQUIRE(bounds->earliest == as_day(most[point][0], -1));
      }
      const TimePoint a = random.below(static_cast<int>(points));
      const TimePoint b = random.below(static_cast<int>(points));
      const auto difference = network.difference(a, b);
      REQUIRE(difference->most == most[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)]);
    }
  }
}

TEST_CASE("the statements named with a bound alone give that bound") {
  for (std::uint32_t seed = 0; seed < 1000; ++seed) {
    CAPTURE(seed);
    constexpr std::size_t kPoints = 6;
    RandomStatements random(seed, kPoints);
    ConstraintNetwork network;
    while (network.point_count() < kPoints) network.add_point();
    Statements believed;
    for (StatementNumber number = 0; number < 7; ++number) {
      const auto constraints = random.next(number);
      network.add_statement(number, constraints);
      if (!network.consistent())
        network.remove_statement(number);
      else
        believed[number] = constraints;
    }
    for (TimePoint point = 0; static_cast<std::size_t>(point) < kPoints; ++point) {
      const auto bounds = network.bounds(point);
      Statements named;
      for (const StatementNumber number : bounds->latest_from) named[number] = believed.at(number);
      const Matrix most = minimal_network(kPoints, constraints_of(named));
      if (bounds->latest) REQUIRE(as_day(most[0][static_cast<std::size_t>(point)], 1) == bounds->latest);
      named.clear();
      for (const StatementNumber number : bounds->earliest_from) named[number] = believed.at(number);
      const Matrix least = minimal_network(kPoints, constraints_of(named));
      if (bounds->earliest)
        REQUIRE(as_day(least[static_cast<std::size_t>(point)][0], -1) == bounds->earliest);
    }
    for (StatementNumber number = 0; number < 7; ++number) {
      ConstraintNetwork rest = network;
      rest.remove_statement(number);
      const auto bounds = network.bounds_without(number);
      for (std::size_t point = 0; point < kPoints; ++point) {
        REQUIRE(bounds[point].latest == rest.bounds(static_cast<TimePoint>(point))->latest);
        REQUIRE(bounds[point].earliest == rest.bounds(static_cast<TimePoint>(point))->earliest);
      }
    }
  }
}
