#pragma once
#include <string>
#include <vector>

#include "app/weighing/heard_evidence.h"
#include "witnessmark/app/corroboration.h"

namespace witnessmark {

/// Puts questions, voices and links into words, names as the releases allow.
class QuestionWords {
 public:
  explicit QuestionWords(HeardEvidence& heard) : heard_(heard) {}

  ShownQuestion shown(Corroboration answer);
  ShownVoice shown(const Voice& voice);

 private:
  std::string entry_words(const Voice& voice, ShownVoice& made) const;
  std::vector<std::string> link_words(const Corroboration& answer, const LineageGroup& group) const;
  std::string name_of(const Origin& origin, const std::string& interview) const;

  HeardEvidence& heard_;
};

/// "not: Fog bell (Forecastle deck) taken away, summer 1958".
std::string question_words(const Claim& claim, const HeardEvidence& heard);
std::string question_words(const Corroboration& answer, const HeardEvidence& heard);

/// "Deck log, 1962 to 1963, p. 121", the source's key when it has no title.
std::string source_words(const Source* source, const std::string& key, const std::string& locator);

}  // namespace witnessmark
