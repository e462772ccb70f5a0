#include "witnessmark/base/id.h"

#include <openssl/rand.h>

#include <cstring>
#include <memory>
#include <stdexcept>

#include "base/hexadecimal.h"

namespace witnessmark {
namespace {

int hexadecimal_value(char digit) {
  if (digit >= '0' && digit <= '9') return digit - '0';
  if (digit >= 'a' && digit <= 'f') return digit - 'a' + 10;
  if (digit >= 'A' && digit <= 'F') return digit - 'A' + 10;
  return -1;
}

/// SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014).
std::uint64_t next_split_mix(std::uint64_t& state) {
  state += 0x9e3779b97f4a7c15u;
  std::uint64_t mixed = state;
  mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9u;
  mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebu;
  return mixed ^ (mixed >> 31);
}

}  // namespace

std::string to_string(const Id& id) {
  return hexadecimal(id.bytes);
}

std::optional<Id> parse_id(std::string_view text) {
  Id id;
  if (text.size() != id.bytes.size() * 2) return std::nullopt;
  for (std::size_t i = 0; i < id.bytes.size(); ++i) {
    const int high = hexadecimal_value(text[2 * i]);
    const int low = hexadecimal_value(text[2 * i + 1]);
    if (high < 0 || low < 0) return std::nullopt;
    id.bytes[i] = static_cast<std::uint8_t>(high * 16 + low);
  }
  return id;
}

RandomBytes system_random() {
  return [](std::span<std::uint8_t> bytes) {
    if (RAND_bytes(bytes.data(), static_cast<int>(bytes.size())) != 1) {
      throw std::runtime_error("the machine gives no random bytes (libcrypto RAND_bytes failed)");
    }
  };
}

RandomBytes seeded_random(std::uint64_t seed) {
  // Copies of a std::function copy what it captured. The state is shared, or two copies would make the same
  // ids.
  auto state = std::make_shared<std::uint64_t>(seed);
  return [state](std::span<std::uint8_t> bytes) {
    std::uint64_t word = 0;
    for (std::size_t i = 0; i < bytes.size(); ++i) {
      if (i % 8 == 0) word = next_split_mix(*state);
      bytes[i] = static_cast<std::uint8_t>(word >> (8 * (i % 8)));
    }
  };
}

Id make_id(const RandomBytes& random) {
  Id id;
  random(id.bytes);
  return id;
}

}  // namespace witnessmark

std::size_t std::hash<witnessmark::Id>::operator()(const witnessmark::Id& id) const noexcept {
  // Ids are random already; the two halves are joined only so that hand-made ones differ as well.
  std::uint64_t halves[2];
  std::memcpy(halves, id.bytes.data(), sizeof halves);
  return static_cast<std::size_t>(halves[0] ^ (halves[1] * 0x9e3779b97f4a7c15u));
}
