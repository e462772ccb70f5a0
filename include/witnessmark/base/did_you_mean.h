#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace witnessmark {

/// Edits (insert, delete, change, exchange of neighbours) that make one text of the other, in code units,
/// counted up to limit; limit + 1 when there are more (optimal string alignment distance; Damerau 1964 lists
/// the four).
std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit);

/// The candidates nearest to the text, at most `most`, nearest first and in their order: one edit off for up
/// to four letters, two up to eight, else three. Compared folded.
std::vector<std::string> near_matches(std::string_view text, const std::vector<std::string>& candidates,
                                      std::size_t most = 3);

/// "did you mean a, b or c?"; empty without candidates.
std::string did_you_mean(const std::vector<std::string>& near);

/// "a, b or c".
std::string one_of_words(const std::vector<std::string>& words);

}  // namespace witnessmark
