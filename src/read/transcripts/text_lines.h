#pragma once
#include <algorithm>
#include <cstdint>
#include <string_view>
#include <utility>
#include <vector>

namespace witnessmark {

/// Line and column of bytes in a text, both from 1, the column in code points.
class TextLines {
 public:
  explicit TextLines(std::string_view text) : text_(text), starts_{0} {
    for (std::size_t at = text.find('\n'); at != text.npos; at = text.find('\n', at + 1))
      starts_.push_back(at + 1);
  }

  std::int64_t line(std::size_t at) const {
    return std::upper_bound(starts_.begin(), starts_.end(), at) - starts_.begin();
  }
  /// Asked for in ascending order this is one pass over the text, however long its lines are.
  std::int64_t column(std::size_t at) const {
    at = std::min(at, text_.size());
    const std::size_t start = starts_[static_cast<std::size_t>(line(at) - 1)];
    if (counted_to_ < start || counted_to_ > at) {
      counted_to_ = start;
      column_ = 1;
    }
    for (; counted_to_ < at; ++counted_to_)
      column_ += (static_cast<unsigned char>(text_[counted_to_]) & 0xC0) != 0x80;
    return column_;
  }

 private:
  std::string_view text_;
  std::vector<std::size_t> starts_;
  mutable std::size_t counted_to_ = 0;
  mutable std::int64_t column_ = 1;
};

/// Takes lines off the front of a text. A last line without line break is one too.
class LineScanner {
 public:
  explicit LineScanner(std::string_view text) : text_(text) {}

  bool at_end() const { return at_ >= text_.size(); }
  std::int64_t line() const { return line_; }  ///< Number of the line that next() gives.
  std::size_t offset() const { return at_; }
  std::string_view peek() const { return text_.substr(at_, text_.find('\n', at_) - at_); }
  std::string_view next() {
    const std::string_view found = peek();
    at_ += found.size() + 1;
    ++line_;
    return found;
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
  std::int64_t line_ = 1;
};

}  // namespace witnessmark
