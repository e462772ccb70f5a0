#include "witnessmark/store/review_rows.h"

#include <fmt/format.h>

#include <algorithm>

#include "store/connection.h"
#include "store/record/json_text.h"

// Pages of claims are taken from indexes that have them in review order; only the rows of the page itself are
// read whole.

namespace witnessmark {
namespace {

constexpr std::string_view kPosition = "(review_rank, interview, first, claim)";

struct Condition {
  std::string sql = "1";
  std::vector<std::string> texts = {};

  void is(const char* column, std::string_view value) {
    sql += fmt::format(" AND {} = ?", column);
    texts.emplace_back(value);
  }
  void is_none_of(const char* column, const std::vector<std::string>& values) {
    if (values.empty()) return;
    sql += fmt::format(" AND {} NOT IN (SELECT value FROM json_each(?))", column);
    texts.push_back(list_to_json(values));
  }
  void is_any_of(const char* column, const std::vector<std::string>& values) {
    if (values.empty()) return;
    if (values.size() == 1) return is(column, values[0]);
    sql += fmt::format(" AND {} IN (SELECT value FROM json_each(?))", column);
    texts.push_back(list_to_json(values));
  }
};

/// The number of comparisons that came out so.
std::string_view tally_column(Outcome outcome) {
  constexpr std::string_view kColumns[] = {"agrees", "compatible", "conflicts", "cannot_tell", "silent"};
  return kColumns[static_cast<std::size_t>(outcome)];
}

Condition condition_of(const ReviewRequest& request) {
  Condition condition;
  if (!request.interview.empty()) condition.is("interview", request.interview);
  condition.is_none_of("interview", request.without);
  condition.is_any_of("speaker", request.speakers);
  condition.is_any_of("subject", request.subjects);
  condition.is_any_of("place", request.places);
  if (request.statement) condition.is("statement", word_for(*request.statement));
  if (request.status) condition.is("status", word_for(*request.status));
  if (request.outcome)
    condition.sql += fmt::format(
        " AND EXISTS (SELECT 1 FROM weighings WHERE weighings.claim = claims.claim AND {} > 0)",
        tally_column(*request.outcome));
  if (request.recall_least) {
    condition.sql += fmt::format(
        " AND EXISTS (SELECT 1 FROM weighings WHERE weighings.claim = claims.claim AND recall_distance_least >= "
        "{})",
        *request.recall_least);
  }
  return condition;
}

void bind(SqlStatement& select, const Condition& condition) {
  for (const std::string& text : condition.texts) select.bind(text);
}

void bind_position(SqlStatement& select, const ReviewRow& row) {
  select.bind(row.rank).bind(row.interview).bind(row.first.value).bind(row.row);
}

ReviewRow read_review_row(const SqlStatement& select) {
  ReviewRow row;
  row.row = select.integer(0);
  row.id = select.id(1);
  row.interview = select.text(2);
  row.rank = static_cast<int>(select.integer(3));
  row.first.value = select.integer(4);
  row.statement = value_for<Statement>(select.text_view(5));
  row.subject = select.text(6);
  row.subject_words = select.text(7);
  row.place = select.text(8);
  row.place_words = select.text(9);
  row.speaker = select.text(10);
  row.status = value_for<ClaimStatus>(select.text_view(11));
  row.decided = select.flag(12);
  row.gone = select.flag(13);
  row.lost = select.flag(14);
  if (const auto foremost = select.maybe_integer(15)) row.foremost = static_cast<Outcome>(*foremost);
  return row;
}

}  // namespace

std::vector<ReviewRow> review_rows(const SiteFile& site, const ReviewRequest& request) {
  Condition condition = condition_of(request);
  const std::string backwards = request.before ? " DESC" : "";
  if (request.after) condition.sql += fmt::format(" AND {} > (?, ?, ?, ?)", kPosition);
  if (request.before) condition.sql += fmt::format(" AND {} < (?, ?, ?, ?)", kPosition);
  const std::string order = fmt::format("review_rank{0}, interview{0}, first{0}, claim{0}", backwards);
  SqlStatement select(
      *site.connection().database,
      fmt::format(
          "SELECT claim, id, interview, review_rank, first, statement, subject, subject_words, place, "
          "place_words, speaker, status, decided, gone, lost, (SELECT foremost FROM weighings WHERE "
          "weighings.claim = claims.claim) FROM claims WHERE claim IN (SELECT claim FROM claims WHERE {} "
          "ORDER BY {} LIMIT ? OFFSET ?)",
          condition.sql, order));
  bind(select, condition);
  if (request.after) bind_position(select, *request.after);
  if (request.before) bind_position(select, *request.before);
  select.bind(request.limit).bind(request.offset);
  std::vector<ReviewRow> rows;
  while (select.step()) rows.push_back(read_review_row(select));
  std::sort(rows.begin(), rows.end(), [](const ReviewRow& a, const ReviewRow& b) {
    return std::tie(a.rank, a.interview, a.first, a.row) < std::tie(b.rank, b.interview, b.first, b.row);
  });
  return rows;
}

std::int64_t count_review_rows(const SiteFile& site, const ReviewRequest& request) {
  const Condition condition = condition_of(request);
  SqlStatement select(*site.connection().database, "SELECT count(*) FROM claims WHERE " + condition.sql);
  bind(select, condition);
  select.step();
  return select.integer(0);
}

std::int64_t rows_before(const SiteFile& site, const ReviewRequest& request, const ReviewRow& row) {
  const Condition condition = condition_of(request);
  SqlStatement select(
      *site.connection().database,
      fmt::format("SELECT count(*) FROM claims WHERE {} AND {} < (?, ?, ?, ?)", condition.sql, kPosition));
  bind(select, condition);
  bind_position(select, row);
  select.step();
  return select.integer(0);
}

}  // namespace witnessmark
