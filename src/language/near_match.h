#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "language/term_index.h"

namespace witnessmark {

/// Shorter words have too many honest neighbours.
inline constexpr std::size_t kLeastNearWord = 5;
/// A name of one word must be this long to be matched by a misspelling on its own.
inline constexpr std::size_t kLeastNearName = 7;

/// Hashes of the word with each one letter left out, and of the whole word.
class Remainders {
 public:
  explicit Remainders(std::string_view word);
  const std::uint64_t* begin() const { return hashes_; }
  const std::uint64_t* end() const { return hashes_ + count_; }

 private:
  static constexpr std::size_t kLongest = 63;  ///< Of longer words only the whole.
  std::uint64_t hashes_[kLongest + 1];
  std::size_t count_ = 0;
};

/// Whether one letter left out, added, changed or exchanged with its neighbour makes a into b.
bool one_letter_off(std::string_view a, std::string_view b);

/// A name at token i that a misspelling of one letter hides; best is set when there is one.
void match_near(const TermFinder::Index& index, std::string_view text, const std::vector<Token>& tokens,
                std::uint32_t i, NearMemory* memory, TokenMention& best);

/// A name written as one word in the list and as two in the text.
void match_joined(const TermFinder::Index& index, std::string_view text, const std::vector<Token>& tokens,
                  std::uint32_t i, TokenMention& best);

}  // namespace witnessmark
