#pragma once
#include <string>
#include <string_view>

#include "witnessmark/base/result.h"
#include "witnessmark/language/date_expression.h"

namespace witnessmark {

/// TimeML 1.2.1 (TimeML specification; TIMEX3 as in ISO 24617-1): the TEXT element of a document, with markup
/// inside it left out, and what stands around it.
struct TimemlDocument {
  std::string before;  ///< Up to and with "<TEXT>", byte for byte.
  std::string text;    ///< The characters of TEXT: entities decoded, tags left out.
  std::string after;   ///< From "</TEXT>" on, byte for byte.
};

/// Reads a TimeML file. TIMEX3 tags in TEXT are dropped, other tags too; entities are decoded. The Error says
/// what is missing: no TEXT element, a tag without end, an unknown entity.
Result<TimemlDocument> parse_timeml(std::string_view file, std::string_view source);

/// The text with TIMEX3 tags (tid from first_tid, type, value, mod; no value attribute when there is no
/// value), escaped for XML. Expressions with parts are tagged part by part.
std::string with_timex3(std::string_view text, const std::vector<DateExpression>& expressions,
                        int first_tid = 1);

/// A whole TimeML document around a plain text, for texts that came without one.
std::string timeml_around(std::string_view tagged_text, std::string_view document_id);

}  // namespace witnessmark
