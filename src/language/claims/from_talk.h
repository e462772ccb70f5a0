#pragma once
#include <optional>
#include <vector>

#include "language/claims/draft.h"
#include "language/statements/statements.h"

namespace witnessmark::claims {

struct Asked;

/// What talk around a sentence gives its statements where they are silent.
struct TalkBefore {
  const Focus& focus;
  const std::optional<ChosenDate>& served;  ///< The speaker's time of service, for "in my time".
  const std::optional<Edtf>& birth;         ///< The speaker's.
  const Asked& asked;                       ///< The question that is being answered.
};

/// "In my time": from the first day of service to the last. Nothing when no service with both ends is known.
std::optional<ChosenDate> time_of_service(const std::vector<ServicePeriod>& service,
                                          const DatePolicy& policy);

/// Date and place from the talk before.
void carry(const StatementContext& context, const TalkBefore& talk, Draft& draft);

/// Of a date the interviewer gave: the claim is led where that is the fact, put forward of the same thing
/// ("it was sold in 1952?" "It was sold, yes.") or asked for. What happened besides in the flood he asked
/// about is the narrator's to tell.
void credit_date(const Asked& asked, Draft& draft);

/// First-hand where the speaker puts himself in the sentence ("we", "I saw", "they gave me") and nothing says
/// he had it from elsewhere; "I think" and its like do not count.
void settle_basis(const StatementContext& context, Draft& draft);

}  // namespace witnessmark::claims
