// The outer shape decides first: a bracket makes a set, a slash an interval, all else is a date. What the
// standard says of order (an interval does not end before it begins) is checked on the widest reading of both
// ends, so that only what is impossible under every reading is refused: nobody says in which months a season
// lies.
#include "time/edtf/edtf_parser.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "time/edtf/edtf_candidates.h"
#include "time/edtf/edtf_date_parser.h"
#include "time/edtf/edtf_draft.h"

namespace witnessmark {
namespace {

Error fault_at(std::size_t at, std::string message, std::string advice) {
  Error error;
  error.column = static_cast<std::int64_t>(at) + 1;
  error.message = std::move(message);
  error.advice = std::move(advice);
  return error;
}

/// Everything the date can mean, whatever the policy.
DayRange widest(const EdtfDate& date) {
  const auto span = candidate_span(date, default_date_policy());
  DayRange range{span->earliest.first, span->latest.past};
  if (date.is_season() && date.month->value <= 32) {
    const CivilDate first = to_civil(range.first);
    range = {to_day({first.year - 1, 12, 1}), to_day({to_civil(range.past - 1).year + 1, 3, 1})};
  }
  return range;
}

bool surely_after(const EdtfDate& a, const EdtfDate& b) {
  return widest(a).first >= widest(b).past;
}

Result<EdtfEnd> parse_end(std::string_view text, std::size_t column_before) {
  if (text.empty()) return EdtfEnd(EdtfUnknown{});
  if (text == "..") return EdtfEnd(EdtfOpen{});
  auto date = parse_edtf_date(text, column_before, TimeOfDay::refused);
  if (!date) return date.error();
  return EdtfEnd(std::move(*date));
}

Result<Edtf> parse_interval(std::string_view text, std::size_t slash) {
  const std::size_t second = text.find('/', slash + 1);
  if (second != std::string_view::npos) {
    return fault_at(second, "an interval has only one `/`", "write one beginning and one end");
  }
  auto begin = parse_end(text.substr(0, slash), 0);
  if (!begin) return begin.error();
  auto end = parse_end(text.substr(slash + 1), slash + 1);
  if (!end) return end.error();
  const auto* first = std::get_if<EdtfDate>(&*begin);
  const auto* last = std::get_if<EdtfDate>(&*end);
  if (first != nullptr && last != nullptr && surely_after(*first, *last)) {
    return fault_at(slash + 1, "the interval ends before it begins", "write the earlier date first");
  }
  return Edtf{EdtfInterval{std::move(*begin), std::move(*end)}};
}

/// What the members around a `..` must share.
int precision_of(const EdtfDate& date) {
  if (date.day) return 3;
  if (date.is_season()) return 100 + season_family(static_cast<int>(date.month->value)).first;
  return date.month ? 2 : 1;
}

bool has_unspecified(const EdtfDate& date) {
  return !date.year.specified() || (date.month && !date.month->specified()) ||
         (date.day && !date.day->specified()) || date.significant_digits.has_value();
}

Result<EdtfSetElement> parse_element(std::string_view text, std::size_t at, bool is_first, bool is_last) {
  EdtfSetElement element;
  const std::size_t dots = text.find("..");
  element.is_span = dots != std::string_view::npos;
  if (!element.is_span) {
    auto date = parse_edtf_date(text, at, TimeOfDay::refused);
    if (!date) return date.error();
    element.first = element.last = std::move(*date);
    return element;
  }
  const std::string_view left = text.substr(0, dots);
  const std::string_view right = text.substr(dots + 2);
  if (left.empty() && right.empty())
    return fault_at(at, "`..` stands alone", "write a date before or after it");
  if ((left.empty() && !is_first) || (right.empty() && !is_last)) {
    return fault_at(at + dots, "a one-sided `..` stands in the middle of the set",
                    "move it to the beginning or the end of the set, or write both dates");
  }
  for (const bool is_left : {true, false}) {
    const std::string_view side = is_left ? left : right;
    if (side.empty()) continue;
    const std::size_t side_at = is_left ? at : at + dots + 2;
    auto date = parse_edtf_date(side, side_at, TimeOfDay::refused);
    if (!date) return date.error();
    if (has_unspecified(*date)) {
      return fault_at(side_at, "a date beside `..` must have all its digits", "write the date in full");
    }
    (is_left ? element.first : element.last) = std::move(*date);
  }
  if (element.first && element.last) {
    if (precision_of(*element.first) != precision_of(*element.last)) {
      return fault_at(at, "the dates on both sides of `..` differ in precision",
                      "write both as years, months or days");
    }
    if (surely_after(*element.first, *element.last)) {
      return fault_at(at, "the span ends before it begins", "write the earlier date first");
    }
  }
  return element;
}

Result<Edtf> parse_set(std::string_view text) {
  const bool one_of = text.front() == '[';
  const char closing = one_of ? ']' : '}';
  EdtfSet set;
  set.kind = one_of ? EdtfSet::Kind::one_of : EdtfSet::Kind::all_of;
  const std::size_t end = text.find(closing);
  if (end == std::string_view::npos) {
    return fault_at(text.size(), fmt::format("the set lacks its `{}`", closing), "close the set");
  }
  if (end + 1 != text.size()) {
    return fault_at(end + 1, "text follows the set", "leave out what follows the closing bracket");
  }
  for (std::size_t at = 1;;) {
    const std::size_t comma = std::min(text.find(',', at), end);
    auto element = parse_element(text.substr(at, comma - at), at, at == 1, comma == end);
    if (!element) return element.error();
    set.elements.push_back(std::move(*element));
    if (comma == end) break;
    at = comma + 1;
  }
  return Edtf{std::move(set)};
}

}  // namespace

Result<Edtf> parse_edtf_2019(std::string_view text) {
  if (text.empty())
    return fault_at(0, "the expression is empty", "write a date such as 1951, 1951-06 or 1951-06-14");
  if (text.front() == '[' || text.front() == '{') return parse_set(text);
  if (const std::size_t slash = text.find('/'); slash != std::string_view::npos)
    return parse_interval(text, slash);
  auto date = parse_edtf_date(text, 0, TimeOfDay::allowed);
  if (!date) return date.error();
  return Edtf{std::move(*date)};
}

Result<Edtf> parse_edtf(std::string_view text) {
  auto parsed = parse_edtf_2019(text);
  if (parsed) return parsed;
  if (const auto draft = recognise_draft_syntax(text)) return *draft;
  return parsed;
}

}  // namespace witnessmark
