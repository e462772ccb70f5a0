#pragma once
#include <memory>
#include <utility>

namespace witnessmark {

/// A value that may be missing and is kept elsewhere: std::optional for what is large and seldom there. Copies are deep.
template <typename T>
class Boxed {
 public:
  Boxed() = default;
  Boxed(T value) : value_(std::make_unique<T>(std::move(value))) {}
  Boxed(const Boxed& other) : value_(other.value_ ? std::make_unique<T>(*other.value_) : nullptr) {}
  Boxed(Boxed&&) noexcept = default;
  Boxed& operator=(Boxed other) noexcept {
    value_ = std::move(other.value_);
    return *this;
  }
  ~Boxed() = default;

  explicit operator bool() const { return value_ != nullptr; }
  bool has_value() const { return value_ != nullptr; }
  T& operator*() { return *value_; }
  const T& operator*() const { return *value_; }
  T* operator->() { return value_.get(); }
  const T* operator->() const { return value_.get(); }
  void reset() { value_.reset(); }
  friend bool operator==(const Boxed& a, const Boxed& b) {
    return a.value_ && b.value_ ? *a.value_ == *b.value_ : !a.value_ == !b.value_;
  }

 private:
  std::unique_ptr<T> value_;
};

}  // namespace witnessmark
