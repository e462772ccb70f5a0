#include "witnessmark/store/weighings.h"

#include <fmt/format.h>

#include "store/connection.h"
#include "store/journal_writer.h"
#include "store/record/words.h"
#include "witnessmark/store/evidence.h"

namespace witnessmark {
namespace {

constexpr std::int64_t kIntention = 1;
constexpr std::int64_t kCircular = 2;

void bind_years(SqlStatement& statement, const std::optional<YearRange>& years) {
  if (years) {
    statement.bind(years->least).bind(years->most);
  } else {
    statement.bind_null().bind_null();
  }
}

std::optional<YearRange> years_from(const SqlStatement& row, int column) {
  if (row.is_null(column)) return std::nullopt;
  return YearRange{row.integer(column), row.integer(column + 1)};
}

std::int64_t row_of(StoreConnection& connection, const Id& claim) {
  SqlStatement& select = connection.prepared("SELECT claim FROM claims WHERE id = ?");
  const std::int64_t row = select.bind(claim).step() ? select.integer(0) : 0;
  select.reset();
  return row;
}

std::int64_t evidence_number(StoreConnection& connection, const std::string& key) {
  if (key.empty()) return 0;
  SqlStatement& select = connection.prepared("SELECT number FROM evidence_numbers WHERE key = ?");
  std::int64_t number = select.bind(key).step() ? select.integer(0) : 0;
  select.reset();
  if (number != 0) return number;
  SqlStatement& insert =
      connection.prepared("INSERT INTO evidence_numbers (key) VALUES (?) RETURNING number");
  insert.bind(key).step();
  number = insert.integer(0);
  insert.reset();
  return number;
}

void insert_comparison(StoreConnection& connection, std::int64_t row, std::size_t n,
                       const Comparison& comparison) {
  const std::int64_t evidence = evidence_number(connection, comparison.entry);
  SqlStatement& insert = connection.prepared("INSERT INTO comparisons VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
  insert.bind(row).bind(n).bind(evidence).bind(static_cast<std::int64_t>(comparison.outcome));
  insert.bind((comparison.intention ? kIntention : 0) | (comparison.circular ? kCircular : 0));
  insert.bind(static_cast<std::int64_t>(comparison.relation.bits));
  if (comparison.gap) {
    insert.bind(comparison.gap->least).bind(comparison.gap->most);
  } else {
    insert.bind_null().bind_null();
  }
  insert.run();
}

void insert_recall(StoreConnection& connection, std::int64_t row, const Recall& recall,
                   std::int64_t revision) {
  SqlStatement& insert = connection.prepared("INSERT INTO recall VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  insert.bind(row);
  bind_years(insert, recall.age_at_interview);
  bind_years(insert, recall.age_at_event);
  bind_years(insert, recall.recall_distance);
  insert.bind(word_for(recall.in_service)).bind(recall.partly_in_service).bind(revision).run();
}

/// From the columns of comparisons, evidence key last.
Comparison comparison_from(const SqlStatement& row, const Id& claim) {
  Comparison comparison;
  comparison.claim = claim;
  comparison.outcome = static_cast<Outcome>(row.integer(0));
  comparison.intention = (row.integer(1) & kIntention) != 0;
  comparison.circular = (row.integer(1) & kCircular) != 0;
  comparison.relation.bits = static_cast<std::uint16_t>(row.integer(2));
  if (!row.is_null(3)) comparison.gap = Distance{row.integer(3), row.maybe_integer(4)};
  comparison.entry = row.text(5);
  return comparison;
}

constexpr const char* kComparisonColumns = "outcome, flags, relation, gap_least, gap_most, key";
constexpr const char* kRecallColumns =
    "claims.id, claims.claim, age_at_interview_least, age_at_interview_most, age_at_event_least, "
    "age_at_event_most, "
    "recall_distance_least, recall_distance_most, in_service, partly_in_service";

/// From kRecallColumns, with the comparisons.
Weighing weighing_from(StoreConnection& connection, const SqlStatement& row) {
  Weighing weighing;
  weighing.claim = row.id(0);
  weighing.recall.age_at_interview = years_from(row, 2);
  weighing.recall.age_at_event = years_from(row, 4);
  weighing.recall.recall_distance = years_from(row, 6);
  weighing.recall.in_service = value_for<Answer>(row.text_view(8));
  weighing.recall.partly_in_service = row.flag(9);
  static const std::string sql =
      std::string("SELECT ") + kComparisonColumns +
      " FROM comparisons JOIN evidence_numbers ON number = evidence WHERE claim = ? ORDER BY n";
  SqlStatement& select = connection.prepared(sql.c_str());
  select.bind(row.integer(1));
  while (select.step()) weighing.comparisons.push_back(comparison_from(select, weighing.claim));
  select.reset();
  return weighing;
}

}  // namespace

std::vector<Id> claims_to_weigh(const SiteFile& site) {
  std::vector<Id> ids;
  // The inner query needs only row numbers, which any index of claims has: the wide rows are read for those
  // found.
  SqlStatement select(
      *site.connection().database,
      "SELECT id FROM claims WHERE claim IN (SELECT c.claim FROM claims AS c LEFT JOIN recall USING (claim) "
      "WHERE recall.claim IS NULL OR recall.evidence_event < (SELECT evidence_event FROM site)) "
      "ORDER BY interview, first, past, statement, ordinal, claim");
  while (select.step()) ids.push_back(select.id(0));
  return ids;
}

Result<void> save_weighings(SiteFile& site, const std::vector<Weighing>& weighings) {
  if (weighings.empty()) return {};
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  const std::int64_t revision = evidence_revision(site);
  std::size_t comparisons = 0;
  for (const Weighing& weighing : weighings) {
    const std::int64_t row = row_of(connection, weighing.claim);
    if (row == 0) {
      return Error{"", 0, 0, fmt::format("there is no claim {}", to_string(weighing.claim)), "weigh anew"};
    }
    connection.prepared("DELETE FROM comparisons WHERE claim = ?").bind(row).run();
    connection.prepared("DELETE FROM recall WHERE claim = ?").bind(row).run();
    insert_recall(connection, row, weighing.recall, revision);
    for (std::size_t n = 0; n < weighing.comparisons.size(); ++n) {
      insert_comparison(connection, row, n, weighing.comparisons[n]);
    }
    comparisons += weighing.comparisons.size();
  }
  append_event(connection,
               {.kind = "weighed",
                .target_kind = "site",
                .target = to_string(site.info().id),
                .after = fmt::format(R"({{"claims":{},"comparisons":{}}})", weighings.size(), comparisons)});
  transaction.commit();
  return {};
}

std::optional<Weighing> load_weighing(const SiteFile& site, const Id& claim) {
  StoreConnection& connection = site.connection();
  SqlStatement select(*connection.database, std::string("SELECT ") + kRecallColumns +
                                                " FROM claims JOIN recall USING (claim) WHERE id = ?");
  if (!select.bind(claim).step()) return std::nullopt;
  return weighing_from(connection, select);
}

void for_each_weighing(const SiteFile& site, const std::function<void(const Weighing&)>& visit) {
  StoreConnection& connection = site.connection();
  SqlStatement select(*connection.database,
                      std::string("SELECT ") + kRecallColumns +
                          " FROM claims JOIN recall USING (claim) "
                          "ORDER BY interview, first, past, statement, ordinal, claims.claim");
  while (select.step()) visit(weighing_from(connection, select));
}

std::vector<Comparison> comparisons_with(const SiteFile& site, std::string_view entry) {
  std::vector<Comparison> found;
  SqlStatement select(
      *site.connection().database,
      std::string("SELECT ") + kComparisonColumns +
          ", id FROM evidence_numbers JOIN comparisons ON evidence = number JOIN claims USING (claim) "
          "WHERE key = ? ORDER BY interview, first, past, statement, ordinal, claims.claim");
  select.bind(entry);
  while (select.step()) found.push_back(comparison_from(select, select.id(6)));
  return found;
}

std::vector<OutcomeCount> count_outcomes(const SiteFile& site) {
  std::vector<OutcomeCount> counts;
  SqlStatement select(
      *site.connection().database,
      "SELECT interview, outcome, count(*) FROM comparisons JOIN claims USING (claim) GROUP BY 1, 2");
  while (select.step()) {
    counts.push_back({select.text(0), static_cast<Outcome>(select.integer(1)), select.integer(2)});
  }
  return counts;
}

}  // namespace witnessmark
