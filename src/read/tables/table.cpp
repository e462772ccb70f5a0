#include "read/tables/table.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "witnessmark/base/did_you_mean.h"
#include "witnessmark/base/csv.h"
#include "witnessmark/base/decode.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// "When written" and "when-written" are when_written.
std::string column_name(std::string_view header) {
  std::string name = fold(header);
  std::replace_if(
      name.begin(), name.end(), [](char c) { return c == ' ' || c == '-'; }, '_');
  return name;
}

std::int64_t line_breaks(std::string_view text) {
  return std::count(text.begin(), text.end(), '\n');
}

class TableReader {
 public:
  TableReader(std::string_view source, std::string_view name, bool takes_notes,
              std::vector<Diagnostic>& diagnostics)
      : takes_notes_(takes_notes), diagnostics_(diagnostics) {
    table_.name = name;
    table_.source = source;
    table_.columns = column_descriptions(name);
    table_.sheet_columns.assign(table_.columns.size(), -1);
  }

  Table read(std::string_view bytes) {
    auto decoded = decode_text(bytes, table_.source);
    if (!decoded) return fail(decoded.error());
    if (decoded->assumed) {
      report(Diagnostic::Severity::note, 0, 0, "encoding: " + decoded->remark,
             "save the file as UTF-8 if letters come out wrong");
    }
    auto file = parse_csv(decoded->text, table_.source);
    if (!file) return fail(file.error());
    if (!read_header(file->rows.front())) return std::move(table_);
    std::int64_t breaks_inside = breaks_in(file->rows.front());
    table_.rows.reserve(file->rows.size() - 1);
    for (std::size_t i = 1; i < file->rows.size(); ++i) {
      read_row(file->rows[i], file->rows[i].line - breaks_inside);
      breaks_inside += breaks_in(file->rows[i]);
    }
    return std::move(table_);
  }

 private:
  Table fail(const Error& error) {
    diagnostics_.push_back({Diagnostic::Severity::error, error});
    return std::move(table_);
  }

  static std::int64_t breaks_in(const CsvRow& row) {
    std::int64_t count = 0;
    for (const CsvCell& cell : row.cells) count += line_breaks(cell.text);
    return count;
  }

  void report(Diagnostic::Severity severity, std::int64_t line, std::int64_t column, std::string message,
              std::string advice) {
    diagnostics_.push_back({severity, {table_.source, line, column, std::move(message), std::move(advice)}});
  }

