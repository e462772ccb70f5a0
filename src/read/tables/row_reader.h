#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "read/tables/table.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/model/authority_list.h"
#include "witnessmark/model/dated.h"

namespace witnessmark {

/// Reads the cells of one row by the kind their column is described as. A faulty cell leaves an error and an
/// empty value; ok() says whether there was none. Asking for a cell twice reports its fault twice.
class RowReader {
 public:
  RowReader(const Table& table, const TableRow& row, std::vector<Diagnostic>& diagnostics);

  bool ok() const { return ok_; }
  std::int64_t line() const { return row_.line; }
  const std::string& source() const { return table_.source; }
  const Table& table() const { return table_; }
  const TableRow& row() const { return row_; }
  bool has(std::string_view column) const { return !cell(column).text.empty(); }

  std::string text(std::string_view column);
  std::string key(std::string_view column);
  std::vector<std::string> keys(std::string_view column);   ///< Separated by |, without repetitions.
  std::vector<std::string> texts(std::string_view column);  ///< Separated by |.
  Dated dated(std::string_view column);                     ///< `written` is the cell.
  std::vector<FormerName> former_names(std::string_view column);
  std::optional<std::int64_t> number(std::string_view column);
  std::optional<Millisecond> duration(std::string_view column);
  std::string choice(std::string_view column);  ///< One of the column's values, or empty.

  /// The text with the columns that are not described.
  std::string with_extra(std::string text) const;

  void fail(std::string_view column, std::string message, std::string advice);
  void warn(std::string_view column, std::string message, std::string advice);
  /// An error at the cell; the message follows the cell's text and place.
  Error error_at(std::string_view column, std::string_view text, std::string_view message,
                 std::string advice) const;
  /// Where a cell stands, for what is found wrong with it later: the message names the text and the cell
  /// only.
  Error at(std::string_view column) const;

 private:
  const TableCell& cell(std::string_view column) const { return row_.cells[table_.column(column)]; }
  /// The cell's text once what no cell may hold is ruled out.
  std::string_view checked(std::string_view column);
  std::string place(std::string_view column) const;
  std::optional<Edtf> edtf(std::string_view column, std::string_view text);
  void fail_text(std::string_view column, std::string_view text, std::string_view message,
                 std::string advice);
  bool is_key(std::string_view column, std::string_view text);

  const Table& table_;
  const TableRow& row_;
  std::vector<Diagnostic>& diagnostics_;
  bool ok_ = true;
};

}  // namespace witnessmark
