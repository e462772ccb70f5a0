#include <fmt/core.h>

#include "circularity.h"
#include "meaning.h"
#include "told_days.h"
#include "weigh/fixtures/shown_stays.h"
#include "witnessmark/weigh/agreement.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

std::string verdict(const Comparison& comparison) {
  switch (comparison.outcome) {
    case Outcome::agrees:
      return "they agree";
    case Outcome::compatible:
      return comparison.intention ? "consistent with an intention; nothing here shows it was carried out"
                                  : "both can be right";
    case Outcome::conflicts:
      // Times that may share a day conflict by what is said of them, not by any distance.
      if (!comparison.gap || comparison.gap->least == 0) return "they conflict";
      return fmt::format("they conflict, {} apart", in_unit(*comparison.gap, "day"));
    case Outcome::cannot_tell:
      return "it cannot be told whether they agree";
    case Outcome::silent:
      return "the register is silent";
  }
  return "";
}

std::string_view circle_words(Circle circle) {
  switch (circle) {
    case Circle::date_rests_on_subject:
      return "the entry's date rests on what is claimed";
    case Circle::identity_rests_on_subject:
      return "the entry's identification rests on what is claimed";
    case Circle::same_testimony:
      return "the source derives from this interview";
    case Circle::shown_beforehand:
      return "the narrator was shown the source beforehand";
    case Circle::none:
      return "";
  }
  return "";
}

/// "e13, for e12 has it there before; e20".
std::string comings_words(const ShownStays& stays) {
  std::string text;
  for (const ShownStays::ComingAgain& one : stays.comings())
    text += fmt::format("{}{}{}", text.empty() ? "" : "; ", one.come,
                        one.there_before.empty() ? "" : fmt::format(", for {} has it there before", one.there_before));
  return text;
}

std::string reservations(const Claim& claim, const Interview& interview, const Comparison& comparison,
                         const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  std::string text;
  const auto add = [&](std::string_view words) { text += fmt::format("; {}", words); };
  const Entry& entry = *item.entry;
  if (entry.identification != Identification::certain)
    add(fmt::format("that it shows this site is only {}", to_string(entry.identification)));
  if (entry.subject != claim.subject)
    add(fmt::format("the entry is on {}, not on the same thing",
                    thing_words(evidence.lists(), entry.subject, "", entry.place, "")));
  if (entry.statement == Statement::absent && entry.spot_visible != SpotVisible::yes &&
      item.source != nullptr && item.source->kind == SourceKind::photograph)
    add("the spot cannot be seen for certain");
  if (comparison.intention && comparison.outcome != Outcome::compatible) add("the entry is an intention");
  if (comparison.circular) add(circle_words(circle_between(claim, interview, item, evidence)));
  const Meaning meaning = hold_against(claim, item, evidence);
  const ShownStays* stays = evidence.shown_stays(entry.subject, entry.place);
  if (meaning.of_several_stays && stays != nullptr)
    add(fmt::format("the register shows it come again ({}), so that they need not be of one stay",
                    comings_words(*stays)));
  const bool events = claim.statement == Statement::happened && entry.statement == Statement::happened;
  if (comparison.outcome == Outcome::conflicts && meaning.unless_other_episode)
    add(events ? "unless it happened twice"
               : "unless it came or went once more in between, which no entry shows");
  if (comparison.outcome == Outcome::cannot_tell && events && claim.when.period && item.period) {
    const Distance apart = days_apart(told_days(claim.when.dated.value, claim.when.period, evidence.policy()),
                                      told_days(entry.when.value, item.period, evidence.policy()));
    if (apart.least > 0)
      add(fmt::format("it may be another event; if it is the same, they are {} apart",
                      in_unit(apart, "day")));
  }
  return text;
}

/// What an institution noted on the entry by the letter-figure scale: said, and counted for nothing.
std::string noted_words(const Entry& entry) {
  return entry.letter_figure.empty() ? "" : fmt::format(" (noted {})", entry.letter_figure);
}

/// "has, as a guess,"; a claim that is not firmly put is not given as if it were.
std::string verb(const Claim& claim, std::string_view affirmed, std::string_view denied) {
  const std::string verb(claim.polarity == Polarity::denied ? denied : affirmed);
  if (claim.firmness == Firmness::firm) return verb;
  return fmt::format("{}, {},", verb, claim.firmness == Firmness::guess ? "as a guess" : "hedged");
}

