#pragma once
#include <memory>
#include <utility>

namespace witnessmark::claims {

/// A large value that mostly is not there, used like an optional: drafts are moved often and few have all
/// parts.
template <typename Value>
class Boxed {
 public:
  Boxed() = default;
  Boxed(Value value) : value_(std::make_unique<Value>(std::move(value))) {}
  Boxed(const Boxed& other) : value_(other.value_ ? std::make_unique<Value>(*other.value_) : nullptr) {}
  Boxed(Boxed&&) noexcept = default;
  Boxed& operator=(const Boxed& other) { return *this = Boxed(other); }
  Boxed& operator=(Boxed&&) noexcept = default;
  ~Boxed() = default;

  explicit operator bool() const { return value_ != nullptr; }
  Value& operator*() { return *value_; }
  const Value& operator*() const { return *value_; }
  Value* operator->() { return value_.get(); }
  const Value* operator->() const { return value_.get(); }
  void reset() { value_.reset(); }

 private:
  std::unique_ptr<Value> value_;
};

}  // namespace witnessmark::claims
