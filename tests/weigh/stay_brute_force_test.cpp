// Small random sets of statements against every pair of days a stay can come and go on, one after the other.
// What a statement allows is written here once more, day by day, from what it means.
#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "stay_site.h"
#include "weigh/fixtures/shown_stays.h"
#include "weigh/stays/conflict_search.h"
#include "weigh/stays/stay_problem.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

using Numbers = std::vector<std::size_t>;

constexpr int kFirst = -2,
              kLast = 11;  // days of January 1962 counted from 0; the outermost stand for all beyond
const std::int64_t kZero = to_day({1962, 1, 1}).value;

struct Days {
  int came, went;
};
using Stays = std::vector<std::vector<Days>>;  // by fixture and episode

struct Said {
  Statement statement;
  std::vector<std::pair<int, int>> days;  // one of these spans
  bool throughout = false, denied = false;
  std::size_t fixture = 0;
  int episode = -1;    // one that is fixed
  bool later = false;  // told by a later account, which shows no renewal
  int number = 0;      // as written
};

bool allows(const Said& told, const std::pair<int, int>& span, const std::vector<Days>& stays) {
  const auto [a, b] = span;
  const auto some = [&](const auto& says) {
    for (std::size_t e = 0; e < stays.size(); ++e)
      if ((told.episode < 0 || told.episode == static_cast<int>(e)) && says(stays[e])) return true;
    return false;
  };
  const auto there_on = [](const Days& stay, int day) { return stay.came <= day && day <= stay.went; };
  switch (told.statement) {
    case Statement::begins:
      return some([&](const Days& stay) { return a <= stay.came && stay.came <= b; }) != told.denied;
    case Statement::ends:
      return some([&](const Days& stay) { return a <= stay.went && stay.went <= b; }) != told.denied;
    case Statement::present:
    case Statement::happened:  // as far as it is taken to show the thing there
      return some([&](const Days& stay) {
        bool all = true, any = false;
        for (int day = a; day <= b; ++day) all = all && there_on(stay, day), any = any || there_on(stay, day);
        return told.throughout ? all : any;
      });
    case Statement::absent: {
      // No stay reaches over the day; on the day it came or went it may count as not there.
      const auto clear = [&](int first, int last) {
        return std::all_of(stays.begin(), stays.end(),
                           [&](const Days& stay) { return stay.came >= last || stay.went <= first; });
      };
      if (told.throughout) return clear(a, b);
      for (int day = a; day <= b; ++day)
        if (clear(day, day)) return true;
      return false;
    }
    default:
      return true;
  }
}

bool single(const Said& one) { return one.days.size() == 1 && !one.denied; }

/// Whether, by the one, the thing was surely there and gone, or there, before it came by the other.
bool gone_before(const Said& one, const Said& coming) {
  return one.statement == Statement::ends && single(one) && one.days[0].second <= coming.days[0].first;
}
bool there_before(const Said& one, const Said& coming) {
  const bool there = one.statement == Statement::present || one.statement == Statement::happened;
  return there && single(one) && !one.later && !coming.later && one.days[0].second < coming.days[0].first;
}
bool no_earlier(const Said& one, const Said* coming) {
  return coming == nullptr || one.days[0].first >= coming->days[0].second;
}

bool later_than(const Said& coming, const Said* since) {
  return since == nullptr || coming.days[0].second > since->days[0].second;
}

/// The most returns that can be strung together after a coming, every way tried.
int most_returns(const std::vector<Said>& told, const Said* since) {
  int most = 0;
  for (const Said& one : told)
    for (const Said& coming : told) {
      if (coming.statement != Statement::begins || !single(coming) || !later_than(coming, since)) continue;
      if (!(gone_before(one, coming) || there_before(one, coming)) || !no_earlier(one, since)) continue;
      most = std::max(most, 1 + most_returns(told, &coming));
    }
  return most;
}

