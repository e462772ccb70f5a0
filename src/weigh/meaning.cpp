#include "meaning.h"

#include <algorithm>

#include "witnessmark/base/fold.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/episode.h"

namespace witnessmark {
namespace {

/// A claim's statement after its denial is taken into it, where that has a statement of its own.
struct Told {
  Statement statement;
  Reading reading;
  bool denied;  ///< Still to be denied: begins, ends, count, attribute.
};

Told told_by(const Claim& claim) {
  const bool denied = claim.polarity == Polarity::denied;
  if (denied && claim.statement == Statement::present) return {Statement::absent, Reading::throughout, false};
  if (denied && claim.statement == Statement::absent) return {Statement::present, Reading::within, false};
  if (claim.statement == Statement::absent) return {Statement::absent, Reading::throughout, false};
  if (claim.statement == Statement::count && claim.quantity && claim.quantity->most == 0)
    return {Statement::absent, Reading::throughout, false};
  return {claim.statement, claim.when.reading, denied};
}

Statement stated_by(const Entry& entry) {
  return entry.statement == Statement::count && entry.number && *entry.number == 0 ? Statement::absent
                                                                                   : entry.statement;
}

/// A denied coming or going: the day lies before the period or after it.
std::vector<EpisodeLimits> other_than(Statement statement, const Period& when) {
  std::vector<EpisodeLimits> alternatives;
  const auto add = [&](DaySpan span) {
    alternatives.push_back(statement == Statement::begins ? EpisodeLimits{span, {span.low, {}}}
                                                          : EpisodeLimits{{{}, span.high}, span});
  };
  if (when.earliest()) add({std::nullopt, when.earliest()->value - 1});
  if (when.past_latest()) add({when.past_latest()->value, std::nullopt});
  return alternatives;
}

bool is_presence(Statement statement) {
  return statement == Statement::present || statement == Statement::count ||
         statement == Statement::attribute;
}

/// Same property of the same thing: numbers or "name: value" texts, held against one another at one time.
Outcome same_property(bool equal, bool denied, const Period& told, const Period& stated) {
  const bool same_time = within(stated, told) == Answer::yes || within(told, stated) == Answer::yes;
  const Answer shared = overlap(told, stated);
  if (denied) equal = !equal;
  if (equal) return within(stated, told) == Answer::yes ? Outcome::agrees : Outcome::compatible;
  if (same_time) return Outcome::conflicts;
  return shared == Answer::no ? Outcome::compatible : Outcome::cannot_tell;
}

struct Attribute {
  std::string name, value;
};
Attribute split_attribute(const std::string& text) {
  const auto colon = text.find(':');
  if (colon == std::string::npos) return {"", fold(text)};
  return {fold(text.substr(0, colon)), fold(text.substr(colon + 1))};
}

Meaning counts(const Claim& claim, const RegisterIndex::Item& item) {
  if (!claim.quantity || !item.entry->number) return {Outcome::cannot_tell};
  const std::int64_t number = *item.entry->number;
  const bool equal = claim.quantity->least <= number && number <= claim.quantity->most;
  const bool denied = claim.polarity == Polarity::denied;
  if (!claim.when.period || !item.period)
    return {equal != denied ? Outcome::compatible : Outcome::cannot_tell};
  return {same_property(equal, denied, *claim.when.period, *item.period)};
}

Meaning attributes(const Claim& claim, const RegisterIndex::Item& item) {
  const Attribute told = split_attribute(claim.attribute);
  const Attribute stated = split_attribute(item.entry->attribute);
  if (told.name != stated.name && !told.name.empty() && !stated.name.empty())
    return {Outcome::cannot_tell, false};
  const bool equal = told.value == stated.value;
  const bool denied = claim.polarity == Polarity::denied;
  if (!claim.when.period || !item.period)
    return {equal != denied ? Outcome::compatible : Outcome::cannot_tell};
  return {same_property(equal, denied, *claim.when.period, *item.period)};
}

Meaning events(const Claim& claim, const RegisterIndex::Item& item) {
  if (!claim.when.period || !item.period) return {Outcome::cannot_tell};
  if (overlap(*claim.when.period, *item.period) == Answer::no) return {Outcome::cannot_tell};
  return {within(*item.period, *claim.when.period) == Answer::yes && claim.polarity == Polarity::affirmed
              ? Outcome::agrees
              : Outcome::compatible};
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

/// Fitted, and yet not there later; gone, and yet not there before. Both can hold only if it went, or came,
/// in between: unless the register shows that, they conflict.
bool conflicts_for_want_of_a_change(const Claim& claim, const Told& told, const RegisterIndex::Item& item,
                                    const RegisterIndex& evidence) {
  if (stated_by(*item.entry) != Statement::absent || told.denied || !claim.when.period || !item.period)
    return false;
  const Period& story = *claim.when.period;
  const Period& fact = *item.period;
  if (told.statement == Statement::begins && story.past_latest() && fact.earliest() &&
      *story.past_latest() <= *fact.earliest())
    return !register_shows_between(claim, Statement::ends, story.past_latest()->value, fact.earliest()->value,
                                   evidence);
  if (told.statement == Statement::ends && story.earliest() && fact.past_latest() &&
      *fact.past_latest() <= *story.earliest())
    return !register_shows_between(claim, Statement::begins, fact.past_latest()->value,
                                   story.earliest()->value, evidence);
  return false;
}

Meaning episodes(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  const Told told = told_by(claim);
  const Statement stated = stated_by(*item.entry);
  if (!item.period) return {Outcome::cannot_tell};
  const auto given = episode_limits(stated, item.period, item.entry->reading);
  if (!claim.when.period) {
    const bool never = told.denied || told.statement == Statement::absent;
    if (never && told.statement == stated) return {told.denied ? Outcome::conflicts : Outcome::compatible};
    return {never ? Outcome::cannot_tell : Outcome::compatible};
  }
  if (told.denied && (told.statement == Statement::count || told.statement == Statement::attribute))
    return {Outcome::cannot_tell};
  const auto claimed = told.denied ? other_than(told.statement, *claim.when.period)
                                   : episode_limits(told.statement, claim.when.period, told.reading);
  const Answer answer = follows(claimed, given);
  if (answer == Answer::no) return {Outcome::conflicts};
  if (conflicts_for_want_of_a_change(claim, told, item, evidence)) return {Outcome::conflicts, true, true};
  // That a thing was there settles neither how many there were nor what they were like.
  const bool settles = told.statement != Statement::count && told.statement != Statement::attribute;
  return {answer == Answer::yes && settles ? Outcome::agrees : Outcome::compatible};
}

}  // namespace

Meaning hold_against(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  const Statement told = claim.statement;
  const Statement stated = item.entry->statement;
  if (told == Statement::located || stated == Statement::located) return {Outcome::cannot_tell, false};
  if (told == Statement::happened || stated == Statement::happened)
    return told == stated ? events(claim, item) : Meaning{Outcome::cannot_tell, false};
  if (told == Statement::count && stated == Statement::count) return counts(claim, item);
  if (told == Statement::attribute && stated == Statement::attribute) return attributes(claim, item);
  return episodes(claim, item, evidence);
}

}  // namespace witnessmark
