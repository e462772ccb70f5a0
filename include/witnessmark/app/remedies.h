#pragma once
#include <string>
#include <vector>

#include "witnessmark/weigh/contradictions.h"

namespace witnessmark {

/// "e-077"; "claim 9d147ce7", the beginning of its id.
std::string short_key(const StatementKey& key);

/// "a, b or c"; `last` is the word before the last one.
std::string joined(const std::vector<std::string>& words, std::string_view last);

/// A way out of a dispute, in words.
struct Remedy {
  std::string heading;  ///< "misdating"; empty when it goes on with the one before.
  std::string words;    ///< "e-077 and e-079: if dated 76 days or more later".
};

/// What would resolve a dispute, in the order it should be thought of; statements of which the same is to be
/// said in one line.
std::vector<Remedy> remedies(const Resolution& resolution);

}  // namespace witnessmark
