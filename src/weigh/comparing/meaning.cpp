#include "meaning.h"

#include <algorithm>

#include "evidence_beside.h"
#include "property.h"
#include "timed.h"
#include "weigh/fixtures/shown_stays.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/episode.h"

namespace witnessmark {
namespace {

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
Meaning events(const TimedClaim& timed, const TimedEntry& entry) {
  const Claim& claim = *timed.claim;
  const RegisterIndex::Item& item = entry.item;
  const bool known = !claim.attribute.empty() && !item.entry->attribute.empty();
  const bool same = known && says_the_same(timed.attribute, entry.attribute);
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
  const EvidenceBeside& beside = evidence.beside(claim.subject, claim.place);
  return (change == Statement::begins ? beside.came : beside.went).any_between(from, to);
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
                                    Statement stated, const RegisterIndex& evidence) {
  if (told.denied || !claim.when.period || !item.period) return false;
  const Period& story = *claim.when.period;
  const Period& fact = *item.period;
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

/// Whether what was told and what is stated can both be right of the stays that the register shows.
bool of_several_stays(const StayTold& told, const StayStated& stated, const ShownStays* stays,
                      ShownStays::Absence absence) {
  const OfStays claim{told.told.statement, told.told.denied, &told.possible};
  return stays != nullptr && stays->can_both_hold(claim, {stated.statement, false, &stated.limits}, absence);
}

/// The same of an absence, or of a change that is denied, which are told of all stays: of the one the entry is of it follows.
bool follows_of_all_stays(const TimedClaim& timed, const StayTold& told, const StayStated& stated,
                          const ShownStays* stays) {
  const bool of_all = told.told.statement == Statement::absent || told.told.denied;
  return stays == nullptr || !of_all ||
         stays->rules_out(told.told, timed.days, {stated.statement, false, &stated.limits});
}

/// Of a thing; `stays` of a value of its property is null: repainting is no rare thing.
Meaning episodes(const TimedClaim& timed, const StayTold& of_claim, const RegisterIndex::Item& item,
                 const StayStated& of_entry, const RegisterIndex& evidence, const ShownStays* stays,
                 bool one_stay = true) {
  const Claim& claim = *timed.claim;
  const Told& told = of_claim.told;
  const Statement stated = of_entry.statement;
  // An entry without date bears out that it came or went, but says nothing of when; a state or an absence without date
  // says nothing of any day.
  if (!item.period) {
    const bool change = is_change(told.statement);
    return {change && !told.denied && stated != Statement::absent ? Outcome::compatible : Outcome::cannot_tell};
  }
  if (!claim.when.period) {
    const bool never = told.denied || told.statement == Statement::absent;
    if (never && told.statement == stated) return {told.denied ? Outcome::conflicts : Outcome::compatible};
    return {never ? Outcome::cannot_tell : Outcome::compatible};
  }
  if (told.denied && (told.statement == Statement::count || told.statement == Statement::attribute))
    return {Outcome::cannot_tell};
  const Answer answer = follows(of_claim.possible, of_claim.certain, of_entry.limits);
  constexpr Meaning kOfSeveral{Outcome::compatible, true, false, true};
  using Absence = ShownStays::Absence;
  if (answer == Answer::no)
    return of_several_stays(of_claim, of_entry, stays, Absence::anywhere) ? kOfSeveral : Meaning{Outcome::conflicts};
  if (one_stay && conflicts_for_want_of_a_change(claim, told, item, stated, evidence))
    return of_several_stays(of_claim, of_entry, stays, Absence::between_stays)
               ? kOfSeveral
               : Meaning{Outcome::conflicts, true, true};
  if (answer == Answer::yes && !follows_of_all_stays(timed, of_claim, of_entry, stays)) return kOfSeveral;
  // That a thing was there settles neither how many there were nor what they were like.
  const bool settles = told.statement != Statement::count && told.statement != Statement::attribute;
  return {answer == Answer::yes && settles ? Outcome::agrees : Outcome::compatible};
}

/// A value of a property comes, goes and stays like a thing; while another value of it stands, this one does
/// not. Repainting is no rare thing, so that nothing is held against a claim for want of a change between.
Meaning properties(const TimedClaim& timed, const TimedEntry& entry, const RegisterIndex& evidence) {
  const Claim& claim = *timed.claim;
  const RegisterIndex::Item& item = entry.item;
  if (claim.attribute.empty() || item.entry->attribute.empty()) return {Outcome::cannot_tell};
  const Attribute& told = timed.attribute;
  const Attribute& stated = entry.attribute;
  if (told.name != stated.name && !told.name.empty() && !stated.name.empty())
    return {Outcome::cannot_tell, false};
  const bool equal = says_the_same(told, stated);
  if (!equal && (told.only_told || stated.only_told)) return {Outcome::cannot_tell, false};
  const bool is_state = item.entry->statement == Statement::attribute;
  if (claim.statement == Statement::attribute && is_state) return property(equal, claim, item);
  // A colour seen within the time told to be that of the painting: the two are of one thing.
  if (claim.statement == Statement::begins && equal && is_state && claim.polarity == Polarity::affirmed &&
      claim.when.period && item.period && within(*item.period, *claim.when.period) == Answer::yes)
    return {Outcome::agrees};
  const StayStated& of_entry = !equal ? entry.not_there : is_state ? entry.there : entry.own;
  Meaning meaning = episodes(timed, claim.statement == Statement::attribute ? timed.there : timed.own, item,
                             of_entry, evidence, nullptr, false);
  meaning.unless_other_episode = meaning.outcome == Outcome::conflicts;
  return meaning;
}

/// What something happened to, was used or was painted was there; that is too little to contradict anybody.
Meaning events_beside_states(const TimedClaim& timed, const TimedEntry& entry, const RegisterIndex& evidence) {
  const Claim& claim = *timed.claim;
  const Entry& stated = *entry.item.entry;
  if (claim.subject.empty() || stated.subject.empty()) return {Outcome::cannot_tell, false};
  const auto shows_it_there = [](Statement statement, const std::string& attribute) {
    return statement == Statement::happened || is_change_of_property(statement, attribute);
  };
  const Meaning meaning =
      episodes(timed, shows_it_there(claim.statement, claim.attribute) ? timed.there : timed.own, entry.item,
               shows_it_there(stated.statement, stated.attribute) ? entry.there : entry.own, evidence,
               entry.stays);
  const bool both = meaning.outcome == Outcome::agrees || meaning.outcome == Outcome::compatible;
  return {both ? Outcome::compatible : Outcome::cannot_tell, true, false, meaning.of_several_stays};
}

}  // namespace

Meaning hold_against(const TimedClaim& timed, const TimedEntry& entry, const RegisterIndex& evidence) {
  const Claim& claim = *timed.claim;
  const RegisterIndex::Item& item = entry.item;
  const Statement told = claim.statement;
  const Statement stated = item.entry->statement;
  if (told == Statement::located || stated == Statement::located) return {Outcome::cannot_tell, false};
  if (told == Statement::happened && stated == Statement::happened) return events(timed, entry);
  if (told == Statement::happened || stated == Statement::happened)
    return events_beside_states(timed, entry, evidence);
  const bool told_change = is_change_of_property(told, claim.attribute);
  const bool stated_change = is_change_of_property(stated, item.entry->attribute);
  if ((told_change || told == Statement::attribute) && (stated_change || stated == Statement::attribute))
    return properties(timed, entry, evidence);
  if (told_change || stated_change) return {Outcome::cannot_tell, false};
  if (told == Statement::count && stated == Statement::count) return counts(claim, item);
  return episodes(timed, timed.own, item, entry.own, evidence, entry.stays);
}

Meaning hold_against(const Claim& claim, const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  return hold_against(timed(claim, evidence.policy()), timed(item, evidence), evidence);
}

}  // namespace witnessmark
