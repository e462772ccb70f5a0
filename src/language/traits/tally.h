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

/// Traits spelled out.
struct Spelled {
  std::vector<std::string> traits;
  Spelled& operator+=(const Spelled& other) {
    traits.insert(traits.end(), other.traits.begin(), other.traits.end());
    return *this;
  }
};

/// A book tallies the traits of something: this one adds up what they weigh.
class WeighingBook {
 public:
  using Tally = Scores;
  static constexpr bool kSpells = false;

  explicit WeighingBook(const TraitWeights& weights) : weights_(&weights) {}
  void add(Scores& tally, TraitKind kind, std::initializer_list<Part> parts = {}) const {
    std::uint64_t hash = kind.hash;
    for (const Part& part : parts) hash = TraitWeights::next(hash, part.form);
    weights_->add(hash, tally);
  }

 private:
  const TraitWeights* weights_;
};

/// This one spells them out, to learn weights from.
class SpellingBook {
 public:
  using Tally = Spelled;
  static constexpr bool kSpells = true;

  void add(Spelled& tally, TraitKind kind, std::initializer_list<Part> parts = {}) const;
};

/// Tallies one behind the other, and what those next to each other come to.
template <class Tally>
class TallyRow {
 public:
  void clear() { tallies_.clear(); }
  void push(Tally tally) { tallies_.push_back(std::move(tally)); }
  Tally of(std::size_t k) const { return tallies_[k]; }
  void add(std::size_t first, std::size_t past, Tally& to) const {
    for (std::size_t k = first; k < past; ++k) to += tallies_[k];
  }

 private:
  std::vector<Tally> tallies_;
};

/// Scores are kept as sums from the first on: any part of the row is one subtraction.
template <>
class TallyRow<Scores> {
 public:
  void clear() { sums_.resize(1); }
  void push(const Scores& tally) {
    sums_.push_back(sums_.back());
    sums_.back() += tally;
  }
  Scores of(std::size_t k) const {
    Scores scores;
    add(k, k + 1, scores);
    return scores;
  }
  void add(std::size_t first, std::size_t past, Scores& to) const {
    if (first >= past) return;
    to += sums_[past];
    to -= sums_[first];
  }

 private:
  std::vector<Scores> sums_{1};
};

}  // namespace witnessmark::claims
