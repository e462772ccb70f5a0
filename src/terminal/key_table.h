#pragma once
#include <string_view>
#include <vector>

#include "witnessmark/terminal/state.h"

namespace witnessmark {

/// A key of a screen, and what it does there. The same table makes the screen of keys, the line at the foot
/// and the words of the line mode.
struct KeyHelp {
  std::string_view key;    ///< As parse_key reads it; several are divided by blanks.
  std::string_view brief;  ///< Of a word or two, for the foot; empty when it is not shown there.
  std::string_view words;  ///< A sentence.
  bool decides = false;    ///< Not there when the file is only read.
};

/// The keys of a screen, most used first, then those of all screens.
std::vector<KeyHelp> keys_of(const State& state);

/// The name of a screen: "Interviews", "Claim".
std::string_view name_of(const Place& place);

}  // namespace witnessmark
