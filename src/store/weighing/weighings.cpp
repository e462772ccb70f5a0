#include "witnessmark/store/weighings.h"

#include <fmt/format.h>

#include <unordered_map>

#include "store/claim/claim_rows.h"
#include "store/connection.h"
#include "store/journal_writer.h"
#include "store/record/words.h"
#include "store/weighing/packed_comparisons.h"
#include "store/weighing/standings.h"

namespace witnessmark {
namespace {

constexpr const char* kOrder = " ORDER BY interview, first, past, statement, ordinal, claims.claim";

void bind_years(SqlStatement& statement, const std::optional<YearRange>& years) {
  if (years) {
    statement.bind(years->least).bind(years->most);
  } else {
    statement.bind_null().bind_null();
  }
}

/// The keys of evidence by their numbers.
class EvidenceKeys {
 public:
  explicit EvidenceKeys(const StoreConnection& connection) {
    SqlStatement select(*connection.database, "SELECT number, key FROM evidence_numbers");
    while (select.step()) keys_.emplace(select.integer(0), select.text(1));
  }
  const std::string& operator[](std::int64_t number) const {
    static const std::string kNone;
    const auto at = keys_.find(number);
    return at == keys_.end() ? kNone : at->second;
  }

 private:
  std::unordered_map<std::int64_t, std::string> keys_;
};

std::string key_of(StoreConnection& connection, std::int64_t number) {
  SqlStatement& select = connection.prepared("SELECT key FROM evidence_numbers WHERE number = ?");
  std::string key = select.bind(number).step() ? select.text(0) : std::string();
  select.reset();
  return key;
}

Comparison comparison_from(const NumberedComparison& numbered, const Id& claim, std::string key) {
  Comparison comparison;
  comparison.claim = claim;
  comparison.entry = std::move(key);
  comparison.outcome = numbered.outcome;
  comparison.intention = numbered.intention;
  comparison.circular = numbered.circular;
  comparison.relation = numbered.relation;
  comparison.gap = numbered.gap;
  return comparison;
}

template <typename KeyOf>
std::vector<Comparison> unpacked(const std::string& bytes, const Id& claim, const KeyOf& key) {
  std::vector<Comparison> comparisons;
  ComparisonUnpacker unpacker(bytes);
  for (NumberedComparison numbered; unpacker.next(numbered);)
    comparisons.push_back(comparison_from(numbered, claim, key(numbered.evidence)));
  return comparisons;
}

}  // namespace

ClaimStanding standing_of(const Weighing& weighing) {
  ClaimStanding standing{weighing.claim, weighing.recall, foremost(weighing.comparisons), {}, 0};
  for (const Comparison& comparison : weighing.comparisons) {
    ++standing.comparisons[comparison.outcome];
    standing.intentions += comparison.intention;
  }
  return standing;
}

std::vector<Id> claims_to_weigh(const SiteFile& site) {
  std::vector<Id> ids;
  // The inner query needs only row numbers, which any index of claims has: the wide rows are read for those
  // found.
  SqlStatement select(*site.connection().database,
                      "SELECT id FROM claims WHERE claim IN (SELECT c.claim FROM claims AS c LEFT JOIN weighings "
                      "USING (claim) WHERE weighings.claim IS NULL) ORDER BY interview, first, past, statement, "
                      "ordinal, claim");
  while (select.step()) ids.push_back(select.id(0));
  return ids;
}

class WeighingWriter::Work {
 public:
  explicit Work(SiteFile& site)
      : site_(site), connection_(site.connection()), transaction_(site) {
    SqlStatement select(*connection_.database, "SELECT grounds_event = evidence_event FROM site");
    settled_ = select.step() && select.flag(0);
  }

  Result<void> add(const Weighing& weighing) {
    const std::int64_t row = row_of(weighing.claim);
    if (row == 0)
      return Error{"", 0, 0, fmt::format("there is no claim {}", to_string(weighing.claim)), "weigh anew"};
    insert(row, standing_of(weighing));
    ComparisonPacker packer;
    for (const Comparison& each : weighing.comparisons)
      packer.add({number_of(each.entry), each.outcome, each.intention, each.circular, each.relation, each.gap});
    connection_.prepared("INSERT OR REPLACE INTO comparisons VALUES (?, ?)")
        .bind(row)
        .bind_blob(packer.bytes())
        .run();
    if (!settled_) leave_unsettled(row);
    ++claims_;
    comparisons_ += weighing.comparisons.size();
    return {};
  }

  void finish() {
    if (claims_ > 0)
      append_event(connection_,
                   {.kind = "weighed",
                    .target_kind = "site",
                    .target = to_string(site_.info().id),
                    .after = fmt::format(R"({{"claims":{},"comparisons":{}}})", claims_, comparisons_)});
    transaction_.commit();
  }

 private:
  std::int64_t row_of(const Id& claim) {
    SqlStatement& select = connection_.prepared("SELECT claim FROM claims WHERE id = ?");
    const std::int64_t row = select.bind(claim).step() ? select.integer(0) : 0;
    select.reset();
    return row;
  }

  std::int64_t number_of(const std::string& key) {
    if (key.empty()) return 0;
    const auto known = numbers_.find(key);
    if (known != numbers_.end()) return known->second;
    SqlStatement& select = connection_.prepared("SELECT number FROM evidence_numbers WHERE key = ?");
    std::int64_t number = select.bind(key).step() ? select.integer(0) : 0;
    select.reset();
    if (number == 0) {
      SqlStatement& insert =
          connection_.prepared("INSERT INTO evidence_numbers (key) VALUES (?) RETURNING number");
      insert.bind(key).step();
      number = insert.integer(0);
      insert.reset();
    }
    numbers_.emplace(key, number);
    return number;
  }

