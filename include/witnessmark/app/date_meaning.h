#pragma once
#include <string>
#include <string_view>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/language/date_expression.h"
#include "witnessmark/language/date_lexicon.h"

namespace witnessmark {

/// The date policy of the shared folder.
Result<DatePolicy> load_date_policy(const Surroundings& surroundings);

/// Two-digit years belong to the century that the speaker's working life most likely lay in: that of the year fifty years
/// before the interview. Without an interview date the default.
CenturyPolicy century_before(const std::optional<Edtf>& interview, const DatePolicy& policy);

/// What an EDTF expression means, for people: canonical text, level, earliest and latest day, in words. The
/// source of an Error is the expression.
struct EdtfMeaning {
  std::string canonical;
  int level = 0;
  Period period;
  std::string words;                ///< The period and what the marks say: "1957, uncertain".
  std::vector<Period> candidates;   ///< When it stands for several, up to 400.
  bool too_many_candidates = false;
};
Result<EdtfMeaning> edtf_meaning(std::string_view expression, const DatePolicy& policy);

}  // namespace witnessmark
