#include <fmt/format.h>

#include "store/claim/claim_rows.h"
#include "store/coding/passage_place.h"
#include "store/coding/record_changes.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/restricted_passages.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

std::string passage_json(const RestrictedPassage& passage, int version) {
  std::string json;
  JsonFields visitor(json);
  fields(visitor, passage);
  visitor("version", version);
  visitor("first", passage.range.begin);
  visitor("past", passage.range.end);
  visitor.close();
  return json;
}

void write_place(StoreConnection& connection, const RestrictedPassage& passage, std::int64_t reading) {
  connection
      .prepared("UPDATE passages SET reading = ?, first = ?, past = ? WHERE interview = ? AND quote = ?")
      .bind(reading)
      .bind(passage.range.begin.value)
      .bind(passage.range.end.value)
      .bind(passage.interview)
      .bind(passage.quote)
      .run();
}

void restore_place(StoreConnection& connection, const std::string& json) {
  const auto object = nlohmann::json::parse(json);
  RestrictedPassage passage;
  read_record(object, passage);
  if (!object.contains("version")) return;
  const int version = object.at("version").get<int>();
  if (version == 0) {
    connection
        .prepared("UPDATE passages SET reading = NULL, first = NULL, past = NULL WHERE interview = ? AND quote = ?")
        .bind(passage.interview)
        .bind(passage.quote)
        .run();
    return;
  }
  const CurrentReading current = current_reading(connection, passage.interview);
  if (version != current.version) return;
  passage.range = {CodePoint{object.at("first").get<std::int64_t>()},
                   CodePoint{object.at("past").get<std::int64_t>()}};
  write_place(connection, passage, current.reading);
}

namespace {

/// Where a passage of the same words stands in that reading text; empty where it has no place there.
CodePointRange place_in(StoreConnection& connection, const RestrictedPassage& passage, std::int64_t reading) {
  CodePointRange place;
  SqlStatement& select = connection.prepared(
      "SELECT first, past FROM passages WHERE interview = ? AND quote = ? AND reading = ? AND first IS NOT NULL");
  if (select.bind(passage.interview).bind(passage.quote).bind(reading).step())
    place = {CodePoint{select.integer(0)}, CodePoint{select.integer(1)}};
  select.reset();
  return place;
}

}  // namespace

Result<void> mark_passage(SiteFile& site, const RestrictedPassage& marked, std::string_view why) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  RestrictedPassage passage = marked;
  const CurrentReading current = current_reading(connection, passage.interview);
  const auto text = load_reading_text(site, passage.interview);
  if (!text)
    return Error{passage.interview, 0, 0, "the interview has no transcript", "take in its transcript first"};
  if (passage.range.empty() || passage.range.begin.value < 0 || passage.range.end.value > current.code_points)
    return Error{passage.interview, 0, 0, "the passage lies outside the reading text", "mark it again"};
  if (!is_valid_utf8(why) || !is_valid_utf8(passage.reason) ||
      !is_valid_utf8(passage.conditions.closed_until_event))
    return Error{passage.interview, 0, 0, "the reason or the event is not UTF-8", "type it again"};
  passage.quote = CodePointIndex(*text).slice(passage.range);

  const CodePointRange place = place_in(connection, passage, current.reading);
  if (!place.empty() && place != passage.range) {
    return Error{passage.interview, 0, 0, "the same words are marked at another place",
                 "mark some words more, so that the two can be told apart"};
  }
  std::optional<RestrictedPassage> known = find_record(connection, passage);
  if (known && to_json(*known) == to_json(passage) && place == passage.range) return {};
  if (known) known->range = place;
  const std::string before = known ? passage_json(*known, place.empty() ? 0 : current.version) : "";
  const std::int64_t event = append_event(connection, {.kind = "restricted",
                                                       .target_kind = Table<RestrictedPassage>::kind,
                                                       .target = passage.interview,
                                                       .interview = passage.interview,
                                                       .before = before,
                                                       .after = passage_json(passage, current.version),
                                                       .why = std::string(why)});
  if (known) {
    update_record(connection, passage);
  } else {
    insert_record(connection, passage, event);
  }
  write_place(connection, passage, current.reading);
  transaction.commit();
  return {};
}

}  // namespace witnessmark
