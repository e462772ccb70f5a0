#include "witnessmark/store/conclusions.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "store/connection.h"
#include "store/record/taking_in.h"

namespace witnessmark {
namespace {

Error not_known(std::string_view what, std::string_view key, std::string_view of, std::string_view named) {
  return {"", 0, 0, fmt::format("{} \"{}\" names {} \"{}\", which is not known", what, key, of, named),
          fmt::format("add a row for that {}, or correct the key", of)};
}

/// Conclusions as they will be, by key.
std::map<std::string, Conclusion> conclusions_after(StoreConnection& connection, const ConclusionFile& file) {
  std::map<std::string, Conclusion> all;
  for (Conclusion& held : all_values<Conclusion>(connection)) all[held.key] = std::move(held);
  for (const Conclusion& row : file.conclusions) all[row.key] = row;
  return all;
}

/// Whether a conclusion is reached again from those it replaces.
bool replaces_itself(const std::string& key, const std::map<std::string, Conclusion>& all) {
  std::set<std::string> seen;
  std::vector<std::string> open = all.at(key).replaces;
  while (!open.empty()) {
    const std::string next = std::move(open.back());
    open.pop_back();
    if (next == key) return true;
    if (!seen.insert(next).second) continue;
    if (const auto at = all.find(next); at != all.end())
      open.insert(open.end(), at->second.replaces.begin(), at->second.replaces.end());
  }
  return false;
}

Result<void> check_references(StoreConnection& connection, const ConclusionFile& file) {
  const auto all = conclusions_after(connection, file);
  for (const Conclusion& row : file.conclusions) {
    for (const std::string& replaced : row.replaces)
      if (!all.contains(replaced)) return not_known("conclusion", row.key, "conclusion", replaced);
    if (replaces_itself(row.key, all))
      return Error{"", 0, 0,
                   fmt::format("conclusion \"{}\" replaces itself, through others or at once", row.key),
                   "a conclusion replaces earlier ones only"};
  }
  for (const Enquiry& row : file.enquiries) {
    for (const std::string& conclusion : row.conclusions)
      if (!all.contains(conclusion)) return not_known("enquiry", row.key, "conclusion", conclusion);
  }
  std::set<std::string> sources;
  for (const Source& source : all_values<Source>(connection)) sources.insert(source.key);
  for (const Search& row : file.searches)
    if (!sources.contains(row.source)) return not_known("search", row.key, "source", row.source);
  return {};
}

}  // namespace

bool ConclusionChanges::any() const {
  return conclusions.written() + enquiries.written() + searches.written() > 0;
}

Result<ConclusionChanges> save_conclusions(SiteFile& site, const ConclusionFile& file) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_references(connection, file); !checked) return checked.error();
  const auto conclusions = sort_rows(connection, file.conclusions);
  if (!conclusions) return conclusions.error();
  const auto enquiries = sort_rows(connection, file.enquiries);
  if (!enquiries) return enquiries.error();
  const auto searches = sort_rows(connection, file.searches);
  if (!searches) return searches.error();

  AddedRecords added;
  added.add_all(conclusions->added);
  added.add_all(enquiries->added);
  added.add_all(searches->added);
  if (!added.empty()) {
    const std::int64_t event = append_event(
        connection,
        {.kind = "taken-in", .target_kind = "conclusions", .target = "", .after = added.summary()});
    insert_all(connection, conclusions->added, event);
    insert_all(connection, enquiries->added, event);
    insert_all(connection, searches->added, event);
  }
  ConclusionChanges changes{conclusions->counts(), enquiries->counts(), searches->counts(), {}};
  update_all(connection, conclusions->changed, changes.changed);
  update_all(connection, enquiries->changed, changes.changed);
  update_all(connection, searches->changed, changes.changed);
  transaction.commit();
  return changes;
}

ConclusionFile load_conclusions(const SiteFile& site) {
  StoreConnection& connection = site.connection();
  return {all_values<Conclusion>(connection), all_values<Enquiry>(connection),
          all_values<Search>(connection)};
}

}  // namespace witnessmark
