#include <fmt/core.h>

#include "app/coding/desk_state.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/language/date_expression.h"

namespace witnessmark {
namespace {

/// The narrator's own words stay what they were: a coder's are kept in the rule.
TypedDate typed(const Edtf& value, const Period& period, const Claim& claim, std::string rule) {
  TypedDate date;
  date.when.dated.value = value;
  date.when.dated.written = claim.when.dated.written;
  date.when.period = period;
  date.when.rule = std::move(rule);
  const std::string edtf = to_string(value), words = describe(period);
  date.meaning = edtf == words ? edtf : fmt::format("{}: {}", edtf, words);
  return date;
}

/// What of the words the date does not keep.
std::string_view left_out(std::string_view mod) {
  if (mod == "START") return "; that it was early in it is not kept";
  if (mod == "MID") return "; that it was in the middle of it is not kept";
  return mod == "END" ? "; that it was late in it is not kept" : "";
}

}  // namespace

Result<TypedDate> CodingDesk::typed_date(std::string_view given, const Claim& claim) const {
  const State& state = *state_;
  const std::string text(trim(given));
  if (text.empty()) return TypedDate{{}, "no date"};
  const auto edtf = parse_edtf(text);
  if (edtf) {
    return typed(*edtf, to_period(*edtf, state.policy), claim, "coder: " + text);
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
    TypedDate date = typed(*expression.edtf, *expression.period, claim, "coder: " + text);
    date.when.anchor = expression.anchor;
    date.when.alternatives = expression.alternatives;
    if (!expression.whole) date.meaning += left_out(expression.mod);
    for (const std::string& other : expression.alternatives) date.meaning += fmt::format("; or {}", other);
    return date;
  }
  return Error{"", 0, 0, fmt::format("no date can be read from “{}”", text),
               "write it as people say it (late sixty-two, the spring of 1957) or in EDTF (1957-21, 1962~)"};
}

}  // namespace witnessmark
