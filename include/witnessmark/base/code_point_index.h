#pragma once
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// Translates between byte offsets and code points of one UTF-8 text. Does not own the text, which must
/// outlive it and be valid UTF-8. Building takes one pass; a look-up is a short scan from the nearest of its
/// way marks.
class CodePointIndex {
 public:
  explicit CodePointIndex(std::string_view text);

  std::string_view text() const { return text_; }

  /// Length of the text in code points.
  CodePoint size() const { return {size_}; }

  /// The code point that starts at, or contains, the byte; the size for an offset at or past the end.
  CodePoint to_code_point(ByteOffset offset) const;

  /// First byte of the code point; the byte length for a position at or past the end.
  ByteOffset to_byte(CodePoint position) const;

  CodePointRange to_code_points(ByteRange range) const {
    return {to_code_point(range.begin), to_code_point(range.end)};
  }
  ByteRange to_bytes(CodePointRange range) const { return {to_byte(range.begin), to_byte(range.end)}; }

  /// The part of the text the range covers, cut to the text.
  std::string_view slice(CodePointRange range) const;

 private:
  std::string_view text_;
  std::int64_t size_ = 0;
  bool ascii_ = false;
  std::vector<std::int64_t> marks_;          ///< Byte offset of every 64th code point.
  std::vector<std::int64_t> before_blocks_;  ///< Code points that begin before every 64th byte.
};

}  // namespace witnessmark
