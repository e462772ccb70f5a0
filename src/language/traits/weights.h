#pragma once
#include <array>
#include <cstdint>
#include <filesystem>
#include <vector>

#include "language/dates/words/text_hash.h"
#include "witnessmark/base/file_system.h"
#include "witnessmark/base/result.h"
#include "witnessmark/model/statement.h"

namespace witnessmark {

struct Words;

inline constexpr std::size_t kStatements = 8;

/// A number for each statement, in the order of Statement: hundredths of a natural logarithm of odds.
struct Scores {
  std::array<std::int32_t, kStatements> of{};

  std::int32_t operator[](Statement statement) const { return of[static_cast<std::size_t>(statement)]; }
  Scores& operator+=(const Scores& other) {
    for (std::size_t s = 0; s < kStatements; ++s) of[s] += other.of[s];
    return *this;
  }
  Scores& operator-=(const Scores& other) {
    for (std::size_t s = 0; s < kStatements; ++s) of[s] -= other.of[s];
    return *this;
  }
};

/// What coded interviews taught: for each trait of a stretch of talk, how much it speaks for or against each
/// statement (logistic regression). Read from trait-weights.tsv.
class TraitWeights {
 public:
  /// The hash of a trait, from its kind and then part by part.
  static constexpr std::uint64_t begin(std::uint64_t kind) {
    return dates::mix_group(dates::kHashSeed, kind);
  }
  static constexpr std::uint64_t next(std::uint64_t hash, std::uint64_t part) {
    return dates::mix_group(hash, part);
  }

  bool empty() const { return rows_.empty(); }
  void add(std::uint64_t trait, Scores& scores) const {
    for (std::uint64_t i = trait & mask_;; i = (i + 1) & mask_) {
      const Slot& slot = slots_[i];
      if (slot.row < 0) return;
      if (slot.trait != trait) continue;
      scores += rows_[static_cast<std::size_t>(slot.row)];
      return;
    }
  }

  /// A folder without the file has no weights: nothing was learned for its language. Errors name file, line
  /// and column.
  static Result<TraitWeights> load(const FileReader& files, const std::filesystem::path& folder,
                                   const Words& words);

 private:
  struct Slot {
    std::uint64_t trait = 0;
    std::int32_t row = -1;
  };
  void insert(std::uint64_t trait, const Scores& row);
  void grow();

  std::vector<Slot> slots_{16};
  std::uint64_t mask_ = 15;
  std::vector<Scores> rows_;
};

}  // namespace witnessmark
