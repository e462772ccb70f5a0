#include <fmt/format.h>

#include <algorithm>

#include "language/lexicon_file.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/language/sentences.h"

namespace witnessmark {

Result<Abbreviations> Abbreviations::load(const FileReader& files, const std::filesystem::path& folder) {
  Abbreviations abbreviations;
  const auto file = LexiconFile::load(files, folder / "abbreviations.csv", {"abbreviation", "class"});
  if (!file) return file.error();
  for (const LexiconFile::Row& row : file->rows()) {
    const std::string word = fold(row[0]);
    if (word.empty() || word.back() == '.') {
      return file->error(row, 0, "an abbreviation is wanted without its full stop", "write Mr, not Mr.");
    }
    if (row[1] == "never") {
      abbreviations.never_end.insert(word);
    } else if (row[1] == "before_number") {
      abbreviations.before_number.insert(word);
    } else if (row[1] == "before_lower") {
      abbreviations.before_lower.insert(word);
    } else if (row[1] == "initial") {
      abbreviations.initials.insert(word);
    } else {
      return file->error(row, 1, fmt::format("class \"{}\" is not known", row[1]),
                         "one of never, before_number, before_lower, initial");
    }
  }
  const auto clauses = LexiconFile::load(files, folder / "clause-words.csv", {"word"});
  if (!clauses) return clauses.error();
  for (const LexiconFile::Row& row : clauses->rows()) abbreviations.clause_words.push_back(fold(row[0]));
  std::stable_sort(abbreviations.clause_words.begin(), abbreviations.clause_words.end(),
                   [](const std::string& a, const std::string& b) { return a.size() > b.size(); });
  return abbreviations;
}

}  // namespace witnessmark
