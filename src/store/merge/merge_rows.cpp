#include <fmt/format.h>

#include "store/merge/merging.h"
#include "store/record/tables.h"
#include "witnessmark/store/conclusions.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"

// Rows that spreadsheets bring. New ones are taken. Of those that are not alike, the other's is taken when
// only the other copy changed it since the two parted.

namespace witnessmark {
namespace {

template <typename R>
std::string row_name(const R& row) {
  std::string name;
  std::apply(
      [&name](const auto&... part) { ((name += (name.empty() ? "" : ", ") + std::string(part)), ...); },
      Table<R>::key(row));
  return name;
}

template <typename R>
R with_id_of(R row, const R& other) {
  if constexpr (requires { row.id; }) {
    row.id = other.id;
  } else if constexpr (requires { row.term.id; }) {
    row.term.id = other.term.id;
  }
  return row;
}

/// Whether one of the events changed that very row.
template <typename R>
bool changes(const std::vector<OwnEvent>& events, const R& row) {
  for (const OwnEvent& event : events) {
    if (event.kind != "changed" || event.after.empty()) continue;
    R after;
    read_record(nlohmann::json::parse(event.after), after);
    if (Table<R>::key(after) == Table<R>::key(row)) return true;
  }
  return false;
}

/// Coders mark passages too: those are decisions, and merged as such.
template <typename R>
bool is_from_spreadsheet(StoreConnection& there, const StoredRecord<R>& stored) {
  if constexpr (std::same_as<R, RestrictedPassage>) {
    SqlStatement& select = there.prepared("SELECT kind = 'taken-in' FROM journal WHERE event = ?");
    const bool taken_in = select.bind(stored.since).step() && select.flag(0);
    select.reset();
    return taken_in;
  }
  return true;
}

template <typename R>
std::vector<R> rows_to_take(Merging& merging) {
  std::vector<R> rows;
  std::set<std::string> erased;
  for (const StoredRecord<R>& stored : all_records<R>(merging.there)) {
    const R& row = stored.record;
    const std::string interview = Table<R>::interview(row);
    if (!interview.empty() && merging.is_erased_here(interview)) {
      if (Table<R>::kind == Table<Interview>::kind)
        merging.skip("interview", interview, "it was erased here");
      continue;
    }
    const auto own = find_record(merging.here, row);
    if (!own) {
      if (is_from_spreadsheet(merging.there, stored)) rows.push_back(row);
      continue;
    }
    const R theirs = with_id_of(row, *own);
    const std::string before = to_json(*own);
    const std::string after = to_json(theirs);
    if (before == after) continue;
    const std::string target = Table<R>::target(row);
    const bool there = changes(merging.brought_on(Table<R>::kind, target, [](auto) { return true; }), row);
    const bool here = changes(merging.parting.unknown_there(Table<R>::kind, target), row);
    if (there && !here) {
      rows.push_back(theirs);
    } else if (there == here && !std::same_as<R, RestrictedPassage>) {
      std::string fields;
      for (const std::string& field : differing_fields(before, after))
        fields += (fields.empty() ? "" : ", ") + field;
      merging.skip(Table<R>::kind, row_name(row), "it differs here, in " + fields);
    }
  }
  return rows;
}

Result<void> merge_interviews(Merging& merging) {
  const InterviewFile file{rows_to_take<Interview>(merging), rows_to_take<Person>(merging),
                           rows_to_take<Speaker>(merging), rows_to_take<NarratorRelease>(merging),
                           rows_to_take<RestrictedPassage>(merging)};
  const auto saved = save_interviews(merging.site, file);
  if (!saved) return saved.error();
  merging.report.rows += saved->interviews.written() + saved->persons.written() + saved->speakers.written() +
                         saved->releases.written() + saved->passages.written();
  return {};
}

Result<void> merge_evidence(Merging& merging) {
  const Register evidence{rows_to_take<Source>(merging), rows_to_take<Derivation>(merging),
                          rows_to_take<Entry>(merging), rows_to_take<Stay>(merging),
                          rows_to_take<NamedEvent>(merging)};
  const auto saved = save_register(merging.site, evidence);
  if (!saved) return saved.error();
  merging.report.rows += saved->sources.written() + saved->derivations.written() + saved->entries.written() +
                         saved->stays.written() + saved->events.written();
  return {};
}

Result<void> merge_lists(Merging& merging) {
  std::vector<Term> places;
  std::vector<Term> equipment;
  for (ListedTerm& listed : rows_to_take<ListedTerm>(merging))
    (listed.list == "places" ? places : equipment).push_back(std::move(listed.term));
  for (const AuthorityList& list : {AuthorityList(AuthorityList::Kind::places, std::move(places)),
                                    AuthorityList(AuthorityList::Kind::equipment, std::move(equipment))}) {
    if (list.empty()) continue;
    const auto saved = save_list(merging.site, list);
    if (!saved) return saved.error();
    merging.report.rows += saved->terms.written();
  }
  return {};
}

/// Two copies may each be sound and together go in a circle: then none of the other's is taken.
void merge_conclusions(Merging& merging) {
  const ConclusionFile file{rows_to_take<Conclusion>(merging), rows_to_take<Enquiry>(merging),
                            rows_to_take<Search>(merging)};
  const auto saved = save_conclusions(merging.site, file);
  if (!saved) return merging.skip("conclusions", "", saved.error().message);
  merging.report.rows +=
      saved->conclusions.written() + saved->enquiries.written() + saved->searches.written();
}

}  // namespace

bool Merging::is_erased_here(const std::string& interview) const {
  SqlStatement& select = here.prepared("SELECT 1 FROM erasures WHERE kind = 'interview' AND key = ?");
  const bool erased = select.bind(interview).step();
  select.reset();
  return erased;
}

Result<void> merge_rows(Merging& merging) {
  if (auto merged = merge_interviews(merging); !merged) return merged;
  if (auto merged = merge_evidence(merging); !merged) return merged;
  if (auto merged = merge_lists(merging); !merged) return merged;
  merge_conclusions(merging);
  return {};
}

}  // namespace witnessmark
