#pragma once
#include <string>
#include <vector>

#include "witnessmark/model/statement.h"

namespace witnessmark {

/// "colour: buff" in its two parts, folded; a text without colon is all value.
struct Attribute {
  std::string name, value;
  std::vector<std::string> words;  ///< Of the value, sorted, each once.
  bool only_told = false;          ///< Words the narrator described it in: another description stands beside them.
};
Attribute split_attribute(const std::string& text);

/// Painted so, painted over: a property came or went, and not the thing.
bool is_change_of_property(Statement statement, const std::string& attribute);

/// "red" and "red with white band" may be one colour described more and less fully.
bool says_the_same(const Attribute& told, const Attribute& stated);
bool says_the_same(const std::string& told, const std::string& stated);

}  // namespace witnessmark
