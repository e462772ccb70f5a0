#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace witnessmark {

/// Why a cell does not hold EDTF but what a spreadsheet or a writer's habit makes of a date.
struct MangledDate {
  std::string what;    ///< "looks like a date changed by a spreadsheet".
  std::string advice;  ///< What to write, with the readings it may have.
};

/// Recognises 12/03/1958, 3.12.58, 12-03-1958, 3-Dec-58, Dec-58, 3 December 1958, 21234 (a day count),
/// 1958-12-03 00:00:00, 1958.0. Nothing for anything else, EDTF included.
std::optional<MangledDate> mangled_date(std::string_view cell);

}  // namespace witnessmark
