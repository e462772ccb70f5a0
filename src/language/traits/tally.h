#pragma once
#include <array>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "language/traits/weights.h"

namespace witnessmark::claims {

/// Part of a trait: a word, or the name of a class, with its hash.
struct Part {
  std::uint64_t form = 0;
  std::string_view text{};
};

/// A part that is no word of the talk: "^", "equipment", "3".
constexpr Part named(std::string_view text) {
  return {dates::hash_word(text), text};
}
/// What a trait is of: the word before its colon.
struct TraitKind {
  std::string_view text;
  std::uint64_t hash;
  consteval TraitKind(const char* name) : text(name), hash(TraitWeights::begin(dates::hash_word(name))) {}
};

/// Numbers from 0 on; all from 50 on are one.
Part number_part(int value);
/// How many, in steps that grow: 0 1 2 3 5 8 12 20 30 50.
Part bucket_of(int value);

/// What the traits of something come to: for each statement the sum of their weights. Where traits are
/// collected to learn weights from, their spellings instead.
struct Tally {
  Scores scores{};
  std::vector<std::string> spelled;

  void join(const Tally& other) {
    for (std::size_t s = 0; s < scores.size(); ++s) scores[s] += other.scores[s];
    if (!other.spelled.empty()) spelled.insert(spelled.end(), other.spelled.begin(), other.spelled.end());
  }
};

/// Adds traits to tallies: weighs them by a table, or spells them out.
class TraitBook {
 public:
  explicit TraitBook(const TraitWeights* weights) : weights_(weights) {}

  bool spells() const { return weights_ == nullptr; }

  void add(Tally& tally, TraitKind kind, std::initializer_list<Part> parts = {}) const {
    if (weights_) {
      std::uint64_t hash = kind.hash;
      for (const Part& part : parts) hash = TraitWeights::next(hash, part.form);
      weights_->add(hash, tally.scores);
    } else {
      tally.spelled.push_back(spell(kind.text, parts));
    }
  }

 private:
  static std::string spell(std::string_view kind, std::initializer_list<Part> parts);

  const TraitWeights* weights_;
};

}  // namespace witnessmark::claims
