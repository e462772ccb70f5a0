#include "statements.h"

#include <fmt/core.h>

#include <algorithm>

#include "weigh/comparing/beside_stay.h"
#include "weigh/comparing/compare_timed.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// A denied presence is an absence, and the other way about: both have a statement of their own.
void take_in_denial(Claim& claim) {
  if (claim.polarity != Polarity::denied) return;
  if (claim.statement == Statement::present) {
    claim.statement = Statement::absent;
    claim.polarity = Polarity::affirmed;
  } else if (claim.statement == Statement::absent) {
    claim.statement = Statement::present;
    claim.polarity = Polarity::affirmed;
  }
}

/// What an entry would say if it stated what is claimed.
Entry entry_stating(const Claim& claim) {
  Entry entry;
  entry.statement = claim.statement;
  entry.subject = claim.subject;
  entry.place = claim.place;
  entry.when = claim.when.dated;
  entry.reading = claim.statement == Statement::absent ? Reading::throughout : claim.when.reading;
  if (claim.quantity && claim.quantity->least == claim.quantity->most) entry.number = claim.quantity->least;
  entry.attribute = claim.attribute;
  entry.spot_visible = SpotVisible::yes;
  return entry;
}

/// A number or a property on one day says nothing of all the days it is asked of.
Outcome of_all_days(Outcome outcome, const Claim& question, const std::optional<Period>& given,
                    Reading reading) {
  const bool property = question.statement == Statement::count || question.statement == Statement::attribute;
  if (outcome != Outcome::agrees || !property || question.when.reading != Reading::throughout) return outcome;
  const bool covers =
      reading == Reading::throughout && given && within(*question.when.period, *given) == Answer::yes;
  return covers ? outcome : Outcome::compatible;
}

Stand stand_by(Outcome outcome) {
  switch (outcome) {
    case Outcome::agrees:
      return Stand::for_it;
    case Outcome::conflicts:
      return Stand::against_it;
    case Outcome::compatible:
      return Stand::consistent;
    case Outcome::cannot_tell:
    case Outcome::silent:
      return Stand::cannot_tell;
  }
  return Stand::cannot_tell;
}

/// Whether words for a place are a name of the stay told of, or the end of one ("the infirmary").
bool names_stay(const std::string& words, const Question& told) {
  return std::any_of(told.stay_at.begin(), told.stay_at.end(), [&](const std::string& name) {
    const bool end = name.size() > words.size() && name.ends_with(words) && name[name.size() - words.size() - 1] == ' ';
    return name == words || end;
  });
}

}  // namespace

Statements::Statements(const RegisterIndex& index) : index_(index) {
  for (const RegisterIndex::Item& item : index_.items())
    if (const auto question = question_of(item)) stated_.emplace(item.entry, key_of(*question));
}

std::string Statements::only_place(const std::string& subject) const {
  std::string found;
  for (const RegisterIndex::Item* item : index_.on(subject, "")) {
    if (item->entry->subject != subject || item->entry->place.empty()) continue;
    if (!found.empty() && found != item->entry->place) return "";
    found = item->entry->place;
  }
  return found;
}

std::optional<Claim> Statements::question_of(const Claim& claim) const {
  if (!claim.when.period) return std::nullopt;
  Claim question;
  question.statement = claim.statement;
  question.polarity = claim.polarity;
  question.subject = claim.subject;
  question.when = claim.when;
  if (claim.statement != Statement::absent) question.when.reading = reading_of(claim);
  question.quantity = claim.quantity;
  question.attribute = claim.attribute;
  if (claim.statement == Statement::located) {
    if (claim.place_words.empty()) return std::nullopt;
    question.place_words = claim.place_words;
    return question;
  }
  if (claim.subject.empty()) return std::nullopt;
  if (is_change(claim.statement) && !claim.attribute.empty()) return std::nullopt;
  if (claim.statement == Statement::count && !claim.quantity) return std::nullopt;
  if (!claim.place_carried) question.place = claim.place;
  if (question.place.empty()) question.place = only_place(claim.subject);
  take_in_denial(question);
  return question;
}

std::optional<Claim> Statements::question_of(const RegisterIndex::Item& item) const {
  const Entry& entry = *item.entry;
  Claim claim;
  claim.statement = entry.statement;
  claim.subject = entry.subject;
  claim.place = entry.place;
  claim.when.dated = entry.when;
  claim.when.reading = entry.reading;
  claim.when.period = item.period;
  if (entry.number) claim.quantity = Quantity{*entry.number, *entry.most(), ""};
  claim.attribute = entry.attribute;
  return entry.statement == Statement::located ? std::nullopt : question_of(claim);
}

