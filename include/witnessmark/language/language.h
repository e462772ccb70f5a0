#pragma once
#include <filesystem>
#include <memory>

#include "witnessmark/base/file_system.h"
#include "witnessmark/base/result.h"
#include "witnessmark/language/date_lexicon.h"
#include "witnessmark/language/sentences.h"

namespace witnessmark {

/// Everything specific to one language, read from shared/language/<code>/ or a user's own folder of the same
/// files: dates, abbreviations, grammar words, cues, verbs, numbers, equal spellings and plural endings.
/// README.md in that folder describes every file and column.
class Language {
 public:
  /// The Error names file, line and column.
  static Result<Language> load(const FileReader& files, const std::filesystem::path& folder);

  Language(Language&&) noexcept;
  Language& operator=(Language&&) noexcept;
  ~Language();

  const DateLexicon& dates() const;
  const Abbreviations& abbreviations() const;

  struct Data;
  const Data& data() const { return *data_; }

 private:
  explicit Language(std::unique_ptr<Data> data);
  std::unique_ptr<Data> data_;
};

}  // namespace witnessmark
