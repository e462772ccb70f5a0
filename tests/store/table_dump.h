#pragma once
#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "store/connection.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark::sample {

/// Every row of every table but those named, as SQL literals, sorted. Shadow tables of the index are left
/// out.
inline std::vector<std::string> table_dump(const SiteFile& site, const std::set<std::string>& without) {
  const Database& database = *site.connection().database;
  std::vector<std::string> lines;
  SqlStatement tables(database,
                      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT GLOB 'talk*'");
  while (tables.step()) {
    const std::string table = tables.text(0);
    if (without.contains(table)) continue;
    std::string row;
    SqlStatement columns(database, "SELECT name FROM pragma_table_info('" + table + "')");
    while (columns.step()) {
      row += (row.empty() ? "" : " || ', ' || ") + std::string("quote(\"") + columns.text(0) + "\")";
    }
    SqlStatement rows(database, "SELECT " + row + " FROM " + table);
    while (rows.step()) lines.push_back(table + ": " + rows.text(0));
  }
  std::sort(lines.begin(), lines.end());
  return lines;
}

/// Of everything that the journal gives when it is replayed.
inline std::vector<std::string> state_dump(const SiteFile& site) {
  return table_dump(
      site, {"sessions", "journal", "journal_follows", "journal_heads", "journal_content", "workplaces"});
}

/// The first line in which they differ; empty when they do not.
inline std::string first_difference(const std::vector<std::string>& one,
                                    const std::vector<std::string>& other) {
  const auto [a, b] = std::mismatch(one.begin(), one.end(), other.begin(), other.end());
  if (a == one.end() && b == other.end()) return "";
  return (a == one.end() ? "(end)" : *a) + "\n" + (b == other.end() ? "(end)" : *b);
}

}  // namespace witnessmark::sample
