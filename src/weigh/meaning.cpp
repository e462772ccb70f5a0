#include "meaning.h"

#include <algorithm>

#include "property.h"
#include "told_days.h"
#include "told_statement.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/episode.h"

namespace witnessmark {
namespace {

/// What a claim allows, and what it surely allows.
struct Claimed {
  std::vector<EpisodeLimits> possible, certain;
};

Claimed limits_of(const Claim& claim, const Told& told, const DatePolicy& policy) {
  Claimed claimed;
  const auto append = [](std::vector<EpisodeLimits>& all, const std::vector<EpisodeLimits>& more) {
    all.insert(all.end(), more.begin(), more.end());
  };
  for (const DayExtent& extent : told_days(claim.when.dated.value, claim.when.period, policy)) {
    if (told.denied) {
      append(claimed.certain, other_than(told.statement, extent.possible));
      append(claimed.possible, other_than(told.statement, extent.certain.value_or(extent.possible)));
      continue;
    }
    append(claimed.possible, episode_limits(told.statement, extent.possible, told.reading));
    if (extent.certain)
      append(claimed.certain, episode_limits(told.statement, *extent.certain, told.reading));
  }
  return claimed;
}

/// The days an entry's time can mean; throughout holds only for those it surely covers, where there are any.
DaySpan days_stated(const RegisterIndex::Item& item, const DatePolicy& policy) {
  const DayExtent extent = told_days(item.entry->when.value, item.period, policy).front();
  DaySpan hull = extent.possible;
  for (const DayExtent& other : told_days(item.entry->when.value, item.period, policy)) {
    hull.low = hull.low && other.possible.low ? std::optional(std::min(*hull.low, *other.possible.low))
                                              : std::nullopt;
    hull.high = hull.high && other.possible.high ? std::optional(std::max(*hull.high, *other.possible.high))
                                                 : std::nullopt;
  }
  return item.entry->reading == Reading::throughout && extent.certain ? *extent.certain : hull;
}

bool is_presence(Statement statement) {
  return statement == Statement::present || statement == Statement::count ||
         statement == Statement::attribute;
}

/// Same property of the same thing: numbers or "name: value" texts, held against one another at one time. A
/// property stated throughout a period holds at any time the claim means within it.
Outcome same_property(bool equal, bool denied, const Period& told, const RegisterIndex::Item& item) {
  const Period& stated = *item.period;
  const bool covers = item.entry->reading == Reading::throughout && within(told, stated) == Answer::yes;
  const bool same_time = within(stated, told) == Answer::yes || covers;
  if (denied) equal = !equal;
  if (equal) return same_time ? Outcome::agrees : Outcome::compatible;
  if (same_time) return Outcome::conflicts;
  return overlap(told, stated) == Answer::no ? Outcome::compatible : Outcome::cannot_tell;
}

/// A claim without date can be borne out; an entry without date says nothing of any time.
Meaning property(bool equal, const Claim& claim, const RegisterIndex::Item& item) {
  const bool denied = claim.polarity == Polarity::denied;
  if (!item.period) return {Outcome::cannot_tell};
  if (!claim.when.period) return {equal != denied ? Outcome::compatible : Outcome::cannot_tell};
  return {same_property(equal, denied, *claim.when.period, item)};
}

Meaning counts(const Claim& claim, const RegisterIndex::Item& item) {
  if (!claim.quantity || !item.entry->number) return {Outcome::cannot_tell};
  const std::int64_t least = *item.entry->number;
  const std::int64_t most = item.entry->most().value_or(least);
  const bool equal = claim.quantity->least <= least && most <= claim.quantity->most;
  const bool apart = most < claim.quantity->least || claim.quantity->most < least;
  if (!equal && !apart) return {Outcome::cannot_tell};
  return property(equal, claim, item);
}

/// Without a word for what happened on either side the two may be of different events; with the same word
/// they are of one, unless it happened twice.
Meaning events(const Claim& claim, const RegisterIndex::Item& item) {
  const bool known = !claim.attribute.empty() && !item.entry->attribute.empty();
  const bool same = known && says_the_same(split_attribute(claim.attribute).value,
                                           split_attribute(item.entry->attribute).value);
  if (known && !same) return {Outcome::cannot_tell, false};
  if (!claim.when.period || !item.period) return {Outcome::cannot_tell};
  const bool affirmed = claim.polarity == Polarity::affirmed;
  const Answer inside = within(*item.period, *claim.when.period);
  if (overlap(*claim.when.period, *item.period) == Answer::no)
    return same && affirmed ? Meaning{Outcome::conflicts, true, true} : Meaning{Outcome::cannot_tell};
  if (affirmed) return {inside == Answer::yes ? Outcome::agrees : Outcome::compatible};
  return {same && inside == Answer::yes ? Outcome::conflicts : Outcome::cannot_tell};
}

/// An entry, other than the two, that shows the thing come, gone or there between two days.
bool register_shows_between(const Claim& claim, Statement change, std::int64_t from, std::int64_t to,
                            const RegisterIndex& evidence) {
  const auto items = evidence.on(claim.subject, claim.place);
  return std::any_of(items.begin(), items.end(), [&](const RegisterIndex::Item* item) {
    const Statement statement = stated_by(*item->entry);
    if (item->entry->nature == Nature::intended || item->entry->subject != claim.subject || !item->period)
      return false;
    if (statement != change && !is_presence(statement)) return false;
    const auto low = item->period->earliest();
    const auto high = item->period->past_latest();
    return low && high && low->value >= from && high->value - 1 <= to;
  });
}

/// Two statements, the earlier and the later, that can only both hold if something happened in between.
struct NeedsChange {
  Statement earlier, later, change;
};
constexpr NeedsChange kNeedsChange[] = {
    {Statement::begins, Statement::absent, Statement::ends},  // fitted, and yet not there later
    {Statement::absent, Statement::ends, Statement::begins},  // not there, and yet taken away later
};

/// Unless the register shows the change, the two conflict.
bool conflicts_for_want_of_a_change(const Claim& claim, const Told& told, const RegisterIndex::Item& item,
                                    const RegisterIndex& evidence) {
  if (told.denied || !claim.when.period || !item.period) return false;
  const Period& story = *claim.when.period;
  const Period& fact = *item.period;
  const Statement stated = stated_by(*item.entry);
  const auto lacks = [&](Statement earlier, const Period& first, Statement later, const Period& second) {
    if (!first.past_latest() || !second.earliest() || *first.past_latest() > *second.earliest()) return false;
    return std::any_of(std::begin(kNeedsChange), std::end(kNeedsChange), [&](const NeedsChange& one) {
      return one.earlier == earlier && one.later == later &&
             !register_shows_between(claim, one.change, first.past_latest()->value, second.earliest()->value,
                                     evidence);
    });
  };
  return lacks(told.statement, story, stated, fact) || lacks(stated, fact, told.statement, story);
}

Meaning episodes(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence,
                 bool one_stay = true) {
  const Told told = told_by(claim);
  const Statement stated = stated_by(*item.entry);
  // An entry without date bears out that it came or went, but says nothing of when; a state or an absence without date
  // says nothing of any day.
  if (!item.period) {
    const bool change = told.statement == Statement::begins || told.statement == Statement::ends;
    return {change && !told.denied && stated != Statement::absent ? Outcome::compatible : Outcome::cannot_tell};
  }
  const auto given = episode_limits(stated, days_stated(item, evidence.policy()), item.entry->reading);
  if (!claim.when.period) {
    const bool never = told.denied || told.statement == Statement::absent;
    if (never && told.statement == stated) return {told.denied ? Outcome::conflicts : Outcome::compatible};
    return {never ? Outcome::cannot_tell : Outcome::compatible};
  }
  if (told.denied && (told.statement == Statement::count || told.statement == Statement::attribute))
    return {Outcome::cannot_tell};
  const Claimed claimed = limits_of(claim, told, evidence.policy());
  const Answer answer = follows(claimed.possible, claimed.certain, given);
  if (answer == Answer::no) return {Outcome::conflicts};
  if (one_stay && conflicts_for_want_of_a_change(claim, told, item, evidence))
    return {Outcome::conflicts, true, true};
  // That a thing was there settles neither how many there were nor what they were like.
  const bool settles = told.statement != Statement::count && told.statement != Statement::attribute;
  return {answer == Answer::yes && settles ? Outcome::agrees : Outcome::compatible};
}

/// A value of a property comes, goes and stays like a thing; while another value of it stands, this one does
/// not. Repainting is no rare thing, so that nothing is held against a claim for want of a change between.
Meaning properties(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  if (claim.attribute.empty() || item.entry->attribute.empty()) return {Outcome::cannot_tell};
  const Attribute told = split_attribute(claim.attribute);
  const Attribute stated = split_attribute(item.entry->attribute);
  if (told.name != stated.name && !told.name.empty() && !stated.name.empty())
    return {Outcome::cannot_tell, false};
  const bool equal = says_the_same(told.value, stated.value);
  const bool is_state = item.entry->statement == Statement::attribute;
  if (claim.statement == Statement::attribute && is_state) return property(equal, claim, item);
  // A colour seen within the time told to be that of the painting: the two are of one thing.
  if (claim.statement == Statement::begins && equal && is_state && claim.polarity == Polarity::affirmed &&
      claim.when.period && item.period && within(*item.period, *claim.when.period) == Answer::yes)
    return {Outcome::agrees};
  Claim as_thing = claim;
  if (claim.statement == Statement::attribute) as_thing.statement = Statement::present;
  Entry stated_thing = *item.entry;
  if (is_state) stated_thing.statement = Statement::present;
  if (!equal) stated_thing.statement = Statement::absent;
  Meaning meaning = episodes(as_thing, {&stated_thing, item.source, item.period}, evidence, false);
  meaning.unless_other_episode = meaning.outcome == Outcome::conflicts;
  return meaning;
}

/// What something happened to, was used or was painted was there; that is too little to contradict anybody.
Meaning events_beside_states(const Claim& claim, const RegisterIndex::Item& item,
                             const RegisterIndex& evidence) {
  if (claim.subject.empty() || item.entry->subject.empty()) return {Outcome::cannot_tell, false};
  const auto shows_it_there = [](Statement statement, const std::string& attribute) {
    return statement == Statement::happened || is_change_of_property(statement, attribute);
  };
  Claim as_there = claim;
  if (shows_it_there(claim.statement, claim.attribute)) as_there.statement = Statement::present;
  Entry stated_there = *item.entry;
  if (shows_it_there(stated_there.statement, stated_there.attribute))
    stated_there.statement = Statement::present;
  const RegisterIndex::Item there{&stated_there, item.source, item.period};
  const Meaning meaning = episodes(as_there, there, evidence);
  const bool both = meaning.outcome == Outcome::agrees || meaning.outcome == Outcome::compatible;
  return {both ? Outcome::compatible : Outcome::cannot_tell};
}

}  // namespace

Meaning hold_against(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  const Statement told = claim.statement;
  const Statement stated = item.entry->statement;
  if (told == Statement::located || stated == Statement::located) return {Outcome::cannot_tell, false};
  if (told == Statement::happened && stated == Statement::happened) return events(claim, item);
  if (told == Statement::happened || stated == Statement::happened)
    return events_beside_states(claim, item, evidence);
  const bool told_change = is_change_of_property(told, claim.attribute);
  const bool stated_change = is_change_of_property(stated, item.entry->attribute);
  if ((told_change || told == Statement::attribute) && (stated_change || stated == Statement::attribute))
    return properties(claim, item, evidence);
  if (told_change || stated_change) return {Outcome::cannot_tell, false};
  if (told == Statement::count && stated == Statement::count) return counts(claim, item);
  return episodes(claim, item, evidence);
}

}  // namespace witnessmark
