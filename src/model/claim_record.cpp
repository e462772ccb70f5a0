#include "witnessmark/model/claim_record.h"

#include <fmt/format.h>

namespace witnessmark {

std::string speaker_words(const QuoteRecord& quote) {
  if (quote.role == SpeakerRole::narrator) return quote.speaker;
  if (quote.role == SpeakerRole::unknown) return quote.speaker.empty() ? "another speaker" : quote.speaker;
  const std::string_view role = to_string(quote.role);
  return quote.speaker.empty() ? std::string(role) : fmt::format("{}, {}", quote.speaker, role);
}

std::string own_words(const ClaimRecord& record) {
  std::string words;
  for (const QuoteRecord& quote : record.quotes)
    if (quote.own) words += (words.empty() ? "" : " … ") + quote.text;
  return words;
}

std::string words_of_others(const ClaimRecord& record) {
  std::string words;
  for (const QuoteRecord& quote : record.quotes)
    if (!quote.own)
      words += fmt::format("{}{}: “{}”", words.empty() ? "" : " | ", speaker_words(quote), quote.text);
  return words;
}

}  // namespace witnessmark
