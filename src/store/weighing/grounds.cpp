#include <fmt/format.h>

#include "store/connection.h"
#include "witnessmark/store/weighings.h"

// A claim's weighing rests on the evidence on its subject, on where its place lies, on its interview and its
// narrator. Each of these is kept as a hash; where the hash is another, the claims it bears on are found by
// their columns.

namespace witnessmark {
namespace {

constexpr std::pair<GroundKind, std::string_view> kKinds[] = {
    {GroundKind::rules, "rules"}, {GroundKind::subject, "subject"},     {GroundKind::itinerary, "itinerary"},
    {GroundKind::place, "place"}, {GroundKind::interview, "interview"}, {GroundKind::person, "person"},
};

std::string_view word_of_kind(GroundKind kind) {
  for (const auto& [value, word] : kKinds)
    if (value == kind) return word;
  return "";
}

std::optional<GroundKind> kind_from(std::string_view text) {
  for (const auto& [value, word] : kKinds)
    if (word == text) return value;
  return std::nullopt;
}

Grounds kept_grounds(StoreConnection& connection) {
  Grounds grounds;
  SqlStatement select(*connection.database, "SELECT kind, key, sha256 FROM grounds");
  while (select.step())
    if (const auto kind = kind_from(select.text_view(0)))
      grounds.emplace(std::pair(*kind, select.text(1)), select.text(2));
  return grounds;
}

/// The claims a ground bears on, its key being ?1.
std::string_view claims_resting_on(GroundKind kind) {
  switch (kind) {
    case GroundKind::rules:
      return "?1 = ?1";
    case GroundKind::subject:
      return "subject = ?1 AND statement <> 'located'";
    case GroundKind::itinerary:
      return "statement = 'located' AND ?1 = ?1";
    case GroundKind::place:
      return "place = ?1";
    case GroundKind::interview:
      return "interview = ?1";
    case GroundKind::person:
      return "speaker = ?1 OR (statement = 'located' AND subject = ?1) OR "
             "interview IN (SELECT interview FROM interview_people WHERE person = ?1)";
  }
  return "0";
}

std::int64_t forget(StoreConnection& connection, const std::pair<GroundKind, std::string>& ground) {
  std::int64_t forgotten = 0;
  for (const char* table : {"comparisons", "weighings"}) {
    const std::string sql =
        fmt::format("DELETE FROM {} WHERE claim IN (SELECT claim FROM claims WHERE {}) RETURNING claim", table,
                    claims_resting_on(ground.first));
    forgotten = 0;
    SqlStatement& statement = connection.prepared(sql.c_str());
    statement.bind(ground.second);
    while (statement.step()) ++forgotten;
    statement.reset();
  }
  return forgotten;
}

}  // namespace

bool grounds_may_have_changed(const SiteFile& site, std::string_view rules_sha256) {
  SqlStatement select(*site.connection().database,
                      "SELECT grounds_event = evidence_event AND EXISTS (SELECT 1 FROM grounds WHERE kind = "
                      "'rules' AND key = '' AND sha256 = ?) FROM site");
  return !select.bind(rules_sha256).step() || !select.flag(0);
}

std::int64_t settle_grounds(SiteFile& site, const Grounds& grounds) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  const Grounds kept = kept_grounds(connection);
  std::vector<std::pair<GroundKind, std::string>> changed;
  for (const auto& [ground, sha256] : grounds) {
    const auto at = kept.find(ground);
    if (at != kept.end() && at->second == sha256) continue;
    changed.push_back(ground);
    connection.prepared("INSERT OR REPLACE INTO grounds VALUES (?, ?, ?)")
        .bind(word_of_kind(ground.first))
        .bind(ground.second)
        .bind(sha256)
        .run();
  }
  for (const auto& [ground, sha256] : kept) {
    if (grounds.contains(ground)) continue;
    changed.push_back(ground);
    connection.prepared("DELETE FROM grounds WHERE kind = ? AND key = ?")
        .bind(word_of_kind(ground.first))
        .bind(ground.second)
        .run();
  }
  SqlStatement any(*connection.database, "SELECT EXISTS (SELECT 1 FROM weighings)");
  std::int64_t forgotten = 0;
  if (any.step() && any.flag(0))
    for (const auto& ground : changed) forgotten += forget(connection, ground);
  any.reset();
  connection.prepared("UPDATE site SET grounds_event = evidence_event").run();
  transaction.commit();
  return forgotten;
}

}  // namespace witnessmark
