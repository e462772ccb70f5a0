#include "witnessmark/time/relations.h"

#include <doctest/doctest.h>

#include <random>

#include "random_edtf.h"

using namespace witnessmark;
using witnessmark::testing::RandomEdtf;

namespace {

constexpr int kSpan = 7;

Period period_of(std::string_view text) {
  return to_period(*parse_edtf(text), default_date_policy());
}

/// Calls use(begin, end) for every placement of the boundaries within [-1, kSpan + 1].
template <typename Use>
void each_placement(const Period& period, const Use& use) {
  for (std::int64_t begin = -1; begin <= kSpan; ++begin) {
    if (period.begin.earliest && Day{begin} < *period.begin.earliest) continue;
    if (period.begin.latest && Day{begin} > *period.begin.latest) continue;
    for (std::int64_t end = begin + 1; end <= kSpan + 1; ++end) {
      if (period.end.earliest && Day{end} < *period.end.earliest) continue;
      if (period.end.latest && Day{end} > *period.end.latest) continue;
      use(Day{begin}, Day{end});
    }
  }
}

class SmallPeriods {
 public:
  Period next() {
    Period period;
    limits(period.begin, 0, kSpan - 1);
    limits(period.end, 1, kSpan);
    return period;
  }

 private:
  void limits(Boundary& boundary, int first, int last) {
    const auto pick = [&] { return Day{first + static_cast<std::int64_t>(random_() % (last - first + 1))}; };
    Day a = pick();
    Day b = pick();
    if (b < a) std::swap(a, b);
    boundary.earliest = a;
    boundary.latest = random_() % 4 == 0 ? a : b;
    if (*boundary.latest < a) boundary.latest = a;
  }
  std::mt19937 random_{42};
};

AllenSet relations_by_brute_force(const Period& a, const Period& b) {
  AllenSet found;
  each_placement(a, [&](Day a_begin, Day a_end) {
    each_placement(b, [&](Day b_begin, Day b_end) {
      found = found | AllenSet::of(relation_of(a_begin, a_end, b_begin, b_end));
    });
  });
  return found;
}

bool can_be(const Period& period) {
  bool any = false;
  each_placement(period, [&](Day, Day) { any = true; });
  return any;
}

}  // namespace

TEST_CASE("possible relations are exactly those some placement of the boundaries shows") {
  SmallPeriods periods;
  for (int i = 0; i < 4000; ++i) {
    const Period a = periods.next();
    const Period b = periods.next();
    CAPTURE(to_string(a));
    CAPTURE(to_string(b));
    REQUIRE(to_string(possible_relations(a, b)) == to_string(relations_by_brute_force(a, b)));
    REQUIRE(possible_relations(b, a) == converse(possible_relations(a, b)));
  }
}

TEST_CASE("sides without limit allow what any far-away limit would") {
  SmallPeriods periods;
  std::mt19937 random(3);
  for (int i = 0; i < 2000; ++i) {
    Period a = periods.next();
    Period b = periods.next();
    Period far_a = a;
    Period far_b = b;
    const auto lift = [&random](std::optional<Day>& limit, std::optional<Day>& far, std::int64_t distance) {
      if (random() % 2 == 0) return;
      limit.reset();
      far = Day{distance};
    };
    lift(a.begin.earliest, far_a.begin.earliest, -50);
    lift(a.begin.latest, far_a.begin.latest, 50);
    lift(a.end.earliest, far_a.end.earliest, -50);
    lift(a.end.latest, far_a.end.latest, 50);
    lift(b.begin.earliest, far_b.begin.earliest, -60);
    lift(b.begin.latest, far_b.begin.latest, 60);
    REQUIRE(possible_relations(a, b) == possible_relations(far_a, far_b));
  }
}

