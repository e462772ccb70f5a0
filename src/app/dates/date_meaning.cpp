#include "witnessmark/app/date_meaning.h"

namespace witnessmark {

Result<DatePolicy> load_date_policy(const Surroundings& surroundings) {
  const auto path = surroundings.shared / "date-policy.json";
  const auto text = surroundings.files.read(path);
  if (!text) return text.error();
  return parse_date_policy(*text, path.string());
}

CenturyPolicy century_before(const std::optional<Edtf>& interview, const DatePolicy& policy) {
  CenturyPolicy century;
  if (!interview) return century;
  if (const auto day = to_period(*interview, policy).earliest()) {
    const std::int64_t year = to_civil(*day).year - 50;
    century.century_begins = year - (year % 100 + 100) % 100;
  }
  return century;
}

Result<EdtfMeaning> edtf_meaning(std::string_view expression, const DatePolicy& policy) {
  const auto value = parse_edtf(expression);
  if (!value) {
    Error error = value.error();
    error.source = expression;
    return error;
  }
  EdtfMeaning meaning;
  meaning.canonical = to_string(*value);
  meaning.level = edtf_level(*value);
  meaning.period = to_period(*value, policy);
  meaning.words = describe(*value, meaning.period);
  if (auto several = candidates(*value, policy)) {
    meaning.candidates = std::move(*several);
  } else {
    meaning.too_many_candidates = true;
  }
  return meaning;
}

}  // namespace witnessmark
