#pragma once
#include <optional>
#include <stdexcept>
#include <utility>
#include <variant>

#include "witnessmark/base/error.h"

namespace witnessmark {

/// A value, or the Error that says why there is none. Asking for the wrong one is a broken invariant and
/// throws std::logic_error.
template <typename T>
class [[nodiscard]] Result {
 public:
  Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
  Result(Error error) : held_(std::in_place_index<1>, std::move(error)) {}

  bool ok() const { return held_.index() == 0; }
  explicit operator bool() const { return ok(); }

  const T& value() const& {
    check();
    return std::get<0>(held_);
  }
  T& value() & {
    check();
    return std::get<0>(held_);
  }
  T&& value() && {
    check();
    return std::get<0>(std::move(held_));
  }
  const T& operator*() const& { return value(); }
  T& operator*() & { return value(); }
  T&& operator*() && { return std::move(*this).value(); }
  const T* operator->() const { return &value(); }
  T* operator->() { return &value(); }

  const Error& error() const {
    if (ok()) throw std::logic_error("Result holds a value, not an error");
    return std::get<1>(held_);
  }

 private:
  void check() const {
    if (!ok()) throw std::logic_error("Result holds an error: " + to_string(std::get<1>(held_)));
  }
  std::variant<T, Error> held_;
};

/// Success without a value, or an Error.
template <>
class [[nodiscard]] Result<void> {
 public:
  Result() = default;
  Result(Error error) : error_(std::move(error)) {}

  bool ok() const { return !error_.has_value(); }
  explicit operator bool() const { return ok(); }
  const Error& error() const {
    if (ok()) throw std::logic_error("Result holds no error");
    return *error_;
  }

 private:
  std::optional<Error> error_;
};

}  // namespace witnessmark
