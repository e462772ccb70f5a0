#pragma once
#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>
#include <utility>

#include "witnessmark/base/result.h"

namespace witnessmark {

/// A measurement cannot go on without it.
template <typename T>
T must(Result<T> result) {
  if (!result.ok()) {
    fmt::print(stderr, "{}\n", to_string(result.error()));
    std::exit(1);
  }
  return std::move(result).value();
}
inline void must(Result<void> result) {
  if (!result.ok()) {
    fmt::print(stderr, "{}\n", to_string(result.error()));
    std::exit(1);
  }
}

}  // namespace witnessmark
