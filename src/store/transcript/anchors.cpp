#include "store/transcript/anchors.h"

#include <algorithm>
#include <string>

namespace witnessmark {
namespace {

/// Wider and wider, first on both sides, then on one: what surrounds the words may itself have been revised.
constexpr std::pair<std::size_t, std::size_t> kAround[] = {{0, 0},  {20, 20}, {60, 60}, {200, 200}, {20, 0},
                                                           {0, 20}, {60, 0},  {0, 60},  {200, 0},   {0, 200}};

/// Whether a word begins at this letter, or one ended before it.
bool at_edge(const BareText& text, std::size_t letter) {
  return letter == 0 || letter >= text.letters.size() || text.at[letter] != text.at[letter - 1] + 1;
}

bool is_space(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

/// Marks that open what follows them.
bool opens(std::string_view marks) {
  for (const std::string_view mark : {"(", "[", "{", "“", "‘", "«"})
    if (marks.starts_with(mark)) return true;
  return false;
}

/// How many bytes of the marks that follow a passage go with it, where other marks did.
std::size_t closing_marks(std::string_view follow) {
  std::size_t size = 0;
  while (size < follow.size() && !is_space(follow[size]) && !opens(follow.substr(size))) ++size;
  return size;
}

std::size_t opening_marks(std::string_view before) {
  std::size_t size = 0;
  while (size < before.size() && !is_space(before[before.size() - size - 1])) ++size;
  return size;
}

}  // namespace

AnchorCarrier::AnchorCarrier(std::string_view before, std::string_view after)
    : before_(before), after_(after), bare_before_(before), bare_after_(after) {}

std::optional<CodePointRange> AnchorCarrier::find_again(CodePointRange range) {
  const std::optional<Found>& place = found(range);
  return place ? std::optional(place->range) : std::nullopt;
}

std::optional<CodePointRange> AnchorCarrier::find_part(CodePointRange range, CodePointRange part) {
  const std::optional<Found>& whole = found(range);
  const Letters letters = letters_of(part);
  if (!whole || letters.first == letters.past || letters.first < whole->before ||
      letters.past > whole->before + whole->size)
    return std::nullopt;
  return with_marks(part, letters, whole->after + letters.first - whole->before);
}

const std::optional<AnchorCarrier::Found>& AnchorCarrier::found(CodePointRange range) {
  const auto known = found_.find(range);
  return known != found_.end() ? known->second : found_[range] = search(range);
}

AnchorCarrier::Letters AnchorCarrier::letters_of(CodePointRange range) const {
  Letters letters{bare_before_.first_from(range.begin), bare_before_.first_from(range.end)};
  while (letters.first < letters.past && bare_before_.letters[letters.first] == U' ') ++letters.first;
  while (letters.first < letters.past && bare_before_.letters[letters.past - 1] == U' ') --letters.past;
  return letters;
}

std::optional<AnchorCarrier::Found> AnchorCarrier::search(CodePointRange range) const {
  if (range.empty()) return std::nullopt;
  const Letters letters = letters_of(range);
  if (letters.first == letters.past) return search_marks(range);
  for (const auto& [left, right] : kAround) {
    const auto place = only_place(letters, left, right);
    if (place)
      return Found{with_marks(range, letters, *place), letters.first, *place, letters.past - letters.first};
  }
  return std::nullopt;
}

/// The only place of the letters together with so many to their left and right. Words are found as words, not
/// as parts of others.
std::optional<std::size_t> AnchorCarrier::only_place(Letters wanted, std::size_t left,
                                                     std::size_t right) const {
  const std::size_t begin = wanted.first - std::min(wanted.first, left);
  const std::size_t end = std::min(bare_before_.letters.size(), wanted.past + right);
  const std::u32string_view words = std::u32string_view(bare_before_.letters).substr(begin, end - begin);
  const bool begins = at_edge(bare_before_, wanted.first), ends = at_edge(bare_before_, wanted.past);
  std::optional<std::size_t> only;
  for (std::size_t at = bare_after_.letters.find(words); at != std::u32string::npos;
       at = bare_after_.letters.find(words, at + 1)) {
    const std::size_t first = at + wanted.first - begin, past = first + wanted.past - wanted.first;
    if ((begins && !at_edge(bare_after_, first)) || (ends && !at_edge(bare_after_, past))) continue;
    if (only) return std::nullopt;
    only = first;
  }
  return only;
}

CodePointRange AnchorCarrier::with_marks(CodePointRange old_range, Letters letters, std::size_t place) const {
  const std::size_t last = place + letters.past - letters.first - 1;
  CodePointRange range{CodePoint{bare_after_.at[place]}, CodePoint{bare_after_.at[last] + 1}};
  const std::string_view leading =
      before_.slice({old_range.begin, CodePoint{bare_before_.at[letters.first]}});
  const std::string_view trailing =
      before_.slice({CodePoint{bare_before_.at[letters.past - 1] + 1}, old_range.end});
  const ByteRange bytes = after_.to_bytes(range);
  if (!leading.empty()) {
    const CodePoint from{place == 0 ? 0 : bare_after_.at[place - 1] + 1};
    const std::string_view gap = after_.slice({from, range.begin});
    const std::size_t size = gap.ends_with(leading) ? leading.size() : opening_marks(gap);
    range.begin = after_.to_code_point(ByteOffset{bytes.begin.value - static_cast<std::int64_t>(size)});
  }
  if (!trailing.empty()) {
    const CodePoint to =
        last + 1 < bare_after_.at.size() ? CodePoint{bare_after_.at[last + 1]} : after_.size();
    const std::string_view gap = after_.slice({range.end, std::max(range.end, to)});
    const std::size_t size = gap.starts_with(trailing) ? trailing.size() : closing_marks(gap);
    range.end = after_.to_code_point(ByteOffset{bytes.end.value + static_cast<std::int64_t>(size)});
  }
  return range;
}

/// A passage of marks alone: where they stand once.
std::optional<AnchorCarrier::Found> AnchorCarrier::search_marks(CodePointRange range) const {
  const std::string_view marks = before_.slice(range);
  const std::size_t place = after_.text().find(marks);
  if (place == std::string_view::npos || after_.text().find(marks, place + 1) != std::string_view::npos)
    return std::nullopt;
  const auto begin = static_cast<std::int64_t>(place);
  const ByteRange bytes{ByteOffset{begin}, ByteOffset{begin + static_cast<std::int64_t>(marks.size())}};
  return Found{after_.to_code_points(bytes), 0, 0, 0};
}

}  // namespace witnessmark
