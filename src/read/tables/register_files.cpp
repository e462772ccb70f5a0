#include "witnessmark/read/register_files.h"

#include <fmt/format.h>

#include <algorithm>

#include "read/tables/register_rows.h"
#include "read/tables/table_files.h"
#include "witnessmark/model/letter_figure.h"

namespace witnessmark {
namespace {

class RegisterRows {
 public:
  RegisterRows(const AuthorityLists* lists, RegisterReading reading)
      : out_(std::move(reading)), terms_(lists, references_) {
    if (!lists) return;
    for (const Term& term : lists->equipment.terms()) references_.define(KeyKind::equipment, term.key);
    for (const Term& term : lists->places.terms()) references_.define(KeyKind::place, term.key);
  }

  RegisterReading read(const RegisterTables& tables) {
    each(tables.sources, [this](RowReader& row) { read_source(row); });
    each(tables.derives, [this](RowReader& row) { read_derivation(row); });
    each(tables.entries, [this](RowReader& row) { read_entry(row); });
    each(tables.itinerary, [this](RowReader& row) { read_stay(row); });
    each(tables.events, [this](RowReader& row) { read_event(row); });
    out_.unresolved = references_.unresolved();
    out_.ok = !has_errors(out_.diagnostics);
    return std::move(out_);
  }

 private:
  template <typename ReadRow>
  void each(const Table& table, ReadRow read_row) {
    for_each_row(table, out_.diagnostics, read_row);
  }

  void read_source(RowReader& row) {
    Source source;
    source.key = row.key("source");
    references_.define(KeyKind::source, source.key, "source", row);
    const auto kind = parse_source_kind(row.choice("kind"));
    source.kind = kind.value_or(SourceKind::publication);
    source.title = row.text("title");
    source.creator = row.text("creator");
    source.date = row.dated("date");
    source.repository = row.text("repository");
    source.reference = row.text("reference");
    source.interview = row.key("interview");
    source.notes = row.with_extra(row.text("notes"));
    references_.use(KeyKind::interview, source.interview, "interview", row);
    if (kind) kinds_[source.key] = *kind;
    if (row.ok()) out_.evidence.sources.push_back(std::move(source));
  }

  void read_derivation(RowReader& row) {
    Derivation derivation;
    derivation.source = row.key("source");
    derivation.derives_from = row.key("derives_from");
    derivation.how = row.with_extra(row.text("how"));
    if (row.ok() && derivation.source == derivation.derives_from) {
      row.fail("derives_from", "lets the source rest on itself",
               "name what it was copied, traced or told from");
    }
    references_.use(KeyKind::source, derivation.source, "source", row);
    references_.use({KeyKind::source, KeyKind::interview}, {derivation.derives_from}, "derives_from", row);
    if (row.ok()) out_.evidence.derivations.push_back(std::move(derivation));
  }

  void read_entry(RowReader& row) {
    Entry entry;
    entry.key = row.key("entry");
    references_.define(KeyKind::entry, entry.key, "entry", row);
    entry.source = row.key("source");
    references_.use(KeyKind::source, entry.source, "source", row);
    entry.locator = row.text("locator");
    const auto statement = parse_statement(row.choice("statement"));
    entry.statement = statement.value_or(Statement::present);
    if (entry.statement == Statement::located) {
      read_whereabouts(row, entry);
    } else {
      entry.subject = terms_.find(AuthorityList::Kind::equipment, "subject", row);
      entry.place = terms_.find(AuthorityList::Kind::places, "place", row);
    }
    read_time(row, entry);
    read_nature(row, entry);
    read_values(row, entry);
    read_grounds(row, entry);
    read_observation(row, entry);
    if (statement) check_statement(row, entry);
    if (!row.ok()) return;
    if (nature_open_) out_.nature_by_source.push_back(out_.evidence.entries.size());
    out_.evidence.entries.push_back(std::move(entry));
  }

