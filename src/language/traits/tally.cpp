#include "language/traits/tally.h"

namespace witnessmark::claims {

namespace {

constexpr int kLastNumber = 50;

struct Digits {
  std::array<char, 2> text{};
  std::size_t size = 0;
};

constexpr std::array<Digits, kLastNumber + 1> kDigits = [] {
  std::array<Digits, kLastNumber + 1> made{};
  for (int i = 0; i <= kLastNumber; ++i) {
    Digits& digits = made[static_cast<std::size_t>(i)];
    if (i > 9) digits.text[digits.size++] = static_cast<char>('0' + i / 10);
    digits.text[digits.size++] = static_cast<char>('0' + i % 10);
  }
  return made;
}();

constexpr std::array<Part, kLastNumber + 1> kNumbers = [] {
  std::array<Part, kLastNumber + 1> made{};
  for (std::size_t i = 0; i < made.size(); ++i)
    made[i] = named(std::string_view(kDigits[i].text.data(), kDigits[i].size));
  return made;
}();

}  // namespace

Part number_part(int value) {
  return kNumbers[static_cast<std::size_t>(value < 0 ? 0 : value > kLastNumber ? kLastNumber : value)];
}

Part bucket_of(int value) {
  for (const int step : {0, 1, 2, 3, 5, 8, 12, 20, 30}) {
    if (value <= step) return number_part(step);
  }
  return number_part(kLastNumber);
}

void SpellingBook::add(Spelled& tally, TraitKind kind, std::initializer_list<Part> parts) const {
  std::string made(kind.text);
  char between = ':';
  for (const Part& part : parts) {
    made += between;
    made += part.text;
    between = ' ';
  }
  tally.traits.push_back(std::move(made));
}

}  // namespace witnessmark::claims
