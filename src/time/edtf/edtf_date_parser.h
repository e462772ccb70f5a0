#pragma once
#include <cstddef>
#include <string_view>

#include "witnessmark/time/edtf.h"

namespace witnessmark {

enum class TimeOfDay { allowed, refused };

/// Reads one date, the whole of text. Columns in the Error count from column_before.
Result<EdtfDate> parse_edtf_date(std::string_view text, std::size_t column_before, TimeOfDay time_of_day);

}  // namespace witnessmark
