// Any bytes as an EDTF expression: no crash, and for what is read: the canonical text is read back to the
// same value, the period is well formed and contains every candidate. The first byte chooses the policy.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "witnessmark/time/period.h"
#include "witnessmark/time/relations.h"

using namespace witnessmark;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

DatePolicy policy_of(std::uint8_t choice) {
  DatePolicy policy = default_date_policy();
  if (choice & 1U) policy.hemisphere = DatePolicy::Hemisphere::southern;
  policy.winter_begins_year_before = (choice & 2U) != 0;
  if (choice & 4U) policy.uncertain = {{choice, 0, 0}, {0, choice, 0}, {0, 0, choice}};
  if (choice & 8U) policy.season_begins = {2, 5, 8, 11};
  return policy;
}

bool in_order(const std::optional<Day>& a, const std::optional<Day>& b) {
  return !a || !b || *a <= *b;
}

void check(const Edtf& value, const DatePolicy& policy) {
  const auto again = parse_edtf(to_string(value));
  require(again.ok() && *again == value);
  const int level = edtf_level(value);
  require(level >= 0 && level <= 2);
  const Period period = to_period(value, policy);
  require(in_order(period.begin.earliest, period.begin.latest) &&
          in_order(period.end.earliest, period.end.latest));
  require(!possible_relations(period, period).empty());
  require(!describe(period).empty());
  const auto found = candidates(value, policy, 50);
  if (!found) return;
  for (const Period& candidate : *found) {
    require(in_order(period.begin.earliest, candidate.begin.earliest));
    require(in_order(candidate.end.latest, period.end.latest));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  const auto value = parse_edtf(text);
  if (value) {
    check(*value, policy_of(data[0]));
  } else {
    const Error& error = value.error();
    require(error.column >= 1 && error.column <= static_cast<std::int64_t>(text.size()) + 1);
    require(!error.message.empty());
  }
  (void)parse_date_policy(text, "fuzz");
  return 0;
}
