#include "witnessmark/store/interviews.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <set>

#include "store/connection.h"
#include "store/record/taking_in.h"

namespace witnessmark {
namespace {

struct SortedFile {
  SortedRows<Person> persons;
  SortedRows<Interview> interviews;
  SortedRows<Speaker> speakers;
  SortedRows<NarratorRelease> releases;
  SortedRows<RestrictedPassage> passages;
  RowCounts service;
};

/// Keys the input or the site file has.
class KnownKeys {
 public:
  template <typename R>
  void add_all(StoreConnection& connection, const std::vector<R>& rows) {
    for (const R& row : rows) keys_.insert(row.key);
    SqlStatement select(*connection.database, std::string("SELECT key FROM ") + Table<R>::name);
    while (select.step()) keys_.insert(select.text(0));
  }
  bool has(const std::string& key) const { return keys_.contains(key); }

 private:
  std::set<std::string> keys_;
};

Result<void> check_references(StoreConnection& connection, const InterviewFile& file) {
  KnownKeys persons;
  KnownKeys interviews;
  persons.add_all(connection, file.persons);
  interviews.add_all(connection, file.interviews);
  for (const Interview& interview : file.interviews) {
    for (const auto* people : {&interview.narrators, &interview.interviewers}) {
      for (const std::string& person : *people) {
        if (!persons.has(person)) return unknown_reference("interview", interview.key, "person", person);
      }
    }
  }
  const auto check = [&](const std::string& what, const std::string& key, const std::string& interview,
                         const std::string& person) -> Result<void> {
    if (!interviews.has(interview)) return unknown_reference(what, key, "interview", interview);
    if (!person.empty() && !persons.has(person)) return unknown_reference(what, key, "person", person);
    return {};
  };
  for (const Speaker& row : file.speakers) {
    if (auto checked = check("speaker", row.label, row.interview, row.person); !checked) return checked;
  }
  for (const NarratorRelease& row : file.releases) {
    if (auto checked = check("release", row.interview, row.interview, row.person); !checked) return checked;
  }
  for (const RestrictedPassage& row : file.passages) {
    if (auto checked = check("passage", row.quote, row.interview, ""); !checked) return checked;
  }
  for (const ErasedInterview& erased : [&] {
         std::vector<ErasedInterview> list;
         SqlStatement select(*connection.database,
                             "SELECT key, erased FROM erasures WHERE kind = 'interview'");
         while (select.step()) list.push_back({select.text(0), select.text(1)});
         return list;
       }()) {
    for (const Interview& interview : file.interviews) {
      if (interview.key == erased.interview) {
        return Error{"", 0, 0,
                     fmt::format("interview \"{}\" was erased on {}", erased.interview, erased.when),
                     "leave it out: an erased interview does not come back"};
      }
    }
  }
  return {};
}

RowCounts count_service(const std::vector<ServicePeriod>& before, const std::vector<ServicePeriod>& now) {
  const auto was_there = [&](const ServicePeriod& period) {
    return std::find(before.begin(), before.end(), period) != before.end();
  };
  RowCounts counts;
  counts.unchanged = static_cast<std::size_t>(std::count_if(now.begin(), now.end(), was_there));
  const std::size_t others = now.size() - counts.unchanged;
  counts.changed = std::min(others, before.size() - std::min(before.size(), counts.unchanged));
  counts.added = others - counts.changed;
  return counts;
}

Result<SortedFile> sort_file(StoreConnection& connection, const InterviewFile& file) {
  RowCounts service;
  auto persons = sort_rows(connection, file.persons, [&](const Person& before, Person& row) {
    const RowCounts counts = count_service(before.service, row.service);
    service.added += counts.added;
    service.changed += counts.changed;
    service.unchanged += counts.unchanged;
    if (row.service.empty()) row.service = before.service;
  });
  if (!persons) return persons.error();
  for (const Person& person : persons->added) service.added += person.service.size();
  auto interviews = sort_rows(connection, file.interviews);
  if (!interviews) return interviews.error();
  auto speakers = sort_rows(connection, file.speakers);
  if (!speakers) return speakers.error();
  auto releases = sort_rows(connection, file.releases);
  if (!releases) return releases.error();
  auto passages = sort_rows(connection, file.passages);
  if (!passages) return passages.error();
  return SortedFile{std::move(*persons),  std::move(*interviews), std::move(*speakers),
                    std::move(*releases), std::move(*passages),   service};
}

/// One event for each person and for each interview that gains something: so that what is about one interview
/// can be erased without the rest.
std::int64_t write_added(StoreConnection& connection, const SortedFile& sorted) {
  std::int64_t last = 0;
  for (const Person& person : sorted.persons.added) {
    AddedRecords added;
    added.add(Table<Person>::kind, to_json(person));
    last = append_event(
        connection,
        {.kind = "taken-in", .target_kind = "person", .target = person.key, .after = added.summary()});
    insert_record(connection, person, last);
  }
  std::map<std::string, AddedRecords> by_interview;
  const auto collect = [&by_interview]<typename R>(const std::vector<R>& rows) {
    for (const R& row : rows) by_interview[Table<R>::interview(row)].add(Table<R>::kind, to_json(row));
  };
  collect(sorted.interviews.added);
  collect(sorted.speakers.added);
  collect(sorted.releases.added);
  collect(sorted.passages.added);
  std::map<std::string, std::int64_t> events;
  for (const auto& [interview, added] : by_interview) {
    last = append_event(connection, {.kind = "taken-in",
                                     .target_kind = "interview",
                                     .target = interview,
                                     .interview = interview,
                                     .after = added.summary()});
    events[interview] = last;
  }
  const auto insert = [&]<typename R>(const std::vector<R>& rows) {
    for (const R& row : rows) insert_record(connection, row, events.at(Table<R>::interview(row)));
  };
  insert(sorted.interviews.added);
  insert(sorted.speakers.added);
  insert(sorted.releases.added);
  insert(sorted.passages.added);
  return last;
}

}  // namespace

bool InterviewChanges::any() const {
  return interviews.written() + persons.written() + speakers.written() + releases.written() +
             passages.written() >
         0;
}

Result<InterviewChanges> save_interviews(SiteFile& site, const InterviewFile& file) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_references(connection, file); !checked) return checked.error();
  auto result = sort_file(connection, file);
  if (!result) return result.error();
  const SortedFile& sorted = *result;

  InterviewChanges changes;
  changes.persons = sorted.persons.counts();
  changes.interviews = sorted.interviews.counts();
  changes.speakers = sorted.speakers.counts();
  changes.releases = sorted.releases.counts();
  changes.passages = sorted.passages.counts();
  changes.service = sorted.service;
  std::int64_t last = write_added(connection, sorted);
  last = std::max(last, update_all(connection, sorted.persons.changed, changes.changed));
  last = std::max(last, update_all(connection, sorted.interviews.changed, changes.changed));
  last = std::max(last, update_all(connection, sorted.speakers.changed, changes.changed));
  last = std::max(last, update_all(connection, sorted.releases.changed, changes.changed));
  last = std::max(last, update_all(connection, sorted.passages.changed, changes.changed));
  if (sorted.persons.counts().written() + sorted.interviews.counts().written() > 0) {
    mark_evidence_changed(connection, last);
  }
  transaction.commit();
  return changes;
}

