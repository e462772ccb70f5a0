#include <fmt/format.h>

#include "store/claim/claim_rows.h"
#include "store/coding/record_changes.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/interviews.h"

// Notes, links to entries and checks against the recording.

namespace witnessmark {
namespace {

Error not_there(std::string_view what, std::string_view which) {
  return {"", 0, 0, fmt::format("there is no {} “{}”", what, which), "it may have gone meanwhile"};
}

Result<void> check_text(std::string_view text, std::string_view what) {
  if (is_valid_utf8(text) && !trim(text).empty()) return {};
  return Error{"", 0, 0, fmt::format("the {} is empty or not UTF-8", what), "type it again"};
}

/// The interview of a claim; empty when there is none.
std::string interview_of(StoreConnection& connection, const Id& claim) {
  SqlStatement& select = connection.prepared("SELECT interview FROM claims WHERE id = ?");
  std::string interview;
  if (select.bind(claim).step()) interview = select.text(0);
  select.reset();
  return interview;
}

std::string now(const StoreConnection& connection) {
  return connection.editor->wall_clock ? connection.editor->wall_clock() : std::string();
}

template <typename R, typename Part>
std::vector<R> records_where(const SiteFile& site, const std::string& condition, const Part& part) {
  std::vector<R> records;
  SqlStatement select(*site.connection().database,
                      "SELECT " + column_list<R>() + " FROM " + Table<R>::name + " WHERE " + condition);
  select.bind(part);
  while (select.step()) {
    ReadColumns reader(select);
    fields(reader, records.emplace_back());
  }
  return records;
}

}  // namespace

Result<Id> add_note(SiteFile& site, const Note& note) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_text(note.text, "note"); !checked) return checked.error();
  Note added = note;
  if (!note.claim.is_nil()) added.interview = interview_of(connection, note.claim);
  if (added.interview.empty() && !note.claim.is_nil()) return not_there("claim", to_string(note.claim));
  if (!find_interview(site, added.interview)) return not_there("interview", added.interview);
  added.version = 0;
  if (note.range != CodePointRange{}) {
    const CurrentReading current = current_reading(connection, added.interview);
    if (note.range.empty() || note.range.begin.value < 0 || note.range.end.value > current.code_points)
      return Error{added.interview, 0, 0, "the passage lies outside the reading text", "mark it again"};
    added.version = current.version;
  }
  if (added.id.is_nil()) added.id = connection.new_id();
  if (find_record(connection, added)) return Error{"", 0, 0, "there is a note of that id", "edit that one"};
  added.author = connection.editor->name;
  added.written = now(connection);
  put_record(connection, added, {.kind = "noted"});
  transaction.commit();
  return added.id;
}

Result<void> edit_note(SiteFile& site, const Id& id, std::string_view text) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_text(text, "note"); !checked) return checked;
  Note like;
  like.id = id;
  auto note = find_record(connection, like);
  if (!note) return not_there("note", to_string(id));
  note->text = text;
  put_record(connection, *note, {.kind = "noted"});
  transaction.commit();
  return {};
}

Result<void> remove_note(SiteFile& site, const Id& id) {
  SiteTransaction transaction(site);
  Note note;
  note.id = id;
  const auto found = find_record(site.connection(), note);
  if (!found) return not_there("note", to_string(id));
  remove_record(site.connection(), *found, {.kind = "noted"});
  transaction.commit();
  return {};
}

std::vector<Note> notes_of_interview(const SiteFile& site, std::string_view interview) {
  return records_where<Note>(site, "interview = ? ORDER BY version > 0, first, past, id", interview);
}
std::vector<Note> notes_on_claim(const SiteFile& site, const Id& claim) {
  return records_where<Note>(site, "claim = ? ORDER BY written, id", claim);
}

Result<void> link_entry(SiteFile& site, const EntryLink& link) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (!is_valid_utf8(link.why)) return Error{"", 0, 0, "the reason is not UTF-8", "type it again"};
  EntryLink added = link;
  added.interview = interview_of(connection, link.claim);
  if (added.interview.empty()) return not_there("claim", to_string(link.claim));
  SqlStatement& known = connection.prepared(
      "SELECT EXISTS (SELECT 1 FROM entries WHERE key = ?1) OR EXISTS (SELECT 1 FROM stays WHERE key = ?1)");
  known.bind(link.entry).step();
  const bool is_known = known.flag(0);
  known.reset();
  if (!is_known) return not_there("entry", link.entry);
  added.author = connection.editor->name;
  put_record(connection, added,
             {.kind = link.verdict == LinkVerdict::linked ? "linked" : "ruled-out", .why = link.why});
  transaction.commit();
  return {};
}

Result<void> unlink_entry(SiteFile& site, const Id& claim, std::string_view entry, std::string_view why) {
  SiteTransaction transaction(site);
  if (!is_valid_utf8(why)) return Error{"", 0, 0, "the reason is not UTF-8", "type it again"};
  EntryLink link;
  link.claim = claim;
  link.entry = entry;
  const auto found = find_record(site.connection(), link);
  if (!found) return not_there("link to entry", entry);
  remove_record(site.connection(), *found, {.kind = "unlinked", .why = std::string(why)});
  transaction.commit();
  return {};
}

std::vector<EntryLink> links_of_claim(const SiteFile& site, const Id& claim) {
  return records_where<EntryLink>(site, "claim = ? ORDER BY entry", claim);
}
std::vector<EntryLink> links_of_entry(const SiteFile& site, std::string_view entry) {
  return records_where<EntryLink>(site, "entry = ? ORDER BY claim", entry);
}

Result<void> check_quote(SiteFile& site, const Id& claim, std::string_view result) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_text(result, "result"); !checked) return checked;
  QuoteCheck check{claim, connection.editor->name, interview_of(connection, claim), now(connection),
                   std::string(result)};
  if (check.interview.empty()) return not_there("claim", to_string(claim));
  put_record(connection, check, {.kind = "checked"});
  transaction.commit();
  return {};
}

std::vector<QuoteCheck> quote_checks(const SiteFile& site, const Id& claim) {
  return records_where<QuoteCheck>(site, "claim = ? ORDER BY coder", claim);
}

}  // namespace witnessmark
