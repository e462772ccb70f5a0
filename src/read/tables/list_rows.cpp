#include "read/tables/list_rows.h"

#include <fmt/format.h>

#include <unordered_map>

#include "read/tables/references.h"
#include "read/tables/table_files.h"
#include "witnessmark/model/compartment_number.h"

namespace witnessmark {
namespace {

void read_place(RowReader& row, Term& term) {
  term.broader = row.key("within");
  term.number = row.text("number");
  const std::string scheme = row.choice("number_scheme");
  if (!scheme.empty()) term.scheme = *parse_number_scheme(scheme);
  if (term.number.empty() ||
      (term.scheme != NumberScheme::since_1949 && term.scheme != NumberScheme::before_1949))
    return;
  // The number of a whole deck ("01", "2") has no parts.
  if (term.number.find_first_not_of("0123456789") == std::string::npos) return;
  const auto number = parse_compartment_number(term.number);
  if (!number) {
    row.warn("number",
             fmt::format("holds \"{}\", which does not read by the scheme {}: {}", term.number, scheme,
                         number.error().message),
             number.error().advice);
  } else if (number->scheme != term.scheme) {
    row.warn("number",
             fmt::format("holds \"{}\", which reads by the scheme {}, not {}", term.number,
                         to_string(number->scheme), scheme),
             "correct the scheme or the number");
  }
}

Term read_term(RowReader& row, AuthorityList::Kind kind, References& references) {
  const bool places = kind == AuthorityList::Kind::places;
  const KeyKind key_kind = places ? KeyKind::place : KeyKind::equipment;
  const std::string_view key_column = places ? "place" : "equipment";
  Term term;
  term.key = row.key(key_column);
  references.define(key_kind, term.key, key_column, row);
  term.name = row.text("name");
  if (places) {
    read_place(row, term);
  } else {
    term.broader = row.key("broader");
    term.number = row.text("number");
    term.place = row.key("place");
    references.use(KeyKind::place, term.place, "place", row);
  }
  references.use(key_kind, term.broader, places ? "within" : "broader", row);
  term.former_names = row.former_names("former_names");
  term.spoken = row.texts("spoken");
  term.notes = row.with_extra(row.text("notes"));
  return term;
}

}  // namespace

ListReading read_csv_list(std::string_view bytes, std::string_view source, AuthorityList::Kind kind) {
  ListReading reading;
  References references;
  const std::string_view name = kind == AuthorityList::Kind::places ? "places" : "equipment";
  const Table table = read_table(bytes, source, name, true, reading.diagnostics);
  for_each_row(table, reading.diagnostics, [&](RowReader& row) {
    Term term = read_term(row, kind, references);
    if (!row.ok()) return;
    reading.terms.push_back(std::move(term));
    reading.lines.push_back(row.line());
  });
  reading.unresolved = references.unresolved();
  return reading;
}

// Each term is walked upward once: what a walk has left behind leads to no new circle.
void check_circles(const std::vector<Term>& terms, std::string_view source,
                   std::vector<Diagnostic>& diagnostics) {
  std::unordered_map<std::string_view, std::size_t> at;
  for (std::size_t i = 0; i < terms.size(); ++i) at.emplace(terms[i].key, i);
  std::vector<std::size_t> walk(terms.size(), 0);  // number of the walk that came by
  for (std::size_t i = 0; i < terms.size(); ++i) {
    std::size_t here = i;
    while (walk[here] == 0) {
      walk[here] = i + 1;
      const auto above = at.find(terms[here].broader);
      if (terms[here].broader.empty() || above == at.end()) break;
      here = above->second;
      if (walk[here] != i + 1) continue;
      std::string circle = terms[here].key;
      std::size_t shown = 1;
      for (std::size_t next = at[terms[here].broader]; next != here && shown < 6;
           next = at[terms[next].broader], ++shown) {
        circle += " < " + terms[next].key;
      }
      circle += shown < 6 ? " < " + terms[here].key : " < …";
      diagnostics.push_back(
          {Diagnostic::Severity::error,
           {std::string(source), 0, 0, "terms lie within one another in a circle: " + circle,
            "let one of them lie in something else, or in nothing"}});
      break;
    }
  }
}

}  // namespace witnessmark
