#pragma once
#include <array>
#include <compare>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace witnessmark {

/// A random 128-bit identity, made once and kept in exports.
struct Id {
  std::array<std::uint8_t, 16> bytes{};

  bool is_nil() const { return *this == Id{}; }
  auto operator<=>(const Id&) const = default;
};

/// 32 lower-case hexadecimal digits.
std::string to_string(const Id& id);

/// Nothing when text is not 32 hexadecimal digits, of either case.
std::optional<Id> parse_id(std::string_view text);

/// Fills the span with random bytes. An argument wherever ids are made, so that tests can be repeated.
using RandomBytes = std::function<void(std::span<std::uint8_t>)>;

/// Random bytes from the operating system (libcrypto). Throws std::runtime_error when the machine has none.
RandomBytes system_random();

/// A repeatable sequence for tests and demonstrations; not for real site files. Copies draw on one sequence.
/// Not for use from several threads at once.
RandomBytes seeded_random(std::uint64_t seed);

Id make_id(const RandomBytes& random);

}  // namespace witnessmark

template <>
struct std::hash<witnessmark::Id> {
  std::size_t operator()(const witnessmark::Id& id) const noexcept;
};
