#pragma once
#include <cstdint>
#include <string>
#include <string_view>

#include "witnessmark/model/comparison.h"

namespace witnessmark {

/// A comparison with the number of its evidence in the place of claim and key.
struct NumberedComparison {
  std::int64_t evidence = 0;
  Outcome outcome = Outcome::silent;
  bool intention = false;
  bool circular = false;
  AllenSet relation;
  std::optional<Distance> gap;
};

/// The comparisons of a claim as the bytes that are kept (schemas/sql/005-weighings.sql): some five for each.
class ComparisonPacker {
 public:
  void add(const NumberedComparison& comparison);
  const std::string& bytes() const { return bytes_; }

 private:
  std::string bytes_;
  std::int64_t last_ = 0;
};

/// Reads them back, one after another. Throws SqliteError when they are no such bytes.
class ComparisonUnpacker {
 public:
  explicit ComparisonUnpacker(std::string_view bytes) : rest_(bytes) {}
  /// False after the last.
  bool next(NumberedComparison& comparison);

 private:
  std::string_view rest_;
  std::int64_t last_ = 0;
};

}  // namespace witnessmark
