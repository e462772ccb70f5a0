#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/error.h"

namespace witnessmark {

enum class KeyKind { interview, person, source, entry, stay, event, place, equipment, conclusion, claim };
std::string_view to_string(KeyKind kind);

/// A key that none of the files read defines. It may be in the site file already; if not, `what` is the error
/// to report.
struct UnresolvedKey {
  std::vector<KeyKind> may_be;  ///< Any of these will do.
  std::string key;
  Error what;                          ///< With near matches of the files in its advice.
  std::vector<std::string> near = {};  ///< These: keys of the files that it may have been meant for.
  bool operator==(const UnresolvedKey&) const = default;
};

}  // namespace witnessmark
