#pragma once
#include <optional>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/time/date_policy.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/episode.h"

namespace witnessmark {

/// The days a statement's time can mean: `possible` all it may touch, `certain` those that surely lie in it.
/// They differ where the ends are imprecise: of "1950/1951", begun at some time in 1950, only the turn of the
/// year is certain.
struct DayExtent {
  DaySpan possible;
  std::optional<DaySpan> certain;  ///< Nothing when no day is.
};

/// One extent for each alternative of a one-of date ("1961 or 1963", "by 1962"), else one. A date with
/// unspecified digits is one stretch, all of it certain: any of its years will do. The period serves where
/// there is no value.
std::vector<DayExtent> told_days(const std::optional<Edtf>& value, const std::optional<Period>& period,
                                 const DatePolicy& policy);

/// From the fewest to the most days between a day the one can mean and a day the other can; no most where one
/// has no limit.
Distance days_apart(const std::vector<DayExtent>& a, const std::vector<DayExtent>& b);

/// The date an open expression names: of "by the autumn of 1962" that autumn. Else the period itself.
Period named_period(const Edtf& value, const DatePolicy& policy);

}  // namespace witnessmark