/// Fixes statements on one fixture to the stays they show, the earliest coming first; how many stays there are. Of one coming
/// its going tells, and only where none is stated all that has it there.
int fix_to_stays(std::vector<Said>& told) {
  int episodes = 1;
  const Said* since = nullptr;
  for (;;) {
    Said* next = nullptr;
    for (Said& coming : told) {
      if (coming.statement != Statement::begins || !single(coming) || !later_than(coming, since)) continue;
      const bool reached = std::any_of(told.begin(), told.end(), [&](const Said& one) {
        return no_earlier(one, since) && (gone_before(one, coming) || there_before(one, coming));
      });
      if (reached && (next == nullptr || coming.days[0].second < next->days[0].second)) next = &coming;
    }
    if (next == nullptr) return episodes;
    Said* gone = nullptr;
    for (Said& one : told)
      if (gone_before(one, *next) && no_earlier(one, since) &&
          (gone == nullptr || one.days[0].second < gone->days[0].second))
        gone = &one;
    if (gone != nullptr) gone->episode = episodes - 1;
    for (Said& one : told)
      if (gone == nullptr && there_before(one, *next) && no_earlier(one, since)) one.episode = episodes - 1;
    next->episode = episodes++;
    since = next;
  }
}

/// Every way a fixture with so many stays can come and go.
void each_stay(int episodes, std::vector<Days>& so_far,
               const std::function<void(const std::vector<Days>&)>& visit) {
  if (static_cast<int>(so_far.size()) == episodes) return visit(so_far);
  const int from = so_far.empty() ? kFirst : so_far.back().went;
  for (int came = from; came <= kLast; ++came)
    for (int went = came; went <= kLast; ++went) {
      so_far.push_back({came, went});
      each_stay(episodes, so_far, visit);
      so_far.pop_back();
    }
}

struct Layer {
  std::size_t upper, lower;  // statements
};

/// Which statements hold in each way, as bits.
struct Way {
  unsigned holds = 0;
  Stays stays;
};

std::vector<Way> all_ways(const std::vector<Said>& told, const std::vector<int>& episodes,
                          const std::optional<Layer>& layer) {
  std::vector<Stays> choices(1);
  for (const int number : episodes) {
    std::vector<Stays> more;
    std::vector<Days> so_far;
    each_stay(number, so_far, [&](const std::vector<Days>& one) {
      for (Stays stays : choices) {
        stays.push_back(one);
        more.push_back(std::move(stays));
      }
    });
    choices = std::move(more);
  }
  std::vector<Way> ways;
  for (Stays& stays : choices) {
    Way way;
    for (std::size_t i = 0; i < told.size(); ++i) {
      const bool holds =
          told[i].denied
              ? std::all_of(told[i].days.begin(), told[i].days.end(),
                            [&](const auto& span) { return allows(told[i], span, stays[told[i].fixture]); })
              : told[i].days.empty() ||
                    std::any_of(told[i].days.begin(), told[i].days.end(), [&](const auto& span) {
                      return allows(told[i], span, stays[told[i].fixture]);
                    });
      if (holds) way.holds |= 1U << i;
    }
    // The tie takes both statements: where it fails, not both can hold.
    way.stays = std::move(stays);
    if (layer) {
      const Days& lower = way.stays[told[layer->lower].fixture].front();
      const Days& upper = way.stays[told[layer->upper].fixture].back();
      if (lower.went > upper.came) {
        Way other = way;
        way.holds &= ~(1U << layer->upper);
        other.holds &= ~(1U << layer->lower);
        ways.push_back(std::move(other));
      }
    }
    ways.push_back(std::move(way));
  }
  return ways;
}

bool can_hold(const std::vector<Way>& ways, unsigned set) {
  return std::any_of(ways.begin(), ways.end(), [&](const Way& way) { return (way.holds & set) == set; });
}

