#pragma once
#include <cstddef>
#include <string_view>
#include <vector>

#include "witnessmark/language/sentences.h"

namespace witnessmark {

/// What divides words.
constexpr bool is_space(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

/// Where a stretch without full stops may be cut.
struct ClauseStart {
  std::size_t at = 0;    ///< Byte offset in the text.
  bool clause = false;   ///< A subject with its verb begins; else only a word that may join clauses.
};

/// The places in [begin, end) of a text where a clause can begin, in order. Reads word by word, so that time grows linearly.
std::vector<ClauseStart> clause_starts(std::string_view text, std::size_t begin, std::size_t end, const ClauseWords& words);

}  // namespace witnessmark
