#pragma once
#include <array>
#include <cstdint>
#include <filesystem>
#include <string_view>
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
      if (slot.mark != mark_of(trait)) continue;
      const Row& row = rows_[static_cast<std::size_t>(slot.row)];
      for (std::size_t s = 0; s < kStatements; ++s) scores.of[s] += row[s];
      return;
    }
  }

  /// The hash of a trait as the file spells it, "pair:the boiler": the same for all spellings of a word.
  static std::uint64_t hash_of(std::string_view trait, const Words& words);

  /// A folder without the file has no weights: nothing was learned for its language. Errors name file, line
  /// and column.
  static Result<TraitWeights> load(const FileReader& files, const std::filesystem::path& folder,
                                   const Words& words);

 private:
  /// Small, for most of what is looked up is far apart and not there. The place tells traits apart by the low
  /// bits, the mark by the high ones.
  struct Slot {
    std::uint32_t mark = 0;
    std::int32_t row = -1;
  };
  using Row = std::array<std::int16_t, kStatements>;
  static std::uint32_t mark_of(std::uint64_t trait) { return static_cast<std::uint32_t>(trait >> 32); }
  /// Whether the trait is new.
  bool insert(std::uint64_t trait, const Row& row);

  std::vector<Slot> slots_{1};
  std::uint64_t mask_ = 0;
  std::vector<Row> rows_;
};

}  // namespace witnessmark