/// Sets that cannot all be true, none of whose parts is such a set; smallest first, then in order.
std::vector<Numbers> irreducible(const std::vector<Way>& ways, std::size_t count) {
  std::vector<Numbers> sets;
  for (unsigned set = 1; set < (1U << count); ++set) {
    if (can_hold(ways, set)) continue;
    bool least = true;
    Numbers numbers;
    for (std::size_t i = 0; i < count; ++i) {
      if ((set & (1U << i)) == 0) continue;
      numbers.push_back(i);
      least = least && can_hold(ways, set & ~(1U << i));
    }
    if (least) sets.push_back(numbers);
  }
  std::sort(sets.begin(), sets.end(), [](const Numbers& a, const Numbers& b) {
    return a.size() != b.size() ? a.size() < b.size() : a < b;
  });
  return sets;
}

std::string date_text(const std::vector<std::pair<int, int>>& days) {
  const auto day = [](int number) { return to_string(Day{kZero + number}); };
  if (days.size() == 1) {
    const auto [a, b] = days.front();
    return a == b ? day(a) : day(a) + "/" + day(b);
  }
  std::string text = "[";
  for (const auto& [a, b] : days)
    text += (text.size() > 1 ? "," : "") + (a == b ? day(a) : day(a) + ".." + day(b));
  return text + "]";
}

class RandomStatements {
 public:
  explicit RandomStatements(unsigned seed) : random_(seed) {}

  int number(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }

  Said statement(int last, std::size_t fixture) {
    constexpr Statement kKinds[] = {Statement::begins, Statement::ends, Statement::present,
                                    Statement::present, Statement::absent};
    Said told{kKinds[number(0, 4)], {}, false, false, fixture};
    const auto span = [&] {
      const int a = number(0, last);
      return std::pair(a, std::min(last, a + (number(0, 2) == 0 ? number(1, 4) : 0)));
    };
    told.days = {span()};
    const bool state = told.statement == Statement::present || told.statement == Statement::absent;
    if (state) told.throughout = number(0, 2) == 0;
    if (number(0, 4) == 0 && !told.throughout) told.days.push_back(span());
    if (!state && told.days.size() == 1) told.denied = number(0, 5) == 0;
    if (told.days.size() == 2 && told.days[0].first > told.days[1].first)
      std::swap(told.days[0], told.days[1]);
    return told;
  }

 private:
  std::mt19937 random_;
};

/// A denial is a claim's; all else is an entry's.
std::string line(int number, const Said& told, const std::string& thing) {
  const char* const source = told.later ? "publication" : "log";
  const std::string key = fmt::format("{}{}", told.denied ? 'c' : 'e', number);
  if (told.denied)
    return fmt::format("{} reviewed {} {} {} denied\n", key, to_string(told.statement), thing,
                       date_text(told.days));
  return fmt::format("{} {}:s{} {} {} {}{}\n", key, source, key, to_string(told.statement), thing,
                     date_text(told.days), told.throughout ? " throughout" : "");
}

/// Numbers of the problem by the statements' own, in the order told.
Numbers numbering(const StaySite& site, const StayProblem& problem, const std::vector<Said>& told) {
  Numbers numbers;
  for (const Said& one : told) {
    for (std::size_t n = 0; n < problem.size(); ++n)
      if (site.name(site.evidence().statements()[problem.statement(n)].key).substr(1) == std::to_string(one.number))
        numbers.push_back(n);
  }
  return numbers;
}

std::optional<Day> limit(int found, int none) {
  return found == none ? std::nullopt : std::optional(Day{kZero + found});
}

