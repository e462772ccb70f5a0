#include "app/taking_in/passages.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

bool is_space(char c) {
  return c == ' ' || c == '\n' || c == '\t';
}

/// Past the end of the wanted words where they stand at `begin`, with any white space between them.
std::optional<std::size_t> end_of_words(std::string_view text, std::string_view wanted, std::size_t begin) {
  std::size_t in_text = begin;
  std::size_t in_wanted = 0;
  while (in_wanted < wanted.size() && in_text < text.size()) {
    if (is_space(wanted[in_wanted]) && is_space(text[in_text])) {
      while (in_wanted < wanted.size() && is_space(wanted[in_wanted])) ++in_wanted;
      while (in_text < text.size() && is_space(text[in_text])) ++in_text;
    } else if (wanted[in_wanted] == text[in_text]) {
      ++in_wanted, ++in_text;
    } else {
      return std::nullopt;
    }
  }
  return in_wanted == wanted.size() ? std::optional(in_text) : std::nullopt;
}

/// Every stretch of the text that has the wanted words, in its order.
std::vector<ByteRange> all_places(std::string_view text, std::string_view wanted) {
  std::vector<ByteRange> places;
  for (std::size_t begin = 0; begin < text.size(); ++begin)
    if (const auto end = end_of_words(text, wanted, begin)) places.push_back(byte_range(begin, *end));
  return places;
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

// Each part is taken as early as it can stand after the one before it, and once more as late as it can stand before the one
// after it. Any other choice lies between the two, so the passage is one place only where both begin and end alike.
std::vector<CodePointRange> find_passage(std::string_view reading_text, std::string_view quote) {
  std::vector<std::vector<ByteRange>> parts;
  for (const std::string_view part : parts_between_ellipses(quote))
    parts.push_back(all_places(reading_text, part));
  if (parts.empty()) return {};
  std::vector<ByteRange> early, late;
  for (const auto& places : parts) {
    const auto at = std::find_if(places.begin(), places.end(), [&](const ByteRange& place) {
      return early.empty() || place.begin >= early.back().end;
    });
    if (at == places.end()) return {};
    early.push_back(*at);
  }
  for (auto part = parts.rbegin(); part != parts.rend(); ++part) {
    const auto at = std::find_if(part->rbegin(), part->rend(), [&](const ByteRange& place) {
      return late.empty() || place.end <= late.back().begin;
    });
    late.push_back(*at);  // there is one: the early choice
  }
  const CodePointIndex index(reading_text);
  const CodePointRange first = index.to_code_points({early.front().begin, early.back().end});
  const CodePointRange last = index.to_code_points({late.back().begin, late.front().end});
  if (first == last) return {first};
  return {first, last};
}

}  // namespace witnessmark
