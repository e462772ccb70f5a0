#pragma once
#include <filesystem>
#include <memory>

#include "witnessmark/base/file_system.h"
#include "witnessmark/base/result.h"

namespace witnessmark {

/// The words of dates in one language, read from shared/language/<code>/: months, weekdays, number words, seasons, named
/// days, modifiers, units, service words. The grammar is code, the words are data; each file documents its columns.
class DateLexicon {
 public:
  /// Reads the folder's date files. The Error names file, line and column.
  static Result<DateLexicon> load(const FileReader& files, const std::filesystem::path& folder);

  DateLexicon(DateLexicon&&) noexcept;
  DateLexicon& operator=(DateLexicon&&) noexcept;
  ~DateLexicon();

  struct Data;
  const Data& data() const { return *data_; }

 private:
  explicit DateLexicon(std::unique_ptr<Data> data);
  std::unique_ptr<Data> data_;
};

}  // namespace witnessmark
