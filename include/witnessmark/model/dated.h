#pragma once
#include <optional>
#include <string>

#include "witnessmark/time/edtf.h"

namespace witnessmark {

enum class Calendar { gregorian, julian };

/// A date as it was written or spoken, and what it was read to mean.
struct Dated {
  std::string written;        ///< The words or the cell; may be empty when only the value is known.
  std::optional<Edtf> value;  ///< Gregorian. Nothing when undated or not resolved.
  Calendar calendar = Calendar::gregorian;  ///< Of `written`.

  bool dated() const { return value.has_value(); }
  bool operator==(const Dated&) const = default;
};

/// The EDTF text, or "-" when undated.
std::string to_string(const Dated& dated);

}  // namespace witnessmark
