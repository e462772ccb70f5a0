#include <fmt/format.h>

#include <utility>

#include "witnessmark/time/edtf.h"

// The words are those of the Library of Congress specification of 2019-02-04: `?` uncertain, `~` approximate,
// `%` both.

namespace witnessmark {
namespace {

std::string words_of(const Qualifier& qualifier) {
  if (!qualifier.any()) return "";
  if (qualifier.uncertain && qualifier.approximate) return "uncertain and approximate";
  return qualifier.uncertain ? "uncertain" : "approximate";
}

/// The codes of the standard: 21 to 32 seasons, above them quarters, thirds and halves of a year.
std::string month_name(const EdtfDate& date) {
  constexpr std::int64_t kLastSeason = 32;
  if (!date.is_season()) return "month";
  return date.month->value <= kLastSeason ? "season" : "part of the year";
}

void join(std::string& list, std::string_view more, std::string_view by) {
  if (more.empty()) return;
  list += fmt::format("{}{}", list.empty() ? "" : by, more);
}

std::string words_of(const EdtfDate& date) {
  std::vector<std::pair<std::string, Qualifier>> parts = {{"year", date.year.qualifier}};
  if (date.month) parts.emplace_back(month_name(date), date.month->qualifier);
  if (date.day) parts.emplace_back("day", date.day->qualifier);
  bool alike = true;
  for (const auto& part : parts) alike = alike && part.second == parts.front().second;
  if (alike) return words_of(parts.front().second);
  std::string all;
  for (const Qualifier kind : {Qualifier{true, false}, Qualifier{false, true}, Qualifier{true, true}}) {
    std::string names;
    for (const auto& [name, qualifier] : parts)
      if (qualifier == kind) join(names, name, " and ");
    if (!names.empty()) join(all, names + " " + words_of(kind), ", ");
  }
  return all;
}

std::string words_of(std::string_view name, const EdtfEnd& end) {
  const auto* date = std::get_if<EdtfDate>(&end);
  const std::string words = date ? words_of(*date) : "";
  return words.empty() ? "" : fmt::format("{}: {}", name, words);
}

struct Words {
  std::string operator()(const EdtfDate& date) const { return words_of(date); }

  std::string operator()(const EdtfInterval& interval) const {
    std::string words = words_of("beginning", interval.begin);
    join(words, words_of("end", interval.end), "; ");
    return words;
  }

  std::string operator()(const EdtfSet& set) const {
    std::string words;
    for (const EdtfSetElement& element : set.elements)
      for (const auto* date : {&element.first, &element.last}) {
        if (!*date || (date == &element.last && !element.is_span)) continue;
        if (const std::string doubt = words_of(**date); !doubt.empty())
          join(words, fmt::format("{}: {}", to_string(**date), doubt), "; ");
      }
    return words;
  }
};

}  // namespace

std::string doubt_words(const Edtf& value) {
  return std::visit(Words{}, value.value);
}

bool is_uncertain(const Edtf& value) {
  return doubt_words(value).find("uncertain") != std::string::npos;
}

}  // namespace witnessmark
