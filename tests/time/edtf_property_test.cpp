#include <doctest/doctest.h>

#include <algorithm>

#include "random_edtf.h"
#include "witnessmark/time/edtf.h"
#include "witnessmark/time/period.h"

using namespace witnessmark;
using witnessmark::testing::RandomEdtf;

namespace {

constexpr int kRounds = 15000;

bool in_order(const std::optional<Day>& a, const std::optional<Day>& b) {
  return !a || !b || *a <= *b;
}

/// The inner limits lie within the outer, and begin can come before end.
bool well_formed(const Period& period) {
  return in_order(period.begin.earliest, period.begin.latest) &&
         in_order(period.end.earliest, period.end.latest) &&
         (!period.begin.earliest || !period.end.earliest || *period.begin.earliest < *period.end.earliest) &&
         (!period.begin.latest || !period.end.latest || *period.begin.latest < *period.end.latest);
}

}  // namespace

TEST_CASE("what is printed is read back to the same value, and printing it again changes nothing") {
  RandomEdtf random(1951);
  int valid = 0;
  for (int i = 0; i < kRounds; ++i) {
    const std::string text = random.expression();
    const auto value = parse_edtf(text);
    if (!value) continue;
    ++valid;
    CAPTURE(text);
    const std::string canonical = to_string(*value);
    CAPTURE(canonical);
    const auto again = parse_edtf(canonical);
    REQUIRE(again.ok());
    REQUIRE(*again == *value);
    REQUIRE(to_string(*again) == canonical);
    REQUIRE(edtf_level(*again) == edtf_level(*value));
  }
  CHECK(valid > kRounds / 2);
}

TEST_CASE("every value has a well-formed period under every policy") {
  DatePolicy southern = default_date_policy();
  southern.hemisphere = DatePolicy::Hemisphere::southern;
  DatePolicy wide = default_date_policy();
  wide.winter_begins_year_before = true;
  wide.approximate = {{10, 2, 1}, {0, 7, 0}, {0, 0, 40}};
  wide.uncertain.day.months = 1;
  RandomEdtf random(1962);
  for (int i = 0; i < kRounds; ++i) {
    const std::string text = random.expression();
    const auto value = parse_edtf(text);
    if (!value) continue;
    for (const DatePolicy& policy : {default_date_policy(), southern, wide}) {
      const Period period = to_period(*value, policy);
      CAPTURE(text);
      CAPTURE(to_string(period));
      REQUIRE(well_formed(period));
      REQUIRE(well_formed(some_time_within(period)));
      REQUIRE_FALSE(describe(period).empty());
    }
  }
}

TEST_CASE("the period of candidates is their hull") {
  RandomEdtf random(1963);
  int compared = 0;
  for (int i = 0; i < kRounds; ++i) {
    const auto value = parse_edtf(random.chance(70) ? random.date() : random.set());
    if (!value) continue;
    if (const auto* set = std::get_if<EdtfSet>(&value->value); set && set->kind == EdtfSet::Kind::all_of)
      continue;
    const auto found = candidates(*value, default_date_policy());
    if (!found) continue;
    REQUIRE_FALSE(found->empty());
    Period hull = found->front();
    for (const Period& period : *found) {
      hull.begin.earliest = std::min(hull.begin.earliest, period.begin.earliest);
      hull.begin.latest = std::max(hull.begin.latest, period.begin.latest);
      hull.end.earliest = std::min(hull.end.earliest, period.end.earliest);
      hull.end.latest = std::max(hull.end.latest, period.end.latest);
    }
    CAPTURE(to_string(*value));
    REQUIRE(to_period(*value, default_date_policy()) == hull);
    ++compared;
  }
  CHECK(compared > kRounds / 3);
}

TEST_CASE("the period of a narrower unqualified expression lies inside that of the wider") {
  RandomEdtf random(1944);
  const auto inside = [](const std::string& narrow, const std::string& wide) {
    CAPTURE(narrow);
    CAPTURE(wide);
    const Period a = to_period(*parse_edtf(narrow), default_date_policy());
    const Period b = to_period(*parse_edtf(wide), default_date_policy());
    REQUIRE(*a.earliest() >= *b.earliest());
    REQUIRE(*a.past_latest() <= *b.past_latest());
  };
  for (int i = 0; i < kRounds; ++i) {
    const std::string narrow = random.plain_date();
    const std::size_t year_length = narrow.front() == '-' ? 5 : 4;
    if (narrow.size() > year_length) {
      inside(narrow, narrow.substr(0, narrow.size() - 3));
    }
    // A digit left unspecified widens.
    std::string masked = narrow;
    const std::size_t at = static_cast<std::size_t>(random.below(static_cast<int>(masked.size())));
    if (masked[at] != '-') masked[at] = 'X';
    if (parse_edtf(narrow).ok() && parse_edtf(masked).ok()) inside(narrow, masked);
  }
}

TEST_CASE("a sign never narrows") {
  RandomEdtf random(1945);
  for (int i = 0; i < kRounds / 4; ++i) {
    const std::string plain = random.plain_date();
    if (!parse_edtf(plain)) continue;
    const Period without = to_period(*parse_edtf(plain), default_date_policy());
    for (const char* sign : {"?", "~", "%"}) {
      const Period with = to_period(*parse_edtf(plain + sign), default_date_policy());
      REQUIRE(*with.earliest() <= *without.earliest());
      REQUIRE(*with.past_latest() >= *without.past_latest());
    }
  }
}
