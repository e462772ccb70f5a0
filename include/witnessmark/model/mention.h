#pragma once
#include <string>
#include <string_view>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

enum class MentionKind { date, place, equipment, quantity, action, cue };
std::string_view to_string(MentionKind kind);

/// A span read as something. `value` is an EDTF text, a list key, a number, a statement kind or a cue class.
struct Mention {
  MentionKind kind = MentionKind::date;
  CodePointRange range;
  std::string value;
  std::string rule;      ///< Which list row or rule read it.
  bool near_match = false;  ///< A likely misspelling of a list term: offered, not assumed.
  bool operator==(const Mention&) const = default;
};

std::string to_string(const Mention& mention);

}  // namespace witnessmark
