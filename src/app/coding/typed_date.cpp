#include <fmt/core.h>

#include "app/coding/desk_state.h"
#include "app/dates/whole_date.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/language/date_expression.h"

namespace witnessmark {
namespace {

/// The narrator's words for another date do not stand beside it; what the coder typed is kept in the rule.
TypedDate typed(const Edtf& value, const Period& period, std::string rule) {
  TypedDate date;
  date.when.dated.value = value;
  date.when.period = period;
  date.when.rule = std::move(rule);
  const std::string edtf = to_string(value), words = describe(value, period);
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
  if (text.empty()) {
    TypedDate none;
    none.meaning = "no date";
    return none;
  }
  if (const auto edtf = parse_edtf(text); edtf)
    return typed(*edtf, to_period(*edtf, state.policy), "coder: " + text);
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
  const auto read = read_whole_date(text, state.lexicon, discourse);
  if (!read) return read.error();
  TypedDate date = typed(*read->edtf, *read->period, "coder: " + text);
  date.when.anchor = read->anchor;
  date.when.alternatives = read->alternatives;
  if (!read->whole) date.meaning += left_out(read->mod);
  for (const std::string& other : read->alternatives) date.meaning += fmt::format("; or {}", other);
  return date;
}

}  // namespace witnessmark
