#include "store/transcript/anchors.h"

#include <algorithm>
#include <functional>

namespace witnessmark {
namespace {

/// Byte offset of the only place; nothing when there is none or more than one.
std::optional<std::int64_t> only_place(std::string_view text, std::string_view words) {
  const std::boyer_moore_horspool_searcher searcher(words.begin(), words.end());
  const auto first = std::search(text.begin(), text.end(), searcher);
  if (first == text.end()) return std::nullopt;
  if (std::search(first + 1, text.end(), searcher) != text.end()) return std::nullopt;
  return first - text.begin();
}

}  // namespace

std::optional<CodePointRange> AnchorCarrier::find_again(CodePointRange range) {
  const auto known = found_.find(range);
  if (known != found_.end()) return known->second;
  return found_[range] = search(range);
}

std::optional<CodePointRange> AnchorCarrier::search(CodePointRange range) const {
  if (range.empty()) return std::nullopt;
  const std::string_view quote = before_.slice(range);
  // Wider and wider, first on both sides, then on one: what surrounds the words may itself have been revised.
  static constexpr std::pair<std::int64_t, std::int64_t> kAround[] = {
      {0, 0}, {20, 20}, {60, 60}, {200, 200}, {20, 0}, {0, 20}, {60, 0}, {0, 60}, {200, 0}, {0, 200}};
  for (const auto& [left, right] : kAround) {
    const std::int64_t begin = std::max<std::int64_t>(0, range.begin.value - left);
    const std::int64_t end = std::min(before_.size().value, range.end.value + right);
    const ByteRange wide = before_.to_bytes({CodePoint{begin}, CodePoint{end}});
    const std::string_view words = before_.slice({CodePoint{begin}, CodePoint{end}});
    const auto place = only_place(after_.text(), words);
    if (!place) continue;
    const std::int64_t at = *place + before_.to_byte(range.begin).value - wide.begin.value;
    const ByteRange bytes{ByteOffset{at}, ByteOffset{at + static_cast<std::int64_t>(quote.size())}};
    return after_.to_code_points(bytes);
  }
  return std::nullopt;
}

}  // namespace witnessmark
