// How long a constraint network of 10,000 points and 50,000 constraints takes to build statement by
// statement, to add to, to ask, and to take from; beside it the same bounds by Bellman-Ford over all
// constraints, which is what every change would cost without incremental propagation. Usage: network_bench
// [POINTS CONSTRAINTS]
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <vector>

#include "witnessmark/time/branching_network.h"
#include "witnessmark/time/constraint_network.h"

using namespace witnessmark;

namespace {

using Clock = std::chrono::steady_clock;
using Statement = std::vector<DifferenceConstraint>;

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

/// A site's history: each point has a true day; statements bound a point, or order and space two points,
/// always so that the true days satisfy them. A share of statements ties neighbours in time, as layers and
/// episodes do.
std::vector<Statement> true_history(int points, int constraints, std::vector<std::int64_t>& truth) {
  std::mt19937 random(20);
  const auto below = [&random](std::int64_t limit) { return static_cast<std::int64_t>(random() % limit); };
  truth.assign(static_cast<std::size_t>(points), 0);
  for (int i = 1; i < points; ++i) truth[static_cast<std::size_t>(i)] = -30000 + below(40000);
  std::vector<TimePoint> order(static_cast<std::size_t>(points));
  for (int i = 0; i < points; ++i) order[static_cast<std::size_t>(i)] = i;
  std::sort(order.begin(), order.end(), [&](TimePoint a, TimePoint b) {
    return truth[static_cast<std::size_t>(a)] < truth[static_cast<std::size_t>(b)];
  });
  std::vector<Statement> statements;
  int made = 0;
  while (made < constraints) {
    const auto number = static_cast<StatementNumber>(statements.size());
    Statement statement;
    const auto place = static_cast<std::size_t>(below(points - 1));
    TimePoint a = order[place];
    TimePoint b =
        order[std::min<std::size_t>(place + 1 + static_cast<std::size_t>(below(40)), order.size() - 1)];
    const std::int64_t gap = truth[static_cast<std::size_t>(b)] - truth[static_cast<std::size_t>(a)];
    switch (below(5)) {
      case 0:  // a dated statement
        statement.push_back({0, a, truth[static_cast<std::size_t>(a)] + below(400), number});
        statement.push_back({a, 0, -truth[static_cast<std::size_t>(a)] + below(400), number});
        break;
      case 1:  // a span of time
        statement.push_back({a, b, gap + below(200), number});
        statement.push_back({b, a, -gap + below(200), number});
        break;
      default:  // an order
        statement.push_back({b, a, 0, number});
    }
    made += static_cast<int>(statement.size());
    statements.push_back(std::move(statement));
  }
  return statements;
}

double bellman_ford(int points, const std::vector<Statement>& statements, std::vector<std::int64_t>& latest) {
  constexpr std::int64_t kFar = std::int64_t{1} << 60;
  const auto start = Clock::now();
  latest.assign(static_cast<std::size_t>(points), kFar);
  latest[0] = 0;
  for (bool changed = true; changed;) {
    changed = false;
    for (const Statement& statement : statements) {
      for (const DifferenceConstraint& c : statement) {
        const std::int64_t from = latest[static_cast<std::size_t>(c.from)];
        std::int64_t& to = latest[static_cast<std::size_t>(c.to)];
        if (from == kFar || from + c.days >= to) continue;
        to = from + c.days;
        changed = true;
      }
    }
  }
  return seconds_since(start);
}

/// Every layer lies over the one before it, found in any order, with two dates only: the longest chains there
/// can be.
void layered(int points) {
  ConstraintNetwork network;
  std::vector<TimePoint> order;
  for (int i = 1; i < points; ++i) order.push_back(network.add_point());
  const TimePoint last = order.back();
  order.pop_back();
  std::shuffle(order.begin(), order.end(), std::mt19937(1));
  const auto start = Clock::now();
  for (const TimePoint layer : order)
    network.add_statement(layer, {{layer + 1, layer, -1, 0}, {layer, layer + 1, 30, 0}});
  network.add_statement(points, {{0, 1, 0, 0}, {1, 0, 0, 0}});
  const double build = seconds_since(start);
  const auto contradicted = Clock::now();
  network.add_statement(points + 1, {{0, last, 100, 0}});
  std::printf(
      "%d layers one over the other: a statement %.1f us on average; a contradiction of %zu statements %.1f "
      "ms\n",
      points, 1e6 * build / points, network.conflict().size(), 1e3 * seconds_since(contradicted));
}

}  // namespace

