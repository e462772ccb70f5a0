#pragma once
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// A text of the shape m:ss or h:mm:ss, with one to three decimals after a dot or comma or none.
struct StampReading {
  std::optional<Millisecond> time;  ///< Nothing when seconds, or minutes after hours, are over 59.
  std::size_t length = 0;           ///< Bytes read.
  bool has_hours = false;
};

/// Reads a stamp at the start of the text; nothing when there is none of that shape.
std::optional<StampReading> read_stamp(std::string_view text);

/// Which of the times to keep so that they never run backwards and as few as possible are left out.
std::vector<bool> keep_in_order(const std::vector<Millisecond>& times);

}  // namespace witnessmark