  void read_whereabouts(RowReader& row, Entry& entry) {
    entry.place = row.text("place");
    entry.subject = row.key("subject");
    if (terms_.is_site(entry.subject)) entry.subject.clear();
    references_.use(KeyKind::person, entry.subject, "subject", row);
  }

  void read_time(RowReader& row, Entry& entry) {
    entry.when = row.dated("when");
    const std::string written = row.text("when_written");
    const bool julian = row.choice("calendar") == "julian";
    if (!written.empty()) entry.when.written = written;
    if (julian) entry.when.calendar = Calendar::julian;
    if (julian && written.empty()) {
      row.warn("calendar", "says julian, but when_written holds no date as written",
               "when is always in the Gregorian calendar");
    }
    entry.reading = row.choice("reading") == "throughout" ? Reading::throughout : Reading::within;
  }

  void read_nature(RowReader& row, Entry& entry) {
    const std::string nature = row.choice("nature");
    nature_open_ = false;
    if (!nature.empty()) {
      entry.nature = *parse_nature(nature);
      return;
    }
    const auto kind = kinds_.find(entry.source);
    nature_open_ = kind == kinds_.end();
    if (!nature_open_) entry.nature = default_nature(kind->second);
  }

  void read_values(RowReader& row, Entry& entry) {
    entry.number = row.number("number");
    entry.number_most = row.number("number_most");
    read_letter_figure(row, entry);
    entry.attribute = row.text("attribute");
    entry.spot_visible = parse_spot_visible(row.choice("spot_visible")).value_or(SpotVisible::not_stated);
    entry.identification =
        parse_identification(row.choice("identification")).value_or(Identification::certain);
    entry.fabric = parse_fabric(row.choice("fabric")).value_or(Fabric::unknown);
  }

  void read_letter_figure(RowReader& row, Entry& entry) {
    entry.letter_figure = row.text("letter_figure");
    if (entry.letter_figure.empty()) return;
    const auto noted = parse_letter_figure(entry.letter_figure);
    const auto kind = kinds_.find(entry.source);
    if (!noted) {
      row.fail("letter_figure", "is not of the letter-figure scale",
               "write a letter A to F, a figure 1 to 6, or both, such as B2");
    } else if (noted->letter != 0 && kind != kinds_.end() && kind->second == SourceKind::testimony) {
      row.fail("letter_figure", "has a letter, and the source is testimony: no person is graded",
               "leave out the letter; the figure may stay");
    }
  }

  void read_grounds(RowReader& row, Entry& entry) {
    using K = KeyKind;
    entry.identification_rests_on =
        grounds(row, entry, "identification_rests_on", {K::entry, K::source, K::equipment});
    entry.date_rests_on =
        grounds(row, entry, "date_rests_on", {K::entry, K::source, K::interview, K::equipment});
    entry.caption_rests_on = grounds(row, entry, "caption_rests_on", {K::entry, K::source, K::interview});
    entry.over = grounds(row, entry, "over", {K::entry});
  }

  std::vector<std::string> grounds(RowReader& row, const Entry& entry, std::string_view column,
                                   const std::vector<KeyKind>& may_be) {
    std::vector<std::string> keys = row.keys(column);
    if (std::find(keys.begin(), keys.end(), entry.key) != keys.end() && !entry.key.empty()) {
      row.fail(column, "names the entry itself", "name what it rests on or lies over");
    }
    references_.use(may_be, keys, column, row);
    return keys;
  }

  void read_observation(RowReader& row, Entry& entry) {
    entry.observation = row.text("observation");
    entry.interpretation = row.text("interpretation");
    entry.observer = row.text("observer");
    entry.notes = row.with_extra(row.text("notes"));
  }

