#include "witnessmark/app/claim_words.h"

#include <doctest/doctest.h>

using namespace witnessmark;

TEST_CASE("recall is said in years, and never in years below zero") {
  Recall recall;
  recall.recall_distance = YearRange{46, 47};
  recall.age_at_event = YearRange{18, 19};
  CHECK(recall_words(recall) == "told 46 to 47 years after, aged 18 to 19 then");
  recall.recall_distance = YearRange{-80, -80};
  CHECK(recall_words(recall) ==
        "told after an unstated time (it is dated after the interview), aged 18 to 19 then");
  recall.recall_distance = YearRange{-1, -1};
  recall.age_at_event = YearRange{-3, -2};
  CHECK(recall_words(recall) ==
        "told after an unstated time (it is dated after the interview), not born then");
}
