#include "read/tables/table.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
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

/// How many of the header's names the table describes.
std::size_t count_described(const std::vector<ColumnDescription>& columns,
                            const std::vector<std::string>& header) {
  return static_cast<std::size_t>(
      std::count_if(columns.begin(), columns.end(), [&](const ColumnDescription& column) {
        return std::find(header.begin(), header.end(), column.name) != header.end();
      }));
}

/// Another table whose columns these are: it describes more of them, lacks none that it requires, and its
/// key stands first or `named` lacks a column it requires. Of several the one that describes most.
std::optional<std::string> table_meant(const std::vector<std::string>& header, std::string_view named,
                                       const std::vector<ColumnDescription>& columns) {
  const auto has = [&](const ColumnDescription& column) {
    return !column.required || std::find(header.begin(), header.end(), column.name) != header.end();
  };
  const bool complete = std::all_of(columns.begin(), columns.end(), has);
  std::size_t most = count_described(columns, header);
  std::optional<std::string> meant;
  for (const std::string& name : table_names()) {
    if (name == named) continue;
    const auto others = column_descriptions(name);
    const std::size_t described = count_described(others, header);
    if (described <= most || !std::all_of(others.begin(), others.end(), has)) continue;
    if (complete && others.front().name != header.front()) continue;
    most = described;
    meant = name;
  }
  return meant;
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

  /// Whether the rows can be read. A column that is nearly a known one is an error, and is then read as that
  /// one, so that nothing else is told of because of it.
  bool read_header(const CsvRow& header) {
    columns_.assign(header.cells.size(), kUnknown);
    header_.clear();
    std::vector<std::string> names;
    for (const CsvCell& cell : header.cells) {
      header_.emplace_back(trim(cell.text));
      names.push_back(column_name(cell.text));
    }
    if (const auto meant = table_meant(names, table_.name, table_.columns)) {
      report(Diagnostic::Severity::error, header.line, 1,
             fmt::format("the columns are those of the table {}, not of {}", *meant, table_.name),
             fmt::format("take it in as {}; the table {} is wanted here", *meant, table_.name));
      return false;
    }
    const std::size_t faults = count_errors();
    for (std::size_t i = 0; i < names.size(); ++i) place_column(i, header.cells[i], names[i]);
    const bool repeated = count_errors() != faults;
    for (std::size_t i = 0; i < names.size(); ++i) {
      if (columns_[i] == kUnknown && !names[i].empty()) take_unknown(i, header.cells[i], names[i]);
    }
    bool complete = true;
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      if (!table_.columns[i].required || table_.sheet_columns[i] >= 0) continue;
      report_missing(table_.columns[i], header.line);
      complete = false;
    }
    return complete && !repeated;
  }

  std::size_t count_errors() const {
    return static_cast<std::size_t>(
        std::count_if(diagnostics_.begin(), diagnostics_.end(),
                      [](const Diagnostic& d) { return d.severity == Diagnostic::Severity::error; }));
  }

  std::size_t described(std::string_view name) const {
    const auto found = std::find_if(table_.columns.begin(), table_.columns.end(),
                                    [&](const ColumnDescription& column) { return column.name == name; });
    return static_cast<std::size_t>(found - table_.columns.begin());
  }

  void use_as(std::size_t i, std::size_t at) {
    columns_[i] = static_cast<int>(at);
    table_.sheet_columns[at] = static_cast<int>(i);
  }

  void place_column(std::size_t i, const CsvCell& cell, const std::string& name) {
    const std::size_t at = described(name);
    if (at == table_.columns.size()) return;
    if (table_.sheet_columns[at] >= 0) {
      report(Diagnostic::Severity::error, cell.line, cell.column,
             fmt::format("the column {} stands twice", name), "rename or take out one of them");
    }
    use_as(i, at);
  }

  void take_unknown(std::size_t i, const CsvCell& cell, const std::string& name) {
    const auto near = near_matches(name, names_not_in_file(), 1);
    if (!near.empty()) {
      report(Diagnostic::Severity::error, cell.line, cell.column,
             fmt::format("the column \"{}\" is not known", header_[i]), advice_on_misspelt(near));
      use_as(i, described(near.front()));
      return;
    }
    report(
        takes_notes_ ? Diagnostic::Severity::note : Diagnostic::Severity::warning, cell.line, cell.column,
        fmt::format("the column \"{}\" {}", header_[i],
                    takes_notes_ ? "is not known and is kept in the notes" : "is not known and is left out"),
        "");
  }

  void report_missing(const ColumnDescription& column, std::int64_t line) {
    report(Diagnostic::Severity::error, line, 0, fmt::format("the column {} is missing", column.name),
           fmt::format("the first line names the columns; {} holds: {}", column.name, column.meaning));
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

std::string advice_on_misspelt(const std::vector<std::string>& near) {
  return did_you_mean(near) + " If it is one of your own, give it a name less like it";
}

bool has_errors(const std::vector<Diagnostic>& diagnostics) {
  return std::any_of(diagnostics.begin(), diagnostics.end(),
                     [](const Diagnostic& d) { return d.severity == Diagnostic::Severity::error; });
}

}  // namespace witnessmark
