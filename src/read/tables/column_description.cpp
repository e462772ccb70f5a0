#include "read/tables/column_description.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

#include "witnessmark/base/csv.h"
#include "witnessmark/base/embedded_schema.h"

namespace witnessmark {
namespace {

using Kind = ColumnDescription::Kind;

constexpr std::array<std::pair<std::string_view, Kind>, 11> kKinds = {{{"key", Kind::key},
                                                                       {"keys", Kind::keys},
                                                                       {"text", Kind::text},
                                                                       {"texts", Kind::texts},
                                                                       {"dated-texts", Kind::dated_texts},
                                                                       {"edtf", Kind::edtf},
                                                                       {"number", Kind::number},
                                                                       {"duration", Kind::duration},
                                                                       {"choice", Kind::choice},
                                                                       {"path", Kind::path},
                                                                       {"term", Kind::term}}};

Kind kind_of(std::string_view word, std::string_view table) {
  for (const auto& [known, kind] : kKinds) {
    if (known == word) return kind;
  }
  throw std::logic_error("schemas/csv/" + std::string(table) + ".csv: unknown kind " + std::string(word));
}

std::vector<std::string> split_list(std::string_view text) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('|'), text.size());
    parts.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

}  // namespace

std::vector<ColumnDescription> column_descriptions(std::string_view table) {
  const std::string path = "csv/" + std::string(table) + ".csv";
  const auto text = embedded_schema(path);
  if (!text) throw std::logic_error("no description of the table " + std::string(table));
  const auto file = parse_csv(*text, path);
  if (!file) throw std::logic_error(to_string(file.error()));
  std::vector<ColumnDescription> columns;
  for (std::size_t i = 1; i < file->rows.size(); ++i) {
    const auto& cells = file->rows[i].cells;
    if (cells.size() != 5) throw std::logic_error(path + ": five cells are wanted in each row");
    columns.push_back({cells[0].text, cells[1].text == "yes", kind_of(cells[2].text, table),
                       split_list(cells[3].text), cells[4].text});
  }
  return columns;
}

std::vector<std::string> table_names() {
  constexpr std::string_view kFolder = "csv/", kEnding = ".csv";
  std::vector<std::string> names;
  for (const EmbeddedSchema& schema : embedded_schemas()) {
    std::string_view path = schema.path;
    if (!path.starts_with(kFolder) || !path.ends_with(kEnding)) continue;
    path.remove_prefix(kFolder.size());
    path.remove_suffix(kEnding.size());
    names.emplace_back(path);
  }
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace witnessmark
