#pragma once
#include "witnessmark/model/comparison.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

/// What a stay says of a claim that somebody was at a place within a time: `here`, the stay was at that place; `own_stay`, it
/// was that party's. Silent where it says nothing of that time.
Outcome beside_stay(bool here, bool own_stay, bool denied, const Period& told, const Period& stayed);

}  // namespace witnessmark
