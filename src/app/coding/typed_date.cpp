#include <fmt/core.h>

#include "app/coding/desk_state.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/language/date_expression.h"

namespace witnessmark {
namespace {

TypedDate typed(const Edtf& value, const Period& period, std::string written) {
  TypedDate date;
  date.when.dated.value = value;
  date.when.dated.written = std::move(written);
  date.when.period = period;
  date.meaning = fmt::format("{}: {}", to_string(value), describe(period));
  return date;
}

}  // namespace

Result<TypedDate> CodingDesk::typed_date(std::string_view given, const Claim& claim) const {
  const State& state = *state_;
  const std::string text(trim(given));
  if (text.empty()) return TypedDate{{}, "no date"};
  const auto edtf = parse_edtf(text);
  if (edtf) {
    TypedDate date = typed(*edtf, to_period(*edtf, state.policy), text);
    date.when.rule = "typed as EDTF";
    return date;
  }
  const Interview& interview = state.people->interview(claim.interview);
  const Person& narrator = state.people->narrator(claim);
  Discourse discourse;
  discourse.policy = state.policy;
  discourse.speech_time = interview.date.value;
  discourse.birth = narrator.birth.value;
  discourse.service = narrator.service;
  discourse.events = state.maker->entries().events;
  discourse.century = century_before(interview.date.value, state.policy);
  if (claim.when.dated.value) discourse.reference = claim.when.dated.value;
  const auto read = read_dates(text, state.lexicon, discourse).expressions;
  for (const DateExpression& expression : read) {
    if (!expression.edtf || !expression.period) continue;
    TypedDate date = typed(*expression.edtf, *expression.period, text);
    date.when.rule = expression.rule;
    date.when.anchor = expression.anchor;
    date.when.alternatives = expression.alternatives;
    for (const std::string& other : expression.alternatives) date.meaning += fmt::format("; or {}", other);
    return date;
  }
  return Error{"", 0, 0, fmt::format("no date can be read from “{}”", text),
               "write it as people say it (late sixty-two, the spring of 1957) or in EDTF (1957-21, 1962~)"};
}

}  // namespace witnessmark
