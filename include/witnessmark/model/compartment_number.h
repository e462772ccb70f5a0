#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/result.h"
#include "witnessmark/model/authority_list.h"

namespace witnessmark {

enum class Side { centreline, starboard, port };
std::string_view to_string(Side side);

/// A ship's compartment number read under one scheme; never converted into the other. Sources for both are named in
/// compartment_number.cpp.
struct CompartmentNumber {
  NumberScheme scheme = NumberScheme::none;
  std::string written;
  std::string deck;          ///< "3", "01": text. Before 1949: "1".."3" from the hundreds, "01" above, "9" double bottom.
  std::string section;       ///< Before 1949: A, B, C or D.
  std::string frame;         ///< Since 1949; text, may be a letter frame forward of the perpendicular.
  std::optional<int> order;  ///< Outboard order on its side; 0 on the centreline.
  Side side = Side::centreline;
  std::string use;           ///< Letter or letters.
  std::string use_words;     ///< "ammunition"; empty when the letter is not one we have a source for.
  std::vector<std::string> remarks;   ///< Where sources disagree on what the number means.
  bool operator==(const CompartmentNumber&) const = default;
};

/// Reads "3-75-4-M" (since 1949) or "C-207-A", "C-207 A" (before). The Error says which part is malformed.
Result<CompartmentNumber> parse_compartment_number(std::string_view text);

std::string describe(const CompartmentNumber& number);

}  // namespace witnessmark
