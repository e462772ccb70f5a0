// Bytes as a sequence of statements added to and removed from a small constraint network, each step compared
// with Bellman-Ford on all constraints; conflicts must be irreducible. Some runs use geological numbers of
// days.
#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <map>
#include <vector>

#include "witnessmark/time/branching_network.h"
#include "witnessmark/time/constraint_network.h"

using namespace witnessmark;

namespace {

__extension__ using Wide = __int128;
using Statements = std::map<StatementNumber, std::vector<DifferenceConstraint>>;

void require(bool holds) {
  if (!holds) std::abort();
}

class Bytes {
 public:
  Bytes(const std::uint8_t* data, std::size_t size) : data_(data), size_(size) {}
  bool empty() const { return at_ >= size_; }
  int next() { return empty() ? 0 : data_[at_++]; }

 private:
  const std::uint8_t* data_;
  std::size_t size_;
  std::size_t at_ = 0;
};

bool holds(std::size_t points, const Statements& statements) {
  std::vector<Wide> value(points, 0);
  for (std::size_t round = 0; round <= points; ++round) {
    bool changed = false;
    for (const auto& [number, constraints] : statements) {
      for (const DifferenceConstraint& c : constraints) {
        Wide& to = value[static_cast<std::size_t>(c.to)];
        const Wide reached = value[static_cast<std::size_t>(c.from)] + c.days;
        if (reached >= to) continue;
        to = reached;
        changed = true;
      }
    }
    if (!changed) return true;
  }
  return false;
}

void check(const ConstraintNetwork& network, const Statements& believed) {
  const std::size_t points = network.point_count();
  require(network.consistent() == holds(points, believed));
  if (network.consistent()) {
    for (std::size_t point = 0; point < points; ++point) {
      const auto bounds = network.bounds(static_cast<TimePoint>(point));
      require(bounds.has_value());
      if (bounds->earliest && bounds->latest) require(*bounds->earliest <= *bounds->latest);
    }
    return;
  }
  const auto numbers = network.conflict();
  Statements conflict;
  for (const StatementNumber number : numbers) conflict[number] = believed.at(number);
  require(!numbers.empty() && !holds(points, conflict));
  for (const StatementNumber number : numbers) {
    Statements rest = conflict;
    rest.erase(number);
    require(holds(points, rest));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, std::min<std::size_t>(size, 160));
  ConstraintNetwork network;
  BranchingNetwork branching(200);
  const int points = 1 + bytes.next() % 7;
  for (int i = 1; i < points; ++i) {
    network.add_point();
    branching.add_point();
  }
  const std::int64_t scale = bytes.next() % 5 == 0 ? 50'000'000'000'000'000 : 1;
  Statements believed;
  while (!bytes.empty()) {
    const StatementNumber number = bytes.next() % 12;
    if (bytes.next() % 4 == 0) {
      network.remove_statement(number);
      believed.erase(number);
    } else {
      std::vector<DifferenceConstraint> constraints;
      for (int i = 1 + bytes.next() % 3; i > 0; --i) {
        constraints.push_back(
            {bytes.next() % points, bytes.next() % points, (bytes.next() - 100) * scale, number});
      }
      network.add_statement(number, constraints);
      branching.add_either_or({number, {constraints, {}}});
      auto& own = believed[number];
      own.insert(own.end(), constraints.begin(), constraints.end());
    }
    check(network, believed);
  }
  require(branching.solve().consistent == Answer::yes);  // Every alternative may also say nothing.
  return 0;
}
