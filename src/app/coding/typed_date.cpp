#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "app/coding/desk_state.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/base/code_point_index.h"
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

/// "1951-13", "XXXX-8", "1957~?": meant as EDTF, not as people say dates.
bool looks_like_edtf(std::string_view text) {
  constexpr std::size_t kYear = 4;
  if (text.size() < kYear || (text.size() > kYear && text[kYear] == ' ')) return false;
  return std::all_of(text.begin(), text.begin() + kYear,
                     [](char c) { return (c >= '0' && c <= '9') || c == 'X'; });
}

/// The words beside a date that say nothing the date does not.
bool says_no_more(std::string_view beside) {
  constexpr std::array<std::string_view, 9> kEmpty{"in", "on", "at", "the", "during", "of", "it", "was", ","};
  while (!(beside = trim(beside)).empty()) {
    const std::size_t end = std::min(beside.find(' '), beside.size());
    if (std::find(kEmpty.begin(), kEmpty.end(), fold(beside.substr(0, end))) == kEmpty.end()) return false;
    beside.remove_prefix(end);
  }
  return true;
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
  if (looks_like_edtf(text)) {
    Error error = edtf.error();
    error.advice = "write EDTF (1957-21, 1962~, 1957/1959) or as people say it (late sixty-two)";
    return error;
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
    const CodePointIndex index(text);
    const ByteRange said = index.to_bytes(expression.range);
    const std::string_view before =
        std::string_view(text).substr(0, static_cast<std::size_t>(said.begin.value));
    const std::string_view after = std::string_view(text).substr(static_cast<std::size_t>(said.end.value));
    if (!says_no_more(before) || !says_no_more(after)) {
      return Error{"", 0, 0, fmt::format("only “{}” can be read of “{}”", expression.text, text),
                   "write one date, without other words; two that bound a time as “from 1957 to 1959”"};
    }
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
