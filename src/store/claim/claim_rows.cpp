#include "store/claim/claim_rows.h"

#include <algorithm>

#include "store/record/columns.h"
#include "witnessmark/base/sha256.h"

namespace witnessmark {
namespace {

/// How it stands, after the columns of the claim itself.
constexpr const char* kStanding =
    "reading_version, first, past, by_coder, decided, gone, lost, proposed_otherwise, coalesce(proposal, "
    "''), claim";

void read_more_quotes(StoreConnection& connection, ClaimRow& row) {
  SqlStatement& select =
      connection.prepared("SELECT first, past FROM claim_quotes WHERE claim = ? ORDER BY n");
  select.bind(row.row);
  while (select.step()) {
    row.stored.claim.quotes.push_back({CodePoint{select.integer(0)}, CodePoint{select.integer(1)}});
  }
  select.reset();
}

void read_mentions(StoreConnection& connection, ClaimRow& row) {
  SqlStatement& select = connection.prepared(
      "SELECT kind, first, past, value, rule, near_match FROM claim_mentions WHERE claim = ? ORDER BY n");
  select.bind(row.row);
  while (select.step()) {
    Mention mention;
    mention.kind = value_for<MentionKind>(select.text_view(0));
    mention.range = {CodePoint{select.integer(1)}, CodePoint{select.integer(2)}};
    mention.value = select.text(3);
    mention.rule = select.text(4);
    mention.near_match = select.flag(5);
    row.stored.claim.mentions.push_back(std::move(mention));
  }
  select.reset();
}

std::string in_list(const char* column, const std::vector<std::string>& values, ClaimCondition& condition) {
  condition.texts.push_back(list_to_json(values));
  return std::string(column) + " IN (SELECT value FROM json_each(?))";
}

ClaimRow read_claim_row(const SqlStatement& select) {
  ClaimRow row;
  ReadColumns reader(select);
  fields(reader, row.stored.claim);
  int at = reader.next();
  row.stored.version = static_cast<int>(select.integer(at++));
  const std::int64_t first = select.integer(at++);
  row.stored.claim.quotes.push_back({CodePoint{first}, CodePoint{select.integer(at++)}});
  row.stored.by_coder = select.flag(at++);
  row.stored.decided = select.flag(at++);
  row.stored.gone = select.flag(at++);
  row.stored.lost = select.flag(at++);
  row.stored.proposed_otherwise = select.flag(at++);
  row.proposal = select.text(at++);
  row.row = select.integer(at);
  return row;
}

template <typename Visit>
void visit_rows(StoreConnection& connection, const ClaimFilter& filter, Visit visit) {
  const ClaimCondition condition = condition_of(filter);
  SqlStatement select(*connection.database,
                      "SELECT " + column_list<Claim>() + ", " + kStanding + " FROM claims" + condition.sql +
                          " ORDER BY interview, first, past, statement, ordinal, claim");
  for (const std::string& text : condition.texts) select.bind(text);
  while (select.step()) {
    ClaimRow row = read_claim_row(select);
    read_more_quotes(connection, row);
    if (filter.with_mentions) read_mentions(connection, row);
    visit(std::move(row));
  }
}

}  // namespace

ClaimCondition condition_of(const ClaimFilter& filter) {
  ClaimCondition condition;
  if (!filter.interviews.empty()) condition.add(in_list("interview", filter.interviews, condition));
  if (filter.subject_or_place && !filter.subjects.empty() && !filter.places.empty()) {
    const std::string subject = in_list("subject", filter.subjects, condition);
    condition.add("(" + subject + " OR " + in_list("place", filter.places, condition) + ")");
  } else {
    if (!filter.subjects.empty()) condition.add(in_list("subject", filter.subjects, condition));
    if (!filter.places.empty()) condition.add(in_list("place", filter.places, condition));
  }
  if (!filter.statuses.empty()) {
    std::vector<std::string> words;
    for (const ClaimStatus status : filter.statuses) words.emplace_back(word_for(status));
    condition.add(in_list("status", words, condition));
  }
  if (!filter.ids.empty()) {
    std::vector<std::string> ids;
    for (const Id& id : filter.ids) ids.push_back(to_string(id));
    condition.texts.push_back(list_to_json(ids));
    condition.add("id IN (SELECT id_of(value) FROM json_each(?))");
  }
  if (!filter.statements.empty()) {
    std::vector<std::string> words;
    for (const Statement statement : filter.statements) words.emplace_back(word_for(statement));
    condition.add(in_list("statement", words, condition));
  }
  if (filter.to_weigh) condition.add("claim NOT IN (SELECT claim FROM weighings)");
  if (filter.reviewed_only) condition.add("decided AND status = 'said-so'");
  if (!filter.with_gone) condition.add("NOT gone");
  if (!filter.with_lost) condition.add("NOT lost");
  return condition;
}

std::vector<ClaimRow> load_claim_rows(StoreConnection& connection, const ClaimFilter& filter) {
  std::vector<ClaimRow> rows;
  visit_rows(connection, filter, [&rows](ClaimRow row) { rows.push_back(std::move(row)); });
  return rows;
}

std::vector<ClaimRow> load_claim_rows(StoreConnection& connection, std::string_view interview) {
  ClaimFilter filter;
  filter.interviews = {std::string(interview)};
  return load_claim_rows(connection, filter);
}

void for_each_claim(const SiteFile& site, const ClaimFilter& filter,
                    const std::function<void(const StoredClaim&)>& visit) {
  visit_rows(site.connection(), filter, [&visit](const ClaimRow& row) { visit(row.stored); });
}

std::vector<StoredClaim> load_claims(const SiteFile& site, const ClaimFilter& filter) {
  std::vector<StoredClaim> claims;
  visit_rows(site.connection(), filter, [&claims](ClaimRow row) { claims.push_back(std::move(row.stored)); });
  return claims;
}

std::optional<StoredClaim> find_claim(const SiteFile& site, const Id& id) {
  StoreConnection& connection = site.connection();
  static const std::string sql =
      "SELECT " + column_list<Claim>() + ", " + kStanding + " FROM claims WHERE id = ?";
  SqlStatement select(*connection.database, sql);
  if (!select.bind(id).step()) return std::nullopt;
  ClaimRow row = read_claim_row(select);
  read_more_quotes(connection, row);
  read_mentions(connection, row);
  return std::move(row.stored);
}

void insert_claim_row(StoreConnection& connection, const ClaimRow& row) {
  static const std::string sql = [] {
    std::string marks;
    for (std::size_t i = 0; i < columns_of<Claim>().size(); ++i) marks += "?, ";
    return "INSERT INTO claims (" + column_list<Claim>() +
           ", reading_version, first, past, by_coder, decided, gone, lost, proposed_otherwise, proposal, "
           "claim) "
           "VALUES (" +
           marks + "?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
  }();
  const StoredClaim& stored = row.stored;
  const Claim& claim = stored.claim;
  SqlStatement& insert = connection.prepared(sql.c_str());
  BindColumns binder(insert);
  fields(binder, claim);
  insert.bind(stored.version).bind(claim.quotes.at(0).begin.value).bind(claim.quotes.at(0).end.value);
  insert.bind(stored.by_coder)
      .bind(stored.decided)
      .bind(stored.gone)
      .bind(stored.lost)
      .bind(stored.proposed_otherwise);
  row.proposal.empty() ? insert.bind_null() : insert.bind(row.proposal);
  std::int64_t number = row.row;
  if (number == 0) {
    SqlStatement& next = connection.prepared("SELECT coalesce(max(claim), 0) + 1 FROM claims");
    next.step();
    number = next.integer(0);
    next.reset();
  }
  insert.bind(number).run();

  for (std::size_t n = 1; n < claim.quotes.size(); ++n) {
    SqlStatement& quote =
        connection.prepared("INSERT INTO claim_quotes (claim, n, first, past) VALUES (?, ?, ?, ?)");
    quote.bind(number).bind(n).bind(claim.quotes[n].begin.value).bind(claim.quotes[n].end.value).run();
  }
  for (std::size_t n = 0; n < claim.mentions.size(); ++n) {
    SqlStatement& mention = connection.prepared(
        "INSERT INTO claim_mentions (claim, n, kind, first, past, value, rule, near_match) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
    mention.bind(number).bind(n);
    const Mention& m = claim.mentions[n];
    mention.bind(word_for(m.kind)).bind(m.range.begin.value).bind(m.range.end.value);
    mention.bind(m.value).bind(m.rule).bind(m.near_match).run();
  }
}

void delete_claim_row(StoreConnection& connection, std::int64_t row) {
  connection.prepared("DELETE FROM claims WHERE claim = ?").bind(row).run();
}

void rewrite_claim_row(StoreConnection& connection, const ClaimRow& row) {
  delete_claim_row(connection, row.row);
  insert_claim_row(connection, row);
}

std::string claim_json(const Claim& claim, int version) {
  std::string out;
  JsonFields visitor(out);
  fields(visitor, claim);
  visitor("version", version);
  visitor.close();
  return out;
}

ClaimState claim_from_json(std::string_view json) {
  const auto object = nlohmann::json::parse(json);
  ClaimState state;
  JsonReader reader(object);
  fields(reader, state.claim);
  reader("version", state.version);
  return state;
}

std::string proposals_sha256(const std::vector<ClaimRow>& rows) {
  std::vector<std::string> texts;
  for (const ClaimRow& row : rows) {
    if (row.stored.by_coder || row.stored.gone) continue;
    texts.push_back(row.proposal.empty() ? claim_json(row.stored.claim, row.stored.version) : row.proposal);
  }
  std::sort(texts.begin(), texts.end());
  std::string joined;
  for (const std::string& text : texts) joined += text + '\n';
  return sha256_hex(joined);
}

std::string text_of_version(StoreConnection& connection, std::string_view interview, int version) {
  SqlStatement& select = connection.prepared("SELECT text FROM readings WHERE interview = ? AND version = ?");
  std::string text;
  if (select.bind(interview).bind(version).step()) text = select.text(0);
  select.reset();
  return text;
}

CurrentReading current_reading(StoreConnection& connection, std::string_view interview) {
  CurrentReading current;
  SqlStatement& select = connection.prepared(
      "SELECT reading, version, code_points FROM readings WHERE interview = ? ORDER BY version DESC LIMIT 1");
  if (select.bind(interview).step()) {
    current = {select.integer(0), static_cast<int>(select.integer(1)), select.integer(2)};
  }
  select.reset();
  return current;
}

std::vector<ClaimCount> count_claims(const SiteFile& site) {
  std::vector<ClaimCount> counts;
  SqlStatement select(*site.connection().database,
                      "SELECT interview, status, statement, count(*) FROM claims GROUP BY 1, 2, 3");
  while (select.step()) {
    counts.push_back({select.text(0), value_for<ClaimStatus>(select.text_view(1)),
                      value_for<Statement>(select.text_view(2)), select.integer(3)});
  }
  return counts;
}

}  // namespace witnessmark
