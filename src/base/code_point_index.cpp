#include "witnessmark/base/code_point_index.h"

#include <algorithm>

#include "base/utf8.h"

namespace witnessmark {
namespace {

constexpr std::int64_t kMarkDistance = 64;
constexpr std::int64_t kBlockBytes = 64;

/// Byte offset of the code point that lies `count` code points after the one starting at `from`.
std::int64_t skip_code_points(std::string_view text, std::int64_t from, std::int64_t count) {
  auto at = static_cast<std::size_t>(from);
  // A word cannot start more than eight code points, so whole words are safe while more than eight are
  // wanted.
  while (count > 8 && at + 8 <= text.size()) {
    count -= 8 - continuation_bytes(load_word(text.data() + at));
    at += 8;
  }
  while (at < text.size() && (count > 0 || is_continuation(text[at]))) {
    if (!is_continuation(text[at])) --count;
    ++at;
  }
  return static_cast<std::int64_t>(at);
}

}  // namespace

CodePointIndex::CodePointIndex(std::string_view text) : text_(text) {
  if (ascii_prefix(text) == text.size()) {
    ascii_ = true;
    size_ = static_cast<std::int64_t>(text.size());
    return;
  }
  marks_.reserve(text.size() / kMarkDistance + 1);
  const auto end = static_cast<std::int64_t>(text.size());
  std::int64_t at = 0;
  while (at < end) {
    marks_.push_back(at);
    at = skip_code_points(text, at, kMarkDistance);
  }
  before_blocks_.reserve(text.size() / kBlockBytes + 1);
  for (std::int64_t block = 0; block < end; block += kBlockBytes) {
    before_blocks_.push_back(size_);
    size_ += count_code_points(text.substr(static_cast<std::size_t>(block), kBlockBytes));
  }
}

CodePoint CodePointIndex::to_code_point(ByteOffset offset) const {
  if (offset.value <= 0) return {0};
  if (offset.value >= static_cast<std::int64_t>(text_.size())) return {size_};
  if (ascii_) return {offset.value};
  const auto block = static_cast<std::size_t>(offset.value / kBlockBytes);
  const auto length = static_cast<std::size_t>(offset.value % kBlockBytes) + 1;
  // Counting the byte itself makes an offset inside a code point count as that code point.
  return {before_blocks_[block] + count_code_points(text_.substr(block * kBlockBytes, length)) - 1};
}

ByteOffset CodePointIndex::to_byte(CodePoint position) const {
  if (position.value <= 0) return {0};
  if (position.value >= size_) return {static_cast<std::int64_t>(text_.size())};
  if (ascii_) return {position.value};
  const std::int64_t mark = marks_[static_cast<std::size_t>(position.value / kMarkDistance)];
  return {skip_code_points(text_, mark, position.value % kMarkDistance)};
}

std::string_view CodePointIndex::slice(CodePointRange range) const {
  const std::int64_t begin = to_byte(range.begin).value;
  const std::int64_t end = std::max(begin, to_byte(range.end).value);
  return text_.substr(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin));
}

}  // namespace witnessmark