TEST_CASE("before, overlap and within answer what all placements have in common") {
  SmallPeriods periods;
  const auto summary = [](bool some, bool all) {
    return all ? Answer::yes : some ? Answer::cannot_tell : Answer::no;
  };
  for (int i = 0; i < 3000; ++i) {
    const Period a = periods.next();
    const Period b = periods.next();
    if (!can_be(a) || !can_be(b)) {
      CHECK(before(a, b) == Answer::cannot_tell);
      continue;
    }
    bool some[3] = {false, false, false};
    bool all[3] = {true, true, true};
    each_placement(a, [&](Day a_begin, Day a_end) {
      each_placement(b, [&](Day b_begin, Day b_end) {
        const bool holds[3] = {a_end <= b_begin, a_begin < b_end && b_begin < a_end,
                               b_begin <= a_begin && a_end <= b_end};
        for (int k = 0; k < 3; ++k) {
          some[k] = some[k] || holds[k];
          all[k] = all[k] && holds[k];
        }
      });
    });
    REQUIRE(before(a, b) == summary(some[0], all[0]));
    REQUIRE(overlap(a, b) == summary(some[1], all[1]));
    REQUIRE(within(a, b) == summary(some[2], all[2]));
  }
}

TEST_CASE("the days between two periods are the fewest and the most any placement shows") {
  SmallPeriods periods;
  for (int i = 0; i < 4000; ++i) {
    const Period a = periods.next();
    const Period b = periods.next();
    if (!can_be(a) || !can_be(b)) continue;
    std::int64_t least = 1000;
    std::int64_t most = 0;
    each_placement(a, [&](Day a_begin, Day a_end) {
      each_placement(b, [&](Day b_begin, Day b_end) {
        std::int64_t days = 1000;
        for (Day x = a_begin; x < a_end; x = x + 1) {
          for (Day y = b_begin; y < b_end; y = y + 1) days = std::min(days, x < y ? y - x : x - y);
        }
        least = std::min(least, days);
        most = std::max(most, days);
      });
    });
    CAPTURE(to_string(a));
    CAPTURE(to_string(b));
    REQUIRE(distance_in_days(a, b) == Distance{least, most});
    REQUIRE(distance_in_days(b, a) == Distance{least, most});
  }
}

TEST_CASE("the possible relations of two expressions contain that of the exact days they stand for") {
  RandomEdtf random(77);
  std::mt19937 pick(5);
  int compared = 0;
  for (int i = 0; i < 8000; ++i) {
    const auto first = parse_edtf(random.date());
    const auto second = parse_edtf(random.date());
    if (!first || !second) continue;
    const auto one_of = [&pick](const Edtf& value) -> std::optional<Period> {
      const auto found = candidates(value, default_date_policy());
      if (!found) return std::nullopt;
      return (*found)[pick() % found->size()];
    };
    const auto a = one_of(*first);
    const auto b = one_of(*second);
    if (!a || !b) continue;
    // True boundaries: anywhere between the limits.
    const auto place = [&pick](const Period& period) {
      const auto between = [&pick](const Boundary& boundary) {
        const std::int64_t width = *boundary.latest - *boundary.earliest + 1;
        return *boundary.earliest + static_cast<std::int64_t>(pick() % static_cast<std::uint64_t>(width));
      };
      const Day begin = between(period.begin);
      return std::pair(begin, std::max(between(period.end), begin + 1));
    };
    const auto [a_begin, a_end] = place(*a);
    const auto [b_begin, b_end] = place(*b);
    if (a_end > *a->end.latest || b_end > *b->end.latest) continue;
    CAPTURE(to_string(*first));
    CAPTURE(to_string(*second));
    const AllenSet possible = possible_relations(to_period(*first, default_date_policy()),
                                                 to_period(*second, default_date_policy()));
    REQUIRE(possible.has(relation_of(a_begin, a_end, b_begin, b_end)));
    ++compared;
  }
  CHECK(compared > 2000);
}

