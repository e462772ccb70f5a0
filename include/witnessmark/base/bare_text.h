#pragma once
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// A text as it sounds: letters and numerals, case folded (Unicode Standard, chapter 3.13, simple folding),
/// and symbols such as £ and %. Punctuation, white space and apostrophes of any form are left out, so that
/// two texts that differ in these and in capitals only are the same. Between two numerals one space stands
/// where anything but a comma or an apostrophe kept them apart: "1.5" is not "15", "1,200" is "1200".
struct BareText {
  explicit BareText(std::string_view text);  ///< Valid UTF-8.

  std::u32string letters;
  std::vector<std::int64_t>
      at;  ///< Of each of them its code point in the text; of such a space the one before.

  /// The first letter at or after the code point; the number of letters when there is none.
  std::size_t first_from(CodePoint position) const;
};

}  // namespace witnessmark
