#pragma once
#include <filesystem>
#include <optional>
#include <string_view>
#include <vector>

#include "read/tables/row_reader.h"
#include "read/tables/table.h"

namespace witnessmark {

/// Reads the tables of a folder one after another, noting which files were there.
class TableFiles {
 public:
  TableFiles(const FileReader& files, std::vector<Diagnostic>& diagnostics,
             std::vector<std::filesystem::path>& files_read)
      : files_(files), diagnostics_(diagnostics), files_read_(files_read) {}

  /// The main file, which must be there.
  Table read(const std::filesystem::path& path, std::string_view name, bool takes_notes);

  /// A file beside `main`, named after the table, which may be missing; or the one given, which must be
  /// there.
  Table read_beside(const std::filesystem::path& main, const std::optional<std::filesystem::path>& given,
                    std::string_view name, bool takes_notes);

 private:
  const FileReader& files_;
  std::vector<Diagnostic>& diagnostics_;
  std::vector<std::filesystem::path>& files_read_;
};

/// Calls read(RowReader&) for each row.
template <typename ReadRow>
void for_each_row(const Table& table, std::vector<Diagnostic>& diagnostics, ReadRow read) {
  for (const TableRow& row : table.rows) {
    RowReader reader(table, row, diagnostics);
    read(reader);
  }
}

}  // namespace witnessmark
