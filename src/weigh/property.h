#pragma once
#include <string>

namespace witnessmark {

/// "colour: buff" in its two parts, folded; a text without colon is all value.
struct Attribute {
  std::string name, value;
};
Attribute split_attribute(const std::string& text);

/// "red" and "red with white band" may be one colour described more and less fully.
bool says_the_same(const std::string& told, const std::string& stated);

}  // namespace witnessmark
