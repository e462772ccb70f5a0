#pragma once
#include "witnessmark/model/claim.h"
#include "witnessmark/model/entry.h"

namespace witnessmark {

/// A claim's statement after its denial is taken into it, where that has a statement of its own.
struct Told {
  Statement statement;
  Reading reading;
  bool denied;  ///< Still to be denied: begins, ends, count, attribute.
};

Told told_by(const Claim& claim);

/// An entry's statement; a count of none is an absence.
Statement stated_by(const Entry& entry);

}  // namespace witnessmark
