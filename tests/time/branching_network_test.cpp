#include "witnessmark/time/branching_network.h"

#include <doctest/doctest.h>

#include "brute_force_network.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

constexpr StatementNumber kJohn = 10, kFred = 11, kPlain = 1;

std::vector<DifferenceConstraint> between(TimePoint from, TimePoint to, std::int64_t least,
                                          std::int64_t most) {
  return {{from, to, most, 0}, {to, from, -least, 0}};
}

/// The story of the network tests with both ways to go left open.
BranchingNetwork story() {
  BranchingNetwork network;
  for (int i = 0; i < 4; ++i) network.add_point();
  network.add_statement(kPlain, between(0, 1, 10, 20));
  network.add_statement(kPlain + 1, between(0, 4, 60, 70));
  network.add_statement(kPlain + 2, between(3, 2, 10, 20));
  network.add_either_or({kJohn, {between(1, 2, 30, 40), {{2, 1, -60, 0}}}});
  network.add_either_or({kFred, {between(3, 4, 20, 30), between(3, 4, 40, 50)}});
  return network;
}

std::string dump(const BranchingSolution& solution) {
  std::string text = std::string(to_string(solution.consistent)) + ":";
  for (const auto& bounds : solution.bounds) {
    if (!bounds)
      text += " ?";
    else {
      text += " " + (bounds->earliest ? std::to_string(bounds->earliest->value) : "") + ".." +
              (bounds->latest ? std::to_string(bounds->latest->value) : "");
    }
  }
  for (const auto& alternatives : solution.alternatives) {
    text += " |";
    for (const Answer answer : alternatives)
      text += answer == Answer::yes ? "y" : answer == Answer::no ? "n" : "?";
  }
  return text;
}

/// Every choice of alternatives, one after the other.
struct BruteForce {
  bool possible = false;
  std::vector<std::optional<HullBounds>> bounds;
  std::vector<std::vector<bool>> alternatives;
};

BruteForce brute_force(std::size_t points, const Statements& plain, const std::vector<EitherOr>& either_ors) {
  BruteForce result;
  result.bounds.resize(points);
  for (const EitherOr& either_or : either_ors)
    result.alternatives.emplace_back(either_or.alternatives.size(), false);
  std::vector<std::size_t> choice(either_ors.size(), 0);
  for (const EitherOr& either_or : either_ors) {
    if (either_or.alternatives.empty()) return result;
  }
  while (true) {
    auto constraints = constraints_of(plain);
    for (std::size_t i = 0; i < choice.size(); ++i) {
      const auto& chosen = either_ors[i].alternatives[choice[i]];
      constraints.insert(constraints.end(), chosen.begin(), chosen.end());
    }
    if (holds(points, constraints)) {
      const Matrix most = minimal_network(points, constraints);
      for (std::size_t point = 0; point < points; ++point) {
        const HullBounds own{as_day(most[point][0], -1), as_day(most[0][point], 1)};
        if (!result.possible) {
          result.bounds[point] = own;
          continue;
        }
        HullBounds& hull = *result.bounds[point];
        hull.earliest = hull.earliest && own.earliest ? std::min(hull.earliest, own.earliest) : std::nullopt;
        hull.latest = hull.latest && own.latest ? std::max(hull.latest, own.latest) : std::nullopt;
      }
      result.possible = true;
      for (std::size_t i = 0; i < choice.size(); ++i) result.alternatives[i][choice[i]] = true;
    }
    std::size_t at = 0;
    while (at < choice.size() && ++choice[at] == either_ors[at].alternatives.size()) choice[at++] = 0;
    if (at == choice.size()) return result;
  }
}

}  // namespace

TEST_CASE("the story of John and Fred with both ways open holds in three of four ways") {
  const BranchingSolution solution = story().solve();
  CHECK(dump(solution) == "yes: 0..0 10..20 40..70 20..50 60..70 |yy |yy");
  BranchingNetwork by_bus = story();
  by_bus.add_statement(20, {{2, 1, -60, 0}});
  CHECK(dump(by_bus.solve()) == "yes: 0..0 10..10 70..70 50..50 70..70 |ny |yn");
  by_bus.add_statement(21, {{4, 3, -40, 0}});
  const BranchingSolution impossible = by_bus.solve();
  CHECK(impossible.consistent == Answer::no);
  CHECK_FALSE(impossible.bounds[1].has_value());
  CHECK(by_bus.solve_without(21).consistent == Answer::yes);
}

TEST_CASE("absent means before it came or after it went") {
  // The crane came in [100, 120] and went in [200, 210]; on day 150 it is said not to have stood there.
  BranchingNetwork network;
  const TimePoint came = network.add_point();
  const TimePoint went = network.add_point();
  network.add_statement(1, between(0, came, 100, 120));
  network.add_statement(2, between(0, went, 200, 210));
  network.add_either_or({3, {{{came, 0, -151, 0}}, {{0, went, 150, 0}}}});
  const BranchingSolution solution = network.solve();
  CHECK(solution.consistent == Answer::no);
  CHECK(solution.conflict == std::vector<StatementNumber>{1, 2, 3});
  // Without knowing when it went, it had gone by then.
  CHECK(dump(network.solve_without(2)) == "yes: 0..0 100..120 ..150 |ny");
  CHECK(dump(network.solve_without(3)) == "yes: 0..0 100..120 200..210 |yy");
}

