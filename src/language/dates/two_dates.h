#pragma once
#include <array>
#include <optional>
#include <vector>

#include "language/dates/grammar/spec.h"
#include "witnessmark/language/date_expression.h"
#include "witnessmark/time/date_policy.h"

namespace witnessmark::dates {

/// A range or choice of two dates ("from 1957 until 1963", "1957 or 1958") as the grammar read it.
struct TwoDates {
  const Spec& spec;
  const std::array<std::optional<EdtfDate>, 2>& ends;  ///< The two as ends of an interval.
  const std::optional<Edtf>& limited;  ///< What stands for them when a limit is set on either.
  const DatePolicy& policy;
};

/// Makes the two parts one expression, whose text and range are set. False when they make none: one has no
/// value, the range is the wrong way round; then the parts are as they were.
bool join_dates(const TwoDates& two, std::vector<DateExpression>& parts, DateExpression& e);

}  // namespace witnessmark::dates
