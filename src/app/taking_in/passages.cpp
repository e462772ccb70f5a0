#include "app/taking_in/passages.h"

#include <string>
#include <vector>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

bool is_space(char c) {
  return c == ' ' || c == '\n' || c == '\t';
}

/// The first stretch of text from `at` on that has the wanted words with any white space between them.
std::optional<ByteRange> find_words(std::string_view text, std::string_view wanted, std::size_t at) {
  for (std::size_t begin = at; begin < text.size(); ++begin) {
    std::size_t in_text = begin;
    std::size_t in_wanted = 0;
    while (in_wanted < wanted.size() && in_text < text.size()) {
      if (is_space(wanted[in_wanted]) && is_space(text[in_text])) {
        while (in_wanted < wanted.size() && is_space(wanted[in_wanted])) ++in_wanted;
        while (in_text < text.size() && is_space(text[in_text])) ++in_text;
      } else if (wanted[in_wanted] == text[in_text]) {
        ++in_wanted, ++in_text;
      } else {
        break;
      }
    }
    if (in_wanted == wanted.size()) return byte_range(begin, in_text);
  }
  return std::nullopt;
}

std::vector<std::string_view> parts_between_ellipses(std::string_view quote) {
  std::vector<std::string_view> parts;
  while (true) {
    std::size_t at = quote.find("…");
    std::size_t length = std::string_view("…").size();
    if (const std::size_t dots = quote.find("..."); dots < at) at = dots, length = 3;
    const std::string_view part = trim(quote.substr(0, at));
    if (!part.empty()) parts.push_back(part);
    if (at == std::string_view::npos) return parts;
    quote.remove_prefix(at + length);
  }
}

}  // namespace

std::optional<CodePointRange> find_passage(std::string_view reading_text, std::string_view quote) {
  const auto parts = parts_between_ellipses(quote);
  if (parts.empty()) return std::nullopt;
  std::optional<ByteRange> whole;
  for (const std::string_view part : parts) {
    const auto found = find_words(reading_text, part, whole ? static_cast<std::size_t>(whole->end.value) : 0);
    if (!found) return std::nullopt;
    whole = ByteRange{whole ? whole->begin : found->begin, found->end};
  }
  return CodePointIndex(reading_text).to_code_points(*whole);
}

}  // namespace witnessmark
