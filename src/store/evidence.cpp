#include "witnessmark/store/evidence.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "store/connection.h"
#include "store/record/taking_in.h"

namespace witnessmark {
namespace {

template <typename R>
std::set<std::string> known_keys(StoreConnection& connection, const std::vector<R>& rows) {
  std::set<std::string> keys;
  for (const R& row : rows) keys.insert(row.key);
  SqlStatement select(*connection.database, std::string("SELECT key FROM ") + Table<R>::name);
  while (select.step()) keys.insert(select.text(0));
  return keys;
}

Result<void> check_references(StoreConnection& connection, const Register& evidence) {
  const auto sources = known_keys(connection, evidence.sources);
  const auto entries = known_keys(connection, evidence.entries);
  for (const Derivation& row : evidence.derivations) {
    if (!sources.contains(row.source))
      return unknown_reference("derivation from", row.derives_from, "source", row.source);
  }
  for (const Entry& row : evidence.entries) {
    if (!sources.contains(row.source)) return unknown_reference("entry", row.key, "source", row.source);
    for (const std::string& beneath : row.over) {
      if (!entries.contains(beneath)) return unknown_reference("entry", row.key, "entry", beneath);
    }
  }
  for (const Stay& row : evidence.itinerary) {
    if (!sources.contains(row.source)) return unknown_reference("stay", row.key, "source", row.source);
  }
  return {};
}

struct SortedRegister {
  SortedRows<Source> sources;
  SortedRows<Derivation> derivations;
  SortedRows<Entry> entries;
  SortedRows<Stay> stays;
  SortedRows<NamedEvent> events;
};

Result<SortedRegister> sort_register(StoreConnection& connection, const Register& evidence) {
  auto sources = sort_rows(connection, evidence.sources);
  if (!sources) return sources.error();
  auto derivations = sort_rows(connection, evidence.derivations);
  if (!derivations) return derivations.error();
  auto entries = sort_rows(connection, evidence.entries);
  if (!entries) return entries.error();
  auto stays = sort_rows(connection, evidence.itinerary);
  if (!stays) return stays.error();
  auto events = sort_rows(connection, evidence.events);
  if (!events) return events.error();
  return SortedRegister{std::move(*sources), std::move(*derivations), std::move(*entries), std::move(*stays),
                        std::move(*events)};
}

}  // namespace

bool RegisterChanges::any() const {
  return sources.written() + derivations.written() + entries.written() + stays.written() + events.written() >
         0;
}

Result<RegisterChanges> save_register(SiteFile& site, const Register& evidence) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_references(connection, evidence); !checked) return checked.error();
  auto result = sort_register(connection, evidence);
  if (!result) return result.error();
  const SortedRegister& sorted = *result;

  AddedRecords added;
  added.add_all(sorted.sources.added);
  added.add_all(sorted.derivations.added);
  added.add_all(sorted.entries.added);
  added.add_all(sorted.stays.added);
  added.add_all(sorted.events.added);
  std::int64_t last = 0;
  if (!added.empty()) {
    last = append_event(
        connection, {.kind = "taken-in", .target_kind = "evidence", .target = "", .after = added.summary()});
    insert_all(connection, sorted.sources.added, last);
    insert_all(connection, sorted.derivations.added, last);
    insert_all(connection, sorted.entries.added, last);
    insert_all(connection, sorted.stays.added, last);
    insert_all(connection, sorted.events.added, last);
  }
  RegisterChanges changes{sorted.sources.counts(), sorted.derivations.counts(), sorted.entries.counts(),
                          sorted.stays.counts(),   sorted.events.counts(),      {}};
  last = std::max(last, update_all(connection, sorted.sources.changed, changes.changed));
  last = std::max(last, update_all(connection, sorted.derivations.changed, changes.changed));
  last = std::max(last, update_all(connection, sorted.entries.changed, changes.changed));
  last = std::max(last, update_all(connection, sorted.stays.changed, changes.changed));
  last = std::max(last, update_all(connection, sorted.events.changed, changes.changed));
  if (changes.any()) mark_evidence_changed(connection, last);
  transaction.commit();
  return changes;
}

Register load_register(const SiteFile& site) {
  StoreConnection& connection = site.connection();
  return {all_values<Source>(connection), all_values<Derivation>(connection), all_values<Entry>(connection),
          all_values<Stay>(connection), all_values<NamedEvent>(connection)};
}

Register load_register_on(const SiteFile& site, const std::set<std::string>& subjects) {
  StoreConnection& connection = site.connection();
  std::map<std::string, Entry> entries;
  const auto add = [&](const char* column, const std::string& value) {
    for (Entry& entry : values_with<Entry>(connection, column, value))
      entries.emplace(entry.key, std::move(entry));
  };
  for (const std::string& subject : subjects) add("subject", subject);
  std::set<std::string> beneath;
  for (const auto& [key, entry] : entries)
    for (const auto* keys : {&entry.date_rests_on, &entry.identification_rests_on, &entry.caption_rests_on})
      beneath.insert(keys->begin(), keys->end());
  for (const std::string& key : beneath)
    if (!entries.contains(key)) add("key", key);
  Register found;
  found.sources = all_values<Source>(connection);
  found.derivations = all_values<Derivation>(connection);
  found.itinerary = all_values<Stay>(connection);
  for (auto& [key, entry] : entries) found.entries.push_back(std::move(entry));
  return found;
}

Result<ListChanges> save_list(SiteFile& site, const AuthorityList& list) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  const std::string name = list.kind() == AuthorityList::Kind::places ? "places" : "equipment";
  std::vector<ListedTerm> rows;
  for (const Term& term : list.terms()) rows.push_back({name, term});
  auto sorted = sort_rows(connection, rows);
  if (!sorted) return sorted.error();

  AddedRecords added;
  added.add_all(sorted->added);
  std::int64_t last = 0;
  if (!added.empty()) {
    last = append_event(
        connection, {.kind = "taken-in", .target_kind = "list", .target = name, .after = added.summary()});
    insert_all(connection, sorted->added, last);
  }
  ListChanges changes{sorted->counts(), {}};
  last = std::max(last, update_all(connection, sorted->changed, changes.changed));
  if (changes.any()) mark_evidence_changed(connection, last);
  transaction.commit();
  return changes;
}

AuthorityLists load_lists(const SiteFile& site) {
  std::vector<Term> places;
  std::vector<Term> equipment;
  for (ListedTerm& listed : all_values<ListedTerm>(site.connection(), "term")) {
    (listed.list == "places" ? places : equipment).push_back(std::move(listed.term));
  }
  return {AuthorityList(AuthorityList::Kind::places, std::move(places)),
          AuthorityList(AuthorityList::Kind::equipment, std::move(equipment))};
}

std::int64_t evidence_revision(const SiteFile& site) {
  SqlStatement select(*site.connection().database, "SELECT evidence_event FROM site");
  select.step();
  return select.integer(0);
}

}  // namespace witnessmark
