#pragma once
#include <optional>
#include <string_view>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

struct SubripTiming {
  Millisecond start;
  Millisecond end;
};

/// A line h:mm:ss,ttt --> h:mm:ss,ttt; nothing when it is none.
std::optional<SubripTiming> read_subrip_timing(std::string_view line);

}  // namespace witnessmark