void check_against(const std::string& lines, const std::vector<Said>& told, const std::vector<Way>& ways) {
  INFO(lines);
  const StaySite site(lines);
  REQUIRE(site.evidence().groups().size() == 1);
  const StayProblem problem(site.evidence(), site.evidence().groups().front());
  const Numbers numbers = numbering(site, problem, told);
  REQUIRE(numbers.size() == told.size());
  REQUIRE(problem.size() == told.size());
  Numbers back(numbers.size());
  for (std::size_t i = 0; i < numbers.size(); ++i) back[numbers[i]] = i;
  for (unsigned set = 0; set < (1U << told.size()); ++set) {
    Numbers chosen;
    for (std::size_t i = 0; i < told.size(); ++i)
      if ((set & (1U << i)) != 0) chosen.push_back(numbers[i]);
    std::sort(chosen.begin(), chosen.end());
    const bool possible = can_hold(ways, set);
    REQUIRE(problem.can_hold(chosen) == (possible ? Answer::yes : Answer::no));
    const auto solution = problem.solve(chosen);
    REQUIRE(solution.consistent == (possible ? Answer::yes : Answer::no));
    if (!possible) continue;
    for (std::size_t f = 0; f < solution.stays.size(); ++f)
      for (std::size_t e = 0; e < solution.stays[f].size(); ++e) {
        int came_first = kLast, came_last = kFirst, went_first = kLast, went_last = kFirst;
        for (const Way& way : ways) {
          if ((way.holds & set) != set) continue;
          const Days& stay = way.stays[f][e];
          came_first = std::min(came_first, stay.came), came_last = std::max(came_last, stay.came);
          went_first = std::min(went_first, stay.went), went_last = std::max(went_last, stay.went);
        }
        CHECK(solution.stays[f][e].came == HullBounds{limit(came_first, kFirst), limit(came_last, kLast)});
        CHECK(solution.stays[f][e].went == HullBounds{limit(went_first, kFirst), limit(went_last, kLast)});
      }
  }
  const Conflicts conflicts = find_conflicts(problem);
  CHECK(conflicts.all_found);
  std::vector<Numbers> found;
  for (const Numbers& set : conflicts.sets) {
    Numbers own;
    for (const std::size_t number : set) own.push_back(back[number]);
    std::sort(own.begin(), own.end());
    found.push_back(own);
  }
  std::sort(found.begin(), found.end(), [](const Numbers& a, const Numbers& b) {
    return a.size() != b.size() ? a.size() < b.size() : a < b;
  });
  CHECK(found == irreducible(ways, told.size()));
}

}  // namespace

TEST_CASE(
    "statements on one stay: the same sets hold, the same bounds follow and all irreducible sets are found") {
  RandomStatements random(20260115);
  for (int round = 0; round < 1500; ++round) {
    std::vector<Said> told;
    std::string lines;
    const int count = random.number(2, 6);
    for (int i = 0; i < count; ++i) {
      told.push_back(random.statement(9, 0));
      told.back().number = i;
      // Nothing here may show a return: then all is of one stay.
      if (told.back().statement == Statement::begins && !told.back().denied && told.back().days.size() == 1)
        told.back().days.push_back(told.back().days[0]);
      lines += line(i, told.back(), "crane@foredeck");
    }
    check_against(lines, told, all_ways(told, {1}, std::nullopt));
  }
}

TEST_CASE("statements on two stays the register shows: which of the two is branched") {
  RandomStatements random(7);
  for (int round = 0; round < 150; ++round) {
    std::vector<Said> told = {{Statement::ends, {{4, 4}}, false, false, 0, 0},
                              {Statement::begins, {{5, 6}}, false, false, 0, 1}};
    told[1].number = 1;
    std::string lines = line(0, told[0], "crane@foredeck") + line(1, told[1], "crane@foredeck");
    const int count = random.number(1, 3);
    for (int i = 2; i < 2 + count; ++i) {
      Said one = random.statement(9, 0);
      if ((one.statement == Statement::begins || one.statement == Statement::ends) && !one.denied &&
          one.days.size() == 1)
        one.days.push_back(one.days[0]);
      one.number = i;
      told.push_back(one);
      lines += line(i, one, "crane@foredeck");
    }
    check_against(lines, told, all_ways(told, {2}, std::nullopt));
  }
}

