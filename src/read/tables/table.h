#pragma once
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "read/tables/column_description.h"
#include "witnessmark/base/file_system.h"

namespace witnessmark {

struct TableCell {
  std::string text;  ///< Trimmed.
  std::int64_t line = 0;
  std::int64_t column = 0;
};

struct TableRow {
  std::vector<TableCell>
      cells;          ///< One for each described column, in the order of the description; empty when missing.
  std::string extra;  ///< Columns not described: "weather: wet; finder: B".
  std::int64_t line = 0;
  std::int64_t sheet_row = 0;  ///< As a spreadsheet counts; 0 for XML.
};

/// A table as one of schemas/csv describes it, from CSV or XML.
struct Table {
  std::string name;    ///< "entries".
  std::string source;  ///< File it is from.
  std::vector<ColumnDescription> columns;
  std::vector<int>
      sheet_columns;  ///< Place of each described column in the file, from 0; -1 when it has none.
  std::vector<TableRow> rows;

  std::size_t column(
      std::string_view column_name) const;  ///< Throws std::logic_error for a name not described.
};

/// Reads a table from the bytes of a CSV file. `takes_notes` says whether columns not described are kept, as
/// notes; one that is nearly a missing described one is an error. The diagnostics tell of every fault; a
/// table whose header is not usable, or is that of another table, has no rows.
Table read_table(std::string_view bytes, std::string_view source, std::string_view name, bool takes_notes,
                 std::vector<Diagnostic>& diagnostics);

/// "D7".
std::string sheet_cell(int column, std::int64_t row);

/// What to do about a name that is nearly a known one: what a person typed wrong is not kept as a note.
std::string advice_on_misspelt(const std::vector<std::string>& near);

bool has_errors(const std::vector<Diagnostic>& diagnostics);

}  // namespace witnessmark