/// The narrator's own words, then what was read from them. A date as said is not said twice.
std::string claim_words(const Claim& claim, std::string_view quote, const RegisterIndex& evidence) {
  const std::string words = brief_quote(quote, claim.when.dated.written);
  Claim read = claim;
  if (read.when.period && words.find(read.when.dated.written) != std::string::npos) read.when.dated.written.clear();
  const std::string said = words.empty() ? "" : fmt::format(", “{}”,", words);
  if (claim.statement == Statement::located && !claim.subject.empty() && claim.subject == claim.speaker) {
    const Whereabouts where = whereabouts_of(claim, evidence);
    const bool place = where.kind == Whereabouts::Kind::place;
    const std::string is_said =
        place ? verb(claim, "has been", "denies having been")
              : verb(claim, "speaks of where they were", "speaks of where they were not") +
                    (claim.firmness == Firmness::firm ? "," : "");
    return fmt::format("the narrator{} {} {}, {}", said, is_said, to_string(where),
                       when_words(read.when.dated, read.when.period, reading_of(claim)));
  }
  return fmt::format("the narrator{} {} {}", said, verb(claim, "has", "denies"), statement_words(read, evidence));
}

/// What is not in the narrator's own words here: who supplied it, and what is carried over from the talk before.
std::string provenance(const Claim& claim, const Comparison& comparison, const RegisterIndex& evidence) {
  std::string text;
  if (claim.led) text += "; the interviewer supplied it, so that it is no independent testimony";
  if (comparison.outcome != Outcome::agrees && comparison.outcome != Outcome::conflicts) return text;
  const bool carried = claim.subject_carried && claim.statement != Statement::located;
  const std::string about =
      "that it is about " + thing_words(evidence.lists(), claim.subject, claim.subject_words, "", "");
  if (carried && claim.when.carried)
    text += fmt::format("; {}, and its date, are taken from earlier in the talk", about);
  else if (carried)
    text += fmt::format("; {} is taken from earlier in the talk", about);
  else if (claim.when.carried)
    text += "; its date is taken from earlier in the talk";
  return text;
}

/// Whom the register has at a place.
std::string party_words(const Stay& stay, const Claim& claim,
                        const std::function<std::string(const std::string&)>& name_of) {
  if (stay.party.empty()) return "the site";
  if (stay.party == claim.speaker) return "the narrator";
  return name_of ? name_of(stay.party) : stay.party;
}

}  // namespace

std::string explain(const Claim& claim, std::string_view quote, const Interview& interview,
                    const Comparison& comparison, const RegisterIndex& evidence,
                    const std::function<std::string(const std::string&)>& name_of) {
  if (comparison.outcome == Outcome::silent || comparison.entry.empty())
    return fmt::format("Nothing in the register speaks to it: {}.", claim_words(claim, quote, evidence));
  if (const auto* stay = evidence.find_stay(comparison.entry)) {
    const Source* source = evidence.source(stay->stay->source);
    std::string why;
    if (stay->stay->party.empty() && !claim.subject.empty())
      why = comparison.outcome == Outcome::compatible ? "; in service then, and the site was there"
                                                      : "; where the site was does not place a person";
    return fmt::format("{} ({}) has {} at {}, {}; {}: {}{}{}.", source ? source->title : stay->stay->source,
                       stay->stay->key, party_words(*stay->stay, claim, name_of),
                       stay->stay->locations.front(), when_words(stay->stay->when, stay->period),
                       claim_words(claim, quote, evidence), verdict(comparison), why,
                       provenance(claim, comparison, evidence));
  }
  const auto* item = evidence.find(comparison.entry);
  if (item == nullptr) return fmt::format("Entry {} is no longer in the register.", comparison.entry);
  std::string kind(item->source ? in_words(item->source->kind) : "entry");
  if (!kind.empty()) kind.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(kind.front())));
  return fmt::format("{} {}{} has {}; {}: {}{}{}.", kind, item->entry->key, noted_words(*item->entry),
                     statement_words(*item, evidence), claim_words(claim, quote, evidence), verdict(comparison),
                     reservations(claim, interview, comparison, *item, evidence),
                     provenance(claim, comparison, evidence));
}

}  // namespace witnessmark
