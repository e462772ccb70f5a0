#include "property.h"

#include <algorithm>
#include <sstream>

#include "witnessmark/base/fold.h"

namespace witnessmark {

namespace {

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  std::istringstream stream(text);
  for (std::string word; stream >> word;) words.push_back(word);
  std::sort(words.begin(), words.end());
  words.erase(std::unique(words.begin(), words.end()), words.end());
  return words;
}

bool one_holds_the_other(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  return std::includes(a.begin(), a.end(), b.begin(), b.end()) ||
         std::includes(b.begin(), b.end(), a.begin(), a.end());
}

}  // namespace

Attribute split_attribute(const std::string& text) {
  const auto colon = text.find(':');
  Attribute made;
  if (colon != std::string::npos) made.name = fold(text.substr(0, colon));
  made.value = fold(colon == std::string::npos ? text : text.substr(colon + 1));
  made.words = words_of(made.value);
  made.only_told = made.name == kAttributeIs || made.name == kAttributeAsTold;
  return made;
}

bool is_change_of_property(Statement statement, const std::string& attribute) {
  return !attribute.empty() && is_change(statement);
}

bool says_the_same(const Attribute& told, const Attribute& stated) {
  return one_holds_the_other(told.words, stated.words);
}

bool says_the_same(const std::string& told, const std::string& stated) {
  return one_holds_the_other(words_of(told), words_of(stated));
}

}  // namespace witnessmark
