#include "property.h"

#include <algorithm>
#include <set>
#include <sstream>

#include "witnessmark/base/fold.h"

namespace witnessmark {

Attribute split_attribute(const std::string& text) {
  const auto colon = text.find(':');
  if (colon == std::string::npos) return {"", fold(text)};
  return {fold(text.substr(0, colon)), fold(text.substr(colon + 1))};
}

bool is_change_of_property(Statement statement, const std::string& attribute) {
  return !attribute.empty() && (statement == Statement::begins || statement == Statement::ends);
}

bool says_the_same(const std::string& told, const std::string& stated) {
  const auto words = [](const std::string& text) {
    std::set<std::string> found;
    std::istringstream stream(text);
    for (std::string word; stream >> word;) found.insert(word);
    return found;
  };
  const auto a = words(told);
  const auto b = words(stated);
  return std::includes(a.begin(), a.end(), b.begin(), b.end()) ||
         std::includes(b.begin(), b.end(), a.begin(), a.end());
}

}  // namespace witnessmark
