#include "language/traits/tally.h"

namespace witnessmark::claims {

Part number_part(int value) {
  constexpr std::size_t kNumbers = 51;
  static const std::array<std::string, kNumbers> kSpelled = [] {
    std::array<std::string, kNumbers> made;
    for (std::size_t i = 0; i < made.size(); ++i) made[i] = std::to_string(i);
    return made;
  }();
  static const std::array<Part, kNumbers> kParts = [] {
    std::array<Part, kNumbers> made;
    for (std::size_t i = 0; i < made.size(); ++i) made[i] = named(kSpelled[i]);
    return made;
  }();
  const int last = static_cast<int>(kNumbers) - 1;
  return kParts[static_cast<std::size_t>(value < 0 ? 0 : value > last ? last : value)];
}

Part bucket_of(int value) {
  for (const int step : {0, 1, 2, 3, 5, 8, 12, 20, 30}) {
    if (value <= step) return number_part(step);
  }
  return number_part(50);
}

std::string TraitBook::spell(std::string_view kind, std::initializer_list<Part> parts) {
  std::string made(kind);
  char between = ':';
  for (const Part& part : parts) {
    made += between;
    made += part.text;
    between = ' ';
  }
  return made;
}

}  // namespace witnessmark::claims