std::string Statements::key_of(const Claim& question) const {
  const std::string where =
      question.statement == Statement::located ? names_of(question.place_words).front() : question.place;
  const std::string number =
      question.quantity ? fmt::format("{}..{}", question.quantity->least, question.quantity->most) : "";
  // What is stated of all the days and what of some day among them are two statements.
  const bool throughout = question.when.reading == Reading::throughout;
  return fmt::format("{}\n{}\n{}\n{}\n{}\n{}\n{}{}", question.subject, where, to_string(question.statement),
                     to_string(question.polarity), number, fold(question.attribute), throughout ? "=" : "",
                     to_string(*question.when.period));
}

std::vector<std::string> Statements::names_of(const std::string& location) const {
  return index_.location_names(location);
}

std::unique_ptr<Question> Statements::prepared(Claim question) const {
  auto made = std::make_unique<Question>(std::move(question));
  const Claim& claim = made->claim;
  made->key = key_of(claim);
  made->timed = timed(claim, index_.policy());
  if (claim.polarity == Polarity::denied) {
    made->affirmed = std::make_unique<Claim>(claim);
    made->affirmed->polarity = Polarity::affirmed;
    made->timed_affirmed = timed(*made->affirmed, index_.policy());
  }
  if (claim.statement == Statement::located) {
    made->folded_place = fold(claim.place_words);
    for (const std::string& name : names_of(claim.place_words)) made->stay_at.push_back(fold(name));
    if (claim.when.dated.value) made->stay_during = to_period(*claim.when.dated.value, index_.policy());
  } else {
    made->stating = entry_stating(claim);
    made->as_fact = timed(RegisterIndex::Item{&made->stating, nullptr, claim.when.period}, index_);
  }
  return made;
}

/// The outcome for a claim when the other, as affirmed, is taken for a fact.
Outcome Statements::outcome_given(const TimedClaim& timed, const Question& given) const {
  static const Interview kNone;
  static const std::unordered_set<std::string> kNoLineage;
  const Claim& claim = *timed.claim;
  const auto standing = held_against(timed, kNone, given.as_fact, kNoLineage, index_);
  if (!standing) return Outcome::silent;
  return of_all_days(standing->outcome, claim, given.claim.when.period, given.claim.when.reading);
}

/// The same where the other tells of a stay of the same party.
Outcome Statements::outcome_given_stay(const Question& asked, bool denied, const Question& given) const {
  if (!given.stay_during || asked.folded_place.empty()) return Outcome::silent;
  return beside_stay(names_stay(asked.folded_place, given), true, denied, *asked.claim.when.period, *given.stay_during);
}

Stand Statements::stand_of(const Question& told, const Question& question) const {
  if (told.key == question.key) return Stand::for_it;
  if (question.claim.statement == Statement::located) {
    if (told.claim.polarity == Polarity::affirmed)
      return stand_by(outcome_given_stay(question, question.claim.polarity == Polarity::denied, told));
    if (outcome_given_stay(told, false, question) != Outcome::agrees) return Stand::cannot_tell;
    return question.claim.polarity == Polarity::denied ? Stand::for_it : Stand::against_it;
  }
  if (told.claim.polarity == Polarity::affirmed) return stand_by(outcome_given(question.timed, told));
  // What is denied is false when something that would establish it holds: so one denial follows from a wider
  // one, and a denial speaks against whatever would establish what it denies.
  const bool would_establish = outcome_given(told.timed_affirmed, question) == Outcome::agrees;
  if (!would_establish) return Stand::cannot_tell;
  return question.claim.polarity == Polarity::denied ? Stand::for_it : Stand::against_it;
}

std::optional<Stand> Statements::stand_of(const PreparedEntry& entry, const Question& question) const {
  static const Interview kNone;
  const auto standing = held_against(question.timed, kNone, entry.timed, *entry.lineage, index_);
  if (!standing) return std::nullopt;
  if (standing->intention)
    return standing->outcome == Outcome::compatible ? Stand::for_it : Stand::cannot_tell;
  const RegisterIndex::Item& item = entry.timed.item;
  const auto own = stated_.find(item.entry);
  const bool states_it =
      own != stated_.end() && own->second == question.key && standing->outcome == Outcome::compatible;
  // What states the very thing is for it, however wide its date; unless it may show another site.
  if (states_it && item.entry->identification == Identification::certain) return Stand::for_it;
  return stand_by(of_all_days(standing->outcome, question.claim, item.period, item.entry->reading));
}

}  // namespace witnessmark