  void check_statement(RowReader& row, const Entry& entry) {
    const std::string statement(to_string(entry.statement));
    if (entry.statement == Statement::count && !entry.number && !row.has("number")) {
      row.fail("number", "is empty, and the statement is count", "say how many, or choose another statement");
    }
    if (entry.statement == Statement::attribute && entry.attribute.empty()) {
      row.fail("attribute", "is empty, and the statement is attribute",
               "write the property as name: value, such as colour: buff");
    }
    const bool is_property = entry.statement != Statement::happened;  // What happened is told in a word: burned.
    if (is_property && !entry.attribute.empty() && entry.attribute.find(':') == std::string::npos) {
      row.fail("attribute", "has no colon", "write the property as name: value, such as colour: buff");
    }
    if (entry.statement == Statement::located && entry.place.empty()) {
      row.warn("place", "is empty, and the statement is located: it places nobody anywhere",
               "say where, in words");
    }
    const bool needs_thing = entry.statement != Statement::located && entry.statement != Statement::happened;
    if (needs_thing && !row.has("subject") && !row.has("place")) {
      row.fail("subject", fmt::format("and place are empty, and the statement is {}", statement),
               "say of what, or where");
    }
    if (entry.number_most && (!entry.number || *entry.number_most <= *entry.number)) {
      row.fail("number_most", "is not more than the number", "give the least in number and the most here");
    }
    if (entry.number && entry.statement != Statement::count) {
      row.warn("number", fmt::format("holds a number, but the statement is {}", statement),
               "a number counts for count only");
    }
    if (!entry.over.empty() && kinds_.contains(entry.source) &&
        kinds_[entry.source] != SourceKind::physical_trace) {
      row.warn("over", "lays traces over one another, but the source is no physical trace",
               "check the source or the column");
    }
  }

  void read_stay(RowReader& row) {
    Stay stay;
    stay.key = row.key("stay");
    references_.define(KeyKind::stay, stay.key, "stay", row);
    stay.source = row.key("source");
    stay.party = row.key("party");
    if (terms_.is_site(stay.party)) stay.party.clear();
    stay.locations = row.texts("location");
    stay.when = row.dated("when");
    stay.notes = row.with_extra(row.text("notes"));
    references_.use(KeyKind::source, stay.source, "source", row);
    references_.use(KeyKind::person, stay.party, "party", row);
    if (row.ok()) out_.evidence.itinerary.push_back(std::move(stay));
  }

  void read_event(RowReader& row) {
    NamedEvent event;
    event.key = row.key("event");
    references_.define(KeyKind::event, event.key, "event", row);
    event.name = row.text("name");
    event.spoken = row.texts("spoken");
    event.when = row.dated("when");
    event.source = row.key("source");
    event.notes = row.with_extra(row.text("notes"));
    references_.use(KeyKind::source, event.source, "source", row);
    if (row.ok()) out_.evidence.events.push_back(std::move(event));
  }

  RegisterReading out_;
  References references_;
  Terms terms_;
  std::unordered_map<std::string, SourceKind> kinds_;  // of sources read
  bool nature_open_ = false;  // of the entry being read: depends on a source not read
};

}  // namespace

Nature default_nature(SourceKind kind) {
  return kind == SourceKind::drawing || kind == SourceKind::order ? Nature::intended : Nature::done;
}

RegisterReading read_register_tables(const RegisterTables& tables, const AuthorityLists* lists,
                                     RegisterReading reading) {
  return RegisterRows(lists, std::move(reading)).read(tables);
}

RegisterReading read_register_files(const FileReader& files, const std::filesystem::path& entries,
                                    const AuthorityLists* lists, const RegisterFilePaths& paths) {
  RegisterReading reading;
  TableFiles tables(files, reading.diagnostics, reading.files_read);
  RegisterTables read;
  read.entries = tables.read(entries, "entries", true);
  read.sources = tables.read_beside(entries, paths.sources, "sources", true);
  read.derives = tables.read_beside(entries, paths.derives, "derives", true);
  read.itinerary = tables.read_beside(entries, paths.itinerary, "itinerary", true);
  read.events = tables.read_beside(entries, paths.events, "named-events", true);
  return read_register_tables(read, lists, std::move(reading));
}

}  // namespace witnessmark
