#include "witnessmark/store/passages_read.h"

#include <algorithm>

#include "store/claim/claim_rows.h"
#include "store/coding/record_changes.h"

namespace witnessmark {
namespace {

std::vector<CodePointRange> without(const std::vector<CodePointRange>& ranges, CodePointRange taken) {
  std::vector<CodePointRange> rest;
  for (const CodePointRange& range : ranges) {
    rest.push_back({range.begin, std::min(range.end, taken.begin)});
    rest.push_back({std::max(range.begin, taken.end), range.end});
  }
  return join_ranges(std::move(rest));
}

template <typename Change>
Result<void> change_read(SiteFile& site, std::string_view interview, CodePointRange range, const char* kind,
                         Change change) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  const std::string key(interview);
  const CurrentReading current = current_reading(connection, key);
  if (current.version == 0)
    return Error{key, 0, 0, "the interview has no transcript", "take in its transcript first"};
  if (range.empty() || range.begin.value < 0 || range.end.value > current.code_points)
    return Error{key, 0, 0, "the passage lies outside the reading text", "mark it again"};
  PassagesRead read{key, connection.editor->name, current.version, {}};
  if (const auto found = find_record(connection, read)) read = *found;
  read.ranges = change(read.ranges);
  if (read.ranges.empty()) {
    remove_record(connection, read, {.kind = kind});
  } else {
    put_record(connection, read, {.kind = kind});
  }
  transaction.commit();
  return {};
}

}  // namespace

std::vector<CodePointRange> join_ranges(std::vector<CodePointRange> ranges) {
  std::erase_if(ranges, [](const CodePointRange& range) { return range.empty(); });
  std::sort(ranges.begin(), ranges.end());
  std::vector<CodePointRange> joined;
  for (const CodePointRange& range : ranges) {
    if (!joined.empty() && range.begin <= joined.back().end) {
      joined.back().end = std::max(joined.back().end, range.end);
    } else {
      joined.push_back(range);
    }
  }
  return joined;
}

Result<void> mark_read(SiteFile& site, std::string_view interview, CodePointRange range) {
  return change_read(site, interview, range, "read", [range](std::vector<CodePointRange> ranges) {
    ranges.push_back(range);
    return join_ranges(std::move(ranges));
  });
}

Result<void> mark_unread(SiteFile& site, std::string_view interview, CodePointRange range) {
  return change_read(site, interview, range, "unread",
                     [range](const std::vector<CodePointRange>& ranges) { return without(ranges, range); });
}

std::vector<PassagesRead> passages_read(const SiteFile& site, std::string_view interview) {
  std::vector<PassagesRead> read;
  SqlStatement select(*site.connection().database,
                      "SELECT " + column_list<PassagesRead>() +
                          " FROM passages_read WHERE interview = ? ORDER BY coder, version");
  select.bind(interview);
  while (select.step()) {
    ReadColumns reader(select);
    fields(reader, read.emplace_back());
  }
  return read;
}

std::vector<CodePointRange> ranges_read(const SiteFile& site, std::string_view interview, int version) {
  std::vector<CodePointRange> ranges;
  for (const PassagesRead& read : passages_read(site, interview))
    if (read.version == version) ranges.insert(ranges.end(), read.ranges.begin(), read.ranges.end());
  return join_ranges(std::move(ranges));
}

}  // namespace witnessmark
