#pragma once
#include <map>
#include <string>

#include "witnessmark/weigh/fixture_statement.h"

namespace witnessmark {

/// A statement as it is shown, made only of what may go out.
struct StatementLine {
  StatementKey key;  ///< To turn to the entry, the stay or the claim.
  Footing footing = Footing::evidence;
  std::string source;  ///< Key of the source or the interview.
  std::string
      by;  ///< "Photograph, “Fast in the ice” (ph-21)"; "Lowen Castray (lc-2001, 2001-05-04, at 0:12:05)".
  std::string says;     ///< "Arc searchlight (Wheelhouse top) there, 14 February 1963".
  std::string quote;    ///< Claims: the narrator's words.
  std::string others;   ///< Claims: what was asked, with who asked; may be empty.
  std::string telling;  ///< Claims: "told (Colley), hedged; 38 years after".
};
using StatementLines = std::map<StatementKey, StatementLine>;

}  // namespace witnessmark
