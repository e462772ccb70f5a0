#pragma once
#include <optional>
#include <string_view>

namespace witnessmark {

/// What is stated of a subject at a place in a period.
enum class Statement {
  begins,     ///< Fitted, built, painted so.
  ends,       ///< Removed, painted over.
  present,    ///< Was there.
  absent,     ///< Was not there.
  count,      ///< So many of them.
  attribute,  ///< Had a property: a colour, a type.
  happened,   ///< An event.
  located     ///< The site or a person was at a place.
};
/// Whether it says that something came or went.
constexpr bool is_change(Statement statement) {
  return statement == Statement::begins || statement == Statement::ends;
}
/// Whether it says how things were for a time.
constexpr bool is_state(Statement statement) {
  return statement == Statement::present || statement == Statement::absent || statement == Statement::count ||
         statement == Statement::attribute;
}
std::string_view to_string(Statement statement);
std::optional<Statement> parse_statement(std::string_view text);

/// Names under which an attribute keeps the narrator's words for what it has no property for: "is: under the wheelhouse",
/// "as told: stuck out over the quay". Several of them hold of a thing at one time, and none contradicts another.
inline constexpr std::string_view kAttributeIs = "is", kAttributeAsTold = "as told";

}  // namespace witnessmark