namespace {

void read_passage_ranges(StoreConnection& connection, std::vector<RestrictedPassage>& passages) {
  for (RestrictedPassage& passage : passages) {
    SqlStatement& select = connection.prepared(
        "SELECT first, past FROM passages WHERE interview = ? AND quote = ? AND first IS NOT NULL AND "
        "reading = "
        "(SELECT reading FROM readings WHERE readings.interview = passages.interview ORDER BY version DESC "
        "LIMIT 1)");
    select.bind(passage.interview).bind(passage.quote);
    if (select.step()) passage.range = {CodePoint{select.integer(0)}, CodePoint{select.integer(1)}};
    select.reset();
  }
}

}  // namespace

InterviewFile load_interviews(const SiteFile& site) {
  StoreConnection& connection = site.connection();
  InterviewFile file{all_values<Interview>(connection), all_values<Person>(connection),
                     all_values<Speaker>(connection), all_values<NarratorRelease>(connection),
                     all_values<RestrictedPassage>(connection)};
  read_passage_ranges(connection, file.passages);
  return file;
}

std::optional<Interview> find_interview(const SiteFile& site, std::string_view key) {
  Interview like;
  like.key = key;
  return find_record(site.connection(), like);
}

namespace {

AccessFile access_of(const Interview& interview) {
  AccessFile file;
  file.interview = interview.access;
  file.narrators = interview.narrators;
  return file;
}

/// A passage whose words were not found covers everything.
void widen_unplaced(std::vector<RestrictedPassage>& passages) {
  for (RestrictedPassage& passage : passages) {
    if (passage.range.empty())
      passage.range = {CodePoint{0}, CodePoint{std::numeric_limits<std::int64_t>::max()}};
  }
}

}  // namespace

