#pragma once
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <string_view>

namespace witnessmark {

/// Makes another site of a site's files: every proper word of its lists, ports and people is replaced by an invented one
/// wherever it stands, and every year is moved back by 400, one whole cycle of the Gregorian calendar, so that weekdays,
/// leap years and movable feasts stay as they were.
class Renaming {
 public:
  /// `spared` words are those of the language's own data; they keep their meaning.
  Renaming(std::set<std::string> spared, std::uint64_t seed) : spared_(std::move(spared)), state_(seed) {}

  /// Words of a list's names are to be renamed.
  void add_names(std::string_view text);

  std::string apply(std::string_view text) const;

  /// Words, in lower case.
  static std::set<std::string> words_of(std::string_view text);

 private:
  std::string invent();
  std::string renamed(const std::string& word) const;

  std::set<std::string> spared_;
  std::uint64_t state_;
  std::map<std::string, std::string> names_;
};

}  // namespace witnessmark
