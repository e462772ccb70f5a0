// How bounds and contradictions grow with the site file: claims at 50 to a fixture, entries a fifth of their
// number, one statement in ten wrong by years. Printed as the time for each size beside that of the smallest.
// Usage: stays_bench [CLAIMS ...]
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

#include "witnessmark/weigh/bounds.h"
#include "witnessmark/weigh/contradictions.h"

using namespace witnessmark;

namespace {

using Clock = std::chrono::steady_clock;

struct Site {
  Register evidence;
  AuthorityLists lists;
  std::vector<HeldClaim> claims;
};

/// Each fixture came and went on days of its own; most statements fit them.
Site made_up(int claims) {
  constexpr int kClaimsToAFixture = 50;
  Site site;
  std::mt19937 random(5);
  const auto number = [&](int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(random);
  };
  Term deck;
  deck.key = deck.name = "deck";
  site.lists.places = AuthorityList(AuthorityList::Kind::places, {deck});
  const int fixtures = std::max(1, claims / kClaimsToAFixture);
  std::vector<std::pair<int, int>> stays;
  for (int i = 0; i < fixtures; ++i) stays.emplace_back(number(1930, 1950), number(1960, 1980));
  constexpr Statement kKinds[] = {Statement::begins, Statement::ends, Statement::present, Statement::present,
                                  Statement::absent};
  const auto statement = [&](int fixture) {
    const auto [came, went] = stays[static_cast<std::size_t>(fixture)];
    const Statement kind = kKinds[number(0, 4)];
    int year = kind == Statement::begins    ? came
               : kind == Statement::ends    ? went
               : kind == Statement::present ? number(came, went)
                                            : (number(0, 1) == 0 ? came - number(1, 5) : went + number(1, 5));
    if (number(0, 9) == 0) year += number(-15, 15);
    return std::pair(kind, year);
  };
  for (int i = 0; i < 30; ++i) {
    Source source;
    source.key = "s" + std::to_string(i);
    source.kind = SourceKind::log;
    site.evidence.sources.push_back(source);
  }
  for (int i = 0; i < claims / 5; ++i) {
    const int fixture = number(0, fixtures - 1);
    const auto [kind, year] = statement(fixture);
    Entry entry;
    entry.key = "e" + std::to_string(i);
    entry.source = "s" + std::to_string(number(0, 29));
    entry.subject = "f" + std::to_string(fixture);
    entry.place = "deck";
    entry.statement = kind;
    entry.when.value = parse_edtf(std::to_string(year)).value();
    site.evidence.entries.push_back(std::move(entry));
  }
  for (int i = 0; i < claims; ++i) {
    const int fixture = i % fixtures;
    const auto [kind, year] = statement(fixture);
    HeldClaim held;
    for (std::size_t byte = 0; byte < 4; ++byte)
      held.claim.id.bytes[byte] = static_cast<std::uint8_t>(i >> (8 * byte));
    held.claim.interview = "i" + std::to_string(i % 200);
    held.claim.subject = "f" + std::to_string(fixture);
    held.claim.place = "deck";
    held.claim.statement = kind;
    held.claim.when.dated.value = parse_edtf(std::to_string(year)).value();
    held.claim.when.period = to_period(*held.claim.when.dated.value, default_date_policy());
    held.footing = i % 2 == 0 ? Footing::reviewed : Footing::proposed;
    site.claims.push_back(std::move(held));
  }
  return site;
}

template <typename Work>
double seconds(const Work& work) {
  const auto start = Clock::now();
  work();
  return std::chrono::duration<double>(Clock::now() - start).count();
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<int> sizes;
  for (int i = 1; i < argc; ++i) sizes.push_back(std::atoi(argv[i]));
  if (sizes.empty()) sizes = {1000, 10'000, 100'000};
  double first_bounds = 0, first_sets = 0;
  for (const int size : sizes) {
    const Site site = made_up(size);
    const RegisterIndex index(site.evidence, site.lists, default_date_policy());
    const StayEvidence evidence(index, site.claims);
    std::size_t fixtures = 0, sets = 0;
    const double bounds = seconds([&] { fixtures = find_bounds(evidence).size(); });
    const double contradictions =
        seconds([&] { sets = find_contradictions(evidence, site.claims).sets.size(); });
    if (first_bounds == 0) first_bounds = bounds, first_sets = contradictions;
    std::printf("%7d claims, %6zu entries: bounds of %zu fixtures %.2f s (x%.1f), %zu sets %.2f s (x%.1f)\n",
                size, site.evidence.entries.size(), fixtures, bounds, bounds / first_bounds, sets,
                contradictions, contradictions / first_sets);
  }
}
