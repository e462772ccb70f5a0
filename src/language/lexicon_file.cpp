#include "language/lexicon_file.h"

#include <fmt/format.h>

#include "witnessmark/base/decode.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {

Result<LexiconFile> LexiconFile::load(const FileReader& files, const std::filesystem::path& path,
                                      std::initializer_list<std::string_view> columns) {
  const Result<std::string> bytes = files.read(path);
  if (!bytes) return bytes.error();
  const Result<DecodedText> decoded = decode_text(*bytes, path.string());
  if (!decoded) return decoded.error();
  const Result<CsvFile> csv = parse_csv(decoded->text, path.string());
  if (!csv) return csv.error();

  LexiconFile file;
  file.source_ = path.string();
  std::vector<std::size_t> at;
  const CsvRow& header = csv->rows.front();
  for (const std::string_view wanted : columns) {
    std::size_t found = header.cells.size();
    for (std::size_t i = 0; i < header.cells.size(); ++i) {
      if (trim(header.cells[i].text) == wanted) found = i;
    }
    if (found == header.cells.size()) {
      return Error{file.source_, header.line, 1, fmt::format("no column \"{}\"", wanted),
                   "the first line must name the columns; README.md in the language folder lists them"};
    }
    at.push_back(found);
  }
  for (std::size_t r = 1; r < csv->rows.size(); ++r) {
    Row row;
    row.line = csv->rows[r].line;
    for (const std::size_t column : at) {
      CsvCell cell;
      cell.line = row.line;
      if (column < csv->rows[r].cells.size()) cell = csv->rows[r].cells[column];
      cell.text = std::string(trim(cell.text));
      row.cells.push_back(std::move(cell));
    }
    file.rows_.push_back(std::move(row));
  }
  return file;
}

Error LexiconFile::error(const Row& row, std::size_t column, std::string message, std::string advice) const {
  const CsvCell& cell = row.cells[column];
  return Error{source_, cell.line, cell.column, std::move(message), std::move(advice)};
}

}  // namespace witnessmark