std::map<std::string, AccessFile> access_files(const SiteFile& site) {
  const InterviewFile all = load_interviews(site);
  std::map<std::string, AccessFile> files;
  for (const Interview& interview : all.interviews) files[interview.key] = access_of(interview);
  for (const NarratorRelease& release : all.releases) files[release.interview].releases.push_back(release);
  for (const RestrictedPassage& passage : all.passages) files[passage.interview].passages.push_back(passage);
  for (auto& [key, file] : files) widen_unplaced(file.passages);
  for (const ErasedInterview& erased : erased_interviews(site)) files[erased.interview].withdrawn = true;
  return files;
}

AccessFile access_file(const SiteFile& site, std::string_view interview) {
  StoreConnection& connection = site.connection();
  const auto found = find_interview(site, interview);
  if (!found) {
    AccessFile unknown;
    unknown.withdrawn = true;
    return unknown;
  }
  AccessFile file = access_of(*found);
  const auto read = [&]<typename R>(std::vector<R>& rows) {
    SqlStatement select(*connection.database, "SELECT " + column_list<R>() + " FROM " + Table<R>::name +
                                                  " WHERE interview = ? ORDER BY 1, 2");
    select.bind(interview);
    while (select.step()) {
      ReadColumns reader(select);
      fields(reader, rows.emplace_back());
    }
  };
  read(file.releases);
  read(file.passages);
  read_passage_ranges(connection, file.passages);
  widen_unplaced(file.passages);
  SqlStatement& erased = connection.prepared("SELECT 1 FROM erasures WHERE kind = 'interview' AND key = ?");
  file.withdrawn = erased.bind(interview).step();
  erased.reset();
  return file;
}

Result<void> place_passages(SiteFile& site, std::string_view interview,
                            const std::vector<RestrictedPassage>& found) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  SqlStatement& current = connection.prepared(
      "SELECT reading, code_points FROM readings WHERE interview = ? ORDER BY version DESC LIMIT 1");
  if (!current.bind(interview).step()) {
    current.reset();
    return Error{std::string(interview), 0, 0, "the interview has no transcript yet",
                 "take in its transcript first"};
  }
  const std::int64_t reading = current.integer(0);
  const std::int64_t size = current.integer(1);
  current.reset();
  for (const RestrictedPassage& passage : found) {
    const bool inside =
        !passage.range.empty() && passage.range.begin.value >= 0 && passage.range.end.value <= size;
    SqlStatement& update = connection.prepared(
        "UPDATE passages SET reading = ?, first = ?, past = ? WHERE interview = ? AND quote = ? RETURNING 1");
    update.bind(reading).bind(passage.range.begin.value).bind(passage.range.end.value);
    const bool known = update.bind(interview).bind(passage.quote).step();
    update.reset();
    if (!known || !inside) {
      return Error{
          std::string(interview), 0, 0,
          fmt::format("passage \"{}\" {}", passage.quote, known ? "lies outside the text" : "is not known"),
          "take it in with the interviews first"};
    }
  }
  transaction.commit();
  return {};
}

std::vector<ErasedInterview> erased_interviews(const SiteFile& site) {
  std::vector<ErasedInterview> erased;
  SqlStatement select(*site.connection().database,
                      "SELECT key, erased FROM erasures WHERE kind = 'interview' ORDER BY key");
  while (select.step()) erased.push_back({select.text(0), select.text(1)});
  return erased;
}

}  // namespace witnessmark
