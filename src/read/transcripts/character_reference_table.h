#pragma once
#include <span>
#include <string_view>

namespace witnessmark {

struct NamedReference {
  std::string_view name;  ///< Without the ampersand; with the semicolon where it is needed.
  std::string_view text;
};

/// Sorted by name, in byte order.
std::span<const NamedReference> named_references();

}  // namespace witnessmark
