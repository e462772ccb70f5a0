#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace witnessmark {

/// What to write in EDTF for a date in words or by habits of notation: "spring 1957" 1957-21, "c. 1957"
/// 1957~, "about May 1957" 1957-05~, "the 1950s", "195-" 195X, "1957-59" 1957/1959, "1957 or 1958"
/// [1957,1958], "between 1957 and 1959" [1957..1959], "before 1957" [..1956], "after 1957" [1958..]. Nothing
/// for anything else: what is not surely meant is not guessed. Four-digit years only.
std::optional<std::string> date_in_words(std::string_view cell);

/// "Sept" 9, "dec" 12; 0 for other words.
int month_named(std::string_view word);

}  // namespace witnessmark
