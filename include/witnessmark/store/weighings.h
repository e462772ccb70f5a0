#pragma once
#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "witnessmark/model/comparison.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Everything weighing says of one claim.
struct Weighing {
  Id claim;
  Recall recall;
  std::vector<Comparison> comparisons;  ///< Their explanations are not kept: they are made when read.
  bool operator==(const Weighing&) const = default;
};

/// How a weighed claim stands, without the comparisons themselves: quick to read.
struct ClaimStanding {
  Id claim;
  Recall recall;
  Outcome foremost = Outcome::silent;  ///< As foremost() of its comparisons.
  OutcomeTally comparisons;
  std::int64_t intentions = 0;  ///< How many comparisons are with an intention.
  bool operator==(const ClaimStanding&) const = default;
};
ClaimStanding standing_of(const Weighing& weighing);

/// Claims never weighed, changed since, or whose grounds changed since (settle_grounds). Sorted by interview
/// and position.
std::vector<Id> claims_to_weigh(const SiteFile& site);

/// Keeps weighings in the place of former ones of the same claims, one after another, so that not all of them
/// need to be in memory.
class WeighingWriter {
 public:
  explicit WeighingWriter(SiteFile& site);
  ~WeighingWriter();
  WeighingWriter(const WeighingWriter&) = delete;  // it is a transaction
  WeighingWriter& operator=(const WeighingWriter&) = delete;

  /// An Error when the claim is not in the site file.
  Result<void> add(const Weighing& weighing);
  /// As one journal event, when there were any. Without it nothing is kept.
  void finish();

 private:
  class Work;
  std::unique_ptr<Work> work_;
};

/// The same for some: all of them or, with an Error, none.
Result<void> save_weighings(SiteFile& site, const std::vector<Weighing>& weighings);

std::optional<Weighing> load_weighing(const SiteFile& site, const Id& claim);
std::optional<ClaimStanding> load_standing(const SiteFile& site, const Id& claim);

/// Every weighed claim, sorted by interview and position.
void for_each_weighing(const SiteFile& site, const std::function<void(const Weighing&)>& visit);
void for_each_standing(const SiteFile& site, const std::function<void(const ClaimStanding&)>& visit);

/// Comparisons with an entry or a stay, of the claims that fit the filter: the fewer, the quicker. Sorted by
/// interview and position of the claim.
std::vector<Comparison> comparisons_with(const SiteFile& site, std::string_view entry,
                                         const ClaimFilter& among = {});

struct OutcomeCount {
  std::string interview;
  Outcome outcome = Outcome::silent;
  std::int64_t count = 0;
  bool operator==(const OutcomeCount&) const = default;
};
/// Comparisons by interview and outcome, not only reviewed claims.
std::vector<OutcomeCount> count_outcomes(const SiteFile& site);

/// What weighings rest on, and which claims each bears on.
enum class GroundKind {
  rules,      ///< How weighing is done: every claim. Its key is empty.
  subject,    ///< The evidence on a thing, by equipment key, empty for none: claims on it that are not `located`.
  itinerary,  ///< Who was where when: every `located` claim. Its key is empty.
  place,      ///< Where a place lies: claims about it.
  interview,  ///< An interview's date and the like: its claims.
  person      ///< Birth and service: the person's claims, those of interviews with no other narrator, `located` ones of them.
};
/// By kind and key, a hash of each.
using Grounds = std::map<std::pair<GroundKind, std::string>, std::string>;

/// Whether evidence, lists, persons or interviews changed since grounds were last settled, or the rules are not
/// those of that time.
bool grounds_may_have_changed(const SiteFile& site, std::string_view rules_sha256);

/// Forgets the weighings of the claims on which a ground bears that is new, gone or not as it was, and keeps the
/// grounds for the next time. One transaction. Returns how many weighings were forgotten.
std::int64_t settle_grounds(SiteFile& site, const Grounds& grounds);

}  // namespace witnessmark
