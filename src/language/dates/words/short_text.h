#pragma once
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

namespace witnessmark::dates {

/// A text of at most 31 bytes in place: values are copied by the thousand while the grammar tries its rules.
/// What is longer is cut; no value of ours is.
class ShortText {
 public:
  ShortText() = default;
  ShortText(std::string_view text) { assign(text); }
  ShortText(const char* text) { assign(text); }
  ShortText(const std::string& text) { assign(text); }

  std::string_view view() const { return {bytes_, size_}; }
  operator std::string_view() const { return view(); }
  bool empty() const { return size_ == 0; }
  std::size_t size() const { return size_; }
  void clear() { size_ = 0; }
  ShortText& operator+=(std::string_view text) {
    const auto count = text.size() < kMost - size_ ? text.size() : kMost - size_;
    std::memcpy(bytes_ + size_, text.data(), count);
    size_ = static_cast<std::uint8_t>(size_ + count);
    return *this;
  }
  ShortText& operator+=(char c) {
    if (size_ < kMost) bytes_[size_++] = c;
    return *this;
  }
  /// A number of at least `width` digits.
  void append_number(std::int64_t number, int width) {
    char digits[20];
    int count = 0;
    const bool negative = number < 0;
    auto rest = negative ? 0 - static_cast<std::uint64_t>(number) : static_cast<std::uint64_t>(number);
    while (rest != 0 || count < width) digits[count++] = static_cast<char>('0' + rest % 10), rest /= 10;
    if (negative) *this += '-';
    while (count > 0) *this += digits[--count];
  }
  friend bool operator==(const ShortText& a, const ShortText& b) { return a.view() == b.view(); }
  friend bool operator==(const ShortText& a, std::string_view b) { return a.view() == b; }
  friend bool operator==(const ShortText& a, const char* b) { return a.view() == b; }
  friend std::string operator+(const std::string& a, const ShortText& b) { return a + std::string(b.view()); }

 private:
  static constexpr std::size_t kMost = 31;
  void assign(std::string_view text) {
    size_ = 0;
    *this += text;
  }
  char bytes_[kMost];  // Not cleared: a value is made for every rule that is tried.
  std::uint8_t size_ = 0;
};

}  // namespace witnessmark::dates
