#pragma once
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/comparison.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Everything weighing says of one claim.
struct Weighing {
  Id claim;
  Recall recall;
  std::vector<Comparison> comparisons;  ///< Their explanations are not kept: they are made when read.
  bool operator==(const Weighing&) const = default;
};

/// Claims never weighed, changed since, or weighed before the evidence last changed. Sorted by interview and
/// position.
std::vector<Id> claims_to_weigh(const SiteFile& site);

/// Keeps weighings in the place of former ones of the same claims, in one transaction and as one journal
/// event. An Error when a claim is not in the site file.
Result<void> save_weighings(SiteFile& site, const std::vector<Weighing>& weighings);

std::optional<Weighing> load_weighing(const SiteFile& site, const Id& claim);

/// Every weighed claim, sorted by interview and position.
void for_each_weighing(const SiteFile& site, const std::function<void(const Weighing&)>& visit);

/// Claims an entry or a stay was compared with.
std::vector<Comparison> comparisons_with(const SiteFile& site, std::string_view entry);

struct OutcomeCount {
  std::string interview;
  Outcome outcome = Outcome::silent;
  std::int64_t count = 0;
  bool operator==(const OutcomeCount&) const = default;
};
/// Comparisons by interview and outcome, not only reviewed claims.
std::vector<OutcomeCount> count_outcomes(const SiteFile& site);

}  // namespace witnessmark