int main(int argc, char** argv) {
  const int points = argc > 2 ? std::atoi(argv[1]) : 10000;
  const int constraints = argc > 2 ? std::atoi(argv[2]) : 50000;
  std::vector<std::int64_t> truth;
  const auto statements = true_history(points, constraints, truth);

  ConstraintNetwork network;
  while (network.point_count() < static_cast<std::size_t>(points)) network.add_point();
  const auto start = Clock::now();
  double worst = 0;
  for (std::size_t i = 0; i < statements.size(); ++i) {
    const auto one = Clock::now();
    network.add_statement(static_cast<StatementNumber>(i), statements[i]);
    worst = std::max(worst, seconds_since(one));
  }
  const double build = seconds_since(start);
  std::printf("%zu points, %zu constraints in %zu statements, %s\n", network.point_count(),
              network.constraint_count(), statements.size(),
              network.consistent() ? "consistent" : "NOT consistent");
  std::printf("built statement by statement: %.3f s, a statement %.1f us on average, %.2f ms at worst\n",
              build, 1e6 * build / static_cast<double>(statements.size()), 1e3 * worst);

  std::vector<std::int64_t> latest;
  const double whole = bellman_ford(points, statements, latest);
  std::printf("all latest days anew by Bellman-Ford: %.2f ms, %.0f times an average statement\n", 1e3 * whole,
              whole / (build / static_cast<double>(statements.size())));

  const auto asking = Clock::now();
  std::size_t wrong = 0;
  std::size_t named = 0;
  for (int point = 0; point < points; ++point) {
    const auto bounds = network.bounds(point);
    named += bounds->latest_from.size();
    wrong += bounds->latest && bounds->latest->value != latest[static_cast<std::size_t>(point)] ? 1 : 0;
  }
  std::printf(
      "bounds of one point with the statements they rest on: %.2f us (%zu wrong, %.1f statements each)\n",
      1e6 * seconds_since(asking) / points, wrong, static_cast<double>(named) / points);

  std::mt19937 random(3);
  double remove = 0, add = 0, conflict = 0, without = 0;
  std::size_t size = 0, found = 0;
  constexpr int kTrials = 50;
  for (int i = 0; i < kTrials; ++i) {
    const auto number = static_cast<StatementNumber>(random() % statements.size());
    auto one = Clock::now();
    network.remove_statement(number);
    remove += seconds_since(one);
    one = Clock::now();
    network.add_statement(number, statements[static_cast<std::size_t>(number)]);
    add += seconds_since(one);
    const auto point = static_cast<TimePoint>(1 + random() % static_cast<unsigned>(points - 1));
    const auto bounds = network.bounds(point);
    if (bounds->latest) {
      one = Clock::now();
      network.add_statement(1'000'000, {{point, 0, -(bounds->latest->value + 1), 0}});
      conflict += seconds_since(one);
      size += network.conflict().size();
      ++found;
      network.remove_statement(1'000'000);
    }
  }
  for (int i = 0; i < 10; ++i) {
    const auto one = Clock::now();
    const auto bounds = network.bounds_without(static_cast<StatementNumber>(random() % statements.size()));
    without += seconds_since(one);
    if (bounds.size() != network.point_count()) return 1;
  }
  std::printf("one statement taken out: %.2f ms; put back: %.2f ms\n", 1e3 * remove / kTrials,
              1e3 * add / kTrials);
  std::printf("a contradiction found and reduced: %.2f ms, %.1f statements each\n",
              1e3 * conflict / static_cast<double>(found),
              static_cast<double>(size) / static_cast<double>(found));
  std::printf("all bounds without one statement: %.2f ms\n", 1e3 * without / 10);
  const auto asked = Clock::now();
  for (int i = 0; i < 50; ++i) {
    (void)network.difference(static_cast<TimePoint>(random() % static_cast<unsigned>(points)),
                             static_cast<TimePoint>(random() % static_cast<unsigned>(points)));
  }
  std::printf("least and most between two points: %.2f ms\n", 1e3 * seconds_since(asked) / 50);
  layered(points);
  return wrong == 0 ? 0 : 1;
}