  std::vector<std::string> names_not_in_file() const {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      if (table_.sheet_columns[i] < 0) names.push_back(table_.columns[i].name);
    }
    return names;
  }

  bool read_header(const CsvRow& header) {
    const std::size_t faults = count_errors();
    columns_.assign(header.cells.size(), kUnknown);
    header_.clear();
    for (std::size_t i = 0; i < header.cells.size(); ++i) {
      header_.emplace_back(trim(header.cells[i].text));
      place_column(i, header.cells[i]);
    }
    const std::vector<std::string> missing = names_not_in_file();
    for (std::size_t i = 0; i < header.cells.size(); ++i) {
      if (columns_[i] == kUnknown) report_unknown(i, header.cells[i], missing);
    }
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      if (table_.columns[i].required && table_.sheet_columns[i] < 0)
        report_missing(table_.columns[i], header.line);
    }
    return count_errors() == faults;
  }

  std::size_t count_errors() const {
    return static_cast<std::size_t>(
        std::count_if(diagnostics_.begin(), diagnostics_.end(),
                      [](const Diagnostic& d) { return d.severity == Diagnostic::Severity::error; }));
  }

  void place_column(std::size_t i, const CsvCell& cell) {
    const std::string name = column_name(cell.text);
    const auto found = std::find_if(table_.columns.begin(), table_.columns.end(),
                                    [&](const ColumnDescription& column) { return column.name == name; });
    if (found == table_.columns.end()) return;
    const auto at = static_cast<std::size_t>(found - table_.columns.begin());
    columns_[i] = static_cast<int>(at);
    if (table_.sheet_columns[at] >= 0) {
      report(Diagnostic::Severity::error, cell.line, cell.column,
             fmt::format("the column {} stands twice", found->name), "rename or take out one of them");
    }
    table_.sheet_columns[at] = static_cast<int>(i);
  }

  void report_unknown(std::size_t i, const CsvCell& cell, const std::vector<std::string>& missing) {
    if (header_[i].empty()) return;  // told of when a row fills it
    const auto near = near_matches(column_name(cell.text), missing, 1);
    const std::string kept =
        takes_notes_ ? "is not known and is kept in the notes" : "is not known and is left out";
    report(near.empty() && takes_notes_ ? Diagnostic::Severity::note : Diagnostic::Severity::warning,
           cell.line, cell.column, fmt::format("the column \"{}\" {}", header_[i], kept), did_you_mean(near));
  }

  void report_missing(const ColumnDescription& column, std::int64_t line) {
    std::vector<std::string> unknown;
    for (std::size_t i = 0; i < header_.size(); ++i) {
      if (columns_[i] == kUnknown && !header_[i].empty()) unknown.push_back(header_[i]);
    }
    const auto near = near_matches(column.name, unknown, 1);
    report(Diagnostic::Severity::error, line, 0, fmt::format("the column {} is missing", column.name),
           near.empty()
               ? fmt::format("the first line names the columns; {} holds: {}", column.name, column.meaning)
               : fmt::format("rename the column {}, if that is it", near.front()));
  }

  void read_row(const CsvRow& row, std::int64_t sheet_row) {
    TableRow out;
    out.line = row.line;
    out.sheet_row = sheet_row;
    out.cells.resize(table_.columns.size());
    for (TableCell& cell : out.cells) cell.line = row.line;
    if (row.cells.size() > header_.size() && !check_surplus(row)) return;
    if (row.cells.size() < header_.size()) {
      report(Diagnostic::Severity::note, row.line, 0,
             fmt::format("the row has {} of the header's {} cells; the rest are taken as empty",
                         row.cells.size(), header_.size()),
             "");
    }
    for (std::size_t i = 0; i < std::min(row.cells.size(), header_.size()); ++i) {
      const CsvCell& cell = row.cells[i];
      const std::string_view text = trim(cell.text);
      if (columns_[i] >= 0) {
        out.cells[static_cast<std::size_t>(columns_[i])] = {std::string(text), cell.line, cell.column};
      } else if (!text.empty()) {
        add_extra(out, header_[i].empty() ? fmt::format("column {}", i + 1) : header_[i], text);
      }
    }
    table_.rows.push_back(std::move(out));
  }

  /// Whether all cells past the header are empty.
  bool check_surplus(const CsvRow& row) {
    for (std::size_t i = header_.size(); i < row.cells.size(); ++i) {
      if (trim(row.cells[i].text).empty()) continue;
      report(Diagnostic::Severity::error, row.cells[i].line, row.cells[i].column,
             fmt::format("the row has {} cells, the header {}", row.cells.size(), header_.size()),
             "put a cell that holds the separator in quotation marks");
      return false;
    }
    return true;
  }

  static void add_extra(TableRow& row, std::string_view name, std::string_view text) {
    if (!row.extra.empty()) row.extra += "; ";
    row.extra.append(name).append(": ").append(text);
  }

  static constexpr int kUnknown = -1;
  bool takes_notes_;
  std::vector<Diagnostic>& diagnostics_;
  Table table_;
  std::vector<std::string> header_;
  std::vector<int> columns_;  // for each of the file's columns its index in the description
};

}  // namespace

std::size_t Table::column(std::string_view column_name) const {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (columns[i].name == column_name) return i;
  }
  throw std::logic_error("schemas/csv/" + name + ".csv describes no column " + std::string(column_name));
}

Table read_table(std::string_view bytes, std::string_view source, std::string_view name, bool takes_notes,
                 std::vector<Diagnostic>& diagnostics) {
  return TableReader(source, name, takes_notes, diagnostics).read(bytes);
}

std::string sheet_cell(int column, std::int64_t row) {
  std::string letters;
  for (int n = column + 1; n > 0; n = (n - 1) / 26)
    letters.insert(letters.begin(), static_cast<char>('A' + (n - 1) % 26));
  return letters + std::to_string(row);
}

bool has_errors(const std::vector<Diagnostic>& diagnostics) {
  return std::any_of(diagnostics.begin(), diagnostics.end(),
                     [](const Diagnostic& d) { return d.severity == Diagnostic::Severity::error; });
}

}  // namespace witnessmark
