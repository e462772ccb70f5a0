#pragma once
#include <optional>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/time/date_policy.h"

namespace witnessmark {

/// Age at the interview and at the event, recall distance, and whether the event falls in the narrator's service
/// periods. Facts to be shown beside a claim: nothing is corrected or scored by them (Burt, Kemp and Conway 2001 found
/// the direction of dating errors to depend on too much for that).
/// Of a time open to one side ("by the autumn of 1962") the date named counts.
Recall recall_of(const ClaimTime& event, const Interview& interview, const Person& narrator, const DatePolicy& policy);

/// Was a day of the event inside one of the periods? yes: all of it surely; no: surely none; else cannot tell.
struct ServiceAnswer {
  Answer inside = Answer::cannot_tell;
  bool partly = false;   ///< Surely some days inside and some outside.
};
ServiceAnswer in_service(const std::optional<Period>& event, const std::vector<ServicePeriod>& service,
                         const DatePolicy& policy);

}  // namespace witnessmark
