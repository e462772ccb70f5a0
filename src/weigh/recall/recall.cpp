#include "witnessmark/weigh/recall.h"

#include "weigh/told_days.h"
#include "witnessmark/time/relations.h"

namespace witnessmark {
namespace {

std::optional<Period> period_of(const Dated& dated, const DatePolicy& policy) {
  if (!dated.value) return std::nullopt;
  return to_period(*dated.value, policy);
}

}  // namespace

ServiceAnswer in_service(const std::optional<Period>& event, const std::vector<ServicePeriod>& service,
                         const DatePolicy& policy) {
  ServiceAnswer answer;
  if (!event || service.empty()) return answer;
  bool may_touch = false;
  bool surely_touches = false;
  for (const ServicePeriod& stretch : service) {
    const auto served = period_of(stretch.when, policy);
    if (!served) return answer;
    if (within(*event, *served) == Answer::yes) return {Answer::yes, false};
    const Answer touch = overlap(*event, *served);
    may_touch = may_touch || touch != Answer::no;
    surely_touches = surely_touches || touch == Answer::yes;
  }
  if (!may_touch) answer.inside = Answer::no;
  answer.partly = surely_touches;
  return answer;
}

Recall recall_of(const ClaimTime& when, const Interview& interview, const Person& narrator,
                 const DatePolicy& policy) {
  Recall recall;
  const auto event = when.dated.value ? std::optional(named_period(*when.dated.value, policy)) : when.period;
  const auto told = period_of(interview.date, policy);
  const auto born = period_of(narrator.birth, policy);
  if (born && told) recall.age_at_interview = completed_years_between(*born, *told);
  if (born && event) recall.age_at_event = completed_years_between(*born, *event);
  if (event && told) recall.recall_distance = completed_years_between(*event, *told);
  const ServiceAnswer service = in_service(event, narrator.service, policy);
  recall.in_service = service.inside;
  recall.partly_in_service = service.partly;
  return recall;
}

}  // namespace witnessmark