TEST_CASE("a coming before which it was there is a return: as many stays, and the same follows of them") {
  RandomStatements random(1963);
  int renewed = 0, not_by_later_accounts = 0, not_limiting = 0;
  for (int round = 0; round < 400; ++round) {
    std::vector<Said> told;
    std::string lines;
    const int count = random.number(2, 4);
    for (int i = 0; i < count; ++i) {
      Said one = random.statement(9, 0);
      if (random.number(0, 2) == 0) one = {Statement::happened, one.days, false, false, 0};
      if (random.number(0, 3) == 0) one = {Statement::begins, {one.days[0]}, false, false, 0};
      one.later = !one.denied && random.number(0, 5) == 0;
      one.number = i;
      lines += line(i, one, "crane@foredeck");
      told.push_back(std::move(one));
    }
    const int most = most_returns(told, nullptr);
    if (most > 1) continue;  // three stays take too many ways
    REQUIRE(fix_to_stays(told) == 1 + most);
    std::vector<Said> limiting;
    for (const Said& one : told)
      if (one.statement != Statement::happened || one.episode >= 0) limiting.push_back(one);
    const StaySite site(lines);
    INFO(lines);
    int renewals = 0;
    for (const FixturePlace& fixture : site.evidence().groups().front().fixtures)
      renewals += static_cast<int>(fixture.renewals.size());
    const bool renewal = std::any_of(told.begin(), told.end(), [](const Said& one) {
      return one.episode == 0 && one.statement != Statement::ends;
    });
    REQUIRE(renewals == (renewal ? 1 : 0));
    renewed += renewals;
    not_limiting += limiting.size() < told.size();
    std::vector<Said> as_records = told;
    for (Said& one : as_records) one.later = false;
    not_by_later_accounts += most_returns(as_records, nullptr) > most;
    check_against(lines, limiting, all_ways(limiting, {1 + most}, std::nullopt));
  }
  CHECK(renewed > 50);
  CHECK(not_by_later_accounts > 5);
  CHECK(not_limiting > 20);
}

TEST_CASE("more than one return is counted as every way of stringing them together has it") {
  RandomStatements random(1898);
  int several = 0;
  for (int round = 0; round < 1500; ++round) {
    std::vector<Said> told;
    std::string lines;
    for (int i = random.number(4, 8); i-- > 0;) {
      constexpr Statement kKinds[] = {Statement::begins, Statement::begins, Statement::ends, Statement::happened,
                                      Statement::present};
      const int day = random.number(0, 12);
      Said one{kKinds[random.number(0, 4)], {{day, day + random.number(0, 2)}}, false, false, 0};
      one.later = random.number(0, 6) == 0;
      one.number = i;
      lines += line(i, one, "crane@foredeck");
      told.push_back(std::move(one));
    }
    INFO(lines);
    const StaySite site(lines);
    const int most = most_returns(told, nullptr);
    REQUIRE(site.evidence().groups().front().fixtures.front().episodes == 1 + most);
    several += most > 1;
  }
  CHECK(several > 100);
}

TEST_CASE("statements on two fixtures whose traces lie over one another on one spot") {
  RandomStatements random(11);
  for (int round = 0; round < 60; ++round) {
    Said lower = random.statement(4, 0), upper = random.statement(4, 1);
    for (Said* one : {&lower, &upper})
      if (one->statement == Statement::absent || one->denied)
        one->statement = Statement::present, one->denied = false;
    upper.number = 1;
    std::vector<Said> told = {lower, upper};
    std::string lines = line(0, lower, "crane@foredeck");
    std::string over = line(1, upper, "winch@foredeck");
    over.insert(over.size() - 1, " over=e0");
    lines += over;
    for (int i = 2; i < 4; ++i) {
      const std::size_t fixture = static_cast<std::size_t>(random.number(0, 1));
      Said one = random.statement(4, fixture);
      if ((one.statement == Statement::begins || one.statement == Statement::ends) && !one.denied &&
          one.days.size() == 1)
        one.days.push_back(one.days[0]);
      one.number = i;
      told.push_back(one);
      lines += line(i, one, fixture == 0 ? "crane@foredeck" : "winch@foredeck");
    }
    std::vector<int> episodes;
    for (const std::size_t fixture : {std::size_t{0}, std::size_t{1}}) {
      std::vector<Said> of_it;
      for (const Said& one : told)
        if (one.fixture == fixture) of_it.push_back(one);
      episodes.push_back(fix_to_stays(of_it));
      for (const Said& fixed : of_it) told[static_cast<std::size_t>(fixed.number)].episode = fixed.episode;
    }
    if (episodes[0] + episodes[1] > 3) continue;  // too many ways
    check_against(lines, told, all_ways(told, episodes, Layer{1, 0}));
  }
}

