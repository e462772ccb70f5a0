#include "weigh/stays/days_meant.h"

#include "weigh/comparing/told_days.h"

namespace witnessmark {
namespace {

/// The days that surely belong to a time that holds throughout: from the last day it can begin on to the
/// first it can end on, which may lie before it.
DaySpan sure_days(const DayExtent& extent, const std::optional<Period>& period, bool only_one) {
  if (extent.certain) return *extent.certain;
  DaySpan days{extent.possible.high, extent.possible.low};
  if (!only_one || !period) return days;
  if (period->begin.latest) days.low = period->begin.latest->value;
  if (period->end.earliest) days.high = period->end.earliest->value - 1;
  return days;
}

}  // namespace

std::vector<DaySpan> days_meant(const FixtureStatement& statement, const std::optional<Edtf>& value,
                                const DatePolicy& policy) {
  std::vector<DaySpan> days;
  const bool state = statement.statement != Statement::begins && statement.statement != Statement::ends;
  const auto extents = told_days(value, statement.period, policy);
  for (const DayExtent& extent : extents) {
    if (statement.denied && extent.certain)
      days.push_back(*extent.certain);
    else if (!statement.denied && state && statement.reading == Reading::throughout)
      days.push_back(sure_days(extent, statement.period, extents.size() == 1));
    else if (!statement.denied)
      days.push_back(extent.possible);
  }
  return days;
}

}  // namespace witnessmark
