#include <doctest/doctest.h>
#include <fmt/core.h>

#include <algorithm>
#include <iterator>

#include "renaming.h"
#include "whole_job.h"
#include "witnessmark/base/csv.h"
#include "witnessmark/base/decode.h"
#include "witnessmark/base/embedded_schema.h"

using namespace witnessmark;

namespace {

/// Words the language's own data speaks of: they carry the grammar and stay.
std::set<std::string> language_words() {
  std::set<std::string> words;
  for (const auto& [path, text] : files_of(source_tree() / "shared" / "language" / "en").files) {
    if (path.ends_with(".csv")) words.merge(Renaming::words_of(text));
  }
  // Slang that is an everyday word as well ("sick" for the sick bay) would change what ordinary sentences say.
  words.merge(std::set<std::string>{"sick", "head", "horse", "mess", "store", "table", "voice"});
  // So do the words that spreadsheet cells are chosen from.
  for (const EmbeddedSchema& schema : embedded_schemas()) {
    if (!schema.path.starts_with("csv/")) continue;
    const CsvFile columns = parse_csv(schema.text, schema.path).value();
    for (const CsvRow& row : columns.rows) words.merge(Renaming::words_of(row.cells.at(3).text));
  }
  return words;
}

void add_column(const FileReader& files, const std::filesystem::path& path, const std::vector<std::string>& columns,
                Renaming& renaming) {
  const CsvFile file = parse_csv(decode_text(files.read(path).value(), "").value().text, path.string()).value();
  for (std::size_t row = 1; row < file.rows.size(); ++row) {
    for (std::size_t i = 0; i < file.rows[0].cells.size(); ++i) {
      if (std::find(columns.begin(), columns.end(), file.rows[0].cells[i].text) != columns.end())
        renaming.add_names(file.rows[row].cells.at(i).text);
    }
  }
}

/// A claim's verdicts, without anything that has a name or a date in it; and the claim, for people.
struct Verdict {
  std::string line, claim;
};
bool by_line(const Verdict& a, const Verdict& b) { return a.line < b.line; }

std::vector<Verdict> verdicts(const SiteFile& site) {
  std::vector<Verdict> lines;
  for (const StoredClaim& stored : load_claims(site)) {
    if (stored.claim.when.rule == "named-time") continue;  // The wars stay where they were.
    std::string line(to_string(stored.claim.statement));

    const auto weighing = load_weighing(site, stored.claim.id);
    if (weighing) {
      line += " " + dump(weighing->recall);
      for (const Comparison& comparison : weighing->comparisons) {
        line += fmt::format(" {}", to_string(comparison.outcome));
        if (comparison.gap)
          line += fmt::format(" {}..{}", comparison.gap->least, comparison.gap->most.value_or(-1));
      }
    }
    lines.push_back({std::move(line), dump(stored.claim)});
  }
  std::sort(lines.begin(), lines.end(), by_line);
  return lines;
}

void compare_with_renamed(const std::filesystem::path& folder, std::uint64_t seed) {
  const MemoryFiles plain = files_of(folder);
  Renaming renaming(language_words(), seed);
  for (const char* list : {"places.csv", "equipment.csv"})
    add_column(plain, folder / list, {"name", "former_names", "spoken"}, renaming);
  add_column(plain, folder / "itinerary.csv", {"location"}, renaming);
  add_column(plain, folder / "persons.csv", {"name", "pseudonym"}, renaming);
  MemoryFiles moved;
  for (const auto& [path, bytes] : plain.files) {
    const auto relative = std::filesystem::relative(path, folder).string();
    if (relative.starts_with("expected") || relative.starts_with("out")) continue;
    const bool known_names = relative.find('/') == std::string::npos;   // a CSV file of the layout
    const auto name = known_names ? relative : renaming.apply(relative);
    const std::string text = decode_text(bytes, path).value().text;
    moved.files[(folder / name).string()] = known_names && !relative.ends_with(".csv") ? text : renaming.apply(text);
  }
  // The header lines name columns, not things.
  for (auto& [path, text] : moved.files) {
    if (!path.ends_with(".csv")) continue;
    const std::string before = decode_text(plain.files.at(path), path).value().text;
    text = before.substr(0, before.find('\n')) + text.substr(text.find('\n'));
  }
  const auto here = verdicts(whole_job(plain, folder, to_day({2026, 1, 15})));
  const auto there = verdicts(whole_job(moved, folder, to_day({2026 - 400, 1, 15})));
  // Other keys sort otherwise, so the verdicts are compared as a whole, not one by one.
  std::vector<Verdict> only_here, only_there;
  std::set_difference(here.begin(), here.end(), there.begin(), there.end(), std::back_inserter(only_here), by_line);
  std::set_difference(there.begin(), there.end(), here.begin(), here.end(), std::back_inserter(only_there), by_line);
  for (const Verdict& one : only_here) fmt::print("only before: {} | {}\n", one.claim, one.line);
  for (const Verdict& one : only_there) fmt::print("only after: {} | {}\n", one.claim, one.line);
  // A word of a name that is said for something else, too ("the boiler" of "a boiler suit"), is a trait of the talk
  // and weighs; with another word in its place a claim on the brink may be made or not.
  const auto few = [](const std::vector<Verdict>& all) { return std::max<std::size_t>(2, all.size() / 100); };
  CHECK(only_here.size() <= few(here));
  CHECK(only_there.size() <= few(there));
  fmt::print("{}: {} of {} verdicts are the same with other names and 400 years earlier\n", folder.filename().string(),
             here.size() - only_here.size(), here.size());
}

}  // namespace

TEST_CASE("other names and dates 400 years earlier change hardly a verdict or gap of the demo corpus") {
  compare_with_renamed(source_tree() / "corpus-demo", 3);
}

TEST_CASE("other names and dates 400 years earlier change hardly a verdict or gap of the second site") {
  compare_with_renamed(source_tree() / "tests" / "second-site", 5);
}
