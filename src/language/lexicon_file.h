#pragma once
#include <filesystem>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/csv.h"
#include "witnessmark/base/file_system.h"

namespace witnessmark {

/// A CSV file of a language folder with the columns asked for, in that order.
class LexiconFile {
 public:
  struct Row {
    std::vector<CsvCell> cells;  ///< As many as columns were asked for; trimmed.
    std::int64_t line = 0;
    const std::string& operator[](std::size_t i) const { return cells[i].text; }
  };

  static Result<LexiconFile> load(const FileReader& files, const std::filesystem::path& path,
                                  std::initializer_list<std::string_view> columns);

  const std::vector<Row>& rows() const { return rows_; }
  Error error(const Row& row, std::size_t column, std::string message, std::string advice) const;

 private:
  std::string source_;
  std::vector<Row> rows_;
};

}  // namespace witnessmark
