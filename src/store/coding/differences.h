#pragma once
#include "store/coding/acts.h"

namespace witnessmark {

/// Marks what two copies decided differently on the target of a settling event as settled by it, or as open
/// again.
void note_settled(StoreConnection& connection, const OwnEvent& settling, bool settled);

}  // namespace witnessmark
