#include <fmt/format.h>

#include <algorithm>

#include "language/lexicon_file.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/language/sentences.h"

namespace witnessmark {
namespace {

Result<ClauseWords> load_clause_words(const FileReader& files, const std::filesystem::path& path) {
  const auto file = LexiconFile::load(files, path, {"word", "class"});
  if (!file) return file.error();
  ClauseWords words;
  const std::pair<std::string_view, std::unordered_set<std::string>*> classes[] = {
      {"cut", &words.cuts},   {"opener", &words.openers}, {"subject", &words.subjects},
      {"weak", &words.weak},  {"verb", &words.verbs},     {"closed", &words.closed}};
  for (const LexiconFile::Row& row : file->rows()) {
    const auto known = std::find_if(std::begin(classes), std::end(classes),
                                    [&](const auto& entry) { return entry.first == row[1]; });
    if (known == std::end(classes)) {
      return file->error(row, 1, fmt::format("class \"{}\" is not known", row[1]),
                         "one of cut, opener, subject, weak, verb, closed");
    }
    known->second->insert(fold(row[0]));
  }
  return words;
}

}  // namespace

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
  auto clause_words = load_clause_words(files, folder / "clause-words.csv");
  if (!clause_words) return clause_words.error();
  abbreviations.clause_words = std::move(clause_words).value();
  return abbreviations;
}

}  // namespace witnessmark