TEST_CASE("groups of points tied only through the origin are branched apart") {
  // Forty either/ors of two: together 2^40 combinations, apart 80.
  BranchingNetwork network;
  for (StatementNumber i = 0; i < 40; ++i) {
    const TimePoint point = network.add_point();
    network.add_either_or({i, {between(0, point, 10, 20), between(0, point, 50, 60)}});
  }
  const BranchingSolution solution = network.solve();
  CHECK(solution.consistent == Answer::yes);
  for (std::size_t point = 1; point <= 40; ++point) {
    CHECK(*solution.bounds[point] == HullBounds{Day{10}, Day{60}});
  }
}

TEST_CASE("beyond the limit the answer is that nobody can tell") {
  BranchingNetwork network(64);
  std::vector<TimePoint> points;
  for (int i = 0; i < 20; ++i) points.push_back(network.add_point());
  const TimePoint apart = network.add_point();
  network.add_statement(900, between(0, apart, 5, 6));
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    network.add_either_or({static_cast<StatementNumber>(i),
                           {{{points[i], points[i + 1], -1, 0}}, {{points[i + 1], points[i], -1, 0}}}});
  }
  const BranchingSolution solution = network.solve();
  CHECK(solution.consistent == Answer::yes);  // One way was found before the limit.
  CHECK_FALSE(solution.bounds[1].has_value());
  CHECK(*solution.bounds[static_cast<std::size_t>(apart)] == HullBounds{Day{5}, Day{6}});
  const auto& first = solution.alternatives[0];
  const bool some_unknown = first[0] == Answer::cannot_tell || first[1] == Answer::cannot_tell;
  CHECK(some_unknown);
}

TEST_CASE("an unsolvable knot beyond the limit is not called impossible") {
  // Seven points in pairs at least one day apart, all within five days: impossible, but only seen after many
  // branches.
  BranchingNetwork network(50);
  std::vector<TimePoint> points;
  for (int i = 0; i < 7; ++i) {
    points.push_back(network.add_point());
    network.add_statement(i, between(0, points.back(), 0, 5));
  }
  StatementNumber number = 100;
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (std::size_t j = i + 1; j < points.size(); ++j) {
      network.add_either_or({number++, {{{points[i], points[j], -1, 0}}, {{points[j], points[i], -1, 0}}}});
    }
  }
  CHECK(network.solve().consistent == Answer::cannot_tell);
  CHECK(network.solve().conflict.empty());
}

TEST_CASE("an either/or of nothing cannot be true") {
  BranchingNetwork network;
  network.add_either_or({7, {}});
  CHECK(network.solve().consistent == Answer::no);
  CHECK(network.solve().conflict == std::vector<StatementNumber>{7});
  CHECK_THROWS_AS(network.add_either_or({8, {{{0, 3, 1, 0}}}}), std::out_of_range);
}

TEST_CASE("random either/or networks agree with trying every combination") {
  int impossible = 0;
  for (std::uint32_t seed = 0; seed < 2500; ++seed) {
    CAPTURE(seed);
    const std::size_t points = 2 + seed % 5;
    RandomStatements random(seed + 90000, points);
    BranchingNetwork network(1 << 20);
    while (network.point_count() < points) network.add_point();
    Statements plain;
    std::vector<EitherOr> either_ors;
    for (StatementNumber number = random.below(4); number > 0; --number) {
      plain[number] = random.next(number);
      network.add_statement(number, plain[number]);
    }
    for (StatementNumber number = 10 + random.below(5); number > 10; --number) {
      EitherOr either_or{number, {}};
      for (int i = 1 + random.below(3); i > 0; --i) either_or.alternatives.push_back(random.next(number));
      either_ors.push_back(either_or);
      network.add_either_or(either_or);
    }
    const BruteForce expected = brute_force(points, plain, either_ors);
    const BranchingSolution solution = network.solve();
    REQUIRE(solution.consistent == (expected.possible ? Answer::yes : Answer::no));
    if (expected.possible) {
      REQUIRE(solution.bounds == expected.bounds);
      for (std::size_t i = 0; i < either_ors.size(); ++i) {
        for (std::size_t j = 0; j < either_ors[i].alternatives.size(); ++j) {
          REQUIRE(solution.alternatives[i][j] == (expected.alternatives[i][j] ? Answer::yes : Answer::no));
        }
      }
      continue;
    }
    ++impossible;
    // Irreducible: the set cannot hold, and any statement fewer can.
    const auto can_hold = [&](const std::vector<StatementNumber>& statements, StatementNumber left_out) {
      const auto kept = [&](StatementNumber number) {
        return number != left_out &&
               std::find(statements.begin(), statements.end(), number) != statements.end();
      };
      Statements some;
      std::vector<EitherOr> some_either_ors;
      for (const auto& [number, constraints] : plain) {
        if (kept(number)) some[number] = constraints;
      }
      for (const EitherOr& either_or : either_ors) {
        if (kept(either_or.statement)) some_either_ors.push_back(either_or);
      }
      return brute_force(points, some, some_either_ors).possible;
    };
    REQUIRE_FALSE(can_hold(solution.conflict, -1));
    for (const StatementNumber number : solution.conflict) REQUIRE(can_hold(solution.conflict, number));
  }
  CHECK(impossible > 100);
}
