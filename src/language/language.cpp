#include "witnessmark/language/language.h"

#include "language/language_data.h"

namespace witnessmark {

Language::Language(std::unique_ptr<Data> data) : data_(std::move(data)) {}
Language::Language(Language&&) noexcept = default;
Language& Language::operator=(Language&&) noexcept = default;
Language::~Language() = default;

const DateLexicon& Language::dates() const {
  return data_->dates;
}
const Abbreviations& Language::abbreviations() const {
  return data_->abbreviations;
}

Result<Language> Language::load(const FileReader& files, const std::filesystem::path& folder) {
  Result<DateLexicon> dates = DateLexicon::load(files, folder);
  if (!dates) return dates.error();
  Result<Abbreviations> abbreviations = Abbreviations::load(files, folder);
  if (!abbreviations) return abbreviations.error();
  Result<Words> words = load_words(files, folder.string());
  if (!words) return words.error();
  Result<TraitWeights> weights = TraitWeights::load(files, folder, *words);
  if (!weights) return weights.error();
  return Language(
      std::make_unique<Data>(Data{std::move(dates).value(), std::move(abbreviations).value(),
                                  std::move(words).value(), std::move(weights).value()}));
}

}  // namespace witnessmark