TEST_CASE("questions on dates of the tender's lamp") {
  struct Row {
    const char* a;
    const char* b;
    const char* relations;
    const char* before;
    const char* overlap;
    const char* within;
  };
  const Row rows[] = {
      {"1951", "1952", "(m)", "yes", "no", "no"},
      {"1951", "1953", "(p)", "yes", "no", "no"},
      {"1951-06", "1951", "(d)", "no", "yes", "yes"},
      {"1951", "1951-06", "(D)", "no", "yes", "no"},
      {"1951-06-14", "1951-06-14", "(e)", "no", "yes", "yes"},
      {"1951-XX-XX", "1951-06-14", "(pmFDeSMP)", "cannot tell", "cannot tell", "cannot tell"},
      {"1951/..", "1950", "(MP)", "no", "no", "no"},
      {"1951/", "1955", "(pmoFD)", "cannot tell", "cannot tell", "no"},
      {"../1951", "1950", "(DSOMP)", "no", "cannot tell", "no"},
      {"[1951,1953]", "1952", "(moFDseSdfOM)", "cannot tell", "cannot tell", "cannot tell"},
  };
  for (const Row& row : rows) {
    INFO(std::string(row.a));
    INFO(std::string(row.b));
    const Period a = period_of(row.a);
    const Period b = period_of(row.b);
    CHECK(to_string(possible_relations(a, b)) == row.relations);
    CHECK(to_string(before(a, b)) == row.before);
    CHECK(to_string(overlap(a, b)) == row.overlap);
    CHECK(to_string(within(a, b)) == row.within);
  }
}

TEST_CASE("distances are told in the unit the dates deserve") {
  struct Row {
    const char* a;
    const char* b;
    const char* words;
  };
  const Row rows[] = {
      {"1963-02-03", "1963-02-20", "17 days"},
      {"1963-02-03", "1963-02-04", "1 day"},
      {"1963-02-03", "1963-02-03", "0 days"},
      {"1951-12-31", "1952-01-01", "1 day"},
      {"1951", "1953", "1 year"},
      {"1951", "1952", "1 day"},
      {"1951", "1951-06-14", "0 years"},
      {"1962-09-XX", "1963-02-03", "4 to 5 months"},
      {"195X", "1963", "3 to 12 years"},
      {"1951", "1963/..", "11 to 12 years"},
      {"[..1951]", "1963", "at least 11 years"},
  };
  for (const Row& row : rows) {
    INFO(std::string(row.a));
    INFO(std::string(row.b));
    CHECK(describe_distance(period_of(row.a), period_of(row.b)) == row.words);
    CHECK(describe_distance(period_of(row.b), period_of(row.a)) == row.words);
  }
  // Gone at some time in the autumn of 1962, seen on a photograph of 3 February 1963.
  CHECK(describe_distance(some_time_within(period_of("1962-23")), period_of("1963-02-03")) ==
        "2 to 5 months");
  CHECK(distance_in_days(some_time_within(period_of("1962-23")), period_of("1963-02-03")) ==
        Distance{65, 155});
  CHECK(distance_in_months(some_time_within(period_of("1962-23")), period_of("1963-02-03")) ==
        Distance{2, 5});
}

TEST_CASE("ages and recall distances are ranges of completed years") {
  // Born 1932-03-02, event of 1951, interview of 1998-06-15; recomputed by hand: 16968 to 17332 days.
  const Period born = period_of("1932-03-02");
  const Period event = period_of("1951");
  const Period interview = period_of("1998-06-15");
  CHECK(to_string(*completed_years_between(born, interview)) == "66");
  CHECK(to_string(*completed_years_between(born, event)) == "18 to 19");
  CHECK(to_string(*completed_years_between(event, interview)) == "46 to 47");
  CHECK(distance_in_days(some_time_within(event), interview) == Distance{16968, 17332});
  CHECK(to_string(*completed_years_between(period_of("1932"), event)) == "18 to 19");
  CHECK_FALSE(completed_years_between(period_of("/1932"), event).has_value());
  CHECK_FALSE(completed_years_between(born, period_of("1998/..")).has_value());
  // In the same year: not before it, so not below zero.
  CHECK(*completed_years_between(period_of("1951"), period_of("1951")) == YearRange{0, 0});
  CHECK(*completed_years_between(period_of("195X"), period_of("1951")) == YearRange{0, 1});
  CHECK(*completed_years_between(period_of("1951-06-14"), period_of("1949-06-14")) == YearRange{-2, -2});
}
