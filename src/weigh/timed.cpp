#include "timed.h"

#include <algorithm>

namespace witnessmark {
namespace {

/// The days an entry's time can mean; throughout holds only for those it surely covers, where there are any.
DaySpan days_stated(const RegisterIndex::Item& item, const std::vector<DayExtent>& days) {
  const DayExtent& extent = days.front();
  DaySpan hull = extent.possible;
  for (const DayExtent& other : days) {
    hull.low = hull.low && other.possible.low ? std::optional(std::min(*hull.low, *other.possible.low))
                                              : std::nullopt;
    hull.high = hull.high && other.possible.high ? std::optional(std::max(*hull.high, *other.possible.high))
                                                 : std::nullopt;
  }
  return item.entry->reading == Reading::throughout && extent.certain ? *extent.certain : hull;
}

void append(std::vector<EpisodeLimits>& all, const std::vector<EpisodeLimits>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

}  // namespace

TimedClaim timed(const Claim& claim, const DatePolicy& policy) {
  TimedClaim made{&claim, told_by(claim), {}, {}, {}};
  if (!claim.when.period) return made;
  made.days = told_days(claim.when.dated.value, claim.when.period, policy);
  const Told& told = made.told;
  for (const DayExtent& extent : made.days) {
    if (told.denied) {
      append(made.certain, other_than(told.statement, extent.possible));
      append(made.possible, other_than(told.statement, extent.certain.value_or(extent.possible)));
      continue;
    }
    append(made.possible, episode_limits(told.statement, extent.possible, told.reading));
    if (extent.certain) append(made.certain, episode_limits(told.statement, *extent.certain, told.reading));
  }
  return made;
}

TimedEntry timed(const RegisterIndex::Item& item, const DatePolicy& policy) {
  TimedEntry made{item, stated_by(*item.entry), {}, {}};
  if (!item.period) return made;
  made.days = told_days(item.entry->when.value, item.period, policy);
  made.limits = episode_limits(made.stated, days_stated(item, made.days), item.entry->reading);
  return made;
}

}  // namespace witnessmark
