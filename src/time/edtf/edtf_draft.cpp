// The Library of Congress draft of 2012 is still found in catalogues. Its differences are listed in the
// section "Differences" of the specification of 2019-02-04; each is one row of the table below.
#include "time/edtf/edtf_draft.h"

#include <fmt/format.h>

#include <string>

#include "time/edtf/edtf_parser.h"

namespace witnessmark {
namespace {

struct DraftSyntax {
  std::string_view sign;
  std::string_view today;  ///< What replaces it; empty where it has to be rewritten by hand.
  bool only_by_digits;     ///< Counts only beside a digit, a minus or another sign of its kind.
  std::string_view message;
  std::string_view advice;
};

constexpr DraftSyntax kDraft[] = {
    {"unknown", "", false, "`unknown` is the 2012 draft's word for an unknown end",
     "leave that side of the `/` empty"},
    {"open", "..", false, "`open` is the 2012 draft's word for an open end", "write `..`"},
    {"?~", "%", false, "`?~` is the 2012 draft's sign for uncertain and approximate", "write `%`"},
    {"~?", "%", false, "`~?` is the 2012 draft's sign for uncertain and approximate", "write `%`"},
    {"(", "", false, "parentheses are the 2012 draft's grouping of components",
     "put the sign to the left of one component, or to the right of the last of those it covers"},
    {")", "", false, "parentheses are the 2012 draft's grouping of components",
     "put the sign to the left of one component, or to the right of the last of those it covers"},
    {"^", "", false, "`^` is the 2012 draft's qualifier of a season",
     "write the season's code with its hemisphere: 25 to 28 northern, 29 to 32 southern"},
    {"u", "X", true, "`u` is the 2012 draft's sign for an unspecified digit", "write `X`"},
    {"x", "X", true, "`x` is the 2012 draft's masked precision", "write `X`"},
    {"y", "Y", true, "`y` before a long year is the 2012 draft's", "write `Y`"},
    {"e", "E", true, "`e` for a power of ten is the 2012 draft's", "write `E`"},
    {"p", "S", true, "`p` for significant digits is the 2012 draft's", "write `S`"},
};

bool belongs_to_number(char c) {
  return (c >= '0' && c <= '9') || c == '-' || c == 'u' || c == 'x' || c == 'X';
}

std::size_t find_sign(std::string_view text, const DraftSyntax& draft, std::size_t from) {
  for (std::size_t at = text.find(draft.sign, from); at != std::string_view::npos;
       at = text.find(draft.sign, at + 1)) {
    const bool left = at > 0 && belongs_to_number(text[at - 1]);
    const std::size_t after = at + draft.sign.size();
    const bool right = after < text.size() && belongs_to_number(text[after]);
    if (!draft.only_by_digits || left || right) return at;
  }
  return std::string_view::npos;
}

/// The text with everything replaced that can be; nothing when that is still not EDTF.
std::optional<std::string> written_today(std::string_view text) {
  std::string today(text);
  for (const DraftSyntax& draft : kDraft) {
    if (draft.sign.size() == 1 && draft.today.empty()) continue;
    for (std::size_t at = find_sign(today, draft, 0); at != std::string::npos;
         at = find_sign(today, draft, at)) {
      today.replace(at, draft.sign.size(), draft.today);
    }
  }
  if (!parse_edtf_2019(today)) return std::nullopt;
  return today;
}

}  // namespace

std::optional<Error> recognise_draft_syntax(std::string_view text) {
  const DraftSyntax* first = nullptr;
  std::size_t first_at = std::string_view::npos;
  for (const DraftSyntax& draft : kDraft) {
    const std::size_t at = find_sign(text, draft, 0);
    if (at < first_at) {
      first = &draft;
      first_at = at;
    }
  }
  if (first == nullptr) return std::nullopt;
  Error error;
  error.column = static_cast<std::int64_t>(first_at) + 1;
  error.message = fmt::format("{} (EDTF draft of 2012)", first->message);
  const auto today = written_today(text);
  error.advice = today ? fmt::format("{}: `{}`", first->advice, *today) : std::string(first->advice);
  return error;
}

}  // namespace witnessmark
