#pragma once
#include <string>
#include <unordered_set>
#include <vector>

#include "property.h"
#include "told_days.h"
#include "told_statement.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

class ShownStays;

/// What a claim allows of one stay, and what it surely allows.
struct StayTold {
  Told told{};
  std::vector<EpisodeLimits> possible, certain;
};

/// A claim with what its date and its property mean, worked out once for all entries it is held against.
struct TimedClaim {
  const Claim* claim = nullptr;
  std::vector<DayExtent> days;
  StayTold own;
  StayTold there;  ///< Of a property, of its change and of an event: as if it said that it was there.
  Attribute attribute;
};
TimedClaim timed(const Claim& claim, const DatePolicy& policy);

struct StayStated {
  Statement statement = Statement::present;
  std::vector<EpisodeLimits> limits;
};

/// An entry with what its date and its property mean, worked out once for all claims that are held against it.
struct TimedEntry {
  RegisterIndex::Item item{};
  std::vector<DayExtent> days;
  StayStated own;
  StayStated there;      ///< As of a claim.
  StayStated not_there;  ///< Of a property and its change: as another value sees it.
  Attribute attribute;
  const ShownStays* stays = nullptr;  ///< Where the register shows the thing come again at the place.
};
TimedEntry timed(const RegisterIndex::Item& item, const RegisterIndex& evidence);

}  // namespace witnessmark
