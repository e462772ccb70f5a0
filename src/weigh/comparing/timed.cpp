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

StayTold stay_told(const Claim& claim, const std::vector<DayExtent>& days) {
  StayTold made{told_by(claim), {}, {}};
  const Told& told = made.told;
  for (const DayExtent& extent : days) {
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

}  // namespace

TimedClaim timed(const Claim& claim, const DatePolicy& policy) {
  TimedClaim made;
  made.claim = &claim;
  if (claim.when.period) made.days = told_days(claim.when.dated.value, claim.when.period, policy);
  made.own = stay_told(claim, made.days);
  if (!claim.attribute.empty()) made.attribute = split_attribute(claim.attribute);
  if (claim.statement == Statement::attribute || claim.statement == Statement::happened ||
      is_change_of_property(claim.statement, claim.attribute)) {
    Claim there = claim;
    there.statement = Statement::present;
    made.there = stay_told(there, made.days);
  }
  return made;
}

TimedEntry timed(const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  const Entry& entry = *item.entry;
  TimedEntry made;
  made.item = item;
  made.stays = evidence.shown_stays(entry.subject, entry.place);
  if (item.period) made.days = told_days(entry.when.value, item.period, evidence.policy());
  const auto stay = [&](Statement statement) {
    StayStated stated{statement, {}};
    if (item.period) stated.limits = episode_limits(statement, days_stated(item, made.days), entry.reading);
    return stated;
  };
  made.own = stay(stated_by(entry));
  if (!entry.attribute.empty()) made.attribute = split_attribute(entry.attribute);
  const bool property = entry.statement == Statement::attribute || is_change_of_property(entry.statement, entry.attribute);
  if (property || entry.statement == Statement::happened) made.there = stay(Statement::present);
  if (property) made.not_there = stay(Statement::absent);
  return made;
}

}  // namespace witnessmark
