#include "witnessmark/weigh/fixture_statement.h"

#include <algorithm>
#include <array>
#include <limits>
#include <tuple>

#include "weigh/comparing/property.h"
#include "weigh/stays/days_meant.h"
#include "weigh/comparing/told_statement.h"

namespace witnessmark {
namespace {

constexpr std::array kKindOrder = {
    SourceKind::log,           SourceKind::photograph, SourceKind::physical_trace, SourceKind::correspondence,
    SourceKind::object_record, SourceKind::order,      SourceKind::drawing,        SourceKind::publication,
    SourceKind::testimony};
constexpr std::array kBasisOrder = {Basis::first_hand, Basis::unstated, Basis::inferred, Basis::told,
                                    Basis::read};

template <typename Order, typename Value>
int place_in(const Order& order, Value value) {
  return static_cast<int>(std::find(order.begin(), order.end(), value) - order.begin());
}

bool rests_on_itself(const std::vector<std::string>& keys, const Entry& entry,
                     const RegisterIndex& evidence) {
  return std::any_of(keys.begin(), keys.end(), [&](const std::string& key) {
    const auto* other = evidence.find(key);
    return key == entry.subject || (other != nullptr && other->entry->subject == entry.subject);
  });
}

/// What the statements are taken to be of: the thing, or a value of one of its properties.
enum class Of { thing, property };

/// Why the entry, whatever it states, says nothing of the thing on any day.
NoLimit nothing_said_by(const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  const Entry& entry = *item.entry;
  if (entry.nature == Nature::intended) return NoLimit::intention;
  if (entry.identification != Identification::certain) return NoLimit::identification;
  if (rests_on_itself(entry.date_rests_on, entry, evidence) ||
      rests_on_itself(entry.identification_rests_on, entry, evidence) ||
      rests_on_itself(entry.caption_rests_on, entry, evidence))
    return NoLimit::rests_on_itself;
  return item.period ? NoLimit::none : NoLimit::undated;
}

NoLimit no_limit_of(const RegisterIndex::Item& item, const RegisterIndex& evidence, Of of) {
  const Entry& entry = *item.entry;
  const Statement stated = stated_by(entry);
  if (stated == Statement::happened) return NoLimit::event;
  if (of == Of::thing && is_change_of_property(stated, entry.attribute)) return NoLimit::property;
  const NoLimit why = nothing_said_by(item, evidence);
  const bool picture = item.source != nullptr && item.source->kind == SourceKind::photograph;
  const bool not_seen = picture && stated == Statement::absent && entry.spot_visible != SpotVisible::yes;
  return not_seen && (why == NoLimit::none || why == NoLimit::undated) ? NoLimit::spot_not_visible : why;
}

NoLimit no_limit_of(const Claim& claim, const Told& told, Of of) {
  if (told.statement == Statement::happened) return NoLimit::event;
  const bool change = is_change(told.statement);
  if (of == Of::thing && is_change_of_property(told.statement, claim.attribute)) return NoLimit::property;
  if (told.denied && (!change || !claim.when.period)) return NoLimit::denial;
  return claim.when.period ? NoLimit::none : NoLimit::undated;
}

/// What the entry, its date and its identification rest on, directly or through others.
std::vector<std::string> rests_on(const Entry& entry, const RegisterIndex& evidence) {
  std::vector<std::string> keys;
  const auto add = [&](const std::string& key) {
    const auto* other = evidence.find(key);
    for (const std::string& found : evidence.lineage(other != nullptr ? other->entry->source : key))
      keys.push_back(found);
  };
  add(entry.source);
  for (const auto* list : {&entry.date_rests_on, &entry.identification_rests_on, &entry.caption_rests_on})
    for (const std::string& key : *list)
      if (key != entry.subject) add(key);
  std::sort(keys.begin(), keys.end());
  keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
  return keys;
}

/// A record of the time: not a publication or testimony, nor dated or identified by one. What an object's own record
/// (a plate, a card) says it was like, or that happened to it, goes with the object wherever it was.
bool may_show_return(const FixtureStatement& made, const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  const bool of_object = made.statement == Statement::attribute || made.no_limit == NoLimit::event ||
                         made.no_limit == NoLimit::property;
  if (of_object && item.source != nullptr && item.source->kind == SourceKind::object_record) return false;
  return std::all_of(made.rests_on.begin(), made.rests_on.end(), [&](const std::string& key) {
    const Source* source = evidence.source(key);
    return source != nullptr && source->interview.empty() && source->kind != SourceKind::publication &&
           source->kind != SourceKind::testimony;
  });
}

FixtureStatement of_entry(const RegisterIndex::Item& item, const RegisterIndex& evidence, Of of) {
  const Entry& entry = *item.entry;
  FixtureStatement made;
  made.key = {StatementKey::Kind::entry, entry.key};
  made.source = entry.source;
  made.rests_on = rests_on(entry, evidence);
  made.subject = entry.subject;
  made.place = entry.place;
  made.statement = stated_by(entry);
  if (of == Of::property && made.statement == Statement::attribute) made.statement = Statement::present;
  made.reading = entry.reading;
  made.over = entry.over;
  made.period = item.period;
  made.attribute = entry.attribute;
  if (entry.number) made.number = Quantity{*entry.number, *entry.most(), ""};
  made.no_limit = no_limit_of(item, evidence, of);
  const bool may_show_there = made.no_limit == NoLimit::event || made.no_limit == NoLimit::property;
  if (made.no_limit == NoLimit::none ||
      (may_show_there && nothing_said_by(item, evidence) == NoLimit::none))
    made.days = days_meant(made, entry.when.value, evidence.policy());
  made.may_show_return = may_show_return(made, item, evidence);
  const int kind = item.source != nullptr ? place_in(kKindOrder, item.source->kind) : 9;
  made.rank = kind * 4 + static_cast<int>(entry.identification);
  return made;
}

/// A value that is denied was not there.
Told value_told_by(const Claim& claim) {
  Claim as_thing = claim;
  if (claim.statement == Statement::attribute) as_thing.statement = Statement::present;
  return told_by(as_thing);
}

FixtureStatement of_claim(const HeldClaim& held, const RegisterIndex& evidence, Of of) {
  const Claim& claim = held.claim;
  const Told told = of == Of::property ? value_told_by(claim) : told_by(claim);
  FixtureStatement made;
  made.key = {StatementKey::Kind::claim, to_string(claim.id)};
  made.footing = held.footing;
  made.source = claim.interview;
  made.rests_on = {claim.interview};
  made.subject = claim.subject;
  made.place = claim.place_carried ? "" : claim.place;
  made.statement = told.statement;
  made.reading = told.reading;
  made.denied = told.denied;
  made.period = claim.when.period;
  made.attribute = claim.attribute;
  made.number = claim.quantity;
  made.no_limit = no_limit_of(claim, told, of);
  if (made.no_limit == NoLimit::none) made.days = days_meant(made, claim.when.dated.value, evidence.policy());
  if (made.no_limit == NoLimit::none && made.days.empty()) made.no_limit = NoLimit::denial;
  constexpr int kUnknownDistance = 999;
  const auto& distance = held.recall.recall_distance;
  made.rank = place_in(kBasisOrder, claim.basis) * 1000 +
              (distance && !dated_after_interview(held.recall)
                   ? static_cast<int>(std::clamp<std::int64_t>(distance->least, 0, kUnknownDistance - 1))
                   : kUnknownDistance);
  return made;
}

auto order_of(const FixtureStatement& statement) {
  const bool first = !statement.days.empty() && statement.days.front().low;
  return std::tuple<Footing, int, std::int64_t, const StatementKey&>(
      statement.footing, statement.rank,
      first ? *statement.days.front().low : std::numeric_limits<std::int64_t>::max(), statement.key);
}

}  // namespace

std::string_view to_string(StatementKey::Kind kind) {
  switch (kind) {
    case StatementKey::Kind::entry:
      return "entry";
    case StatementKey::Kind::stay:
      return "stay";
    case StatementKey::Kind::claim:
      return "claim";
  }
  return "";
}

std::string_view to_string(Footing footing) {
  switch (footing) {
    case Footing::evidence:
      return "evidence";
    case Footing::reviewed:
      return "reviewed";
    case Footing::proposed:
      return "proposed";
  }
  return "";
}

std::string_view in_words(NoLimit why) {
  switch (why) {
    case NoLimit::none:
      return "";
    case NoLimit::undated:
      return "no date";
    case NoLimit::intention:
      return "an intention: nothing in it shows it was carried out";
    case NoLimit::identification:
      return "that it shows this site or this thing is not certain";
    case NoLimit::spot_not_visible:
      return "the spot is not surely in the picture";
    case NoLimit::rests_on_itself:
      return "dated or identified by this very thing";
    case NoLimit::event:
      return "an event, which says too little of coming and going";
    case NoLimit::property:
      return "a property came or went, not the thing";
    case NoLimit::denial:
      return "a denial that rules out no day";
  }
  return "";
}

namespace {

void put_in_order(std::vector<FixtureStatement>& statements) {
  std::stable_sort(statements.begin(), statements.end(),
                   [](const auto& a, const auto& b) { return order_of(a) < order_of(b); });
}

bool of_property(Statement statement, const std::string& attribute) {
  return !attribute.empty() &&
         (statement == Statement::attribute || is_change_of_property(statement, attribute));
}

std::vector<FixtureStatement> statements_of(const RegisterIndex& evidence,
                                            const std::vector<HeldClaim>& claims, Of of) {
  std::vector<FixtureStatement> statements;
  const auto asked = [&](Statement statement, const std::string& attribute) {
    return of == Of::thing || of_property(statement, attribute);
  };
  for (const RegisterIndex::Item& item : evidence.items()) {
    const Entry& entry = *item.entry;
    if (entry.subject.empty() || entry.statement == Statement::located) continue;
    if (asked(entry.statement, entry.attribute)) statements.push_back(of_entry(item, evidence, of));
  }
  for (const HeldClaim& held : claims) {
    const Claim& claim = held.claim;
    if (claim.subject.empty() || claim.withdrawn || claim.statement == Statement::located) continue;
    if (asked(claim.statement, claim.attribute)) statements.push_back(of_claim(held, evidence, of));
  }
  put_in_order(statements);
  return statements;
}

}  // namespace

std::vector<FixtureStatement> entry_statements(const RegisterIndex& evidence, const std::vector<std::size_t>& items) {
  std::vector<FixtureStatement> statements;
  for (const std::size_t number : items) {
    const RegisterIndex::Item& item = evidence.items()[number];
    if (!item.entry->subject.empty() && item.entry->statement != Statement::located)
      statements.push_back(of_entry(item, evidence, Of::thing));
  }
  put_in_order(statements);
  return statements;
}

std::vector<FixtureStatement> fixture_statements(const RegisterIndex& evidence,
                                                 const std::vector<HeldClaim>& claims) {
  return statements_of(evidence, claims, Of::thing);
}

std::vector<FixtureStatement> property_statements(const RegisterIndex& evidence,
                                                  const std::vector<HeldClaim>& claims) {
  return statements_of(evidence, claims, Of::property);
}

}  // namespace witnessmark
