#include "witnessmark/base/csv.h"

#include <algorithm>

#include "base/utf8.h"

namespace witnessmark {
namespace {

/// Which of ',' and ';' the first line with anything in it has more of outside quotes; ',' when it has as
/// many.
char find_separator(std::string_view text) {
  text.remove_prefix(std::min(text.find_first_not_of("\r\n"), text.size()));
  bool quoted = false;
  std::int64_t commas = 0;
  std::int64_t semicolons = 0;
  for (const char byte : text) {
    if (byte == '"') quoted = !quoted;
    if (quoted) continue;
    if (byte == '\n') break;
    commas += byte == ',' ? 1 : 0;
    semicolons += byte == ';' ? 1 : 0;
  }
  return semicolons > commas ? ';' : ',';
}

class CsvParser {
 public:
  CsvParser(std::string_view text, std::string_view source)
      : text_(text), source_(source), separator_(find_separator(text)) {}

  Result<CsvFile> parse() {
    CsvFile file{std::string(source_), separator_, {}};
    while (at_ < text_.size()) {
      CsvRow row;
      row.line = line_;
      auto read = parse_row(row);
      if (!read) return read.error();
      if (*read == Content::something) file.rows.push_back(std::move(row));
    }
    if (file.rows.empty())
      return fault(1, 1, "the file holds no line", "its first line must name the columns");
    return file;
  }

 private:
  enum class Content { nothing, something };

  Error fault(std::int64_t line, std::int64_t column, std::string message, std::string advice) const {
    return {std::string(source_), line, column, std::move(message), std::move(advice)};
  }

  /// Counted on from the last place asked for, so that a line of a million cells is still read in one pass.
  std::int64_t column() {
    column_ += count_code_points(text_.substr(column_at_, at_ - column_at_));
    column_at_ = at_;
    return column_;
  }

  void start_line() {
    ++line_;
    column_at_ = at_;
    column_ = 1;
  }

  /// Length of the line break at the place, 0 when there is none. A lone CR is none: decoding leaves no such.
  std::size_t line_break() const {
    if (text_.substr(at_).starts_with('\n')) return 1;
    return text_.substr(at_).starts_with("\r\n") ? 2 : 0;
  }

  void skip_line_break() {
    at_ += line_break();
    start_line();
  }

  bool at_cell_end() const { return at_ == text_.size() || text_[at_] == separator_ || line_break() > 0; }

  /// Reads up to and with the line break.
  Result<Content> parse_row(CsvRow& row) {
    Content content = Content::nothing;
    while (true) {
      CsvCell cell{"", line_, column()};
      const bool quoted = at_ < text_.size() && text_[at_] == '"';
      auto read = quoted ? parse_quoted(cell) : parse_bare(cell);
      if (!read) return read.error();
      if (quoted || !cell.text.empty()) content = Content::something;
      row.cells.push_back(std::move(cell));
      if (at_ == text_.size()) return content;
      if (text_[at_] != separator_) break;
      ++at_;
    }
    skip_line_break();
    return content;
  }

  Result<void> parse_bare(CsvCell& cell) {
    const std::size_t start = at_;
    while (!at_cell_end()) {
      if (text_[at_] == '"') {
        return fault(line_, column(), "a quotation mark inside a cell that does not start with one",
                     "put the whole cell in quotation marks and double those inside it");
      }
      ++at_;
    }
    cell.text = text_.substr(start, at_ - start);
    return {};
  }

  Result<void> parse_quoted(CsvCell& cell) {
    ++at_;
    while (true) {
      const std::size_t stop = text_.find_first_of("\"\n", at_);
      if (stop == std::string_view::npos) {
        return fault(cell.line, cell.column, "a quotation mark that opens here is never closed",
                     "close the cell with a quotation mark; one that belongs to the text is doubled");
      }
      cell.text += text_.substr(at_, stop - at_);
      at_ = stop + 1;
      if (text_[stop] == '\n') {
        cell.text += '\n';
        start_line();
      } else if (at_ < text_.size() && text_[at_] == '"') {
        cell.text += '"';
        ++at_;
      } else {
        break;
      }
    }
    if (at_cell_end()) return {};
    return fault(line_, column(), "text after the quotation mark that closes the cell",
                 "double a quotation mark that belongs to the text, or take out what follows it");
  }

  std::string_view text_;
  std::string_view source_;
  char separator_;
  std::size_t at_ = 0;
  std::int64_t line_ = 1;
  std::size_t column_at_ = 0;  // the place column_ belongs to
  std::int64_t column_ = 1;
};

}  // namespace

Result<CsvFile> parse_csv(std::string_view text, std::string_view source) {
  return CsvParser(text, source).parse();
}

std::string csv_cell(std::string_view text, char separator) {
  const char special[] = {separator, '"', '\n', '\r'};
  if (text.find_first_of({special, sizeof special}) == std::string_view::npos) return std::string(text);
  std::string quoted = "\"";
  for (const char byte : text) {
    if (byte == '"') quoted += '"';
    quoted += byte;
  }
  return quoted + '"';
}

}  // namespace witnessmark
