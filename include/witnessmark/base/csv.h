#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/result.h"

namespace witnessmark {

/// Where a cell stands is where its first character stands; an opening quote counts as one.
struct CsvCell {
  std::string text;
  std::int64_t line = 0;    ///< From 1.
  std::int64_t column = 0;  ///< From 1, in code points.
};

struct CsvRow {
  std::vector<CsvCell> cells;
  std::int64_t line = 0;
};

struct CsvFile {
  std::string source;
  char separator = ',';  ///< ',' or ';', whichever the header line has more of outside quotes.
  /// The header row first; never empty. Lines of nothing, or of separators only, are left out.
  std::vector<CsvRow> rows;
};

/// Reads CSV (RFC 4180) from decoded text: comma or semicolon, quotes doubled inside quotes, LF or CRLF, line
/// breaks inside quotes. A quote left open, text after a closing quote, a quote inside a bare cell or a text
/// without any row is an error with line and column. A last line without line break is taken. Rows may differ
/// in length.
Result<CsvFile> parse_csv(std::string_view text, std::string_view source);

/// One cell as RFC 4180 wants it: in quotes when it holds separator, quote or line break.
std::string csv_cell(std::string_view text, char separator = ',');

}  // namespace witnessmark
