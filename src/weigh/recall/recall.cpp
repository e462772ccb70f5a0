#include "witnessmark/weigh/recall.h"

#include "weigh/comparing/told_days.h"
#include "witnessmark/time/relations.h"

namespace witnessmark {
namespace {

std::optional<Period> period_of(const Dated& dated, const DatePolicy& policy) {
  if (!dated.value) return std::nullopt;
  return to_period(*dated.value, policy);
}

/// Service books give months: a period of service whose ends are known to the month is taken as whole months
/// (common practice, no source). Ends known less closely stay open.
Period in_whole_months(Period served) {
  constexpr std::int64_t kMonth = 31;
  Boundary& begin = served.begin;
  Boundary& end = served.end;
  if (begin.earliest && begin.latest && *begin.latest - *begin.earliest <= kMonth)
    begin.latest = begin.earliest;
  if (end.earliest && end.latest && *end.latest - *end.earliest <= kMonth) end.earliest = end.latest;
  return served;
}

/// The age a date was reckoned from ("when I was nineteen") is the age at the event, however widely birth and
/// date are known: the earliest day of the one belongs to the earliest of the other, and the latest to the
/// latest. Where the birth is not known to the day, years were reckoned, up to that in which the next age
/// began.
std::optional<YearRange> age_told(const ClaimTime& when, const std::optional<Period>& event,
                                  const std::optional<Period>& born) {
  constexpr std::string_view kReckonedFromBirth = "birth ";
  if (!event || !born || !when.anchor.starts_with(kReckonedFromBirth)) return std::nullopt;
  const auto first = event->earliest(), past = event->past_latest();
  const auto born_first = born->earliest(), born_past = born->past_latest();
  if (!first || !past || !born_first || !born_past) return std::nullopt;
  const Day born_last = *born_past - 1, last = *past - 1;
  const auto day = [](Day one) { return exact_period(one, one + 1); };
  const auto year = [](Day one) { return to_civil(one).year; };
  YearRange told{year(*first) - year(*born_first), year(last) - year(born_last) - 1};
  if (*born_first == born_last) {
    const auto youngest = completed_years_between(day(*born_first), day(*first));
    const auto oldest = completed_years_between(day(born_last), day(last));
    if (!youngest || !oldest) return std::nullopt;
    told = {youngest->least, oldest->most};
  }
  return told.least <= told.most ? std::optional(told) : std::nullopt;
}

}  // namespace

ServiceAnswer in_service(const std::optional<Period>& event, const std::vector<ServicePeriod>& service,
                         const DatePolicy& policy) {
  ServiceAnswer answer;
  if (!event || service.empty()) return answer;
  bool may_touch = false;
  bool surely_touches = false;
  for (const ServicePeriod& stretch : service) {
    auto served = period_of(stretch.when, policy);
    if (!served) return answer;
    served = in_whole_months(*served);
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
  recall.age_at_event = age_told(when, event, born);
  if (born && event && !recall.age_at_event) recall.age_at_event = completed_years_between(*born, *event);
  if (event && told) recall.recall_distance = completed_years_between(*event, *told);
  const ServiceAnswer service = in_service(event, narrator.service, policy);
  recall.in_service = service.inside;
  recall.partly_in_service = service.partly;
  return recall;
}

}  // namespace witnessmark