  void insert(std::int64_t row, const ClaimStanding& standing) {
    SqlStatement& insert = connection_.prepared(
        "INSERT OR REPLACE INTO weighings VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    const Recall& recall = standing.recall;
    insert.bind(row);
    bind_years(insert, recall.age_at_interview);
    bind_years(insert, recall.age_at_event);
    bind_years(insert, recall.recall_distance);
    insert.bind(word_for(recall.in_service)).bind(recall.partly_in_service);
    insert.bind(static_cast<std::int64_t>(standing.foremost));
    for (const std::int64_t number : standing.comparisons.numbers) insert.bind(number);
    insert.bind(standing.intentions).run();
  }

  /// What is weighed before changed grounds are settled is looked at again when they are.
  void leave_unsettled(std::int64_t row) {
    connection_
        .prepared(
            "DELETE FROM grounds WHERE kind = 'interview' AND key = (SELECT interview FROM claims WHERE claim = ?)")
        .bind(row)
        .run();
  }

  SiteFile& site_;
  StoreConnection& connection_;
  SiteTransaction transaction_;
  bool settled_ = false;  ///< The evidence is what grounds were last settled for.
  std::unordered_map<std::string, std::int64_t> numbers_;
  std::size_t claims_ = 0;
  std::size_t comparisons_ = 0;
};

WeighingWriter::WeighingWriter(SiteFile& site) : work_(std::make_unique<Work>(site)) {}
WeighingWriter::~WeighingWriter() = default;
Result<void> WeighingWriter::add(const Weighing& weighing) {
  return work_->add(weighing);
}
void WeighingWriter::finish() {
  work_->finish();
}

Result<void> save_weighings(SiteFile& site, const std::vector<Weighing>& weighings) {
  if (weighings.empty()) return {};
  WeighingWriter writer(site);
  for (const Weighing& weighing : weighings)
    if (auto added = writer.add(weighing); !added) return added;
  writer.finish();
  return {};
}

std::optional<Weighing> load_weighing(const SiteFile& site, const Id& claim) {
  StoreConnection& connection = site.connection();
  SqlStatement select(*connection.database,
                      std::string("SELECT ") + kStandingColumns +
                          ", packed FROM claims JOIN weighings USING (claim) JOIN comparisons USING (claim) "
                          "WHERE id = ?");
  if (!select.bind(claim).step()) return std::nullopt;
  return Weighing{claim, standing_from(select).recall,
                  unpacked(select.blob(kStandingColumnCount), claim,
                           [&](std::int64_t number) { return key_of(connection, number); })};
}

std::optional<ClaimStanding> load_standing(const SiteFile& site, const Id& claim) {
  SqlStatement select(*site.connection().database, std::string("SELECT ") + kStandingColumns +
                                                       " FROM claims JOIN weighings USING (claim) WHERE id = ?");
  if (!select.bind(claim).step()) return std::nullopt;
  return standing_from(select);
}

void for_each_weighing(const SiteFile& site, const std::function<void(const Weighing&)>& visit) {
  const EvidenceKeys keys(site.connection());
  SqlStatement select(*site.connection().database,
                      std::string("SELECT ") + kStandingColumns +
                          ", packed FROM claims JOIN weighings USING (claim) JOIN comparisons USING (claim)" +
                          kOrder);
  while (select.step()) {
    const ClaimStanding standing = standing_from(select);
    visit({standing.claim, standing.recall,
           unpacked(select.blob(kStandingColumnCount), standing.claim,
                    [&](std::int64_t number) { return keys[number]; })});
  }
}

void for_each_standing(const SiteFile& site, const std::function<void(const ClaimStanding&)>& visit) {
  SqlStatement select(*site.connection().database, std::string("SELECT ") + kStandingColumns +
                                                       " FROM claims JOIN weighings USING (claim)" + kOrder);
  while (select.step()) visit(standing_from(select));
}

std::vector<Comparison> comparisons_with(const SiteFile& site, std::string_view entry,
                                         const ClaimFilter& among) {
  StoreConnection& connection = site.connection();
  std::vector<Comparison> found;
  SqlStatement number(*connection.database, "SELECT number FROM evidence_numbers WHERE key = ?");
  if (!number.bind(entry).step()) return found;
  const std::int64_t wanted = number.integer(0);
  const ClaimCondition condition = condition_of(among);
  SqlStatement select(*connection.database,
                      "SELECT id, packed FROM claims JOIN comparisons USING (claim)" + condition.sql + kOrder);
  for (const std::string& text : condition.texts) select.bind(text);
  while (select.step()) {
    const std::string bytes = select.blob(1);
    ComparisonUnpacker unpacker(bytes);
    for (NumberedComparison numbered; unpacker.next(numbered);)
      if (numbered.evidence == wanted)
        found.push_back(comparison_from(numbered, select.id(0), std::string(entry)));
  }
  return found;
}

std::vector<OutcomeCount> count_outcomes(const SiteFile& site) {
  std::vector<OutcomeCount> counts;
  SqlStatement select(*site.connection().database,
                      "SELECT interview, sum(agrees), sum(compatible), sum(conflicts), sum(cannot_tell), sum(silent) "
                      "FROM weighings JOIN claims USING (claim) GROUP BY 1 ORDER BY 1");
  while (select.step())
    for (int outcome = 0; outcome < 5; ++outcome)
      if (select.integer(1 + outcome) > 0)
        counts.push_back({select.text(0), static_cast<Outcome>(outcome), select.integer(1 + outcome)});
  return counts;
}

}  // namespace witnessmark