namespace {

DaySpan days_of(const std::pair<int, int>& span) {
  return {kZero + span.first, kZero + span.second};
}

std::vector<EpisodeLimits> limits_of(const Said& told) {
  std::vector<EpisodeLimits> all;
  for (const auto& span : told.days) {
    const auto some = told.denied ? other_than(told.statement, days_of(span))
                                  : episode_limits(told.statement, days_of(span),
                                                   told.throughout ? Reading::throughout : Reading::within);
    all.insert(all.end(), some.begin(), some.end());
  }
  return all;
}

}  // namespace

TEST_CASE("two statements on a thing the register shows come again: whether both can be, and the one rules out the other") {
  RandomStatements random(1954);
  int both = 0, not_both = 0, ruled_out = 0, not_ruled_out = 0;
  for (int round = 0; round < 1500; ++round) {
    std::vector<Said> told;
    std::string lines;
    const int first = random.number(0, 4), second = random.number(first + 1, 8);
    const bool gone = random.number(0, 1) == 0;
    told.push_back({gone ? Statement::ends : Statement::happened, {{first, random.number(first, second - 1)}}});
    told.push_back({Statement::begins, {{second, random.number(second, 9)}}});
    told[1].number = 1;
    for (const Said& one : told) lines += line(one.number, one, "crane@foredeck");
    INFO(lines);
    REQUIRE(fix_to_stays(told) == 2);
    const StaySite site(lines);
    const FixturePlace& fixture = site.evidence().groups().front().fixtures.front();
    REQUIRE(fixture.episodes == 2);
    const ShownStays stays(fixture, site.evidence().statements());
    Said claim = random.statement(9, 0), entry = random.statement(9, 0);
    if (entry.denied) continue;  // no entry denies
    const auto claimed = limits_of(claim), stated = limits_of(entry);
    told.push_back(claim);
    told.push_back(entry);
    const OfStays of_entry{entry.statement, false, &stated};
    const auto ways = all_ways(told, {2}, std::nullopt);
    // A denial of several dates denies each; the limits of a claim keep only that it denies some.
    if (!claim.denied || claim.days.size() == 1) {
      const bool possible = can_hold(ways, 0b1111);
      CHECK(stays.can_both_hold({claim.statement, claim.denied, &claimed}, of_entry) == possible);
      ++(possible ? both : not_both);
    }
    if (!claim.denied && claim.statement != Statement::absent) continue;
    claim.throughout = claim.throughout || claim.statement == Statement::absent;
    told[2] = claim;
    std::vector<DayExtent> extents;
    for (const auto& span : claim.days) extents.push_back({days_of(span), days_of(span)});
    const auto again = all_ways(told, {2}, std::nullopt);
    const bool otherwise = std::any_of(again.begin(), again.end(), [](const Way& way) {
      return (way.holds & 0b1011) == 0b1011 && (way.holds & 0b0100) == 0;
    });
    CHECK(stays.rules_out({claim.statement, Reading::throughout, claim.denied}, extents, of_entry) == !otherwise);
    ++(otherwise ? not_ruled_out : ruled_out);
  }
  CHECK(both > 100);
  CHECK(not_both > 100);
  CHECK(ruled_out > 50);
  CHECK(not_ruled_out > 50);
}
