#pragma once
#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/interview.h"

namespace witnessmark {

/// What stands in words that are handed on for a person's name that may not be shown.
inline constexpr std::string_view kNameWithheld = "[name withheld]";

/// Names of persons whose release asks for a pseudonym, found in the words of whoever says them: the whole
/// name, the surname, and each other name that is more than an initial. A name has a capital, or stands
/// behind a title ("mr"); where a text has no capitals at all, as captions made by machine, and in keys and
/// file names, any spelling counts.
class WithheldNames {
 public:
  enum class Capitals { needed, not_needed };

  void add(const Person& person);

  /// The text without the names of those persons but `named_here`, and how many places were taken out. Words
  /// and spaces around them stay.
  struct Text {
    std::string text;
    std::int64_t names = 0;
  };
  Text without(std::string_view text, const std::set<std::string, std::less<>>& named_here,
               Capitals capitals = Capitals::needed) const;

 private:
  struct Name {
    std::string person;
    std::vector<std::string> words;  ///< Folded.
    bool whole = false;              ///< All of the person's name.
  };
  std::vector<Name> names_;  ///< Those of more words first.
};

/// Whether talk is written with capitals: captions made by machine may have none.
WithheldNames::Capitals capitals_of(std::string_view text);

}  // namespace witnessmark
