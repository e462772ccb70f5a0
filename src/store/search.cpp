#include "witnessmark/store/search.h"

#include "store/connection.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// A word or phrase as FTS5 takes it for plain words: in quotes, quotes within doubled. Nothing for one
/// without any letter or digit: FTS5 would let it match every turn or none.
std::string quoted(std::string_view words, bool beginning) {
  bool has_token = false;
  std::string out = "\"";
  for (const char c : words) {
    has_token = has_token || std::isalnum(static_cast<unsigned char>(c)) != 0 ||
                static_cast<unsigned char>(c) >= 0x80;
    if (c == '"') out += '"';
    out += c;
  }
  if (!has_token) return {};
  return out + (beginning ? "\" *" : "\"");
}

/// The FTS5 query for what a person typed: words and phrases, all of which must stand in the turn.
std::string query_of(std::string_view text) {
  const std::string folded = fold(text);
  std::string query;
  const auto add = [&query](const std::string& part) {
    if (!part.empty()) query += (query.empty() ? "" : " AND ") + part;
  };
  std::string word;
  bool in_phrase = false;
  const auto finish = [&] {
    const bool beginning = !in_phrase && word.size() > 1 && word.back() == '*';
    if (beginning) word.pop_back();
    add(quoted(word, beginning));
    word.clear();
  };
  for (const char c : folded) {
    if (c == '"') {
      finish();
      in_phrase = !in_phrase;
    } else if (c == ' ' && !in_phrase) {
      finish();
    } else if (c != '\0') {
      word += c;
    }
  }
  finish();
  return query;
}

}  // namespace

std::vector<SearchHit> search_talk(const SiteFile& site, const SearchRequest& request) {
  std::vector<SearchHit> hits;
  const std::string query = query_of(request.text);
  if (query.empty()) return hits;
  SqlStatement select(*site.connection().database,
                      "SELECT talk.rowid, readings.interview, n, first, past, speaker, time_begin, time_end "
                      "FROM talk JOIN utterances ON utterances.reading = talk.rowid / 1048576 AND n = "
                      "talk.rowid % 1048576 JOIN readings USING (reading) "
                      "WHERE talk MATCH ?1 AND talk.rowid > ?2 AND (?3 = '' OR readings.interview = ?3) "
                      "ORDER BY talk.rowid LIMIT ?4");
  select.bind(query).bind(request.after).bind(request.interview).bind(request.limit);
  while (select.step()) {
    SearchHit& hit = hits.emplace_back();
    hit.number = select.integer(0);
    hit.interview = select.text(1);
    hit.utterance = static_cast<std::size_t>(select.integer(2));
    hit.range = {CodePoint{select.integer(3)}, CodePoint{select.integer(4)}};
    hit.speaker = select.text(5);
    if (!select.is_null(6) && !select.is_null(7)) {
      hit.time = TimeRange{Millisecond{select.integer(6)}, Millisecond{select.integer(7)}};
    }
  }
  return hits;
}

}  // namespace witnessmark
