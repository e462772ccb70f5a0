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
  const CurrentReading current = current_reading(connection, passage.interview);
  if (object.value("version", 0) != current.version || current.version == 0) return;
  passage.range = {CodePoint{object.at("first").get<std::int64_t>()},
                   CodePoint{object.at("past").get<std::int64_t>()}};
  write_place(connection, passage, current.reading);
}

namespace {

/// Whether a passage of the same words has another place in that reading text.
bool stands_elsewhere(StoreConnection& connection, const RestrictedPassage& passage, std::int64_t reading) {
  SqlStatement& select = connection.prepared(
      "SELECT first, past FROM passages WHERE interview = ? AND quote = ? AND reading = ?");
  const bool placed = select.bind(passage.interview).bind(passage.quote).bind(reading).step();
  const bool elsewhere = placed && (select.integer(0) != passage.range.begin.value ||
                                    select.integer(1) != passage.range.end.value);
  select.reset();
  return elsewhere;
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

  if (stands_elsewhere(connection, passage, current.reading)) {
    return Error{passage.interview, 0, 0, "the same words are marked at another place",
                 "mark some words more, so that the two can be told apart"};
  }
  const std::string before = stored_json(connection, passage);
  if (before == to_json(passage)) return {};
  const std::int64_t event = append_event(connection, {.kind = "restricted",
                                                       .target_kind = Table<RestrictedPassage>::kind,
                                                       .target = passage.interview,
                                                       .interview = passage.interview,
                                                       .before = before,
                                                       .after = passage_json(passage, current.version),
                                                       .why = std::string(why)});
  if (before.empty()) {
    insert_record(connection, passage, event);
    write_place(connection, passage, current.reading);
  } else {
    update_record(connection, passage);
  }
  transaction.commit();
  return {};
}

}  // namespace witnessmark
